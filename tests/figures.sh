#!/usr/bin/env bash
# Measures whole processes on this machine: the demo from a built tree, and one morning on the demo's home.
# Prints seconds and peak memory of five runs; shared machines are noisy, so read the least.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet publish src/DailyAdjust.Service -c Release -r "$(dotnet --info | awk '/RID:/ { print $2; exit }' | sed 's/^.*linux.*-/linux-/')" \
  --self-contained false -o "$work/publish" > "$work/log" || { cat "$work/log"; exit 1; }
run() { python3 - "$@" <<'P'
import resource, subprocess, sys, time
begun = time.monotonic()
code = subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode
print(f"  {time.monotonic() - begun:6.2f} s  {resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024:6.0f} MB  exit {code}")
P
}
echo 'demo, from a built tree:'
for i in 1 2 3 4 5; do run dotnet "$work/publish/dailyadjust.dll" demo --home "$work/home$i"; done
echo 'morning on the demo home:'
for i in 1 2 3 4 5; do run "$work/publish/dailyadjust" morning --date 2026-07-16 --home "$work/home1"; done
