#!/usr/bin/python3
"""Reference solution: fields of bores that share their inlet, and how they share the heat, by segmented finite line sources.

As segmented_line_sources.py, whose line sources and contour this uses, but for the condition that couples the bores. The streams of a bore
exchange nothing with each other, so that the mean of both is the same at all its depths: T_in - Q/(2 W), Q the bore's heat and W its mass flow
times specific heat. So with segments of heat q_i [W/m] and length l_i the wall stands at T_in - q_i R_b - sum of the bore's q_j l_j/(2 W): what
shares the heat among bores is R_b and half the fluid's own rise. Total heat constant from t = 0.

Nothing here comes from the engine. Usage: shared_inlet.py    solves all cases and writes shared_inlet.csv beside itself (some minutes)
Units: m, s, W, K.
"""

import pathlib

import numpy as np
import segmented_line_sources as lines

YEARS = (1, 5, 25)
CASES = (  # name, positions, length, W [W/K]
    ("square of 25 at 5 m with plenty of flow", lines.grid(5, 5, 5), 120, 1e8),
    ("square of 25 at 5 m", lines.grid(5, 5, 5), 120, 840),
    ("6 by 4 at 6 m", lines.grid(6, 4, 6), 90, 1200),
    ("square of 36 at 7 m", lines.grid(6, 6, 7), 120, 1500),
)
ORDER = 14  # of the contour, as there


class SharedInlet(lines.Layout):
    def __init__(self, field, n, heat_rate):
        super().__init__(field, lines.graded_edges, n)
        self.heat_rate = heat_rate

    def solve(self, response, history):
        """Heats per metre and T_in."""
        n, coupled = self.n, np.array(response)
        for c in range(len(self.edges)):
            coupled[c * n:(c + 1) * n, c * n:(c + 1) * n] += self.lengths[c * n:(c + 1) * n] / (2 * self.heat_rate)
        return super().solve(coupled, history)


def outcome(layout, s):
    """Transform at s of T_in and of the heat of one bore of each class over the mean bore's."""
    q, inlet = layout.solve(lines.line_responses(layout, s), np.zeros(len(layout.lengths)))
    heats = (q * layout.lengths).reshape(-1, layout.n).sum(axis=1) * len(layout.field) / layout.total
    return np.append(inlet, heats) / s


def transform(layout):
    """[year][T_in, shares] by the fixed Talbot contour."""
    result = []
    for t in np.array(YEARS) * lines.YEAR:
        r = 2 * ORDER / (5 * t)
        total = 0.5 * np.exp(r * t) * outcome(layout, complex(r)).real
        for angle in np.arange(1, ORDER) * np.pi / ORDER:
            cot = 1 / np.tan(angle)
            s = r * angle * (cot + 1j)
            total += (np.exp(t * s) * outcome(layout, s) * (1 + 1j * (angle + (angle * cot - 1) * cot))).real
        result.append(r / ORDER * total)
    return np.array(result)


HEADER = """\
# What: fields of bores that share their inlet: rise of the inlet (bore "inlet") [K], and the heat of a bore over the mean bore's (bore x:y).
# Ground k = 2 W/(m K), rho c = 2e6 J/(m3 K), homogeneous, surface held at 0; bore radius 0.075 m, tops at 2 m; 0.1 K m/W from wall to fluid, the
#   streams exchange nothing; heat 20 W/m times the length of all bores, constant from t = 0. heat_rate: mass flow times specific heat of a bore.
# Source: finite line sources on segments, Claesson & Javed 2011, ASHRAE Transactions 117(2); Cimmino & Bernier 2014, Int. J. Heat Mass Transfer
#   70, with the bores' own fluid between inlet and wall; shared_inlet.py, which writes this file.
# How: graded_16 and graded_32 segments in each bore, Laplace transform and Talbot contour; value = graded_32.
# Precision: largest |graded_16/graded_32 - 1| {precision:.1e} (inlet), {shares:.1e} (shares). A year is 8760 h.
# Layouts invented.
case,columns,rows,spacing,length,heat_rate,years,bore,value,graded_16
"""


def main():
    rows, worst, worst_share = [], 0, 0
    for name, points, length, heat_rate in CASES:
        field = lines.bores(points, [length] * len(points))
        coarse, fine = (transform(SharedInlet(field, n, heat_rate)) for n in (16, 32))
        layout = SharedInlet(field, 2, heat_rate)
        xs, ys = (sorted({p[i] for p in points}) for i in (0, 1))
        who = ["inlet"] + ["{:g}:{:g}".format(*points[b]) for b in layout.representatives]
        worst = max(worst, np.max(np.abs(coarse[:, 0] / fine[:, 0] - 1)))
        worst_share = max(worst_share, np.max(np.abs(coarse[:, 1:] / fine[:, 1:] - 1)))
        for y, year in enumerate(YEARS):
            for i, bore in enumerate(who):
                rows.append(f"{name},{len(xs)},{len(ys)},{xs[1] - xs[0]:g},{length},{heat_rate:g},{year},{bore},{fine[y, i]:.6f},{coarse[y, i]:.6f}")
        print(name, fine[:, 0], flush=True)
    with open(pathlib.Path(__file__).resolve().parent / "shared_inlet.csv", "w") as file:
        file.write(HEADER.format(precision=worst, shares=worst_share) + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
