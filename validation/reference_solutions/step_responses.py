#!/usr/bin/python3
"""Reference solution: how the common fluid temperature of a field answers a step of heat, from half a minute to decades.

Segments of uniform heat as in segmented_line_sources.py, whose kernels, layouts and Talbot contour are used; but the bores have what lies between
fluid and wall in full: fluid of one temperature in both legs, a grout node with its capacity, a wall that answers at first as that of an infinite
cylinder (Carslaw & Jaeger 1959) and not of a line. In Laplace's variable s, q the heat per metre through the wall of a segment:
  wall     T_w = sum of the line sources + q (Z_cylinder - Z_line)(s), Z at the bore's radius, both without ends: the difference lives hours only
  node     (T_f - T_n)/R_in = C_grout s T_n + q,  q = (T_n - T_w)/R_out
  field    sum over segments of length [2 C_leg s T_f + (T_f - T_n)/R_in] = given heat / s

Nothing here comes from the engine. Usage: step_responses.py [file] writes the table (some minutes). Units: m, s, W, K.
"""

import pathlib
import sys

import numpy as np
from scipy.special import kve

import segmented_line_sources as lines

R_IN, R_OUT = 0.06, 0.04  # fluid to grout node, node to wall [K m/W]
C_GROUT, C_LEG = 4.5e4, 3900.0  # per metre of bore, of one leg [J/(m K)]
SEGMENTS = 32
SPACING = 0.2  # in ln t
FIRST, LAST = 30.0, 20 * lines.YEAR

CASES = {"one bore": lines.bores([(0, 0)]), "3 by 2 at 6 m": lines.bores(lines.grid(3, 2, 6))}


def cylinder_less_line(s):
    x = lines.R_BORE * np.sqrt(s / lines.DIFFUSIVITY)
    return (kve(0, x) / (x * kve(1, x)) - kve(0, x) * np.exp(-x)) / (2 * np.pi * lines.K)


def transformed_step(layout, s):
    """Transform of T_f for 1 W/m of the field's bores from t = 0."""
    m = len(layout.lengths)
    metres = layout.counts * layout.lengths
    slow = 1 + R_IN * C_GROUT * s
    matrix = np.zeros((m + 1, m + 1), dtype=complex)
    matrix[:m, :m] = lines.line_responses(layout, s) + (cylinder_less_line(s) + R_OUT + R_IN / slow) * np.eye(m)
    matrix[:m, m] = -1 / slow
    matrix[m, :m] = metres / slow
    matrix[m, m] = metres.sum() * s * (2 * C_LEG + C_GROUT / slow)
    return np.linalg.solve(matrix, np.append(np.zeros(m), metres.sum() / s))[m]


def turned_back(transformed, t, order=14):
    """Fixed Talbot contour (Abate & Valko 2004)."""
    r = 2 * order / (5 * t)
    total = 0.5 * np.exp(r * t) * transformed(complex(r)).real
    for angle in np.arange(1, order) * np.pi / order:
        cot = 1 / np.tan(angle)
        s = r * angle * (cot + 1j)
        total += (np.exp(t * s) * transformed(s) * (1 + 1j * (angle + (angle * cot - 1) * cot))).real
    return r / order * total


HEADER = """\
# What: rise of the common fluid temperature over the undisturbed ground per W/m of all bores' metres, heat constant from t = 0 (column response).
# Ground k = 2 W/(m K), rho c = 2e6 J/(m3 K), homogeneous, surface held at 0; bores of radius 0.075 m from 2 m to 122 m below the surface.
#   One bore, and 3 by 2 bores at 6 m; invented. From fluid (3900 J/(m K) a leg) over 0.06 K m/W to the grout's node (45000 J/(m K)), over
#   0.04 K m/W to the wall.
# Source: finite line sources on segments, Claesson & Javed 2011, Cimmino & Bernier 2014; early times Carslaw & Jaeger 1959 (infinite cylinder);
#   inversion Abate & Valko 2004; written anew in step_responses.py, which writes this file.
# How: 32 segments a bore, shrinking towards its ends; Talbot contour of order 14; time log-spaced.
# Precision: order 18 instead of 14 differs by at most {order:.1e}, 48 segments instead of 32 by at most {segments:.1e} of the response.
# Units: s, K m/W.
"""


def write(path):
    times = np.exp(np.arange(np.log(FIRST), np.log(LAST) + 3 * SPACING, SPACING))
    rows, by_order, by_segments = [], 0.0, 0.0
    for name, field in CASES.items():
        layout = lines.Layout(field, lines.graded_edges, SEGMENTS)
        finer = lines.Layout(field, lines.graded_edges, 48)
        for i, t in enumerate(times):
            value = turned_back(lambda s: transformed_step(layout, s), t)
            rows.append((name, t, value))
            if i % 12 == 0:
                by_order = max(by_order, abs(turned_back(lambda s: transformed_step(layout, s), t, 18) / value - 1))
                by_segments = max(by_segments, abs(turned_back(lambda s: transformed_step(finer, s), t) / value - 1))
        print(name, f"{value:.6f} K m/W after {t:.3e} s", flush=True)
    with open(path, "w", newline="") as file:
        file.write(HEADER.format(order=by_order, segments=by_segments))
        file.write("case,time,response\n")
        for name, t, value in rows:
            file.write(f"{name},{t:.10e},{value:.10f}\n")


if __name__ == "__main__":
    write(sys.argv[1] if sys.argv[1:] else pathlib.Path(__file__).resolve().parent / "step_responses.csv")
