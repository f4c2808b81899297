"""Straightness of random lines of heights, judged by scipy's linear programming and numpy's least squares.

python3 form_lines.py > form_lines.txt
"""

import platform

import numpy as np
import scipy
from scipy.optimize import linprog

rng = np.random.default_rng(20250403)
rows = []
while len(rows) < 100:
    kind = ["rough", "bow", "wave", "ties"][len(rows) % 4]
    n = int(rng.integers(3, 60))
    x = rng.permutation(np.cumsum(rng.integers(1, 40_000, n)))  # µm, in no order
    if kind == "ties":
        x = np.repeat(x, 2)[:n] if n > 3 else x
    u = (x - x.min()) / np.ptp(x)
    z = rng.normal(0, 2000, n) + rng.uniform(-50_000, 50_000) * u
    if kind == "bow":
        z += rng.choice([-1, 1]) * 30_000 * u * (1 - u)
    if kind == "wave":
        z += 10_000 * np.sin(9 * u)
    if kind == "ties":
        z = np.rint(z / 4000) * 4000
    z = np.rint(z).astype(int)
    one, nil = np.ones(n), np.zeros(n)
    scale = max(np.ptp(z), 1)
    zz = (z - z.mean()) / scale
    a = np.vstack([np.column_stack([-one, nil, -u]), np.column_stack([nil, one, u])])
    r = linprog([1, -1, 0], A_ub=a, b_ub=np.hstack([-zz, zz]), bounds=[(None, None)] * 3, method="highs",
                options=dict(primal_feasibility_tolerance=1e-10, dual_feasibility_tolerance=1e-10))
    zone = np.ptp(zz - r.x[2] * u) * scale  # at its slope, which is exact to 1e-10
    c = np.column_stack([one, u - u.mean()])
    d = z - z.mean() - c @ np.linalg.lstsq(c, z - z.mean(), rcond=None)[0]
    i, j = np.argmin(x), np.argmax(x)
    e = z - z[i] - (z[j] - z[i]) * u
    f = lambda *q: " ; ".join("%.3f" % v for v in q)
    rows.append(f"{kind} {len(rows) + 1} ; {f(np.ptp(d), d.max(), -d.min(), np.sqrt((d * d).mean()), zone, max(0, e.max()), max(0, -e.min()))} ; "
                + " ".join(f"{a} {b}" for a, b in zip(x, z)))

print(f"# source: scipy {scipy.__version__}, numpy {np.__version__}, Python {platform.python_version()}; made by form_lines.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Straightness beside the least squares line (t, p, v, q), of the minimum zone (zone) and above and below the end-point")
print("# line, in nm. Points stand as x z x z …, places in µm and heights in nm.")
print("columns: id; t; p; v; q; zone; above; below; points")
print("\n".join(rows))
