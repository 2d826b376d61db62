"""What the finite-element reference solutions share: meshes over depth, steps in time, FreeFem++."""

import math
import pathlib
import subprocess

import numpy as np

HERE = pathlib.Path(__file__).resolve().parent
DAY = 86400.0
YEAR = 365 * DAY


def graded_faces(fixed, finest, growth, largest):
    """Faces from 0 to the last of `fixed` [m] that hold all of `fixed`; cells of `finest` at each of them, longer by `growth` per metre
    away from it, up to `largest` above the last but one of them and without bound below."""
    fixed = sorted(fixed)
    critical, last = np.array(fixed[:-1]), fixed[-2]

    def wanted(z):
        size = finest + growth * np.min(np.abs(z - critical))
        return min(size, largest) if z < last else size

    faces = [0.0]
    for low, high in zip(fixed[:-1], fixed[1:]):
        z = np.linspace(low, high, 4001)
        middle = (z[1:] + z[:-1]) / 2
        cells = np.concatenate([[0], np.cumsum([(z[1] - z[0]) / wanted(m) for m in middle])])
        n = max(1, math.ceil(cells[-1]))
        faces += list(np.interp(np.arange(1, n + 1) * cells[-1] / n, cells, z))
    return np.array(faces)


def halved(faces, times):
    """Every cell cut in two, `times` times."""
    for _ in range(times):
        faces = np.sort(np.concatenate([faces, (faces[1:] + faces[:-1]) / 2]))
    return faces


def steps(times, per_piece, first_pieces):
    """Pieces [(step, count, is a time of the table)]: each about as long as all that went before it; the first is 2**-first_pieces of
    times[0]."""
    pieces, now = [], 0.0
    for target in times:
        count = first_pieces if now == 0 else math.ceil(math.log2(target / now) - 1e-9)
        ratio = 2.0 if now == 0 else (target / now) ** (1 / count)
        ends = [target / ratio ** (count - i) for i in range(0 if now == 0 else 1, count + 1)]
        for end in ends:
            pieces.append(((end - now) / per_piece, per_piece, end == ends[-1]))
            now = end
    return pieces


def numbers(*groups):
    """A case as FreeFem++ reads it: each group's numbers on a line."""
    return "\n".join(" ".join(f"{float(x):.17g}" for x in np.ravel(group)) for group in groups) + "\n"


def counted(values):
    """`values` after their number."""
    return [len(values), *np.ravel(values)]


def freefem(script, case, scratch):
    """Runs a script of ours on a case; the numbers it wrote, a list a line."""
    given, result = pathlib.Path(scratch, "case.txt"), pathlib.Path(scratch, "result.txt")
    given.write_text(case)
    subprocess.run(["FreeFem++", "-nw", "-v", "0", HERE / script, given, result], check=True, stdout=subprocess.DEVNULL)
    return [[float(x) for x in line.split()] for line in result.read_text().splitlines()]


def write_table(path, head, rows):
    """A table with its head as comments; floats to nine digits."""
    def text(value):
        return f"{value:.9g}" if isinstance(value, float) else str(value)

    lines = [f"# {line}" for line in head.splitlines()]
    lines += [",".join(rows[0])] + [",".join(text(v) for v in row.values()) for row in rows]
    path.write_text("\n".join(lines) + "\n")
    print(path.name, "written")
