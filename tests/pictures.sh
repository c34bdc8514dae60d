#!/usr/bin/env bash
# Takes the pictures of docs/report-explained.md anew, of the demo's real pages. Needs chromium (Debian: apt-get install chromium).
set -euo pipefail
cd "$(dirname "$0")/.."
mkdir -p docs/pictures
rm -f docs/pictures/*.png
PICTURES_FOLDER=$PWD/docs/pictures dotnet test tests/DailyAdjust.BrowserTests -c Release --filter FullyQualifiedName~PicturesTests
ls -l docs/pictures
