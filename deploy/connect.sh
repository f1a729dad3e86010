# For backup.sh and restore.sh: reads their options, finds PostgreSQL's programs and the program, and sets PG… to the database.
# Not run by itself.
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
die() { echo "${0##*/}: $*" >&2; exit 2; }

data="$here/.local" connection='' words=()
while (($#)); do
  case "$1" in
    --data) data=${2:?--data needs a folder}; shift 2 ;;
    --connection) connection=${2:?--connection needs a string}; shift 2 ;;
    --help|-h) usage; exit 0 ;;
    -*) die "$1 is not an option" ;;
    *) words+=("$1"); shift ;;
  esac
done

bin=${RIGGING_PG_BIN:-$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -1)}
[[ -n $bin ]] && PATH="$bin:$PATH"
command -v pg_dump >/dev/null || die "pg_dump is not on this machine; install PostgreSQL's client programs"

# Built by run.sh, or named: a folder with the published program works as well.
program=${RIGGING_PROGRAM:-$here/artifacts/bin/Rigging.Web/release/rigging.dll}
rigging() { dotnet "$program" "$@"; }

where=(--data "$data")
if [[ -n $connection ]]; then
  # The form that the program takes, as PostgreSQL's own programs want it. A password is better left to PGPASSWORD or ~/.pgpass,
  # which both read: everybody on a machine sees its command lines, and here a password cannot hold a semicolon.
  where=(--connection "$connection")
  IFS=';' read -ra parts <<<"$connection"
  for part in "${parts[@]}"; do
    value=${part#*=}
    case "$(tr 'A-Z' 'a-z' <<<"${part%%=*}" | tr -d ' ')" in
      host|server) export PGHOST=$value ;;
      port) export PGPORT=$value ;;
      database|db) export PGDATABASE=$value ;;
      username|userid|user) export PGUSER=$value ;;
      password) export PGPASSWORD=$value ;;
    esac
  done
fi

# The private database: the running one by its socket, else started for us and stopped when we end.
connect() {
  [[ -z $connection ]] || return 0
  export PGUSER=rigging_admin PGDATABASE=rigging PGPORT=5432
  local pid=$data/cluster/postmaster.pid
  if [[ -f $pid ]] && kill -0 "$(head -1 "$pid")" 2>/dev/null; then
    PGHOST=$(sed -n 5p "$pid"); export PGHOST
    return
  fi
  [[ -f $program ]] || die "$program is not there; build it (./run.sh does) or name it in RIGGING_PROGRAM"
  coproc database { exec dotnet "$program" database --data "$data"; }
  local line
  read -r line <&"${database[0]}" || die "the private database in $data did not start"
  PGHOST=${line#host=}; PGHOST=${PGHOST%% *}; export PGHOST
}

disconnect() {
  [[ -n ${database_PID-} ]] || return 0
  local pid=$database_PID
  exec {database[1]}>&-
  wait "$pid" || true
}
