#!/usr/bin/python3
"""Reference solution: the first hours after a step of heat in the cross-section of single-U, double-U and coaxial bores, by finite elements.

Runs bore_section.edp (which says what is solved) with FreeFem++ 4.11, a general-purpose finite-element program, for the cases of
bore_section_cases.csv on three meshes, each with half the edges and half the time steps of the one before, and writes the finest mesh's figures.
Second method: the same program with its pipe on the bore's axis is a layered cylinder, whose solution in Laplace's variable (Carslaw & Jaeger
1959, ch. XIII; modified Bessel functions, layer by layer, derived anew) is turned back with the fixed Talbot contour (Abate & Valko 2004, Int. J.
Numer. Meth. Engng 60; volume from memory): no mesh, no time steps.

Usage:
  bore_section.py check           the layered cylinder on three meshes against the transform (1 minute)
  bore_section.py write [file]    all cases on three meshes into bore_section.csv (20 minutes on one core)
Needs the command FreeFem++ on the PATH. Units: m, s, W, K.
"""

import csv
import pathlib
import subprocess
import sys

import numpy as np
from scipy.special import iv, kv

HERE = pathlib.Path(__file__).parent
LEVELS = (0, 1, 2)
# Modes of each number of legs: the options that bore_section.edp takes for it.
MODES = {
    1: {"even": {}},
    2: {"even": {}, "odd": {"odd": 1}},
    4: {"even": {}, "odd": {"odd": 1}, "opposite": {"odd": 1, "idle": 1, "legs": 2}},
}
FIGURES = ("fluid", "wall", "grout", "pipe", "heat", "fluid_mean")
# Command-line name in bore_section.edp of each column of the cases.
OPTIONS = {
    "legs": "legs", "bore_radius": "bore", "offset": "offset", "pipe_outer_radius": "outer", "pipe_inner_radius": "inner",
    "grout_conductivity": "kgrout", "grout_heat_capacity": "cgrout", "pipe_conductivity": "kpipe", "pipe_heat_capacity": "cpipe",
    "ground_conductivity": "kground", "ground_heat_capacity": "cground", "film_resistance": "film", "fluid_storage": "cfluid",
}  # fmt: skip


def cases():
    with open(HERE / "bore_section_cases.csv", encoding="ascii") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def solve(case, options, level):
    """Times and, for 1 W/m in each leg (of the mode), fluid, mean wall, mean grout and mean pipe-wall temperature, heat through a leg's part of the wall, mean
    fluid temperature since the last time."""
    command = ["FreeFem++", "-nw", "-v", "0", str(HERE / "bore_section.edp"), "-level", str(level)]
    given = {option: case[column] for column, option in OPTIONS.items()}
    if float(case["offset"]) == 0:
        given["legs"] = 2  # one pipe on the axis: any wedge will do
    for option, value in {**given, **options}.items():
        command += ["-" + option, str(value)]
    answer = subprocess.run(command, check=True, capture_output=True, text=True).stdout
    rows = [line.split(",")[1:] for line in answer.splitlines() if line.startswith("row,")]
    if not rows:
        sys.exit(f"no figures from FreeFem++:\n{answer}")
    return np.array(rows, dtype=float)


def layered_cylinder(case, times):
    """Fluid and wall temperature and heat through the wall of one pipe on the bore's axis, 1 W/m from t = 0."""
    value = {name: float(text) for name, text in case.items() if name != "case"}
    layers = [(value["pipe_inner_radius"], value["pipe_outer_radius"], value["pipe_conductivity"], value["pipe_heat_capacity"]),
              (value["pipe_outer_radius"], value["bore_radius"], value["grout_conductivity"], value["grout_heat_capacity"])]  # fmt: skip

    def transform(s):
        k, wall = value["ground_conductivity"], value["bore_radius"]
        q = np.sqrt(s * value["ground_heat_capacity"] / k)
        temperature, heat = kv(0, q * wall), 2 * np.pi * k * q * wall * kv(1, q * wall)  # of the decaying solution
        at_wall = (temperature, heat)
        for inner, outer, k, capacity in reversed(layers):
            q = np.sqrt(s * capacity / k)
            flux = heat / (2 * np.pi * k * q * outer)  # = b K1 - a I1
            a = (temperature * kv(1, q * outer) - flux * kv(0, q * outer)) * q * outer  # by the Wronskian I0 K1 + I1 K0 = 1/x
            b = (temperature * iv(1, q * outer) + flux * iv(0, q * outer)) * q * outer
            temperature = a * iv(0, q * inner) + b * kv(0, q * inner)
            heat = 2 * np.pi * k * q * inner * (b * kv(1, q * inner) - a * iv(1, q * inner))
        fluid = temperature + value["film_resistance"] * heat
        scale = 1 / s / (s * value["fluid_storage"] * fluid + heat)
        return np.array([fluid, *at_wall]) * scale

    def talbot(t, nodes=26):
        theta = np.arange(1, nodes) * np.pi / nodes
        r = 2 * nodes / (5 * t)
        cot = 1 / np.tan(theta)
        s = r * theta * (cot + 1j)
        weight = np.exp(t * s) * (1 + 1j * (theta + (theta * cot - 1) * cot))
        inside = sum((w * transform(p)).real for w, p in zip(weight, s))
        return r / nodes * (np.exp(r * t) * transform(complex(r)).real / 2 + inside)

    return np.array([talbot(t) for t in times])


def check():
    worst = 0
    for case in cases():
        case = dict(case, offset="0")
        if case["case"] not in ("usual", "double", "coaxial"):
            continue
        exact = None
        for level in LEVELS:
            rows = solve(case, {}, level)
            if exact is None:
                exact = layered_cylinder(case, rows[:, 0])
            miss = np.abs(rows[:, [1, 2, 5]] - exact) / np.maximum(exact[-1] * [0, 0, 1], exact)
            later = rows[:, 0] >= 300
            print(f"{case['case']}, pipe on the axis, mesh {level}: largest relative miss from 1 min of the fluid {miss[:, 0].max():.1e}; "
                  f"from 5 min of the wall {miss[later, 1].max():.1e}, of its heat (of the step) {miss[:, 2].max():.1e}")  # fmt: skip
        worst = max(worst, miss[:, 0].max())
    print("worst of the fluid on the finest mesh", f"{worst:.1e}")
    return 0 if worst < 1e-3 else 1


HEAD = """# What: answers of a bore's cross-section to a step of heat at t = 0, from rest: fluid, mean bore wall, mean grout, mean pipe wall above the
#   undisturbed ground, per heat [K m/W]; heat: through the bore wall over the heat put in (even mode alone); fluid_mean: mean of the fluid since
#   the row before. Cases: bore_section_cases.csv (invented).
# Modes: even: all legs at one temperature, per heat of the whole bore. odd: neighbouring legs at +T and -T, per heat of one leg; opposite: of four
#   legs opposite ones at +T and -T, the others without heat; the means of wall, grout and pipe walls are those of the warm leg's part of the section.
# Source: conduction in the plane, one well-mixed fluid temperature a pipe, by FreeFem++ 4.11 (P2 elements) on three meshes: bore_section.edp, run by
#   bore_section.py, which writes this file (argument: write). The figures are those of the finest mesh; fluid_0 and fluid_1 are of the coarser two.
# Mesh study: each mesh has half the edges and half the time steps of the one before (about 3e3, 1e4, 4e4 unknowns; 100, 200, 400 steps).
"""


def write(target):
    lines, worst = [], {}
    for case in cases():
        for mode, options in MODES[int(case["legs"])].items():
            per = int(case["legs"]) if mode == "even" else 1
            meshes = [solve(case, options, level) / ([1] + [per] * 4 + [1, per]) for level in LEVELS]
            print(case["case"], mode, flush=True)
            fine = meshes[-1]
            for i, row in enumerate(fine):
                figures = [f"{v:.8g}" for v in row[1:]]
                if mode != "even":
                    figures[FIGURES.index("heat")] = ""
                lines.append([case["case"], mode, f"{row[0]:.0f}", *figures, *(f"{m[i, 1]:.8g}" for m in meshes[:2])])
            for j, figure in enumerate(FIGURES, 1):
                if figure == "heat" and mode != "even":
                    continue
                scale = np.maximum(np.abs(fine[:, j]), 1e-3 * np.abs(fine[:, j]).max() if figure != "heat" else 1.0)
                for level in (0, 1):
                    off = (np.abs(meshes[level + 1][:, j] - meshes[level][:, j]) / scale).max()
                    worst[figure, level] = max(worst.get((figure, level), 0), off)
    with open(target, "w", encoding="ascii", newline="\n") as file:
        file.write(HEAD)
        file.write("#   Largest change from mesh to mesh of all cases and times, relative to the figure (or to 1e-3 of its largest; heat: of the step):\n")
        for figure in FIGURES:
            file.write(f"#   {figure:6s} {worst[figure, 0]:.1e} from the first to the second, {worst[figure, 1]:.1e} from the second to the third\n")
        file.write("# Second method: with the pipe on the axis the same script meets the layered cylinder's transform (bore_section.py check).\n# Units: s.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["case", "mode", "time", *FIGURES, "fluid_0", "fluid_1"])
        out.writerows(lines)
    return 0


if __name__ == "__main__":
    if sys.argv[1:2] == ["check"]:
        sys.exit(check())
    if sys.argv[1:2] == ["write"]:
        sys.exit(write(sys.argv[2] if len(sys.argv) > 2 else HERE / "bore_section.csv"))
    sys.exit(__doc__)
