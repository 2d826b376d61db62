#!/usr/bin/python3
"""Reference solution: one deep bore in ground that is warmer below, from the hour in which its fluid begins to flow.

Segmented finite line sources and the condition of shared_inlet.py: segments of heat q_i stand at T_0(z_i) plus the rise by all, which is
T_in - q_i R_b - Q/(2 W). T_0 = gradient times depth, the surface held at 0. So even without load the fluid takes heat below and gives it off
above. Total heat Q constant from t = 0.

Nothing here comes from the engine. Usage: deep_bore.py    solves all cases and writes deep_bore.csv beside itself
Units: m, s, W, K.
"""

import pathlib

import numpy as np
import segmented_line_sources as lines
import shared_inlet

DAYS = (30, 365, 3650, 9125)
CASES = (  # length, heat of the bore per metre [W/m], W [W/K], gradient [K/m]
    (300, 0, 3000, 0.03), (300, -25, 3000, 0.03), (300, -25, 5000, 0.03), (200, -30, 2000, 0.045),
)


def outcome(layout, s, gradient):
    """Transforms at s of T_in and of the heat of the lower half [W]."""
    edges = layout.edges[0]
    undisturbed = gradient * (edges[1:] + edges[:-1]) / 2
    q, inlet = layout.solve(lines.line_responses(layout, s), undisturbed)
    middle = (edges[0] + edges[-1]) / 2
    below = np.clip(edges[1:] - np.maximum(edges[:-1], middle), 0, None)
    return np.array([inlet, q @ below]) / s


def transform(layout, gradient):
    result = []
    for t in np.array(DAYS) * 86400.0:
        r = 2 * shared_inlet.ORDER / (5 * t)
        total = 0.5 * np.exp(r * t) * outcome(layout, complex(r), gradient).real
        for angle in np.arange(1, shared_inlet.ORDER) * np.pi / shared_inlet.ORDER:
            cot = 1 / np.tan(angle)
            s = r * angle * (cot + 1j)
            total += (np.exp(t * s) * outcome(layout, s, gradient) * (1 + 1j * (angle + (angle * cot - 1) * cot))).real
        result.append(r / shared_inlet.ORDER * total)
    return np.array(result)


HEADER = """\
# What: one bore in ground of T_0 = gradient times depth [K above the surface's]: inlet [K], and heat that its lower half gives off [W].
# Ground k = 2 W/(m K), rho c = 2e6 J/(m3 K), homogeneous; bore radius 0.075 m, top at 2 m; 0.1 K m/W from wall to fluid, the streams exchange
#   nothing; per_metre times the length [W] constant from t = 0. heat_rate: mass flow times specific heat.
# Source: finite line sources on segments, Claesson & Javed 2011, ASHRAE Transactions 117(2); deep_bore.py, which writes this file.
# How: graded_32 and graded_64 segments, Laplace transform and Talbot contour; value = graded_64.
# Precision: largest |graded_32 - graded_64| {0:.1e} K, {1:.1e} W. Invented.
length,per_metre,heat_rate,gradient,days,inlet,lower
"""


def main():
    rows, worst = [], np.zeros(2)
    for length, per_metre, heat_rate, gradient in CASES:
        outcomes = []
        for n in (32, 64):
            layout = shared_inlet.SharedInlet(lines.bores([(0, 0)], [length]), n, heat_rate)
            layout.total = per_metre * length
            outcomes.append(transform(layout, gradient))
        worst = np.maximum(worst, np.abs(outcomes[0] - outcomes[1]).max(axis=0))
        for day, (inlet, lower) in zip(DAYS, outcomes[1]):
            rows.append(f"{length},{per_metre},{heat_rate},{gradient},{day},{inlet:.5f},{lower:.3f}")
            print(rows[-1], flush=True)
    with open(pathlib.Path(__file__).resolve().parent / "deep_bore.csv", "w") as file:
        file.write(HEADER.format(*worst) + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
