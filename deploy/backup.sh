#!/usr/bin/env bash
# Takes a backup while Rigging runs or rests: FOLDER/rigging-TIME.dump, its SHA-256, and the newest seal beside it.
# The files are the taker's alone: a dump holds names, addresses and the hashes of passwords.
set -euo pipefail
umask 077
usage() { echo "usage: deploy/backup.sh [--data DIR | --connection 'Host=…;Database=…;Username=…'] FOLDER   (password: PGPASSWORD or ~/.pgpass)"; }
. "$(dirname "$0")/connect.sh"
((${#words[@]} == 1)) || { usage >&2; exit 2; }
folder=${words[0]}
# A mistyped folder must not become a new, empty database that is then backed up.
[[ -n $connection || -f $data/cluster/PG_VERSION ]] || die "--data $data: there is no database of Rigging in it"
[[ -d $folder ]] || mkdir -p -m 700 "$folder"
connect
trap disconnect EXIT

# Written beside its place and moved there when whole: a backup that was cut off is not mistaken for one.
name=$folder/rigging-$(date -u +%Y%m%dT%H%M%S.%3NZ).dump
pg_dump --format=custom --file="$name.new" || { rm -f "$name.new"; die "pg_dump failed; there is no new backup"; }
# grep reads to the end: one that left early would break the listing's pipe, and that counts as a failure here.
pg_restore --list "$name.new" | grep 'TABLE DATA public ledger_entry' >/dev/null || die "$name.new holds no ledgers; it is left there to look at"
psql -XAtqc 'select text from seal order by number desc limit 1' >"$name.seal.txt"
[[ -s $name.seal.txt ]] || rm -f "$name.seal.txt"
mv "$name.new" "$name"
(cd "$folder" && sha256sum "${name##*/}" >"${name##*/}.sha256")
sync "$name" 2>/dev/null || true
echo "$name"
