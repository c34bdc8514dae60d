#!/usr/bin/env python3
"""Writes the invented weather of Quillback Bend into inbox/.

    python3 make-weather.py [DIRECTORY]

Nothing here was measured anywhere. The season's story (spells, rains, what went wrong with the instruments) stands in
the tables below; the sun comes from geometry; the rest is noise from a small generator of our own, so that the bytes
do not depend on the Python version. Standard library only. Same script, same bytes.

Files (all on the course's own clock, which is on summer time for the whole season):
    course-YYYY-MM.csv   hourly, the weather station beside the maintenance shop; a row's time is the END of its hour
    range-rain.csv       hourly, a rain logger at the practice range; same stamp
    county-daily.csv     daily, a simple station 20 km away: highest, lowest, rain
"""
import csv
import math
import os
import sys
from datetime import date, datetime, timedelta
from functools import lru_cache

LATITUDE, LONGITUDE, ELEVATION_M = 40.37, -84.02, 308.0
UTC_OFFSET_H = -4.0                       # summer time from before the first row to after the last
FIRST, LAST_STAMP = date(2026, 4, 1), datetime(2026, 7, 16, 5)
SEED = 20260401

# Spells: first date, last date, warmer by degrees C, cloud cover from, to, dew point below the lowest temperature by degrees C.
SPELLS = [
    (date(2026, 5, 26), date(2026, 6, 13), 2.0, 0.05, 0.40, 2.8),    # the dry spell: 19 days, one trace of rain
    (date(2026, 6, 20), date(2026, 6, 28), -1.8, 0.70, 0.98, 0.2),   # the wet spell: nine days, rain on eight
    (date(2026, 6, 30), date(2026, 7, 14), 0.6, 0.12, 0.62, 0.6),    # high summer
    (date(2026, 7, 15), date(2026, 7, 15), 1.0, 0.25, 0.50, 0.3),    # sultry, before the storm
]
ORDINARY = (0.0, 0.15, 0.85, 0.8)

# Rains: date, hour in which it begins, hours, inches at the course station, inches at the range (None: nearly the same).
RAINS = [
    ("04-02", 14, 6, 0.42, None), ("04-05", 3, 5, 0.31, None), ("04-09", 18, 4, 0.25, None), ("04-12", 8, 8, 0.55, None),
    ("04-16", 20, 5, 0.38, None), ("04-19", 2, 7, 0.46, None), ("04-24", 15, 3, 0.22, None), ("04-27", 22, 6, 0.61, None),
    ("05-01", 10, 5, 0.28, None), ("05-04", 19, 3, 0.52, 0.40), ("05-08", 5, 6, 0.35, None), ("05-12", 16, 4, 0.18, None),
    ("05-15", 21, 5, 0.74, 0.69), ("05-19", 11, 7, 0.48, None), ("05-23", 17, 2, 0.33, 0.21), ("05-25", 4, 3, 0.12, None),
    ("06-05", 16, 1, 0.02, 0.00),
    ("06-14", 17, 2, 0.34, 0.51), ("06-17", 3, 4, 0.21, None),
    ("06-20", 9, 8, 0.66, None), ("06-21", 22, 5, 0.48, None), ("06-22", 14, 6, 0.71, None), ("06-23", 18, 3, 1.62, 1.38),
    ("06-24", 16, 4, 0.38, None), ("06-25", 7, 6, 0.55, None), ("06-26", 11, 3, 0.24, None), ("06-28", 19, 4, 0.62, None),
    ("07-01", 2, 3, 0.18, None), ("07-05", 20, 2, 0.36, 0.24), ("07-09", 16, 1, 0.09, 0.05), ("07-11", 4, 2, 0.14, None),
    ("07-15", 17, 3, 1.06, 0.13),         # a thunderstorm that missed the range
]

# What went wrong with the instruments; times are stamps (end of the hour).
OUTAGE = (datetime(2026, 6, 24, 15), datetime(2026, 6, 26, 15))      # lightning took the station's supply
SHORT_GAP = (datetime(2026, 5, 18, 11), datetime(2026, 5, 18, 12))   # cleaned, and the cable not plugged back at once
RANGE_DEAD = (datetime(2026, 6, 26, 1), datetime(2026, 6, 29, 13))   # the logger's battery
COUNTY_ABSENT = {date(2026, 6, 25), date(2026, 5, 10)}
MISSING = "---"
MARKED = {                                                           # single cells that hold the missing mark
    (datetime(2026, 4, 22, 3), "humidity"), (datetime(2026, 4, 22, 4), "humidity"), (datetime(2026, 5, 6, 8), "rain"),
    (datetime(2026, 5, 29, 15), "wind"), (datetime(2026, 6, 10, 13), "sun"), (datetime(2026, 7, 2, 22), "air"),
}
ODD = {(datetime(2026, 6, 2, 14), "air"): "-99.9"}                   # a loose plug: no air was ever that cold, so nobody should believe it


class Noise:
    """Linear congruential generator (Knuth's MMIX constants), 64 bits; the upper half is used."""

    def __init__(self, *keys):
        self.state = SEED
        for key in keys:
            self.state = (self.state ^ (key & 0xFFFFFFFFFFFF)) * 6364136223846793005 % 2 ** 64
            self.uniform()

    def uniform(self, low=0.0, high=1.0):
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) % 2 ** 64
        return low + (high - low) * ((self.state >> 32) / 2.0 ** 32)

    def normal(self):
        """Nearly normal, mean 0, standard deviation 1: twelve uniforms (no logarithm, so no library's last bit)."""
        return sum(self.uniform() for _ in range(12)) - 6.0


def sun(moment):
    """(sine of the sun's elevation, extraterrestrial radiation on the level, W/m2) at a local clock time."""
    day = moment.timetuple().tm_yday
    distance = 1 + 0.033 * math.cos(2 * math.pi * day / 365)
    declination = 0.409 * math.sin(2 * math.pi * day / 365 - 1.39)
    b = 2 * math.pi * (day - 81) / 364
    equation_h = 0.1645 * math.sin(2 * b) - 0.1255 * math.cos(b) - 0.025 * math.sin(b)
    solar_h = moment.hour + moment.minute / 60 - UTC_OFFSET_H + LONGITUDE / 15 + equation_h
    angle = math.pi / 12 * (solar_h - 12)
    latitude = math.radians(LATITUDE)
    sine = math.sin(latitude) * math.sin(declination) + math.cos(latitude) * math.cos(declination) * math.cos(angle)
    return sine, max(0.0, 1367 * distance * sine)


@lru_cache(maxsize=None)
def sunrise_and_sunset(day):
    """Clock hours, to ten minutes: enough for a temperature curve."""
    up = [m for m in range(0, 1440, 10) if sun(datetime(day.year, day.month, day.day, m // 60, m % 60))[0] > 0]
    return up[0] / 60, up[-1] / 60 + 1 / 6


def spell(day):
    for first, last, *rest in SPELLS:
        if first <= day <= last:
            return tuple(rest)
    return ORDINARY


def rain_by_hour():
    """{hour's begin: (course inches, range inches)} in whole hundredths, as a tipping bucket counts."""
    result = {}
    for number, (text, hour, hours, course, at_range) in enumerate(RAINS):
        noise = Noise(1, number)
        month, day = map(int, text.split("-"))
        begin = datetime(2026, month, day, hour)
        shares = [noise.uniform(0.3, 1.0) * (1.8 if k == hours // 2 else 1.0) for k in range(hours)]
        if at_range is None:
            at_range = course * noise.uniform(0.88, 1.10)
        totals = [round(course * 100), round(at_range * 100)]
        for which, total in enumerate(totals):
            left, weight = total, sum(shares)
            for k, share in enumerate(shares):
                tips = left if k == hours - 1 else min(left, int(total * share / weight + 0.5))
                left -= tips
                pair = result.setdefault(begin + timedelta(hours=k), [0, 0])
                pair[which] += tips
    return result


def days():
    """One dictionary per day: lowest, highest, dew point (degrees C), cloud (0-1), wind (mph)."""
    wet = {date(2026, *map(int, r[0].split("-"))) for r in RAINS if r[3] >= 0.1}
    noise, drift, result = Noise(2), 0.0, {}
    day = FIRST - timedelta(days=1)
    while day <= LAST_STAMP.date() + timedelta(days=1):
        warmer, cloud_from, cloud_to, dry_by = spell(day)
        drift = 0.65 * drift + 1.7 * noise.normal()
        cloud = noise.uniform(cloud_from, cloud_to)
        if day in wet and spell(day) == ORDINARY:
            cloud = max(cloud, noise.uniform(0.6, 0.9))
        mean = 11.0 + 12.9 * math.sin(2 * math.pi * (day.timetuple().tm_yday - 110) / 365) + warmer + drift
        swing = (15.0 - 7.5 * cloud) * noise.uniform(0.88, 1.10)
        low = mean - swing / 2
        result[day] = {
            "low": low, "high": mean + swing / 2, "cloud": cloud,
            "dew": low - dry_by + 0.9 * noise.normal(), "wind": noise.uniform(3.0, 7.0),
        }
        day += timedelta(days=1)
    return result


def air(table, moment):
    """Sine from sunrise on, exponential fall after sunset (Parton and Logan's shape), degrees C."""
    def evening(day):
        rise, fall = sunrise_and_sunset(day)
        w = table[day]
        return fall, w["low"] + (w["high"] - w["low"]) * math.sin(math.pi * (fall - rise) / (fall - rise + 4.0))

    day, hour = moment.date(), moment.hour + moment.minute / 60
    rise, fall = sunrise_and_sunset(day)
    w = table[day]
    if rise <= hour <= fall:
        return w["low"] + (w["high"] - w["low"]) * math.sin(math.pi * (hour - rise) / (fall - rise + 4.0))
    before = day if hour > fall else day - timedelta(days=1)
    next_day = before + timedelta(days=1)
    at, warm = evening(before)
    since = hour - at if hour > fall else hour + 24 - at
    night = sunrise_and_sunset(next_day)[0] + 24 - at
    low = table[next_day]["low"]
    share = (math.exp(-2.2 * since / night) - math.exp(-2.2)) / (1 - math.exp(-2.2))
    return low + (warm - low) * share


def dew_point(table, moment):
    """Straight from noon to noon, degrees C."""
    noon = datetime(moment.year, moment.month, moment.day, 12)
    if moment < noon:
        noon -= timedelta(days=1)
    share = (moment - noon) / timedelta(days=1)
    return table[noon.date()]["dew"] * (1 - share) + table[noon.date() + timedelta(days=1)]["dew"] * share


def vapour(temperature):
    """Saturation vapour pressure, kPa (Tetens; FAO Irrigation and Drainage Paper 56, equation 11)."""
    return 0.6108 * math.exp(17.27 * temperature / (temperature + 237.3))


def hours():
    """Every hour from FIRST to LAST_STAMP as (stamp, air F, humidity %, wind mph, sun W/m2, course tips, range tips)."""
    table, rain, shade = days(), rain_by_hour(), 0.0
    begin = datetime(FIRST.year, FIRST.month, FIRST.day)
    while begin < LAST_STAMP:
        w, noise = table[begin.date()], Noise(3, begin.toordinal() * 24 + begin.hour)
        here, at_range = rain.get(begin, (0, 0))
        freshness = max(rain.get(begin - timedelta(hours=k), (0, 0))[0] * 0.65 ** k for k in range(6))
        middle = begin + timedelta(minutes=30)
        shade = 0.7 * shade + 0.12 * noise.normal()
        cloud = 0.97 if here else min(1.0, max(0.0, w["cloud"] + shade))
        top = sum(sun(begin + timedelta(minutes=m))[1] for m in range(5, 60, 10)) / 6
        radiation = (0.75 + 2e-5 * ELEVATION_M) * top * (1 - 0.74 * cloud ** 1.5) * (1 - 0.01 * noise.uniform())
        temperature = air(table, middle) - min(8.0, 0.25 * freshness) + 0.25 * noise.normal()
        dew = dew_point(table, middle) - 0.8 * max(0.0, math.sin(math.pi * (middle.hour - 8) / 16)) + min(1.5, 0.1 * freshness)
        humidity = 100 * vapour(min(dew, temperature)) / vapour(temperature)
        if here:
            humidity = max(humidity, noise.uniform(91, 98))
        daytime = max(0.0, math.sin(math.pi * (middle.hour + 0.5 - 7) / 15)) if 7 <= middle.hour < 22 else 0.0
        wind = w["wind"] * (0.55 + 0.95 * daytime) * noise.uniform(0.75, 1.25) + (0.06 * here if here > 15 else 0.0)
        humidity = min(humidity, noise.uniform(95, 99))     # a sensor in saturated air still wavers
        yield begin + timedelta(hours=1), temperature * 1.8 + 32, humidity, wind, radiation, here, at_range
        begin += timedelta(hours=1)


def write(path, header, rows):
    with open(path, "w", encoding="utf-8", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(header)
        out.writerows(rows)


def main(directory):
    months, logger, county = {}, [], {}
    for stamp, temperature, humidity, wind, radiation, here, at_range in hours():
        cells = {"air": f"{temperature:.1f}", "humidity": f"{humidity:.0f}", "wind": f"{wind:.1f}",
                 "sun": f"{radiation:.0f}", "rain": f"{here / 100:.2f}"}
        for name in cells:
            if (stamp, name) in MARKED:
                cells[name] = MISSING
            cells[name] = ODD.get((stamp, name), cells[name])
        time = stamp.strftime("%m/%d/%Y %H:%M")
        day = (stamp - timedelta(hours=1)).date()
        if not (OUTAGE[0] <= stamp <= OUTAGE[1] or SHORT_GAP[0] <= stamp <= SHORT_GAP[1]):
            months.setdefault(day.strftime("%Y-%m"), []).append([time, *cells.values()])
        if not RANGE_DEAD[0] <= stamp <= RANGE_DEAD[1]:
            logger.append([time, f"{at_range / 100:.2f}"])
        seen = county.setdefault(day, [temperature, temperature, 0])
        county[day] = [max(seen[0], temperature), min(seen[1], temperature), seen[2] + here]

    os.makedirs(directory, exist_ok=True)
    for month, rows in months.items():
        write(os.path.join(directory, f"course-{month}.csv"),
              ["Logged", "Air (°F)", "Humidity (%)", "Wind (mph)", "Sun (W/m²)", "Rain (in)"], rows)
    write(os.path.join(directory, "range-rain.csv"), ["Logged", "Rain (in)"], logger)
    rows = []
    for day, (highest, lowest, tips) in county.items():
        noise = Noise(4, day.toordinal())
        cells = [day.isoformat(), f"{highest + noise.normal():.0f}", f"{lowest + noise.normal():.0f}",
                 f"{int(tips * noise.uniform(0.5, 1.3)) / 100:.2f}"]
        if day < LAST_STAMP.date() and day not in COUNTY_ABSENT:
            rows.append(cells)
    write(os.path.join(directory, "county-daily.csv"), ["Date", "High (°F)", "Low (°F)", "Rain (in)"], rows)


if __name__ == "__main__":
    main(sys.argv[1] if len(sys.argv) > 1 else os.path.join(os.path.dirname(os.path.abspath(__file__)), "inbox"))
