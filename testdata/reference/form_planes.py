"""Flatness of random grids and scattered points, judged by scipy's linear programming and numpy's least squares.

python3 form_planes.py > form_planes.txt
"""

import platform

import numpy as np
import scipy
from scipy.optimize import linprog

rng = np.random.default_rng(20250402)


def zone(x, y, z):
    """The closest two planes, solved twice: as the primal programme and as its dual; they must agree."""
    sx, sy, sz = np.ptp(x), np.ptp(y), max(np.ptp(z), 1)
    x, y, z = (x - x.mean()) / sx, (y - y.mean()) / sy, (z - z.mean()) / sz
    one, nil = np.ones(len(x)), np.zeros(len(x))
    a = np.vstack([np.column_stack([-one, nil, -x, -y]), np.column_stack([nil, one, x, y])])
    opt = dict(primal_feasibility_tolerance=1e-10, dual_feasibility_tolerance=1e-10)
    p = linprog([1, -1, 0, 0], A_ub=a, b_ub=np.hstack([-z, z]), bounds=[(None, None)] * 4, method="highs", options=opt)
    eq = np.array([np.hstack([one, nil]), np.hstack([nil, one]), np.hstack([x, -x]), np.hstack([y, -y])])
    d = linprog(np.hstack([-z, z]), A_eq=eq, b_eq=[1, 1, 0, 0], method="highs", options=opt)
    w = np.ptp(z - p.x[2] * x - p.x[3] * y)  # at its slopes
    assert abs(p.fun + d.fun) < 1e-8 and abs(w - p.fun) < 1e-8, (p.fun, d.fun, w)
    return w * sz


rows = []
while len(rows) < 200:
    kind = ["rough", "twist", "dish", "scattered", "tilted"][len(rows) % 5]
    if kind == "scattered":
        n = int(rng.integers(5, 41))
        x, y = rng.integers(0, 200_000, n), rng.integers(0, 100_000, n)
        columns = "-"
    else:
        across, along = (10, 20) if len(rows) % 10 == 0 else rng.integers(2, 11, 2)
        sx, sy = rng.integers(5_000, 30_000, 2)
        x, y = np.meshgrid(np.arange(along) * sx, np.arange(across) * sy)
        x, y, n, columns = x.ravel(), y.ravel(), along * across, along
    u, v = x / x.max() - 0.5, y / y.max() - 0.5
    z = rng.normal(0, 2000, n)
    if kind == "twist":
        z += 40_000 * u * v
    if kind == "dish":
        z += 60_000 * (u * u + 0.5 * v * v)
    if kind == "tilted":
        z += 300_000 * u - 150_000 * v
    z = np.rint(z + rng.uniform(-20_000, 20_000)).astype(int)
    if columns == "-" and np.linalg.matrix_rank(np.column_stack([np.ones(n), u, v])) < 3:
        continue
    a = np.column_stack([np.ones(n), x - x.mean(), y - y.mean()])
    s = np.linalg.lstsq(a, z - z.mean(), rcond=None)[0]
    r = z - z.mean() - a @ s
    f = lambda *q: " ; ".join("%.6f" % v for v in q)
    place = f"{columns} ; {sx} ; {sy}" if columns != "-" else "- ; - ; -"
    points = " ".join(map(str, z)) if columns != "-" else " ".join(f"{a} {b} {c}" for a, b, c in zip(x, y, z))
    rows.append(f"{kind} {len(rows) + 1} ; {n} ; {place} ; {f(np.ptp(r), r.max(), -r.min(), np.sqrt((r * r).mean()))} ; {f(zone(x, y, z))} ; {points}")

print(f"# source: scipy {scipy.__version__}, numpy {np.__version__}, Python {platform.python_version()}; made by form_planes.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Flatness beside the least squares plane (t, p, v, q) and of the minimum zone (zone), in nm. Grids have steps in nm and")
print("# heights row by row; scattered points stand as x y z x y z …, all in nm.")
print("columns: id; n; columns; stepx; stepy; t; p; v; q; zone; heights")
print("\n".join(rows))
