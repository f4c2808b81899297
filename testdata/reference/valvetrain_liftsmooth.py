"""Reference vectors for smoothed velocity and acceleration of a lift table, by numpy and scipy.

python3 valvetrain_liftsmooth.py > valvetrain_liftsmooth.txt

At each point with a whole window numpy.polyfit fits a parabola to the points in it; on even steps
scipy.signal.savgol_filter must agree.
"""

import math
import platform
import random

import numpy
import scipy
from scipy.signal import savgol_filter

rnd = random.Random(3100)
rows = []
for n in range(16):
    even = n % 2 == 0
    step = rnd.choice((1, 2, 5))
    x, a = [], rnd.randrange(-150, 0)
    for _ in range(90):
        x.append(round(a, 2))
        a += step if even else rnd.choice((1, 1.5, 2, 3))
    centre, width, top = (x[0] + x[-1]) / 2, (x[-1] - x[0]) * 0.8, rnd.uniform(5, 14)
    y = []
    for a in x:
        u = (a - centre) / width + 0.5
        y.append(round((top * math.sin(math.pi * u) ** 2 if 0 < u < 1 else 0) + rnd.uniform(-0.005, 0.005), 4))
    w = rnd.choice((2, 3, 4)) * (step if even else 3)
    got = []
    for i, a in enumerate(x):
        if a - w < x[0] - 1e-9 or a + w > x[-1] + 1e-9:
            continue
        inside = [(b - a, y[j]) for j, b in enumerate(x) if abs(b - a) <= w + 1e-9]
        c2, c1, _ = numpy.polyfit([p for p, _ in inside], [q for _, q in inside], 2)
        got.append((a, c1, 2 * c2))
    if even:
        size = 2 * int(w // step) + 1
        v = savgol_filter(y, size, 2, deriv=1, delta=step)
        c = savgol_filter(y, size, 2, deriv=2, delta=step)
        for a, c1, c2 in got:
            i = x.index(a)
            assert abs(v[i] - c1) < 1e-11 and abs(c[i] - c2) < 1e-11
    pick = lambda k, f: f(got, key=lambda g: g[k])
    up, down, faster, slower = pick(1, max), pick(1, min), pick(2, max), pick(2, min)
    rows.append([",".join(f"{a:g}" for a in x), ",".join(f"{b:g}" for b in y), f"{w:g}", str(len(got)),
                 f"{up[0]:g}", f"{up[1]:.13f} ± 1e-11", f"{down[0]:g}", f"{down[1]:.13f} ± 1e-11",
                 f"{faster[0]:g}", f"{faster[2]:.13f} ± 1e-11", f"{slower[0]:g}", f"{slower[2]:.13f} ± 1e-11"])

print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, Python {platform.python_version()}; made by valvetrain_liftsmooth.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# A lift table with a dial's noise and the half-width of the fits in degrees: how many points have a whole window,")
print("# and where velocity (mm/°) and acceleration (mm/°²) are greatest and least.")
print("columns: angles; lifts; half; fitted; up_at; up; down_at; down; faster_at; faster; slower_at; slower")
for r in rows:
    print(" ; ".join(r))
