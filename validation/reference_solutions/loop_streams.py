#!/usr/bin/python3
"""Reference solution: steady temperatures of the streams in a bore of any loop type, from the resistances between legs (or rings) and the bore wall.

Nothing here comes from the engine. Legs are kept apart one by one, with no use of the section's symmetry: leg i loses q_i per metre to the wall,
    T_i - T_wall = sum_j R_ij q_j,       W_i dT_i/dz = -q_i going down, +q_i going up,
W_i the leg's own m c. A list of joints says whose outlet is whose inlet; streams of one inlet share the flow. Two limits:
  wall   the bore wall has one temperature (0);
  heat   every metre gives off the same heat; the wall's temperature follows from it, and is 0 in the mean.
Solved by the exponential of the streams' matrix (scipy.linalg.expm) and linear equations for the temperatures at the top. Second method: the same
boundary-value problem by collocation (scipy.integrate.solve_bvp, tolerance 1e-10), which knows no exponential.

Double U: four legs on a square, R from tests/reference/bore_resistance_double.csv (multipoles of order 10, within 6e-9 of converged). Legs round the
square are numbered 0 to 3. U's in series: the first U's legs side by side (0, 1), the second's (2, 3); crossed: opposite (0, 2) and (1, 3).
Coaxial: the annulus exchanges with the wall and with the inner pipe alone; resistances are sums of ln(r_o/r_i)/(2 pi k) and given films, as any
text on heat conduction has them (Carslaw & Jaeger 1959, ch. VII; Incropera & DeWitt, from memory).

Usage: loop_streams.py        writes loop_streams.csv beside this script and tells how far both methods are apart (half a minute)
Units: m, W, K.
"""

import csv
import pathlib

import numpy as np
from scipy.integrate import solve_bvp
from scipy.linalg import expm

HERE = pathlib.Path(__file__).resolve().parent
REFERENCE = HERE.parent.parent / "tests" / "reference"
DEPTHS = (0.1, 0.25, 0.5, 0.75, 1.0)  # of the bore's length

# Which leg goes down (+1) or up (-1), by leg; the order in which the fluid passes them, branch by branch.
LOOPS = {
    "parallel": {"down": (1, -1, 1, -1), "branches": ((0, 1), (2, 3))},
    "parallel crossed": {"down": (1, 1, -1, -1), "branches": ((0, 2), (1, 3))},
    "series": {"down": (1, -1, 1, -1), "branches": ((0, 1, 2, 3),)},
    "series crossed": {"down": (1, 1, -1, -1), "branches": ((0, 2, 1, 3),)},
    "coaxial annulus down": {"down": (1, -1), "branches": ((0, 1),)},
    "coaxial inner down": {"down": (-1, 1), "branches": ((1, 0),)},
}
# Rows of bore_resistance_double.csv: close and wide, poor and conductive grout.
SECTIONS = (0, 3, 6, 12)
# Invented: bore radius; outer pipe's outer and inner radius, conductivity; inner pipe's; grout; films at outer wall, inner pipe's outside, inside.
COAXIALS = (
    (0.075, 0.055, 0.0484, 0.42, 0.0315, 0.0257, 0.42, 1.6, 0.010, 0.012, 0.004),
    (0.07, 0.0572, 0.0522, 45.0, 0.025, 0.0204, 0.42, 0.75, 0.020, 0.030, 0.010),
    (0.0575, 0.045, 0.0398, 0.42, 0.020, 0.0162, 0.04, 2.0, 0.004, 0.006, 0.003),
)
COAXIAL_NAMES = ("r_bore", "r_outer_o", "r_outer_i", "k_outer", "r_inner_o", "r_inner_i", "k_inner", "k_grout", "film_outer", "film_inner", "film_pipe")
# Length [m] and m c of the whole bore [W/K].
FLOWS = ((100, 2600), (150, 1500), (200, 800), (300, 2000))


def rates(conductance, loop, capacity):
    """d/dz of the legs' temperatures T above the wall is A T."""
    share = 1 / len(loop["branches"])
    return -np.diag(loop["down"]) @ conductance / (share * capacity)


def joints(loop):
    """Equations at the toe (T_down = T_up) and at the top (T_in of a leg = T_out of the one before; 1 at an inlet): pairs (leg, leg before)."""
    toe, top = [], []
    for branch in loop["branches"]:
        for n, leg in enumerate(branch):
            if loop["down"][leg] > 0:
                top.append((leg, branch[n - 1] if n else None))
                toe.append((leg, branch[n + 1]))
    return toe, top


def solve(conductance, loop, length, capacity, limit):
    """Outlet and leg temperatures at DEPTHS, over the inlet's, both above the wall (its mean); R_b*."""
    n = len(conductance)
    a = rates(conductance, loop, capacity)
    source = np.zeros(n)
    if limit == "heat":
        # q = K (T - T_w), sum q = q': T_w = (1'K T - q')/(1'K 1), q' = 1.
        to_all = conductance.sum(axis=1)
        wall_of = to_all / to_all.sum()
        through = conductance @ (np.eye(n) - np.outer(np.ones(n), wall_of))
        a = rates(through, loop, capacity)
        source = rates(np.eye(n), loop, capacity) @ (to_all / to_all.sum())
    # One more row that stays 1 carries the source.
    augmented = np.zeros((n + 1, n + 1))
    augmented[:n, :n], augmented[:n, n] = a, source
    to = lambda z: expm(augmented * z)
    end = to(length)
    toe, top = joints(loop)
    equations, right = np.zeros((n, n)), np.zeros(n)
    row = 0
    for one, other in toe:
        equations[row] = end[one, :n] - end[other, :n]
        right[row] = end[other, n] - end[one, n]
        row += 1
    for leg, before in top:
        equations[row, leg] = 1
        if before is None:
            right[row] = 1 if limit == "wall" else 0
        else:
            equations[row, before] = -1
        row += 1
    start = np.linalg.solve(equations, right)
    at = lambda z: to(z)[:n, :n] @ start + to(z)[:n, n]
    last = [branch[-1] for branch in loop["branches"]]
    outlet, inlet = start[last].mean(), (1.0 if limit == "wall" else 0.0)
    if limit == "wall":
        heat = capacity * (inlet - outlet) / length
        mean_wall = 0.0
    else:
        heat = 1.0
        z = np.linspace(0, length, 401)
        walls = np.array([wall_of @ at(x) - 1 / to_all.sum() for x in z])
        weights = np.ones(401)
        weights[1:-1:2], weights[2:-1:2] = 4, 2  # Simpson's rule
        mean_wall = weights @ walls / weights.sum()
    resistance = ((inlet + outlet) / 2 - mean_wall) / heat
    second = by_collocation(a, source, loop, length, inlet, n)
    apart = np.abs(np.array([second(z) - at(z) for z in np.array((0.0, *DEPTHS)) * length])).max() / np.abs(start).max()
    return outlet, [at(z * length) for z in DEPTHS], resistance, apart


def by_collocation(a, source, loop, length, inlet, n):
    toe, top = joints(loop)

    def ends(first, last):
        return np.array([last[i] - last[j] for i, j in toe] + [first[i] - (inlet if j is None else first[j]) for i, j in top])

    z = np.linspace(0, length, 101)
    answer = solve_bvp(lambda _, y: a @ y + source[:, None], ends, z, np.ones((n, len(z))), tol=1e-10, max_nodes=200000)
    assert answer.success, answer.message
    return answer.sol


def reference(name):
    with open(REFERENCE / name, encoding="ascii") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def ring(outer, inner, k):
    return np.log(outer / inner) / (2 * np.pi * k)


def sections():
    """Name of the loop's family, row's own columns, conductance between legs and wall."""
    table = reference("bore_resistance_double.csv")
    for index in SECTIONS:
        row = table[index]
        r11, r12, r13 = (float(row[name]) for name in ("R11", "R12", "R13"))
        matrix = np.array([[r11, r12, r13, r12], [r12, r11, r12, r13], [r13, r12, r11, r12], [r12, r13, r12, r11]])
        yield "double", f"double {index}", np.linalg.inv(matrix)
    for index, values in enumerate(COAXIALS):
        v = dict(zip(COAXIAL_NAMES, values))
        wall = v["film_outer"] + ring(v["r_outer_o"], v["r_outer_i"], v["k_outer"]) + ring(v["r_bore"], v["r_outer_o"], v["k_grout"])
        inner = v["film_inner"] + ring(v["r_inner_o"], v["r_inner_i"], v["k_inner"]) + v["film_pipe"]
        # The annulus is leg 0.
        yield "coaxial", f"coaxial {index}", np.array([[1 / wall + 1 / inner, -1 / inner], [-1 / inner, 1 / inner]])


HEAD = """# What: steady temperatures of the streams in a bore of each loop type over the inlet's, both above the bore wall: outlet, and each leg at parts
#   of the bore's length from its top; R_b* [K m/W] = ((T_in + T_out)/2 - mean wall)/q'. limit wall: bore wall of one temperature; heat: the same
#   heat at every depth (no temperatures over the inlet's there: R_b* alone).
# Sections: double N: row N (from 0) of tests/reference/bore_resistance_double.csv, whose columns are repeated. coaxial N: invented rings, given here.
# Legs: of a double U round the square, of a coaxial loop annulus and inner pipe. series: legs 0, 1, 2, 3 in this order; series crossed: 0, 2, 1, 3;
#   parallel: 0 and 2 down, 1 and 3 up; parallel crossed: 0 and 1 down, 2 and 3 up.
# Source: the legs' balances, solved by a matrix exponential (scipy): loop_streams.py, which writes this file.
"""


def main():
    geometry = ["r_bore", "r_pipe", "pipe_circle", "k_grout", "k_ground", "R_pipe", *[n for n in COAXIAL_NAMES if n not in ("r_bore", "k_grout")]]
    table, lines, worst = reference("bore_resistance_double.csv"), [], 0.0
    for family, name, conductance in sections():
        index = int(name.split()[1])
        given = dict(table[index]) if family == "double" else dict(zip(COAXIAL_NAMES, COAXIALS[index]))
        for loop_name, loop in LOOPS.items():
            if (family == "coaxial") != loop_name.startswith("coaxial"):
                continue
            for length, capacity in FLOWS:
                for limit in ("wall", "heat"):
                    outlet, profile, resistance, apart = solve(conductance, loop, length, capacity, limit)
                    worst = max(worst, apart)
                    figures = [f"{outlet:.12g}", *[f"{t:.12g}" for at in profile for t in [*at, *[np.nan] * (4 - len(at))]]]
                    figures = [figure if figure != "nan" and limit == "wall" else "" for figure in figures]
                    row = [name, loop_name, limit, length, capacity, *[given.get(column, "") for column in geometry], f"{resistance:.12g}", *figures]
                    lines.append(row)
        print(name, f"both methods within {worst:.1e} so far", flush=True)
    columns = [f"leg{leg}_at_{depth:g}" for depth in DEPTHS for leg in range(4)]
    with open(HERE / "loop_streams.csv", "w", encoding="ascii", newline="\n") as file:
        file.write(HEAD)
        file.write(f"# Second method: collocation (scipy.integrate.solve_bvp), within {worst:.0e} of the largest temperature in all rows.\n")
        file.write("# Units: m, W/(m K), K m/W, W/K.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["section", "loop", "limit", "length", "heat_rate", *geometry, "resistance", "outlet", *columns])
        out.writerows(lines)


if __name__ == "__main__":
    main()
