"""Reference vectors for the straightness of a line of saddles, by scipy.

python3 cylinder_tunnel_lines.py > cylinder_tunnel_lines.txt

The least zone that holds all heights is a linear programme: least w with a + b x_i - w/2 <= h_i <= a + b x_i + w/2.
"""

import platform
import random

import numpy
import scipy
from scipy.optimize import linprog

random.seed(20263)
rows = []
for _ in range(120):
    n = random.randrange(3, 9)
    x = sorted(random.sample(range(0, 900), n))
    tilt, wide = random.randrange(-200, 200), random.choice([5, 50, 200])
    h = [random.randrange(-wide, wide + 1) + tilt * p // 900 for p in x]  # µm
    rows_a, rows_b = [], []
    for p, v in zip(x, h):
        q = p / 900
        rows_a += [[1, q, -0.5], [-1, -q, -0.5]]
        rows_b += [v, -v]
    r = linprog([0, 0, 1], A_ub=rows_a, b_ub=rows_b, bounds=[(None, None), (None, None), (0, None)], method="highs")
    assert r.status == 0
    rows.append((" ".join(map(str, x)), " ".join(map(str, h)), f"{r.fun:.9f}"))

print(f"# source: scipy {scipy.__version__} linprog, numpy {numpy.__version__}, Python {platform.python_version()}; made by cylinder_tunnel_lines.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Places along the tunnel in mm, heights and the least zone in micrometres.")
print("columns: places; heights; zone")
for r in rows:
    print(" ; ".join(r))
