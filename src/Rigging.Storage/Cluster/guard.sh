# Runs a server and stops it when whoever started us goes away, however that one ends:
# our standard input is a pipe that only they hold, and it closes with them.
# usage: sh guard.sh FOLDER-TO-REMOVE-AFTERWARDS LOG SERVER [ARGUMENT...]
exec 3<&0 </dev/null
leftover=$1
exec >>"$2" 2>&1
shift 2
"$@" 3<&- &
server=$!
trap 'kill -INT $server' INT TERM HUP
{ cat <&3 >/dev/null; kill -INT $server; } 2>/dev/null &
watch=$!
exec 3<&-
wait $server
rc=$?
# A signal to us ends the wait, not the server.
while kill -0 $server 2>/dev/null; do wait $server; rc=$?; done
rm -rf "$leftover"
kill $watch 2>/dev/null
exit $rc
