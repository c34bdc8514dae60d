#!/usr/bin/env bash
# The telling part of the unit tests (published values, what other programs computed, the plain second reckoning against the real one, properties) in other places:
# under other cultures, in other time zones, and on a processor without fused multiply-add.
#   bash tests/elsewhere.sh            after a Release build
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en
telling='FullyQualifiedName~Published|FullyQualifiedName~Outside|FullyQualifiedName~Plain|FullyQualifiedName~Properties|FullyQualifiedName~Recorded|FullyQualifiedName~ExampleSite|FullyQualifiedName~EightWays'

# The C library has the same functions with and without fused multiply-add; which it takes shows in their last bits. The names changed with glibc 2.33.
masked='glibc.cpu.hwcaps=-FMA,-AVX2,-FMA4,-FMA_Usable,-AVX2_Usable,-FMA4_Usable'
last_bits() { python3 -c 'import math; print(hash(tuple(f(0.1 + i / 7919) for i in range(20000) for f in (math.sin, math.exp, math.atan))))'; }
if grep -qw fma /proc/cpuinfo && [ "$(last_bits)" = "$(GLIBC_TUNABLES=$masked last_bits)" ]; then
  echo 'the mask takes nothing from the C library: nothing would be shown'
  exit 1
fi

bad=0
# place CULTURE ZONE [NAME=VALUE...]: the tests there.
place() {
  local culture=$1 zone=$2
  shift 2
  echo "== $culture, $zone${1:+, without fused multiply-add}"
  env LANG="$culture.UTF-8" LC_ALL="$culture.UTF-8" TZ="$zone" "$@" dotnet test tests/DailyAdjust.Tests -c Release --no-build --filter "$telling" || bad=1
}

place de_DE Asia/Kathmandu GLIBC_TUNABLES="$masked" DOTNET_EnableFMA=0 DOTNET_EnableAVX2=0
place tr_TR Pacific/Auckland
exit "$bad"
