#!/usr/bin/env bash
# Builds Rigging, brings its database up to date and serves it on this machine: http://localhost:5080. Ctrl-C stops it.
# Options: ./run.sh --help. Another command: ./run.sh verify (or migrate, rebuild). Data is kept in .local beside this file.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

command=serve
case "${1-}" in serve|migrate|rebuild|verify|seal|export|erase|database|help) command=$1; shift ;; esac
data=(--data "$here/.local") server=
for word in "$@"; do
  case "$word" in
    --data|--data=*) data=() ;;
    --connection|--connection=*) server=yes ;;
    --help|-h) command=help ;;
  esac
done
sdks=$(dotnet --list-sdks 2>/dev/null) || sdks=
if [[ $'\n'$sdks != *$'\n'10.* ]]; then
  echo "run.sh: the .NET 10 SDK is missing. Install it (https://dotnet.microsoft.com/download/dotnet/10.0) and start again." >&2
  exit 1
fi

has_postgres() { [[ -n ${RIGGING_PG_BIN-} ]] || command -v initdb >/dev/null || compgen -G '/usr/lib/postgresql/*/bin/initdb' >/dev/null; }
if [[ -z $server && $command != help ]] && ! has_postgres; then
  if [[ $(id -u) != 0 ]] || ! command -v apt-get >/dev/null; then
    echo "run.sh: PostgreSQL is missing. Install the package 'postgresql' (Debian: sudo apt-get install postgresql) and start again," >&2
    echo "        or name a server with --connection." >&2
    exit 1
  fi
  echo "Installing PostgreSQL ..."
  { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends postgresql; } >/dev/null
fi

echo "Building ..."
if ! log=$(cd "$here" && dotnet build src/Rigging.Web/Rigging.Web.csproj -c Release -v:q -p:UseSharedCompilation=true 2>&1); then
  echo "$log" >&2
  exit 1
fi

program="$here/artifacts/bin/Rigging.Web/release/rigging.dll"
if [[ $command == serve ]]; then
  dotnet "$program" migrate ${data[@]+"${data[@]}"} "$@"
fi
exec dotnet "$program" "$command" ${data[@]+"${data[@]}"} "$@"
