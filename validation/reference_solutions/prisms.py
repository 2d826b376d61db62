"""Finite elements on prisms: quadratic triangles in plan times quadratic elements over depth, for bores in layered ground.

Every matrix is a sum of Kronecker products [plan node, depth node]: one term for what lies outside the bores and one for each bore's disc, at the
depths where it is ground. The plan's matrices come from FreeFem++ (four_bores.edp), those over depth are made here. Used by four_bores.py.
"""

import math
import tempfile

import numpy as np
import scipy.linalg
import scipy.sparse as sp
from scipy.sparse.linalg import splu
from scipy.special import gamma

from fe_mesh import counted, freefem, numbers

MIDDLE = 9.0  # [m] from here out the plan's rings are about the origin
NEAR = 2.3  # [m] up to about here they are about the bores
TOLERANCE = 1e-8


class Bore:
    """A bore that gives off heat at all depths from top to toe; `mirrored`: 1 if it stands off the axis and has a mirror image, 1/2 if on it."""

    def __init__(self, x, y, top, length):
        self.x, self.y, self.top, self.length = x, y, top, length
        self.mirrored = 1.0 if y > 0 else 0.5


def circumscribed(radius, sides):
    """Of the regular polygon with this logarithmic radius (Polya & Szego 1951, Isoperimetric inequalities; from memory)."""
    side = radius * 2 ** (1 + 2 / sides) * math.sqrt(math.pi) * gamma(0.5 + 1 / sides) / gamma(1 / sides)
    return side / (2 * math.sin(math.pi / sides))


class Plan:
    """The plan's matrices: storage and conduction of part 0 (outside the bores) and each disc, mass of each wall, values at the points."""

    def __init__(self, bores, radius, sides, far, points):
        ratio = math.exp(2 * math.pi / sides)
        rings = int(math.log(NEAR / radius) / math.log(ratio)) + 1
        outskirts = round(math.log(far / MIDDLE) / math.log(ratio))
        text = numbers([sides, len(bores), rings, outskirts + 1], [(b.x, b.y) for b in bores],
                       circumscribed(radius, sides) * ratio ** np.arange(rings), np.geomspace(MIDDLE, far, outskirts + 1), counted(points))
        with tempfile.TemporaryDirectory() as scratch:
            lines = iter(freefem("four_bores.edp", text, scratch))
        self.size = int(next(lines)[0])

        def matrix():
            entries = np.array([next(lines) for _ in range(int(next(lines)[0]))])
            entries = entries[entries[:, 2] != 0]
            return sp.csr_matrix((entries[:, 2], entries[:, :2].astype(int).T), shape=(self.size, self.size))

        pairs = [(matrix(), matrix()) for _ in range(len(bores) + 1)]
        self.storage = [pair[0] for pair in pairs]
        self.conduction = [pair[1] for pair in pairs]
        self.wall = [matrix() for _ in bores]
        self.values = np.array([next(lines) for _ in points])


class Depth:
    """Elements over depth, between faces that hold every layer's bottom and every bore's end; the surface's node is left out. Layers as (bottom,
    k, rho c)."""

    def __init__(self, faces, layers):
        self.faces, self.middle = faces, (faces[1:] + faces[:-1]) / 2
        self.z = np.sort(np.concatenate([faces, self.middle]))[1:]
        layer = [next(layer for layer in layers if z < layer[0]) for z in self.middle]
        self.conductivity = np.array([one[1] for one in layer])
        self.capacity = np.array([one[2] for one in layer])

    def matrix(self, element, weight):
        """Assembled of the element matrices weight * element(height)."""
        full = sp.lil_matrix((len(self.z) + 1, len(self.z) + 1))
        for e, (height, w) in enumerate(zip(np.diff(self.faces), weight)):
            nodes = slice(2 * e, 2 * e + 3)
            full[nodes, nodes] += w * element(height)
        return full.tocsr()[1:, 1:]

    def storage(self, weight):
        return self.matrix(lambda h: h / 30 * np.array([[4, 2, -1], [2, 16, 2], [-1, 2, 4]]), weight)

    def conduction(self, weight):
        return self.matrix(lambda h: 1 / (3 * h) * np.array([[7, -8, 1], [-8, 16, -8], [1, -8, 7]]), weight)

    def active(self, bore):
        return ((self.middle > bore.top) & (self.middle < bore.top + bore.length)).astype(float)

    def values(self, z):
        """Shape functions at a depth."""
        e = min(int(np.searchsorted(self.faces, z)) - 1, len(self.middle) - 1)
        t = (z - self.faces[e]) / (self.faces[e + 1] - self.faces[e])
        row = np.zeros(len(self.z) + 1)
        row[2 * e:2 * e + 3] = (1 - t) * (1 - 2 * t), 4 * t * (1 - t), t * (2 * t - 1)
        return row[1:]


class Field:
    """Storage and conduction (walls included) on the nodes that exist. `sources` of each bore in the half plan: dot T they are the wall's mean
    temperature times their sum; their sum is the mirrored length over the resistance. `adiabatic`: no ground above tops and below toes."""

    def __init__(self, bores, plan, depth, resistance, adiabatic):
        k, c = depth.conductivity, depth.capacity
        ground = [np.ones_like(k)] + [0 * k if adiabatic else 1 - depth.active(b) for b in bores]
        storage = sum(sp.kron(m, depth.storage(c * here)) for m, here in zip(plan.storage, ground))
        conduction = sum(sp.kron(s, depth.storage(k * here)) + sp.kron(m, depth.conduction(k * here))
                         for s, m, here in zip(plan.conduction, plan.storage, ground))
        self.exists = storage.diagonal() > 0
        self.sources = []
        for bore, wall in zip(bores, plan.wall):
            share = wall * (bore.mirrored / wall.sum() / resistance)
            active = depth.storage(depth.active(bore))
            conduction = conduction + sp.kron(share, active)
            self.sources.append(np.kron(np.asarray(share.sum(0)).ravel(), np.asarray(active.sum(0)).ravel())[self.exists])
        self.storage = storage.tocsr()[self.exists][:, self.exists]
        self.conduction = conduction.tocsr()[self.exists][:, self.exists]
        self.bores, self.plan, self.depth, self.resistance = bores, plan, depth, resistance

    def full(self, x):
        """[plan node, depth node], zero where there is no ground."""
        y = np.zeros(len(self.exists))
        y[self.exists] = x
        return y.reshape(self.plan.size, -1)


class Modes:
    """Preconditioner: a stage in ground whose bores reach from surface to bottom and whose rho c/k is one number, exactly, by its modes over
    depth."""

    def __init__(self, field):
        depth, plan = field.depth, field.plan
        k, c = depth.conductivity, depth.capacity
        self.values, self.vectors = scipy.linalg.eigh(depth.conduction(k).toarray(), depth.storage(k).toarray())
        self.ratio = math.exp(np.mean(np.log(c / k)))
        self.storage, self.conduction = sum(plan.storage), sum(plan.conduction)
        for bore, wall in zip(field.bores, plan.wall):
            self.conduction = self.conduction + wall * (bore.mirrored / wall.sum() / field.resistance / np.mean(k))
        self.field = field

    def prepare(self, kappa):
        self.factors = [splu((kappa * self.conduction + (self.ratio + kappa * value) * self.storage).tocsc(), diag_pivot_thresh=0.0,
                             options={"SymmetricMode": True}, permc_spec="MMD_AT_PLUS_A") for value in self.values]

    def __call__(self, x):
        modes = self.field.full(x) @ self.vectors
        for m, factor in enumerate(self.factors):
            modes[:, m] = factor.solve(modes[:, m].copy())
        return (modes @ self.vectors.T).ravel()[self.field.exists]


def solve(matrix, rhs, start, precondition):
    """Conjugate gradients until the preconditioned residual is TOLERANCE of the right side's."""
    x = start.copy()
    residual = rhs - matrix @ x
    limit = TOLERANCE * math.sqrt(rhs @ precondition(rhs))
    z = precondition(residual)
    p, rz = z.copy(), residual @ z
    while math.sqrt(rz) > limit:
        q = matrix @ p
        step = rz / (p @ q)
        x += step * p
        residual -= step * q
        z = precondition(residual)
        rz, old = residual @ z, rz
        p = z + (rz / old) * p
    return x
