#!/usr/bin/env bash
# Installs what is missing, builds, checks the format, runs every test. Ends with "N passed, N failed".
# With --long the fault tests (kills, races, nonsense) run ten times as often: some 20 minutes more.
set -euo pipefail
case "${1-}" in
  '') ;;
  --long) export RIGGING_LONG=1 ;;
  *) echo "usage: ./test.sh [--long]" >&2; exit 2 ;;
esac
cd "$(dirname "$0")"
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

missing=()
ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || command -v initdb >/dev/null || missing+=(postgresql)
# The shell and not the whole browser: windows of the whole one stand still while another is in front.
[[ -n ${RIGGING_CHROMIUM-} ]] || command -v chromium-headless-shell >/dev/null || missing+=(chromium-headless-shell)
command -v pdftoppm >/dev/null || missing+=(poppler-utils)
if ((${#missing[@]})); then
  echo "Installing: ${missing[*]}"
  if [[ $(id -u) != 0 ]]; then echo "Not root: install these packages first: ${missing[*]}" >&2; exit 1; fi
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
fi

log=$(mktemp)
trap 'rm -f "$log"; dotnet build-server shutdown >/dev/null 2>&1 || true' EXIT
dotnet tool restore >/dev/null
dotnet restore Rigging.sln
dotnet format whitespace --folder . --verify-no-changes --exclude artifacts
dotnet build Rigging.sln --no-restore -p:UseSharedCompilation=true -v:q
rc=0
dotnet test Rigging.sln --no-build --no-ansi --no-progress 2>&1 | tee "$log" || rc=$?
field() { awk -v k="  $1:" 'index($0, k) == 1 { v = $2 } END { print v + 0 }' "$log"; }
skipped=$(field skipped)
if ((skipped)); then echo "$skipped tests were skipped: that is not passing" >&2; rc=1; fi
echo "$(field succeeded) passed, $(field failed) failed"
exit "$rc"
