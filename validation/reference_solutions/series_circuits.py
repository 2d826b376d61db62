#!/usr/bin/python3
"""Reference solution: circuits of several bores one after the other, which share their inlet.

As shared_inlet.py, but what leaves a bore of a circuit enters the next: the wall of segment i of bore b stands at
T_in - (heat of the circuit's bores before b)/W - Q_b/(2 W) - q_i R_b. Total heat constant from t = 0.

Nothing here comes from the engine. Usage: series_circuits.py    writes series_circuits.csv beside itself
Units: m, s, W, K.
"""

import pathlib

import numpy as np
import segmented_line_sources as lines
import shared_inlet

CASES = (  # name, positions in the order of flow, bores on a circuit, length, W [W/K]
    ("2 circuits of 2 in a row at 5 m", lines.grid(4, 1, 5), 2, 80, 1000),
    ("2 circuits of 3 at 6 m", lines.grid(3, 2, 6), 3, 60, 1200),
    ("4 circuits of 2 at 6 m", lines.grid(4, 2, 6), 2, 90, 800),
)


class Series(lines.Layout):
    def __init__(self, field, n, in_series, heat_rate):
        super().__init__(field, lines.graded_edges, n)
        self.in_series, self.heat_rate = in_series, heat_rate

    def _classes(self):
        return np.arange(len(self.field))

    def solve(self, response, history):
        n, coupled = self.n, np.array(response)
        for b in range(len(self.field)):
            for before in range(b - b % self.in_series, b + 1):
                part = 0.5 if before == b else 1
                coupled[b * n:(b + 1) * n, before * n:(before + 1) * n] += part * self.lengths[before * n:(before + 1) * n] / self.heat_rate
        return super().solve(coupled, history)


def main():
    rows, worst = [], 0
    for name, points, in_series, length, heat_rate in CASES:
        field = lines.bores(points, [length] * len(points))
        coarse, fine = (shared_inlet.transform(Series(field, n, in_series, heat_rate))[:, 0] for n in (16, 32))
        worst = max(worst, np.max(np.abs(coarse / fine - 1)))
        text = ";".join(f"{x}:{y}" for x, y in points)
        for year, inlet in zip(shared_inlet.YEARS, fine):
            rows.append(f"{name},{text},{in_series},{length},{heat_rate},{year},{inlet:.6f}")
        print(name, fine, flush=True)
    with open(pathlib.Path(__file__).resolve().parent / "series_circuits.csv", "w") as file:
        file.write(f"""\
# What: rise of the inlet [K] of circuits of in_series bores, in the order of their positions x:y, that share it.
# Ground k = 2 W/(m K), rho c = 2e6 J/(m3 K), homogeneous, surface held at 0; bore radius 0.075 m, tops at 2 m; 0.1 K m/W from wall to fluid, the
#   streams exchange nothing; heat 20 W/m times the length of all bores, constant from t = 0. heat_rate: mass flow times specific heat of a circuit.
# Source: finite line sources on segments, Claesson & Javed 2011, ASHRAE Transactions 117(2); series_circuits.py, which writes this file.
# How: graded_16 and graded_32 segments, Laplace transform and Talbot contour; value = graded_32.
# Precision: largest |graded_16/graded_32 - 1| {worst:.1e}. A year is 8760 h. Invented.
case,positions,in_series,length,heat_rate,years,inlet
""" + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
