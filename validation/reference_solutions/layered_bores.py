"""One bore in layered ground: the cases that layered_bore.edp solves, their mesh study and the tables. See make_finite_elements.py."""

import math
import tempfile

import numpy as np

from fe_mesh import DAY, YEAR, counted, freefem, graded_faces, halved, numbers, steps, write_table

RADIUS, RESISTANCE, PER_METRE = 0.075, 0.1, 40.0
FAR, BELOW = 450.0, 350.0
TIMES = [DAY, 10 * DAY, 100 * DAY, YEAR, 5 * YEAR, 20 * YEAR]
DISTANCES = [1.0, 3.0, 6.0]
ENDLESS = math.inf
# name: (layers: bottom, k, rho c), top, length, depths of the figures
CASES = {
    "soft over hard": ([(30, 0.8, 2.6e6), (ENDLESS, 3.4, 2.2e6)], 2.0, 100.0, [10, 20, 45, 80]),
    "thin good layer": ([(40, 1.3, 2.3e6), (44, 6.0, 2.9e6), (ENDLESS, 1.3, 2.3e6)], 1.5, 80.0, [20, 42, 60]),
    "face near the toe": ([(12, 0.6, 1.5e6), (119, 2.2, 2.3e6), (ENDLESS, 4.5, 2.9e6)], 2.0, 118.0, [7, 40, 100]),
    "hard over soft": ([(4, 0.4, 1.2e6), (60, 3.6, 2.4e6), (ENDLESS, 1.1, 2.0e6)], 0.5, 90.0, [2, 30, 75]),
}


def solve(case, level, per_piece, wider=1):
    """All figures of a case on one mesh: {(time, figure, depth or band, distance): value}. Level 0: 14 elements in radius, 0.16 m high at
    every bore end and layer face; each level halves them all. `wider`: times the distance of the far edges."""
    layers, top, length, depths = CASES[case]
    toe = top + length
    inner_faces = [layer[0] for layer in layers[:-1]]
    z = halved(graded_faces([0, top, toe, *inner_faces, toe + wider * BELOW], 0.16, 0.7, 10.0), level)
    spacing = math.log(FAR / RADIUS) / 14
    radial = round(math.log(wider * FAR / RADIUS) / spacing) * 2**level
    r = np.geomspace(RADIUS, wider * FAR, radial + 1)
    heat = PER_METRE * length
    edges = [top, *[face for face in inner_faces if top < face < toe], toe]
    bands = list(zip(edges[:-1], edges[1:]))
    text = numbers(
        counted(r), counted(z), [len(layers)], [(min(b, 1e9), k, c) for b, k, c in layers], [top, toe, RESISTANCE, heat],
        counted(steps(TIMES, per_piece, 10)), counted(depths), counted(bands), counted(DISTANCES))
    figures = {}
    with tempfile.TemporaryDirectory() as scratch:
        for time, row in zip(TIMES, freefem("layered_bore.edp", text, scratch)):
            values = iter(row[1:])
            figures[time, "fluid", "", ""] = next(values)
            for depth in depths:
                figures[time, "wall", depth, ""] = next(values)
            for low, high in bands:
                figures[time, "share", f"{low:g}-{high:g}", ""] = next(values) / heat
            for distance in DISTANCES:
                for depth in depths:
                    figures[time, "ground", depth, distance] = next(values)
    return figures


HEAD = """What: a bore in layered ground at zero, its total heat constant from t = 0, one fluid temperature along it. Rises above the undisturbed
  ground: fluid, wall (at a depth), ground (at a depth and a distance from the axis); share: of the bore's heat that a band of depths takes.
Case: radius 0.075 m, 0.1 K m/W between fluid and wall, 40 W/m times the length; surface held at zero; r = 0.075 m is adiabatic above the top and
  below the toe; nothing in the bore has a heat capacity. Layers (invented): layered_bore_cases.csv. A year is 365 days.
Source: finite elements, FreeFem++ 4.11 (Debian 4.11+dfsg1-3), layered_bore.edp; made by make_finite_elements.py layered.
How: value is mesh_2. mesh_0, mesh_1, mesh_2: every element halved each time, 4 steps to a doubling of time; steps_2, steps_8: so many steps on
  mesh_0; wider: far edges twice as far, on mesh_0. error = |mesh_2 - mesh_1| + |steps_8 - mesh_0| + |wider - mesh_0|: what halving still changed.
"""


def note(rows):
    """Largest changes of the study, as the head tells them."""
    def largest(figure, change):
        return max(abs(change(r)) for r in rows if r["figure"] == figure)

    lines = []
    for figure in ("fluid", "wall", "ground", "share"):
        lines.append(
            f"  {figure}: meshes 0 to 1 {largest(figure, lambda r: r['mesh_1'] - r['mesh_0']):.1e}, 1 to 2 "
            f"{largest(figure, lambda r: r['mesh_2'] - r['mesh_1']):.1e}; steps 2 to 4 "
            f"{largest(figure, lambda r: r['mesh_0'] - r['steps_2']):.1e}, 4 to 8 {largest(figure, lambda r: r['steps_8'] - r['mesh_0']):.1e}; "
            f"wider {largest(figure, lambda r: r['wider'] - r['mesh_0']):.1e}")
    relative = max(r["error"] / r["value"] for r in rows if r["figure"] == "fluid")
    return ("Mesh study, largest changes (K; share of the heat):\n" + "\n".join(lines)
            + f"\nPrecision: the largest error of a fluid temperature is {relative:.1e} of it.\n")


def write(folder):
    rows = []
    for case in CASES:
        runs = {"mesh_0": solve(case, 0, 4), "mesh_1": solve(case, 1, 4), "mesh_2": solve(case, 2, 4),
                "steps_2": solve(case, 0, 2), "steps_8": solve(case, 0, 8), "wider": solve(case, 0, 4, wider=2)}
        for key, value in runs["mesh_2"].items():
            time, figure, depth, distance = key
            study = {name: figures[key] for name, figures in runs.items()}
            error = (abs(value - study["mesh_1"]) + abs(study["steps_8"] - study["mesh_0"])
                     + abs(study["wider"] - study["mesh_0"]))
            rows.append({"case": case, "days": time / DAY, "figure": figure, "depth": depth, "distance": distance, "value": value,
                         "error": error, **study})
        print(f"{case}: done", flush=True)
    write_table(folder / "layered_bores.csv", HEAD + note(rows) + "Units: days, m, K.\n", rows)
    write_table(folder / "layered_bore_cases.csv",
                "What: the cases of layered_bores.csv; layers as bottom:k:rho c from the surface down. Invented.\n"
                "Units: m, W/(m K), J/(m3 K).\n",
                [{"case": name, "layers": ";".join(f"{b:g}:{k:g}:{c:g}" for b, k, c in layers), "top": top, "length": length}
                 for name, (layers, top, length, _) in CASES.items()])
