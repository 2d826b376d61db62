#!/usr/bin/python3
"""Writes loads.csv: the invented Heron Mill school, hour by hour for one year that begins on a Friday.

    make_loads.py > loads.csv

No measured weather and no real building. For hour n, with d = n / 24 the day and h = n mod 24:

    outdoor   = 9 - 11 cos(2 pi (d - 24) / 365) - 4 cos(2 pi (h - 3) / 24)                       [degC]
    heating   = 2.4 kW/K (17 - outdoor) where positive, half as much outside 6 to 18 o'clock and at weekends
    hot_water = 6 kW from 7 to 9 and from 11 to 13 o'clock on weekdays
    cooling   = 4.5 kW/K (outdoor - 17) where positive, from 8 to 17 o'clock on weekdays
"""
import math

print("# Invented: the Heron Mill school does not exist. Written by make_loads.py, which states the formula.")
print("heating_kw [kW],hot_water_kw [kW],cooling_kw [kW]")
for n in range(8760):
    d, h = n / 24, n % 24
    outdoor = 9 - 11 * math.cos(2 * math.pi * (d - 24) / 365) - 4 * math.cos(2 * math.pi * (h - 3) / 24)
    weekday = (n // 24 + 4) % 7 < 5
    heating = 2.4 * max(0.0, 17 - outdoor) * (1 if weekday and 6 <= h < 18 else 0.5)
    hot_water = 6 if weekday and (7 <= h < 9 or 11 <= h < 13) else 0
    cooling = 4.5 * max(0.0, outdoor - 17) if weekday and 8 <= h < 17 else 0.0
    print(f"{heating:.1f},{hot_water},{cooling:.1f}")
