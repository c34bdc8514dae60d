#!/usr/bin/env bash
# Compares, in one run on this machine, the ingest of a 500,000-row weather file (read, checked, durably kept) with
# pandas (read_csv, to_sql) and with the sqlite3 shell's .import of the same file. Three rounds, in turn.
# Needs Debian's python3-pandas and sqlite3. Shared machines are noisy: read the least of each, and the ratios.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rows=${1:-500000}
dotnet publish src/DailyAdjust.Service -c Release -r "$(dotnet --info | awk '/RID:/ { print $2; exit }' | sed 's/^.*linux.*-/linux-/')" \
  --self-contained false -o "$work/publish" > "$work/log" || { cat "$work/log"; exit 1; }

python3 - "$rows" "$work/big.csv" <<'P'
import datetime, math, sys
time = datetime.datetime(2016, 1, 1, 0, 10)
with open(sys.argv[2], 'w') as out:
    out.write('Time,Temp (C),RH (%),Wind (m/s),Solar (W/m2),Rain (mm)\n')
    for i in range(int(sys.argv[1])):
        hour, day = (i / 6) % 24, (i / 144) % 365
        warmth = math.sin((hour - 9) * math.pi / 12)
        season = 0.6 + 0.4 * math.cos(2 * math.pi * (day - 172) / 365)
        air = 12 - 12 * math.cos(2 * math.pi * (day - 15) / 365) + 6 * warmth + 0.3 * math.sin(i * 1.7)
        sun = max(0, 700 * math.sin((hour - 6) * math.pi / 12)) * season
        out.write(f'{time:%Y-%m-%d %H:%M},{air:.2f},{70 - 25 * warmth + 2 * math.sin(i * 0.9):.1f},'
                  f'{2.5 + math.sin(i * 0.37):.2f},{sun:.1f},{0.2 if i % 97 == 0 else 0.0:.1f}\n')
        time += datetime.timedelta(minutes=10)
P
cat > "$work/read_csv.py" <<'P'
import sqlite3, sys
import pandas
frame = pandas.read_csv(sys.argv[1], parse_dates=['Time'])
ledger = sqlite3.connect(sys.argv[2])
frame.to_sql('readings', ledger, index=False)
ledger.commit()
P
cat > "$work/import.sh" <<'P'
sqlite3 "$2" 'pragma journal_mode = wal;' 'pragma synchronous = full;' '.mode csv' ".import $1 readings"
P

# home NAME: the example course of the tests with one 10-minute station and nothing read yet.
home() {
  mkdir -p "$work/$1/sites/big/inbox"
  cp tests/DailyAdjust.Tests/Data/example-site/site/stations.csv "$work/$1/sites/big/"
  awk '/^  stations:/ { while ((getline line < "/dev/stdin") > 0) print line; hidden = 1; next }
       /^  gauges:/ { hidden = 0 } !hidden' tests/DailyAdjust.Tests/Data/example-site/site/site.yaml > "$work/$1/sites/big/site.yaml" <<'P'
  stations:
    - id: yard
      files: "big*.csv"
      format: csv
      interval: 10 min
      wind_height: 2 m
      time: { column: Time, pattern: "yyyy-MM-dd HH:mm", clock: standard, stamp: end }
      columns:
        air_temperature: "Temp (C)"
        relative_humidity: "RH (%)"
        wind_speed: "Wind (m/s)"
        solar_radiation: "Solar (W/m2)"
        rain: "Rain (mm)"
P
}

# run NAME COMMAND...: seconds and peak memory of one process.
run() { python3 - "$@" <<'P'
import resource, subprocess, sys, time
begun = time.monotonic()
result = subprocess.run(sys.argv[2:], stdout=subprocess.DEVNULL, stderr=sys.stderr)
print(f"  {sys.argv[1]:<16}{time.monotonic() - begun:6.2f} s  {resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024:6.0f} MB  exit {result.returncode}")
sys.exit(result.returncode)
P
}

echo "$rows rows, $(($(stat -c %s "$work/big.csv") / 1000000)) MB:"
for round in 1 2 3; do
  home "home$round"
  run dailyadjust "$work/publish/dailyadjust" ingest "$work/big.csv" --site big --home "$work/home$round"
  run pandas /usr/bin/python3 "$work/read_csv.py" "$work/big.csv" "$work/pandas$round.db"
  run 'sqlite3 .import' bash "$work/import.sh" "$work/big.csv" "$work/import$round.db"
done
