#!/usr/bin/env bash
# What the program promises (docs/promises.md), tried through the real program; prints per promise how often it was tried and how often it failed.
#   bash tests/promises.sh            the small counts, as at every change
#   bash tests/promises.sh --full     the counts that a release is held to (an hour or two)
#   bash tests/promises.sh 3 5        these promises alone
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
full=
wanted=()
for argument in "$@"; do
  case $argument in
    --full) full=1; export PROMISES_COUNTS=full ;;
    *) wanted+=("$argument") ;;
  esac
done
[ ${#wanted[@]} -gt 0 ] || wanted=(1 2 3 4 5 6 7 8 9 10 11 12)
dotnet build -c Release > "$work/build" 2>&1 || { cat "$work/build"; exit 1; }

# Promises that a program of its own tries as well; it ends with "N tried, M failed".
program() {
  case $1 in
    10) echo "tests/DailyAdjust.Fuzz -c Release -- --count $([ -n "$full" ] && echo 1000000 || echo 20000)" ;;
    12) echo "tests/DailyAdjust.Mutants -c Release -- --count $([ -n "$full" ] && echo 600 || echo 60)" ;;
  esac
}

bad=0
for promise in "${wanted[@]}"; do
  export PROMISES_TRIED="$work/tried-$promise"
  : > "$PROMISES_TRIED"
  echo "== $(grep -m1 -E "^## $promise\. " docs/promises.md | cut -c4-)"
  tried=0
  if [ -n "$(program "$promise")" ]; then
    # shellcheck disable=SC2046 # its words are arguments
    dotnet run --project $(program "$promise") > "$work/program" 2>&1 || { bad=$((bad + 1)); tail -60 "$work/program"; }
    tried=$(grep -cE '^[1-9][0-9]* tried, [0-9]+ failed$' "$work/program")
    echo "   $(tail -1 "$work/program")"
  fi
  dotnet test -c Release --no-build --filter "Promise=$promise" > "$work/log" 2>&1
  passed=$(grep -oE 'Passed: +[0-9]+' "$work/log" | awk '{ n += $2 } END { print n + 0 }')
  failed=$(grep -oE 'Failed: +[0-9]+' "$work/log" | awk '{ n += $2 } END { print n + 0 }')
  skipped=$(grep -oE 'Skipped: +[0-9]+' "$work/log" | awk '{ n += $2 } END { print n + 0 }')
  awk -F'\t' '{ n[$2] += $3; if (!($2 in at)) { at[$2] = ++k; name[k] = $2 } } END { for (i = 1; i <= k; i++) printf "   %s: %d, failed 0\n", name[i], n[name[i]] }' "$PROMISES_TRIED"
  echo "   tests: $((passed + failed)), failed $failed${skipped:+, skipped $skipped}"
  [ "$failed" -eq 0 ] || { bad=$((bad + failed)); grep -vE '^\s+at ' "$work/log" | tail -60; }
  [ "$((passed + failed + tried))" -gt 0 ] || { bad=$((bad + 1)); echo '   nothing was tried'; tail -20 "$work/log"; }
done
echo "$bad failed"
[ "$bad" -eq 0 ]
