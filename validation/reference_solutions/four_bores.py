"""Reference solution: four bores in layered ground, one of them shallower, by full 3-D finite elements. See make_finite_elements.py.

Solves  rho c(z) dT/dt = div(k(z) grad T)  in the ground, zero at first, surface at zero, all other edges adiabatic except the walls of the
bores between top and toe: q'(z) = (T_f - mean wall temperature)/R_b, spread round the wall as (T_f - T)/(R_b perimeter), with one fluid
temperature T_f for all bores and their total heat constant. The bores are real holes without heat capacity; above the tops and below the toes
there is ground (study `adiabatic`: nothing there instead, as if each hole went from the surface to the bottom).

How: prisms.py; the circles are regular polygons of the bore's logarithmic radius; linear systems by preconditioned conjugate gradients. In time the
L-stable third-order SDIRK method of Alexander 1977, SIAM J. Numer. Anal. 14 (coefficients from memory), in steps that double.
"""

import numpy as np
import scipy

from fe_mesh import DAY, graded_faces, steps, write_table
from prisms import Bore, Depth, Field, Modes, Plan, solve

RADIUS, RESISTANCE, PER_METRE = 0.075, 0.1, 30.0
LAYERS = [(9.0, 0.9, 2.5e6), (48.0, 3.2, 2.3e6), (np.inf, 1.6, 2.2e6)]  # bottom, k, rho c
# The second is the shallow one; the third stands for its mirror image (y < 0) as well.
BORES = {"west": Bore(-5.0, 0.0, 2.0, 100.0), "east": Bore(4.0, 0.0, 2.0, 60.0), "north": Bore(0.0, 3.5, 2.0, 100.0)}
HEAT = PER_METRE * sum(2 * b.mirrored * b.length for b in BORES.values())
FAR, BELOW = 300.0, 150.0
TIMES = [30 * DAY, 180 * DAY, 365 * DAY, 3 * 365 * DAY, 10 * 365 * DAY]
POINTS = [(0.0, 0.0), (2.0, 1.75), (-2.5, 1.75), (5.0, 0.0)]
DEPTHS = [25.0, 55.0, 80.0]
G = 0.435866521508459  # root of g^3 - 3 g^2 + 3/2 g - 1/6
A = [[G], [(1 - G) / 2, G], [-(6 * G**2 - 16 * G + 1) / 4, (6 * G**2 - 20 * G + 5) / 4, G]]


def march(field, pieces, at):
    """From zero; calls at(time, T_f, temperatures) at the table's times. T = T0 + T_f T1 in every stage, so that the heat is exact."""
    source = sum(field.sources)
    modes = Modes(field)
    time, state, fluid, unit = 0.0, np.zeros(len(source)), 0.0, np.zeros(len(source))
    for step, count, shown in pieces:
        kappa = G * step
        matrix = field.storage + kappa * field.conduction
        modes.prepare(kappa)
        unit = solve(matrix, kappa * source, unit, modes)
        taken = source.sum() - source @ unit
        slope = np.zeros_like(state)
        for _ in range(count):
            slopes = []
            for row in A:
                known = state + step * sum((a * s for a, s in zip(row, slopes)), np.zeros_like(state))
                rest = solve(matrix, field.storage @ known, known + kappa * slope - fluid * unit, modes)
                fluid = (HEAT / 2 + source @ rest) / taken
                new = rest + fluid * unit
                slope = (new - known) / kappa
                slopes.append(slope)
            state, time = new, time + step
        if shown:
            at(time, fluid, state)


def figures(sides, scale, per_piece, wider=1, adiabatic=False):
    """All figures on one mesh: {(days, figure, where, depth): value}; `scale` times the heights over depth."""
    bores = list(BORES.values())
    ends = {end for b in bores for end in (b.top, b.top + b.length)}
    faces = graded_faces([0, *ends, *[layer[0] for layer in LAYERS[:-1]], max(ends) + wider * BELOW], 0.7 * scale, 0.7 * scale, 12 * scale)
    plan, depth = Plan(bores, RADIUS, sides, wider * FAR, POINTS), Depth(faces, LAYERS)
    field = Field(bores, plan, depth, RESISTANCE, adiabatic)
    found = {}

    def at(time, fluid, state):
        days = round(time / DAY)
        found[days, "fluid", "", ""] = fluid
        for (name, bore), source in zip(BORES.items(), field.sources):
            found[days, "wall", name, ""] = source @ state / source.sum()
            found[days, "share", name, ""] = (fluid * source.sum() - source @ state) / bore.mirrored / HEAT
        at_points = plan.values @ field.full(state)
        for (x, y), profile in zip(POINTS, at_points):
            for z in DEPTHS:
                found[days, "ground", f"{x:g}:{y:g}", z] = depth.values(z) @ profile

    march(field, steps(TIMES, per_piece, 8), at)
    return found, len(field.exists)


HEAD = """What: four bores in layered ground at zero, their total heat constant from t = 0, one fluid temperature for all. Rises above the undisturbed
  ground: fluid, wall (mean of a bore), ground (at x:y and a depth); share: of all the heat that one bore gives off.
Case: four_bore_case.csv; surface held at zero; nothing in the bores has a heat capacity; above their tops and below their toes there is ground;
  north and south are mirror images. A year is 365 days.
Source: finite elements in 3-D, FreeFem++ 4.11 (Debian 4.11+dfsg1-3) with scipy {scipy}; four_bores.edp, four_bores.py, prisms.py; made by
  make_finite_elements.py four.
How: mesh_0, mesh_1, mesh_2: {sides} edges round a bore and heights over depth in the same proportion, 2 steps to a doubling of time, {sizes}
  unknowns; steps_4: 4 steps on mesh_0; wider: far edges 1.5 times as far, on mesh_0; adiabatic: on mesh_0, the holes from surface to bottom instead
  of ground above tops and below toes. value: mesh_1 and mesh_2 carried on to meshes without end by fourth order.
  error = |value - mesh_0 and mesh_1 carried on in the same way| + |steps_4 - mesh_0| + |wider - mesh_0|.
"""
MESHES = {"mesh_0": (10, 1.0), "mesh_1": (14, 0.5**0.5), "mesh_2": (20, 0.5)}  # edges round a bore, scale of heights
CHANGES = (("meshes 0 to 1", "mesh_1", "mesh_0"), ("1 to 2", "mesh_2", "mesh_1"), ("2 to the limit", "value", "mesh_2"),
           ("steps 2 to 4", "steps_4", "mesh_0"), ("wider", "wider", "mesh_0"), ("adiabatic", "adiabatic", "mesh_0"))


def limit(study, coarse, fine):
    """Two meshes carried on by fourth order in the edges round a bore."""
    return study[fine] + (study[fine] - study[coarse]) / ((MESHES[fine][0] / MESHES[coarse][0]) ** 4 - 1)


def fourth_order():
    """Ratio of the changes between the meshes at fourth order in the edges round a bore."""
    coarse, middle, fine = (mesh[0] ** -4 for mesh in MESHES.values())
    return (coarse - middle) / (middle - fine)


def note(rows):
    """Largest changes of the study, as the head tells them."""
    lines = []
    for figure in ("fluid", "wall", "ground", "share"):
        of_figure = [r for r in rows if r["figure"] == figure]
        lines.append(f"  {figure}: " + ", ".join(f"{name} {max(abs(r[a] - r[b]) for r in of_figure):.1e}" for name, a, b in CHANGES))
    fluids = [r for r in rows if r["figure"] == "fluid"]
    ratios = [(r["mesh_1"] - r["mesh_0"]) / (r["mesh_2"] - r["mesh_1"]) for r in fluids]
    lines.append(f"  the fluid's changes 0 to 1 over 1 to 2: {min(ratios):.2f} to {max(ratios):.2f}; fourth order gives {fourth_order():.2f}")
    relative = max(r["error"] / r["value"] for r in fluids)
    return ("Mesh study, largest changes (K; share of the heat):\n" + "\n".join(lines)
            + f"\nPrecision: the largest error of a fluid temperature is {relative:.1e} of it.\nUnits: days, m, K, W/(m K), J/(m3 K).\n")


def write_case(folder):
    # The south bore is the mirror image of the north one.
    sites = [(name, b.x, b.y, b.top, b.length) for name, b in BORES.items()] + [("south", 0.0, -3.5, 2.0, 100.0)]
    write_table(folder / "four_bore_case.csv",
                "What: the case of four_bores.csv; layers as bottom:k:rho c from the surface down, bores as name:x:y:top:length. Invented.\n"
                "Units: m, W/(m K), J/(m3 K), K m/W, W.\n",
                [{"layers": ";".join(f"{b:g}:{k:g}:{c:g}" for b, k, c in LAYERS), "radius": RADIUS, "resistance": RESISTANCE, "heat": HEAT,
                  "bores": ";".join(f"{name}:{x:g}:{y:g}:{top:g}:{length:g}" for name, x, y, top, length in sites)}])


def write(folder):
    write_case(folder)
    runs, sizes = {}, []
    for name, mesh in MESHES.items():
        runs[name], size = figures(*mesh, 2)
        sizes.append(size)
        print(f"{name}: done", flush=True)
    coarse = MESHES["mesh_0"]
    runs["steps_4"] = figures(*coarse, 4)[0]
    runs["wider"] = figures(*coarse, 2, wider=1.5)[0]
    runs["adiabatic"] = figures(*coarse, 2, adiabatic=True)[0]
    write_figures(folder, runs, sizes)


def write_figures(folder, runs, sizes):
    rows = []
    for key in runs["mesh_0"]:
        study = {name: found[key] for name, found in runs.items()}
        value = limit(study, "mesh_1", "mesh_2")
        error = (abs(value - limit(study, "mesh_0", "mesh_1")) + abs(study["steps_4"] - study["mesh_0"])
                 + abs(study["wider"] - study["mesh_0"]))
        rows.append({**dict(zip(("days", "figure", "where", "depth"), key)), "value": value, "error": error, **study})
    head = HEAD.format(scipy=scipy.__version__, sides=", ".join(str(mesh[0]) for mesh in MESHES.values()),
                       sizes=", ".join(f"{size:,}" for size in sizes))
    write_table(folder / "four_bores.csv", head + note(rows), rows)
