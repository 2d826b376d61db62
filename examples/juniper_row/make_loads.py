#!/usr/bin/python3
"""Writes loads.csv: what the invented Juniper Row library takes and gives off in each hour of a year.

    make_loads.py > loads.csv

No measured weather and no real building: smooth formulas, the same on every machine. For hour n of the year, with
d = n / 24 the time in days since 1 January, h = n mod 24 the hour of the day and phase(x) = 2 pi x:

    outdoor = 8.6 - 10.4 cos(phase((d - 24) / 365))                the year [degC]
                  - 3.4 cos(phase((h - 3) / 24))                   the day
                  + 3.0 sin(phase(d / 5.3)) + 2.2 sin(phase(d / 8.9 + 0.2)) + 1.5 sin(phase(d / 17.1 + 0.5))
                                                                   spells of weather
    sun     = max(0, sin(pi (h - 6) / 12)) (0.55 - 0.40 cos(phase((d + 10) / 365)))
                                                                   of a clear midsummer noon [1]
    open    = 1 from 8 to 20 o'clock, Tuesday to Sunday (1 January is a Friday), else 0
    room    = 21 degC from two hours before opening to closing time, else 17 degC

    need    = 6.6 kW/K (room - outdoor) - 20 kW - open 50 kW - 70 kW sun
                                                                   loss less lamps, people, machines, sun
    heating = need where it is positive, 25 % more in the two hours before opening, at most 220 kW,
              not from 21 May to 15 September
    surplus = 20 kW + open 60 kW + 70 kW sun - 3.6 kW/K (24 - outdoor)
    cooling = surplus where it is positive, at most 130 kW, from May to September, while open
"""
import math

HOURS = 8760


def wave(x):
    return 2 * math.pi * x


def hour(n):
    """Heating and cooling of hour n [kW], at the hour's middle."""
    d = (n + 0.5) / 24
    h = (n % 24) + 0.5
    outdoor = (
        8.6
        - 10.4 * math.cos(wave((d - 24) / 365))
        - 3.4 * math.cos(wave((h - 3) / 24))
        + 3.0 * math.sin(wave(d / 5.3))
        + 2.2 * math.sin(wave(d / 8.9 + 0.2))
        + 1.5 * math.sin(wave(d / 17.1 + 0.5))
    )
    sun = max(0.0, math.sin(math.pi * (h - 6) / 12)) * (0.55 - 0.40 * math.cos(wave((d + 10) / 365)))
    weekday = (n // 24 + 4) % 7  # 0 is Monday
    open_day = weekday != 0
    is_open = open_day and 8 <= h < 20
    warming_up = open_day and 6 <= h < 8
    room = 21 if is_open or warming_up else 17

    need = 6.6 * (room - outdoor) - 20 - 50 * is_open - 70 * sun
    heating_season = d < 140 or d >= 258
    heating = min(220.0, max(0.0, need) * (1.25 if warming_up else 1.0)) if heating_season else 0.0
    surplus = 20 + 60 * is_open + 70 * sun - 3.6 * (24 - outdoor)
    warm_season = 120 <= d < 273
    cooling = min(130.0, max(0.0, surplus)) if is_open and warm_season else 0.0
    return heating, cooling


def main():
    print("# Invented: the Juniper Row library does not exist. Written by make_loads.py, which states the formula.")
    print("heating_kw [kW],cooling_kw [kW]")
    for n in range(HOURS):
        heating, cooling = hour(n)
        print(f"{heating:.2f},{cooling:.2f}")


if __name__ == "__main__":
    main()
