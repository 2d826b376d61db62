#!/usr/bin/python3
"""Reference solution: heat stepped on in the inner stream of a coaxial loop while the annulus stays at 0: film, the inner pipe's wall, film.

Nothing here comes from the engine. Per metre: C dT/dt = 1 - (T - T_1)/(R_film + half a ring), conduction through the wall's rings of equal ln r,
the last one joined to 0 by half a ring and the outer film. Integrated exactly by the eigenvectors of the symmetric system (scipy.linalg.eigh).
Second method: the same in Laplace's variable with modified Bessel functions, turned back by the fixed Talbot contour (Abate & Valko 2004).

Usage: coaxial_wall.py        writes coaxial_wall.csv beside this script
"""

import csv
import pathlib

import numpy as np
from scipy.linalg import eigh
from scipy.special import iv, kv

HERE = pathlib.Path(__file__).resolve().parent
TIMES = (60, 300, 600, 1200, 1800, 3600, 7200, 10800, 14400, 36000, 86400)
# Invented. Pipe's outer and inner radius, conductivity, rho c; film inside, film outside [K m/W].
CASES = {
    "turbulent": (0.0315, 0.0257, 0.42, 2.1e6, 0.004, 0.006),
    "laminar": (0.025, 0.0204, 0.42, 2.1e6, 0.13, 0.10),
    "insulated": (0.025, 0.0162, 0.05, 1.2e6, 0.004, 0.006),
    "steel": (0.030, 0.0265, 45.0, 3.6e6, 0.004, 0.006),
}
FLUID = 4.15e6


def by_rings(case, rings):
    outer, inner, k, capacity, film_in, film_out = case
    faces = inner * (outer / inner) ** (np.arange(rings + 1) / rings)
    one = np.log(outer / inner) / rings / (2 * np.pi * k)
    c = np.concatenate([[FLUID * np.pi * inner**2], capacity * np.pi * np.diff(faces**2)])
    g = 1 / np.concatenate([[film_in + one / 2], np.full(rings - 1, one), [film_out + one / 2]])
    matrix = np.diag(g + np.concatenate([[0], g[:-1]])) - np.diag(g[:-1], 1) - np.diag(g[:-1], -1)
    root = 1 / np.sqrt(c)
    rates, vectors = eigh(matrix * np.outer(root, root))
    weight = (root[0] * vectors[0]) ** 2 / rates
    return np.array([weight @ -np.expm1(-rates * t) for t in TIMES])


def by_transform(case):
    outer, inner, k, capacity, film_in, film_out = case

    def transform(s):
        q = np.sqrt(s * capacity / k)
        # From the annulus at 0 inwards for unit heat: temperature film_out, then the wall, then the film inside.
        flux = 1 / (2 * np.pi * k * q * outer)
        a = (film_out * kv(1, q * outer) - flux * kv(0, q * outer)) * q * outer
        b = (film_out * iv(1, q * outer) + flux * iv(0, q * outer)) * q * outer
        temperature = a * iv(0, q * inner) + b * kv(0, q * inner)
        heat = 2 * np.pi * k * q * inner * (b * kv(1, q * inner) - a * iv(1, q * inner))
        fluid = temperature + film_in * heat
        return fluid / s / (s * FLUID * np.pi * inner**2 * fluid + heat)

    def talbot(t, nodes=24):
        theta = np.arange(1, nodes) * np.pi / nodes
        r = 2 * nodes / (5 * t)
        cot = 1 / np.tan(theta)
        s = r * theta * (cot + 1j)
        weight = np.exp(t * s) * (1 + 1j * (theta + (theta * cot - 1) * cot))
        return r / nodes * (np.exp(r * t) * transform(complex(r)).real / 2 + sum((w * transform(p)).real for w, p in zip(weight, s)))

    return np.array([talbot(t) for t in TIMES])


HEAD = """# What: temperature of a coaxial loop's inner stream above its annulus per heat stepped on at t = 0 [K m/W], annulus at 0, wall of the inner pipe
#   in between storing heat. Pipes invented. rho c of the fluid 4.15e6 J/(m3 K).
# Source: conduction through a ring between two films: coaxial_wall.py, which writes this file.
"""


def main():
    rows, worst = [], 0.0
    for name, case in CASES.items():
        fine, other = by_rings(case, 400), by_transform(case)
        worst = max(worst, np.abs(fine / other - 1).max())
        rows += [[name, *case, time, f"{value:.9g}"] for time, value in zip(TIMES, fine)]
    with open(HERE / "coaxial_wall.csv", "w", encoding="ascii", newline="\n") as file:
        file.write(HEAD + f"# Second method: Laplace's transform, within {worst:.0e}.\n# Units: m, W/(m K), J/(m3 K), K m/W, s.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["case", "outer", "inner", "conductivity", "heat_capacity", "film_pipe", "film_inner", "time", "fluid"])
        out.writerows(rows)


if __name__ == "__main__":
    main()
