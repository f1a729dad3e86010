#!/usr/bin/env bash
# Keeps a picture of every page in every size, and of the whole job as it goes on, under artifacts/pictures.
# ./pictures.sh --readme: the whole job only, and from it the README's pictures, cut and with few colours so that they stay small.
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 RIGGING_LONG=1 RIGGING_PICTURES="$PWD/artifacts/pictures"
classes=(-class "*EveryPageTests" -class "*JourneyTests")
if [[ ${1-} == --readme ]]; then
  classes=(-class "*JourneyTests")
  if ! command -v pdftoppm >/dev/null || ! convert --version | grep -q ImageMagick; then
    echo "pictures.sh: --readme wants ImageMagick and pdftoppm (Debian: sudo apt-get install imagemagick poppler-utils)." >&2
    exit 1
  fi
fi
dotnet build tests/Rigging.EndToEnd/Rigging.EndToEnd.csproj -p:UseSharedCompilation=true -v:q
rm -rf "$RIGGING_PICTURES"
artifacts/bin/Rigging.EndToEnd/debug/Rigging.EndToEnd "${classes[@]}"
ls "$RIGGING_PICTURES" | wc -l

[[ ${1-} == --readme ]] || exit 0
# From, part of it (width x height + from the left + from the top), to.
cut() { convert "$RIGGING_PICTURES/$1" -crop "$2" +repage -colors 64 -strip "PNG8:docs/pictures/$3.png"; }
cut ramp-1280.png 1280x1160+0+0 ramp
cut story-1280.png 1280x1250+0+0 story
cut assessment-820.png 820x1250+0+0 assessment
cut work-820.png 820x1330+0+907 work
cut verdict-820.png 820x1100+0+1010 plots
cut report-390.png 390x1220+0+0 report
pdftoppm -r 80 -f 1 -l 1 -png -singlefile "$RIGGING_PICTURES/record.pdf" "$RIGGING_PICTURES/record"
cut record.png 661x1000+0+0 record
