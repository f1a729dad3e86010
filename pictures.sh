#!/usr/bin/env bash
# Keeps a picture of every page in every size, and of the whole job as it goes on, under artifacts/pictures.
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 RIGGING_LONG=1 RIGGING_PICTURES="$PWD/artifacts/pictures"
dotnet build tests/Rigging.EndToEnd/Rigging.EndToEnd.csproj -p:UseSharedCompilation=true -v:q
rm -rf "$RIGGING_PICTURES"
artifacts/bin/Rigging.EndToEnd/debug/Rigging.EndToEnd -class "*EveryPageTests" -class "*JourneyTests"
ls "$RIGGING_PICTURES" | wc -l
