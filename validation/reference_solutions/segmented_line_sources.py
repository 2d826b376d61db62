#!/usr/bin/python3
"""Reference solution: fields of bores whose fluid has one common temperature, by segmented finite line sources.

Homogeneous ground, surface held at zero. Every bore is cut into segments of uniform heat; the rise at the wall of segment i from segment j is
the finite line source averaged over segment i (Claesson & Javed 2011, ASHRAE Transactions 117(2); for two segments of different depth and
length Cimmino & Bernier 2014, Int. J. Heat Mass Transfer 70; the single integral with ierf, derived anew). A resistance stands between the
wall of each segment and the fluid, the fluid temperature is the same everywhere, and the heat of the whole field is constant from t = 0.

Two methods that share only the geometry:
  superposition   heats constant within each time step, rises summed over the steps;
  transform       the kernel exp(-R sqrt(s/a))/R in Laplace's variable, solved once per s, turned back with the fixed Talbot contour
                  (Abate & Valko 2004, Int. J. Numer. Meth. Engng 60; volume from memory): no time steps, no ierf.

Nothing here comes from the engine. Usage:
  segmented_line_sources.py check [folder of reference tables]    compare the line sources with the tables
  segmented_line_sources.py write [file]                          solve all cases and write the table (some minutes)
Units: m, s, W, K.
"""

import csv
import pathlib
import sys

import numpy as np
from scipy.special import erf

K, RHO_C, R_BORE, R_B, HEAT = 2.0, 2.0e6, 0.075, 0.1, 20.0
DIFFUSIVITY = K / RHO_C
YEAR = 8760 * 3600.0
YEARS = (1, 2, 5, 10, 25)
FIRST_STEP = 900.0
TABLE_START = 60.0  # shorter than any step, so the table of responses is never left
TABLE_SPACING = 0.1  # in ln t


def bores(points, depths=None):
    """Bores as (x, y, D, H), all tops at 2 m."""
    depths = depths or [120.0] * len(points)
    return [(float(x), float(y), 2.0, float(h)) for (x, y), h in zip(points, depths)]


def grid(columns, rows, spacing):
    return [(spacing * i, spacing * j) for j in range(rows) for i in range(columns)]


CASES = {
    "one bore": bores([(0, 0)]),
    "square of 4": bores(grid(2, 2, 6)),
    "square of 9 at 5 m": bores(grid(3, 3, 5)),
    "square of 9 at 7 m": bores(grid(3, 3, 7)),
    "corner of 5": bores([(0, 0), (6, 0), (12, 0), (0, 6), (0, 12)]),
    "irregular 5": bores([(0, 0), (7, 1), (3, 8), (14, 6), (10, 14)]),
    "mixed depths": bores(grid(2, 2, 6), [120, 120, 90, 60]),
    "line of 4": bores(grid(4, 1, 5)),
}


def equal_edges(depth, length, n):
    return depth + length * np.linspace(0, 1, n + 1)


def graded_edges(depth, length, n):
    """Segments that shrink towards both ends: the heat varies there over lengths like the radius of the bore, which equal segments miss."""
    return depth + length * 0.5 * (1 + np.tanh(3.5 * np.linspace(-1, 1, n + 1)) / np.tanh(3.5))


def ierf(x):
    return x * erf(x) + np.expm1(-x * x) / np.sqrt(np.pi)


def second_difference(f, own, other):
    """Double integral of f''(z - z') - f''(z + z') over z in each segment of `own` (rows), z' in each of `other` (columns); f is even."""
    at_edges = f(np.abs(own[:, None] - other[None, :])) + f(own[:, None] + other[None, :])
    return at_edges[1:, :-1] + at_edges[:-1, 1:] - at_edges[1:, 1:] - at_edges[:-1, :-1]


class Layout:
    """A field with its bores gathered into classes that the symmetry of the layout makes equal."""

    def __init__(self, field, edges_of, n):
        self.field = np.array(field)
        self.kind = self._classes()
        self.representatives = [int(np.flatnonzero(self.kind == c)[0]) for c in range(self.kind.max() + 1)]
        self.edges = [edges_of(*self.field[b, 2:], n) for b in self.representatives]
        self.lengths = np.concatenate([np.diff(e) for e in self.edges])
        self.counts = np.repeat([np.sum(self.kind == c) for c in range(len(self.edges))], n)
        self.total = HEAT * self.field[:, 3].sum()
        self.n = n

    def _classes(self):
        """Bores are equal if a rotation or reflection about the centre of the field carries one to the other and the field to itself."""
        xy = self.field[:, :2] - self.field[:, :2].mean(axis=0)
        rest = self.field[:, 2:]
        kind = np.arange(len(xy))
        for swap in (False, True):
            for sx in (1, -1):
                for sy in (1, -1):
                    image = (xy[:, ::-1] if swap else xy) * (sx, sy)
                    same = np.all(np.isclose(image[:, None], xy[None], atol=1e-9), axis=2) & np.all(rest[:, None] == rest[None], axis=2)
                    if np.all(same.sum(axis=1) == 1):
                        for a, b in enumerate(same.argmax(axis=1)):
                            kind[kind == max(kind[a], kind[b])] = min(kind[a], kind[b])
        return np.unique(kind, return_inverse=True)[1]

    def distances(self, a, b):
        """From the representative of class a to every bore of class b; a bore's distance to itself is its radius."""
        own = self.field[self.representatives[a], :2]
        return np.maximum(np.hypot(*(self.field[self.kind == b, :2] - own).T), R_BORE)

    def solve(self, response, history):
        """Heats per metre and T_f from: response q + R_b q + history = T_f, total heat given."""
        m = len(self.lengths)
        matrix = np.zeros((m + 1, m + 1), dtype=response.dtype)
        matrix[:m, :m] = response + R_B * np.eye(m)
        matrix[:m, m] = -1
        matrix[m, :m] = self.counts * self.lengths
        solution = np.linalg.solve(matrix, np.append(-history, self.total))
        return solution[:m], solution[m]


def panel_responses(layout, s_low, s_high, order=6):
    """Part of the rise per W/m between two values of the variable of integration s (integrated in ln s)."""
    x, w = np.polynomial.legendre.leggauss(order)
    ln_s = 0.5 * (np.log(s_high) - np.log(s_low)) * (x + 1) + np.log(s_low)
    s, w = np.exp(ln_s), w * 0.5 * (np.log(s_high) - np.log(s_low))
    m, n = len(layout.lengths), layout.n
    out = np.zeros((m, m))
    known = {}
    for a, own in enumerate(layout.edges):
        for b, other in enumerate(layout.edges):
            key = (own[0], own[-1], other[0], other[-1])
            if key not in known:
                known[key] = np.array([second_difference(lambda z: ierf(z * v), own, other) for v in s])
            factor = w / s * np.exp(-np.square(np.outer(layout.distances(a, b), s))).sum(axis=0)
            out[a * n:(a + 1) * n, b * n:(b + 1) * n] = np.tensordot(factor, known[key], 1)
    return out / (2 * layout.lengths[:, None]) / (2 * np.pi * K)


def response_table(layout, end):
    """ln t and the rise of every segment per W/m of every other, a step from 0 to t."""
    ln_t = np.arange(np.log(TABLE_START), np.log(end) + 4 * TABLE_SPACING, TABLE_SPACING)
    s = 1 / np.sqrt(4 * DIFFUSIVITY * np.exp(ln_t))
    rise = panel_responses(layout, s[0], max(2 * s[0], 8 / R_BORE), 24)
    table = [rise]
    for low, high in zip(s[1:], s[:-1]):
        rise = rise + panel_responses(layout, low, high)
        table.append(rise)
    return ln_t, np.array(table)


def interpolation(ln_t, t):
    """Weights (one row per t) of the table's entries: polynomial through the six nearest; a zero row for t = 0."""
    weights = np.zeros((len(t), len(ln_t)))
    for row, time in zip(weights, t):
        if time <= 0:
            continue
        first = int(np.clip(np.searchsorted(ln_t, np.log(time)) - 3, 0, len(ln_t) - 6))
        x = ln_t[first:first + 6]
        for i in range(6):
            others = np.delete(x, i)
            row[first + i] = np.prod((np.log(time) - others) / (x[i] - others))
    return weights


def time_steps(ratio):
    """Geometric times from FIRST_STEP, the asked years among them."""
    times, start = [0.0, FIRST_STEP], FIRST_STEP
    for year in YEARS:
        count = int(np.ceil(np.log(year * YEAR / start) / np.log(ratio)))
        times += list(np.geomspace(start, year * YEAR, count + 1)[1:])
        start = year * YEAR
    return np.array(times)


def superposition(layout, ratios):
    """T_f at YEARS for each ratio of successive times."""
    ln_t, table = response_table(layout, YEARS[-1] * YEAR)
    m = len(layout.lengths)
    result = []
    for ratio in ratios:
        times = time_steps(ratio)
        heats, fluid = np.zeros((0, m)), []
        for k in range(1, len(times)):
            weights = -np.diff(interpolation(ln_t, times[k] - times[:k + 1]), axis=0)
            past = weights[:-1].T @ heats
            used = np.flatnonzero(np.any(past != 0, axis=1))
            history = np.einsum("tij,tj->i", table[used], past[used]) if len(used) else np.zeros(m)
            q, rise = layout.solve(np.tensordot(weights[-1], table, 1), history)
            heats = np.vstack([heats, q])
            fluid.append(rise)
        result.append([fluid[int(np.argmin(np.abs(times - y * YEAR))) - 1] for y in YEARS])
    return result


def transformed_kernel(r, wave):
    """f with f''(z) = exp(-wave R)/R, R = sqrt(r^2 + z^2), f(0) = f'(0) = 0; v = arsinh(z/r) makes the integrand smooth."""
    x, w = np.polynomial.legendre.leggauss(8)

    def f(z):
        v, back = np.unique(np.concatenate([np.arcsinh(z.ravel() / r), np.arcsinh(np.arange(0, z.max(), 0.5) / r), [0.0]]), return_inverse=True)
        half = 0.5 * np.diff(v)
        nodes = v[:-1, None] + half[:, None] * (x + 1)
        integral = np.append(0, np.cumsum(half * (np.exp(-wave * r * np.cosh(nodes)) @ w)))
        far = np.hypot(r, z)
        return z * integral[back[:z.size]].reshape(z.shape) - (np.exp(-wave * r) - np.exp(-wave * far)) / wave

    return f


def line_responses(layout, s):
    """Laplace transform at s of T_w of every segment per W/m of every other."""
    m, n = len(layout.lengths), layout.n
    response, known = np.zeros((m, m), dtype=complex), {}
    for a, own in enumerate(layout.edges):
        for b, other in enumerate(layout.edges):
            for r in layout.distances(a, b):
                key = (own[0], own[-1], other[0], other[-1], round(r, 9))
                if key not in known:
                    known[key] = second_difference(transformed_kernel(r, np.sqrt(s / DIFFUSIVITY)), own, other)
                response[a * n:(a + 1) * n, b * n:(b + 1) * n] += known[key]
    return response / (4 * np.pi * K * layout.lengths[:, None])


def transformed_rise(layout, s):
    """Laplace transform of T_f at s."""
    return layout.solve(line_responses(layout, s), np.zeros(len(layout.lengths)))[1] / s


def transform(layout, order=14):
    """T_f at YEARS by the fixed Talbot contour."""
    result = []
    for t in np.array(YEARS) * YEAR:
        r = 2 * order / (5 * t)
        total = 0.5 * np.exp(r * t) * transformed_rise(layout, complex(r)).real
        for angle in np.arange(1, order) * np.pi / order:
            cot = 1 / np.tan(angle)
            s = r * angle * (cot + 1j)
            total += (np.exp(t * s) * transformed_rise(layout, s) * (1 + 1j * (angle + (angle * cot - 1) * cot))).real
        result.append(r / order * total)
    return result


def extrapolate(coarse, middle, fine):
    """Limit and observed order of three values whose segments halve each time (Richardson)."""
    ratio = (coarse - middle) / (middle - fine)
    return fine + (fine - middle) / (ratio - 1), np.log2(ratio)


def table_rows(path):
    with open(path) as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def line_on_line(r, own, other, times):
    """2 pi k times the mean rise over the line `own` (D, H) per W/m of the line `other` at distance r, by the integral `superposition` uses."""
    values = []
    for t in times:
        s = np.geomspace(1 / np.sqrt(4 * DIFFUSIVITY * t), max(8 / r, 2 / np.sqrt(4 * DIFFUSIVITY * t)), 200)
        x, w = np.polynomial.legendre.leggauss(6)
        half = 0.5 * np.diff(np.log(s))[:, None]
        nodes, weights = np.exp(np.log(s[:-1, None]) + half * (x + 1)).ravel(), (half * w).ravel()
        edges = np.array([own[0], sum(own)]), np.array([other[0], sum(other)])
        inner = [second_difference(lambda z: ierf(z * v), *edges)[0, 0] for v in nodes]
        values.append(np.sum(weights / nodes * np.exp(-np.square(r * nodes)) * inner) / (2 * own[1]))
    return np.array(values)


def check(folder):
    """Largest relative differences of uniform lines from tables made by other means (mpmath at 40 digits)."""
    worst = 0.0
    for row in table_rows(folder / "finite_line_source.csv"):
        h = 100.0
        line = (float(row["D_over_H"]) * h, h)
        t = np.exp(float(row["ln_t_over_ts"])) * h * h / (9 * DIFFUSIVITY)
        g = float(row["g"])
        miss = abs(line_on_line(float(row["r_over_H"]) * h, line, line, [t])[0] - g)
        worst = np.maximum(worst, miss / max(g, 1e-2))
    print(f"finite_line_source.csv: largest difference {worst:.1e}, relative where g > 0.01, of 0.01 below")
    pairs = 0.0
    for row in table_rows(folder / "finite_line_pairs.csv"):
        r, d_i, h_i, d_j, h_j, years, g = (float(row[c]) for c in ("r", "D_i", "H_i", "D_j", "H_j", "years", "g"))
        pairs = np.maximum(pairs, abs(line_on_line(r, (d_i, h_i), (d_j, h_j), [years * YEAR])[0] - g) / max(g, 1e-2))
    print(f"finite_line_pairs.csv: largest difference {pairs:.1e}, likewise")
    uniform = Layout(CASES["one bore"], equal_edges, 1)
    exact = HEAT * (line_on_line(R_BORE, (2.0, 120.0), (2.0, 120.0), np.array(YEARS) * YEAR) / (2 * np.pi * K) + R_B)
    stepped = np.max(np.abs(superposition(uniform, [1.1])[0] / exact - 1))
    turned = np.max(np.abs(transform(uniform) / exact - 1))
    print(f"one bore at uniform heat: superposition {stepped:.1e}, transform {turned:.1e}")
    return max(worst, pairs) < 1e-9 and stepped < 1e-9 and turned < 1e-6


def solve_case(name):
    """Rows of the table for one case, one per year."""
    field = CASES[name]
    equal = [transform(Layout(field, equal_edges, n)) for n in (8, 16, 32)]
    graded = [transform(Layout(field, graded_edges, n)) for n in (16, 32, 64)]
    steps = superposition(Layout(field, graded_edges, 32), (1.1, 1.05))
    text = ";".join(":".join(f"{v:g}" for v in bore) for bore in field)
    for i, year in enumerate(YEARS):
        limit, order = extrapolate(*(g[i] for g in graded))
        yield name, text, year, limit, *(c[i] for c in equal + graded), order, *(c[i] for c in steps)


HEADER = """\
# What: rise of the common fluid temperature of fields of bores above the undisturbed ground (column rise), total heat constant from t = 0.
# Ground k = 2 W/(m K), rho c = 2e6 J/(m3 K), homogeneous, surface held at 0; bore radius 0.075 m, 0.1 K m/W from the wall of each segment to the
#   fluid; heat 20 W/m times the length of all bores, divided so that every segment has the same fluid temperature. A year is 8760 h.
# bores: x:y:D:H of each, D the depth of the top and H the length. Layouts invented.
# Source: finite line sources on segments, Claesson & Javed 2011, ASHRAE Transactions 117(2); Cimmino & Bernier 2014, Int. J. Heat Mass Transfer
#   70; written anew in segmented_line_sources.py, which writes this file (argument: write).
# How: rise = limit, with the observed order (column order), of graded_16, graded_32, graded_64: so many segments in each bore, shrinking towards
#   its ends, by the Laplace transform and the Talbot contour (Abate & Valko 2004). equal_n: n equal segments, the same way.
#   Second method: steps_1.1, steps_1.05: 32 graded segments, heats constant within time steps of this ratio, superposition in time.
# Precision: {precision}
# Note: {note}
# Limits of the model: the rise at a wall is that of a line at the distance of the radius, up to the very end of the bore, where the heat peaks over
#   lengths like the radius; the bores have no thickness and no heat capacity of their own.
# Units: m, year, K.
"""


def write(path):
    rows = []
    for name in CASES:
        rows += solve_case(name)
        print(name, *(f"{row[3]:.5f}" for row in rows[-len(YEARS):]), flush=True)
    columns = np.array([row[3:] for row in rows]).T
    rise, equal_8, equal_32, graded_32, graded_64, coarse, fine = columns[[0, 1, 3, 5, 6, 8, 9]]
    largest = [np.max(np.abs(a / b - 1)) for a, b in ((graded_64, rise), (fine, coarse), (2 * fine - coarse, graded_32))]
    precision = (
        "largest |graded_64 / rise - 1| {:.1e}; halving the time steps changes T_f by at most {:.1e}; carried on to\n"
        "#   steps of no length (2 steps_1.05 - steps_1.1) it differs from graded_32 by at most {:.1e}. So rise is within 5e-5 of the model's limit."
    ).format(*largest)
    high = [100 * (v / rise - 1) for v in (equal_8, equal_32)]
    note = (
        "equal segments stand high, 8 by {:.2f} to {:.2f} %, 32 by {:.2f} to {:.2f} %, and have no settled order (they do not resolve\n"
        "#   the ends), so equal_n must not be extrapolated."
    ).format(*(f(v) for v in high for f in (np.min, np.max)))
    with open(path, "w", newline="") as file:
        file.write(HEADER.format(precision=precision, note=note))
        file.write("case,bores,years,rise,equal_8,equal_16,equal_32,graded_16,graded_32,graded_64,order,steps_1.1,steps_1.05\n")
        for name, text, year, *numbers in rows:
            file.write(f"{name},{text},{year}," + ",".join(f"{v:.3f}" if i == 7 else f"{v:.6f}" for i, v in enumerate(numbers)) + "\n")


if __name__ == "__main__":
    here = pathlib.Path(__file__).resolve().parent
    command, *rest = sys.argv[1:] or ["check"]
    if command == "check":
        sys.exit(0 if check(pathlib.Path(rest[0]) if rest else here / "../../tests/reference") else 1)
    elif command == "write":
        write(rest[0] if rest else here / "common_temperature_fields.csv")
    else:
        sys.exit(f"{command}: found as command, allowed are check and write")
