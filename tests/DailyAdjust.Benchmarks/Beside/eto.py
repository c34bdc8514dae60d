"""Daily reference ET of many station days in NumPy, whole columns at a time, FAO-56 equations by number.

eto.py COLUMNS OURS RUNS: checks that the results agree with those in OURS, then prints the least nanoseconds per row."""
import sys
import time

import numpy as np

TOLERANCE_MM = 1e-9


def saturation(t):
    return 0.6108 * np.exp(17.27 * t / (t + 237.3))                                                   # 11


def reference_et(latitude, elevation, height, day, tmax, tmin, rhmax, rhmin, wind, rs):
    year, phi = 2 * np.pi / 365 * day, np.radians(latitude)
    declination = 0.409 * np.sin(year - 1.39)                                                         # 24
    sunset = np.arccos(np.clip(-np.tan(phi) * np.tan(declination), -1, 1))                            # 25
    ra = 12 * 60 / np.pi * 0.0820 * (1 + 0.033 * np.cos(year)) * (                                    # 21, 23
        2 * sunset * np.sin(phi) * np.sin(declination) + 2 * np.cos(phi) * np.cos(declination) * np.sin(sunset))
    ra = np.maximum(0, ra)
    u2 = np.where(height == 2, wind, wind * 4.87 / np.log(67.8 * height - 5.42))                      # 47
    most, least, mean = saturation(tmax), saturation(tmin), (tmax + tmin) / 2
    es = (most + least) / 2                                                                           # 12
    ea = (least * (rhmax / 100) + most * (rhmin / 100)) / 2                                           # 17
    slope = 4098 * saturation(mean) / np.square(mean + 237.3)                                         # 13
    gamma = 0.665e-3 * 101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26                             # 7, 8
    clear = (0.75 + 2e-5 * elevation) * ra                                                            # 37
    with np.errstate(divide='ignore', invalid='ignore'):
        clearness = np.where(clear > 0, rs / clear, 0.7)
    cloud = 1.35 * np.clip(clearness, 0.3, 1) - 0.35
    fourth = np.square(np.square(tmax + 273.16)) + np.square(np.square(tmin + 273.16))
    rn = (1 - 0.23) * rs - 4.903e-9 * fourth / 2 * (0.34 - 0.14 * np.sqrt(ea)) * cloud                # 38, 39, 40
    mm = (0.408 * slope * rn + gamma * 900 / (mean + 273) * u2 * (es - ea)) / (slope + gamma * (1 + 0.34 * u2))   # 6
    return np.maximum(0, mm)


columns = np.fromfile(sys.argv[1]).reshape(10, -1)
ours = np.fromfile(sys.argv[2])
apart = np.max(np.abs(reference_et(*columns) - ours))
if not apart <= TOLERANCE_MM:
    sys.exit(f'reference ET: NumPy and DailyAdjust are {apart} mm apart')

least = float('inf')
for _ in range(int(sys.argv[3])):
    begun = time.perf_counter()
    reference_et(*columns)
    least = min(least, time.perf_counter() - begun)
print(least * 1e9 / ours.size)
