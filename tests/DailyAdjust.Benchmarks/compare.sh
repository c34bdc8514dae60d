#!/usr/bin/env bash
# Measures this program beside what somebody would take instead (NumPy, C, pandas, the sqlite3 shell), and its own commands as whole
# processes, in one run on one machine; prints one table of what was measured against the figures to reach.
#   compare.sh [--sites N] [--years N] [--rows N] [--only kernels|ingest|course|sites]...
# 100 sites unless --sites says otherwise (the figure is of 1,000), 10 years (or 1, 2, 5), 500,000 rows. Shared machines are noisy: what is compared runs
# in turn, the least of its runs counts. Whoever lacks gcc, python3-numpy, python3-pandas, sqlite3, strace or time goes without those rows.
# Ends with 1 only where results disagree or a command fails.
set -euo pipefail
export LC_ALL=C
cd "$(dirname "$0")/../.."
here=tests/DailyAdjust.Benchmarks
sites=100 years=10 rows=500000 only=()
# The lines above that begin with it.
usage() { sed -n '2,7s/^# //p' "$0"; }
while [ $# -gt 0 ]; do
  case $1:${2-} in
    --sites:[1-9]*) sites=$2 ;;
    --years:[125] | --years:10) years=$2 ;;
    --rows:[1-9]*) rows=$2 ;;
    --only:kernels | --only:ingest | --only:course | --only:sites) only+=("$2") ;;
    --help:*) usage; exit 0 ;;
    *) echo "not understood: $*" >&2; usage >&2; exit 2 ;;
  esac
  shift 2
done
for number in "$sites" "$rows"; do
  [[ $number =~ ^[0-9]+$ ]] || { echo "not a whole number: $number" >&2; exit 2; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
: > "$work/table"

# The system's own python3: the packages named above are Debian's.
python=/usr/bin/python3
missing() { echo "$1 is missing: $2 is left out" >&2; }
want() { [ ${#only[@]} -eq 0 ] || [[ " ${only[*]} " == *" $1 "* ]]; }
calc() { awk "BEGIN { printf \"%.${2:-2}f\", $1 }"; }
least() { sort -g | head -n 1; }

# row WHAT MEASURED [TO-REACH CONDITION]: the condition in awk's words. Told at once, since a run takes a while.
row() { printf '%s|%s|%s|%s\n' "$1" "$2" "${3-}" "$([ -z "${4-}" ] || awk "BEGIN { print ($4) ? \"yes\" : \"no\" }")" | tee -a "$work/table" >&2; }

# timed TIMES COMMAND...: the least seconds and the least peak MB of so many runs; @ in the command is the number of the run.
timed() {
  local times=$1 i
  shift
  : > "$work/times"
  for ((i = 1; i <= times; i++)); do
    /usr/bin/time -a -o "$work/times" -f '%e %M' "${@//@/$i}" > "$work/out" 2>&1 || { cat "$work/out" >&2; echo "failed: $*" >&2; return 1; }
  done
  echo "$(awk '{ print $1 }' "$work/times" | least) $(awk '{ printf "%.0f\n", $2 / 1024 }' "$work/times" | least)"
}

build() { "$@" > "$work/log" 2>&1 || { cat "$work/log" >&2; exit 1; }; }
build dotnet build "$here" -c Release
# As docs/operations.md installs it.
build dotnet publish src/DailyAdjust.Service -c Release --self-contained -o "$work/publish" \
  -r "$(dotnet --info | awk '/RID:/ { print $2; exit }' | sed 's/^.*linux.*-/linux-/')"
bench=(dotnet "$here/bin/Release/net10.0/DailyAdjust.Benchmarks.dll")
program="$work/publish/dailyadjust"

# What a loop takes is the least over three rounds in turn, each of many runs.
kernels() {
  local c=() numpy='' round
  if command -v gcc > /dev/null; then
    gcc -O3 -shared -fPIC -o "$work/loops.so" "$here"/Beside/*.c -lm
    c=(--c "$work/loops.so")
  else
    missing gcc 'the same loops in C'
  fi
  "$python" -c 'import numpy' 2> /dev/null && numpy=yes || missing python3-numpy 'reference ET in NumPy'
  for round in 1 2 3; do
    "${bench[@]}" kernels "$work" "${c[@]}" >> "$work/ns"
    [ -z "$numpy" ] || printf 'eto\tnumpy\t%s\n' "$("$python" "$here/Beside/eto.py" "$work/eto-columns" "$work/eto-ours" 100)" >> "$work/ns"
  done
  local ours other what
  ns() { awk -F '\t' -v what="$1" -v whose="$2" '$1 == what && $2 == whose { print $3 }' "$work/ns" | least; }
  ours=$(ns eto dailyadjust)
  for other in numpy c; do
    [ -n "$(ns eto $other)" ] || continue
    local ratio aim=1.2 name=NumPy
    [ $other = numpy ] || { aim=0.9 name=C; }
    ratio=$(calc "$(ns eto $other) / $ours")
    row "daily reference ET, one core, beside $name" "$ratio x ($(calc "$ours" 0) ns a day; $name $(calc "$(ns eto $other)" 0) ns)" "$aim x" "$ratio >= $aim"
  done
  for what in zone-day zone-day-rain; do
    ours=$(ns $what dailyadjust)
    local days='zone days of a year' million
    [ $what = zone-day ] || days='zone days with rain, all of them'
    million=$(calc "1000 / $ours" 1)
    row "$days, one core" "$million million a second" '20 million' "$million >= 20"
    [ -z "$(ns $what c)" ] || row "  beside C" "$(calc "$(ns $what c) / $ours") x (C: $(calc "1000 / $(ns $what c)" 1) million)"
  done
}

ingest() {
  local ours='' pandas='' shell='' round
  "${bench[@]}" weather "$work/yard-big.csv" --rows "$rows"
  for round in 1 2 3; do
    "${bench[@]}" course "$work/big$round" --through 2026-01-02
    rm -r "$work/big$round/sites/course-0001/inbox"
    ours+=$(timed 1 "$program" ingest "$work/yard-big.csv" --site course-0001 --home "$work/big$round")$'\n'
    "$python" -c 'import pandas' 2> /dev/null && pandas+=$(timed 1 "$python" "$here/Beside/ingest.py" "$work/yard-big.csv" "$work/pandas$round.db")$'\n'
    command -v sqlite3 > /dev/null && shell+=$(timed 1 sqlite3 "$work/import$round.db" 'pragma journal_mode = wal' 'pragma synchronous = full' '.mode csv' ".import $work/yard-big.csv readings")$'\n'
  done
  rm -r "$work"/big? "$work"/*.db* "$work/yard-big.csv"
  local seconds other
  seconds=$(printf '%s' "$ours" | awk '{ print $1 }' | least)
  if [ -n "$pandas" ]; then
    other=$(printf '%s' "$pandas" | awk '{ print $1 }' | least)
    row "ingest of $rows rows beside pandas" "$(calc "$other / $seconds") x ($seconds s; pandas $other s)" '3 x' "$other / $seconds >= 3"
  else
    missing python3-pandas 'ingest with pandas'
  fi
  if [ -n "$shell" ]; then
    other=$(printf '%s' "$shell" | awk '{ print $1 }' | least)
    row "ingest of $rows rows beside .import" "$(calc "$seconds / $other") x its time ($seconds s; .import $other s)" 'at most 2.5 x' "$seconds / $other <= 2.5"
  else
    missing sqlite3 'ingest with .import'
  fi
}

# whole WHAT TIMES SECONDS MB COMMAND...: a whole process against what it may take.
whole() {
  local what=$1 times=$2 most=$3 mb=$4 took
  shift 4
  took=$(timed "$times" "$@")
  row "$what" "${took% *} s, ${took#* } MB" "$most s${mb:+, $mb MB}" "${took% *} <= $most && ${took#* } <= ${mb:-1e9}"
}

# beside WHAT COLUMN FIRST LAST FILE: how many times that of the first the last is.
beside() { awk -F '\t' -v what="$1" -v column="$2" -v of="$3" -v last="$4" '$1 == what && $2 == of { first = $column } $1 == what && $2 == last { printf "%.2f", $column / first }' "$5"; }

# series WHAT FILE: nanoseconds of every size, and the sizes.
series() { awk -F '\t' -v what="$1" '$1 == what { ns = ns (ns ? ", " : "") $3; of = of (of ? ", " : "") $2 } END { print ns " ns; " of }' "$2"; }

# grew LABEL WHAT FIRST LAST FILE OF: what the last of the sizes costs beside the first, a unit.
grew() {
  local time memory
  time=$(beside "$2" 3 "$3" "$4" "$5")
  memory=$(beside "$2" 4 "$3" "$4" "$5")
  row "$1" "$time x the time, $memory x the memory ($(series "$2" "$5") $6)" '1.25 x, 1.10 x' "$time <= 1.25 && $memory <= 1.10"
}

# growth HOME WARM: what the last of the years costs beside the first, and what the ledger and a morning write. Growth may be 1.25 x in time, 1.10 x in what is allocated.
growth() {
  "${bench[@]}" growth "$1" 2026-07-16 > "$work/growth"
  local what said last
  last=$(awk -F '\t' '{ print $2 }' "$work/growth" | sort -n | tail -1)
  ms() { awk -F '\t' -v what="$1" '$1 == what && $2 == 1 { printf "%.1f", $3 / 1e6 }' "$work/growth"; }
  row 'its advice, warm, after a year of answered sheets' "$(ms advice) ms" '20 ms' "$(ms advice) <= 20"
  row '  of that until every program is decided about' "$(ms decisions) ms"
  row '  all of it where five mornings are unanswered: everything is reckoned twice' "$2 ms"
  for what in zone-day advice; do
    [ "$what" = advice ] && said="a morning's advice after $last years of answered sheets" || said="a zone day of $last years"
    grew "$said, beside 1 year" "$what" 1 "$last" "$work/growth" years
  done
  local ledger="$1/sites/course-0001/ledger.db" bytes
  if bytes=$(sqlite3 -readonly "$ledger" "SELECT sum(pgsize) FROM dbstat WHERE name NOT IN ('report_file', 'advice')" 2> /dev/null); then
    bytes=$(calc "$bytes / (1500.0 * $(sqlite3 -readonly "$ledger" 'SELECT count(*) FROM weather_day'))")
    row 'ledger without what was issued' "$bytes bytes a zone day" '8' "$bytes <= 8"
    row '  one sheet as it was issued' "$(sqlite3 -readonly "$ledger" 'SELECT (SELECT sum(length(body)) FROM report_file) / (SELECT count(*) FROM advice) / 1500 + (SELECT avg(length(lines)) FROM advice) / 1500' | cut -d. -f1) bytes a zone day"
  else
    missing 'sqlite3 with dbstat' 'what the ledger holds'
  fi
  if command -v strace > /dev/null; then
    strace -f -e trace=fsync,fdatasync -o "$work/synced" "$program" morning --date 2026-07-16 --no-mail --home "$1" > "$work/log" 2>&1 || { cat "$work/log" >&2; return 1; }
    row 'fsyncs of a morning' "$(grep -cE 'f(data)?sync\(' "$work/synced")"
  else
    missing strace 'how often a morning waits for the disk'
  fi
}

# A large course: ten years taken and reckoned once, and then the mornings that follow.
course() {
  local home="$work/course" warm
  whole '--help' 7 0.15 '' "$program" --help
  "${bench[@]}" course "$home" --stations 1500 --controllers 40 --from "$((2026 - years))-07-16" --through 2026-07-17
  build "$program" morning --date 2026-07-10 --no-mail --home "$home"
  whole 'one morning, 1,500 stations, 40 controllers, cold' 5 1.2 250 "$program" morning --date 2026-07-1@ --no-mail --home "$home"
  row '`check` of it' "$(timed 3 "$program" check --home "$home" | sed 's/ / s, /') MB"
  warm=$("${bench[@]}" morning "$home" 2026-07-16 | sed -n 's/.*: advice of .*least \([0-9.]*\) ms.*/\1/p')
  growth "$home" "$warm"
  whole "balance of 1,500 stations, one day after $years years" 3 2 300 "$program" balance --date 2026-07-14 --format csv --home "$home"
  whole "balance of 1,500 stations, all days of $years years" 1 2 300 "$program" balance --format csv --home "$home"
  whole "replay of 1,500 stations x $years years" 1 10 500 "$program" replay --home "$home"
  rm -r "$home"
}

many() {
  local home="$work/many" most all few
  "${bench[@]}" course "$home" --sites "$sites" --stations 300 --through 2026-07-17
  build "$program" morning --date 2026-07-15 --no-mail --home "$home"
  most=$(calc "60 * $sites / 1000" 1)
  whole "$sites sites x 300 stations, one morning each" 1 "$most" 1000 "$program" morning --date 2026-07-16 --no-mail --home "$home"
  "${bench[@]}" sites "$home" 2026-07-16 > "$work/of-sites"
  all=$(awk -F '\t' '{ print $2 }' "$work/of-sites" | sort -n | tail -1)
  few=$((all > 10 ? 10 : 1))
  grew "  a zone day of a morning, $all sites beside $few" site-zone-day "$few" "$all" "$work/of-sites" sites
  rm -r "$home"
  both
}

# The same mornings on one processor and on two, each on a copy of the same home.
both() {
  local home="$work/both" paired=$((sites < 100 ? sites : 100)) one='' two='' round
  command -v taskset > /dev/null || { missing util-linux 'two processors beside one'; return; }
  "${bench[@]}" course "$home" --sites "$paired" --stations 300 --through 2026-07-17
  build "$program" morning --date 2026-07-15 --no-mail --home "$home"
  for round in 1 2; do
    cp -r "$home" "$home-one"
    cp -r "$home" "$home-two"
    one+=$(timed 1 taskset -c 0 "$program" morning --date 2026-07-16 --no-mail --home "$home-one")$'\n'
    two+=$(timed 1 taskset -c 0,1 "$program" morning --date 2026-07-16 --no-mail --home "$home-two")$'\n'
    rm -r "$home-one" "$home-two"
  done
  one=$(printf '%s' "$one" | awk '{ print $1 }' | least)
  two=$(printf '%s' "$two" | awk '{ print $1 }' | least)
  row "  $paired of them, two processors beside one" "$(calc "$one / $two") x ($one s; $two s)" '1.6 x' "$one / $two >= 1.6"
}

if want kernels; then kernels; fi
if [ -x /usr/bin/time ]; then
  if want ingest; then ingest; fi
  if want course; then course; fi
  if want sites; then many; fi
else
  missing time 'everything that is measured as a whole process'
fi

echo "$(date -u +%F), $(awk -F ': ' '/model name/ { print $2; exit }' /proc/cpuinfo), $(nproc) cores, $(awk '/MemTotal/ { printf "%.0f GB", $2 / 1e6 }' /proc/meminfo), .NET $(dotnet --version), load $(cut -d ' ' -f 1-3 /proc/loadavg) at the end"
{ echo 'what|measured|to reach|reached'; cat "$work/table"; } | awk -F '|' '{ printf "%-74s %-64s %-16s %s\n", $1, $2, $3, $4 }'
