#!/usr/bin/env bash
# Puts a backup into an empty place, brings it up to this version, and checks every chain and seal. Never over what is there.
set -euo pipefail
usage() { echo "usage: deploy/restore.sh [--data DIR | --connection 'Host=…;Database=…;Username=…'] FILE.dump   (password: PGPASSWORD or ~/.pgpass)"; }
. "$(dirname "$0")/connect.sh"
((${#words[@]} == 1)) || { usage >&2; exit 2; }
file=$(realpath "${words[0]}")
[[ -f $file ]] || die "$file: there is no such file"
[[ -f $program ]] || die "$program is not there; build it (./run.sh does) or name it in RIGGING_PROGRAM"
if [[ -f $file.sha256 ]]; then
  (cd "$(dirname "$file")" && sha256sum --quiet --check "${file##*/}.sha256") || die "$file is not what was backed up: its SHA-256 differs"
fi
connect
trap disconnect EXIT

sql() { psql -XAtq -v ON_ERROR_STOP=1 "$@"; }
target=$PGDATABASE
if [[ $(PGDATABASE=postgres sql -c "select count(*) from pg_database where datname = '$target'") == 0 ]]; then
  PGDATABASE=postgres sql -c "create database \"$target\" encoding 'UTF8' template template0"
elif [[ $(sql -c "select count(*) from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'") != 0 ]]; then
  die "the database '$target' holds tables already; a backup is restored into an empty place only"
fi
# Roles belong to the server and are not in the dump.
PGDATABASE=postgres sql <<'SQL'
do $$ begin
    if not exists (select from pg_roles where rolname = 'rigging_owner') then create role rigging_owner nologin; end if;
    if not exists (select from pg_roles where rolname = 'rigging_app') then create role rigging_app login; end if;
end $$;
SQL
pg_restore --exit-on-error --single-transaction --dbname="$target" "$file"
disconnect
trap - EXIT

rigging migrate "${where[@]}"
seal=()
[[ ! -f $file.seal.txt ]] || seal=(--seal "$file.seal.txt")
rigging verify "${where[@]}" "${seal[@]}"
