#!/usr/bin/python3
"""Reference solution: twenty years of a field that draws more heat in winter than it gives back in summer.

25 bores that share their inlet as in shared_inlet.py, at constant flow, so that the inlet is a superposition of its answers to steps of the
field's heat: those by the contour at 60 times, between them a cubic spline in the logarithm of time.

Nothing here comes from the engine. Usage: yearly_imbalance.py    writes yearly_imbalance.csv beside itself
Units: m, s, W, K.
"""

import pathlib

import numpy as np
import segmented_line_sources as lines
import shared_inlet
from scipy.interpolate import CubicSpline

MONTH, YEARS = 730 * 3600.0, 20
MONTHS = [round(-8 - 22 * np.cos(2 * np.pi * m / 12), 3) for m in range(12)]  # [W/m], from January
BEFORE = 1800.0  # read so long before a month's end [s]: the middle of its last hour


def steps(layout, times):
    """T_in at each time after the field's heat stepped to 1 W/m."""
    shared_inlet.YEARS = tuple(np.array(times) / lines.YEAR)
    return shared_inlet.transform(layout)[:, 0] / lines.HEAT


def main():
    layout = shared_inlet.SharedInlet(lines.bores(lines.grid(5, 5, 6)), 32, 1000)
    knots = np.geomspace(0.9 * MONTH, 12 * YEARS * MONTH, 60)
    answer = CubicSpline(np.log(knots), steps(layout, knots))
    between = np.sqrt(knots[1:] * knots[:-1])[::7]
    spline = np.max(np.abs(answer(np.log(between)) / steps(layout, between) - 1))
    heats = np.array(MONTHS * YEARS)
    change = np.diff(heats, prepend=0)
    with open(pathlib.Path(__file__).resolve().parent / "yearly_imbalance.csv", "w") as file:
        file.write(f"""\
# What: inlet [K] of 5 x 5 bores at 6 m, 120 m long, tops at 2 m, that share it, half an hour before the end of months of 730 h.
# Heat of the field: per_metre [W/m] times all its length through each month; the same twelve every year. Rise above the undisturbed ground.
# Ground k = 2 W/(m K), rho c = 2e6 J/(m3 K), surface held at 0; bore radius 0.075 m; 0.1 K m/W from wall to fluid, streams that exchange
#   nothing; 1000 W/K through every bore.
# Source: finite line sources on segments, Claesson & Javed 2011, ASHRAE Transactions 117(2); Duhamel's superposition; yearly_imbalance.py, which
#   writes this file.
# Precision: the spline {spline:.1e} of a step's answer; 32 segments some 2e-4. Invented.
year,month,per_metre,inlet
""")
        for n in range(1, len(heats) + 1):
            ages = (n - np.arange(n)) * MONTH - BEFORE
            inlet = change[:n] @ answer(np.log(ages))
            file.write(f"{(n - 1) // 12 + 1},{(n - 1) % 12 + 1},{heats[n - 1]},{inlet:.5f}\n")


if __name__ == "__main__":
    main()
