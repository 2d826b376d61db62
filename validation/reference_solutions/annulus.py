#!/usr/bin/python3
"""Reference solution: developed laminar flow in an annulus, heat at either wall, from the balances of momentum and energy.

Nothing here comes from the engine. Radii over the outer one, a = r_i/r_o. The velocity is u ~ 1 - r^2 - (1 - a^2) ln r/ln a (Navier-Stokes, no
slip). F(r) is the part of the flow within r. With uniform flux the developed energy balance is integrated once: r dT/dr = q_o F - q_i (1 - F) per
2 pi k, q the heat that enters the fluid at a wall per length. Weighted with the flow, bulk and walls are apart by
    T_o - T_bulk = (q_o int F^2 dr/r - q_i int F (1 - F) dr/r)/(2 pi k),
    T_i - T_bulk = (q_i int (1 - F)^2 dr/r - q_o int F (1 - F) dr/r)/(2 pi k),
integrals from a to 1. The three are written as `outer`, `inner`, `cross`. Nusselt numbers (hydraulic diameter, other wall insulated) are
2 (1 - a)/outer and 2 (1 - a)/(a inner). F is closed; the integrals by scipy.integrate.quad.
Second method: the energy balance as a boundary-value problem by collocation (scipy.integrate.solve_bvp), bulk by quadrature. Limits that are known:
a -> 1, plates one of which is heated, 70/13; int (F^2 + 2 F (1 - F) + (1 - F)^2) dr/r = ln(1/a), conduction.

Usage: annulus.py        writes annulus.csv beside this script
"""

import csv
import pathlib
import warnings

import numpy as np
from scipy.integrate import IntegrationWarning, quad, solve_bvp

HERE = pathlib.Path(__file__).resolve().parent
warnings.simplefilter("ignore", IntegrationWarning)  # of round-off below what is asked; the second method tells how good it is
RATIOS = (0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.9, 0.99)


def velocity(r, a):
    return 1 - r**2 - (1 - a**2) * np.log(r) / np.log(a)


def flow_within(r, a):
    b = (1 - a**2) / np.log(a)
    upto = lambda x: x**2 / 2 - x**4 / 4 - b * (x**2 / 2 * np.log(x) - x**2 / 4)
    return (upto(r) - upto(a)) / (upto(1.0) - upto(a))


def integrals(a):
    f = lambda r: flow_within(r, a)
    over = lambda g: quad(lambda r: g(f(r)) / r, a, 1, epsabs=1e-12, epsrel=1e-10, limit=200)[0]
    return over(lambda x: x**2), over(lambda x: (1 - x) ** 2), over(lambda x: x * (1 - x))


def by_collocation(a):
    """Walls over the bulk for heat at the outer wall alone, then at the inner: the energy balance itself, no F."""
    r = np.linspace(a, 1, 400)
    total = quad(lambda x: velocity(x, a) * x, a, 1)[0]
    walls = []
    for at_outer in (True, False):
        # (r T')' = r u/total; r T' is 0 at one wall, 1 at the outer or -1 at the inner one. T = 0 at the outer wall.
        ends = lambda first, last: np.array([first[1] - (0 if at_outer else -1), last[0]])
        right = lambda x, y: np.array([y[1] / x, x * velocity(x, a) / total])
        answer = solve_bvp(right, ends, r, np.zeros((2, len(r))), tol=1e-10, max_nodes=100000)
        assert answer.success, answer.message
        bulk = quad(lambda x: answer.sol(x)[0] * velocity(x, a) * x, a, 1, epsabs=1e-12, limit=200)[0] / total
        walls.append((0 - bulk, answer.sol(a)[0] - bulk))
    return walls[0][0], walls[1][1], -walls[0][1], -walls[1][0]


HEAD = """# What: developed laminar flow in an annulus, r_i/r_o = ratio, uniform flux at the walls: outer, inner, cross as in
#   T_o - T_bulk = (q_o outer - q_i cross)/(2 pi k), T_i - T_bulk = (q_i inner - q_o cross)/(2 pi k), q into the fluid per length [-];
#   Nusselt numbers by the hydraulic diameter, the other wall insulated.
# Source: balances of momentum and energy (as Lundberg, McCuen & Reynolds 1963 solve them), integrated by scipy: annulus.py, which writes this file.
"""


def main():
    rows, worst, conduction = [], 0.0, 0.0
    for a in RATIOS:
        outer, inner, cross = integrals(a)
        other = by_collocation(a)
        worst = max(worst, *(abs(x / y - 1) for x, y in zip(other, (outer, inner, cross, cross))))
        conduction = max(conduction, abs((outer + inner + 2 * cross) / np.log(1 / a) - 1))
        rows.append([a, *(f"{x:.10g}" for x in (outer, inner, cross, 2 * (1 - a) / (a * inner), 2 * (1 - a) / outer))])
    plates = 2 * (1 - 0.999) / integrals(0.999)[0]
    with open(HERE / "annulus.csv", "w", encoding="ascii", newline="\n") as file:
        file.write(HEAD)
        file.write(f"# Second method: collocation, within {worst:.0e}. Sum of outer, inner and twice cross: ln(1/ratio) within {conduction:.0e}.\n")
        file.write(f"#   Outer wall at ratio 0.999: {plates:.5f}; plates, one insulated: 70/13 = {70 / 13:.5f}.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["ratio", "outer", "inner", "cross", "nusselt_inner", "nusselt_outer"])
        out.writerows(rows)


if __name__ == "__main__":
    main()
