"""Reference vectors for the least clearance between piston and valve, by scipy.

python3 valvetrain_pistonvalve.py > valvetrain_pistonvalve.txt

The clearance is evaluated on a fine grid, and from each local low of it
scipy.optimize.minimize_scalar goes on. The room to advance or retard is
scipy.optimize.brentq's on the least over the shift. The gudgeon pin's height is
that of the throw's angle, with top dead centre where throw and rod are in line.
"""

import math
import platform
import random

import numpy
import scipy
from scipy.interpolate import CubicSpline, PchipInterpolator
from scipy.optimize import brentq, minimize_scalar

rnd = random.Random(311)


def fall(deg, r, l, e):
    t = numpy.radians(deg) - math.asin(e / (l + r))
    return math.sqrt((l + r) ** 2 - e**2) - r * numpy.cos(t) - numpy.sqrt(l * l - (r * numpy.sin(t) + e) ** 2)


def least(f, x, c0, k, r, l, e, shift=0.0):
    g = lambda a: c0 + k * fall(a - shift, r, l, e) - float(f(a))
    grid = numpy.unique(numpy.concatenate([x, numpy.linspace(x[0], x[-1], 20001)]))
    c = c0 + k * fall(grid - shift, r, l, e) - f(grid)
    best = (c0, None)
    for i in range(1, len(grid) - 1):
        if c[i] <= c[i - 1] and c[i] <= c[i + 1] and c[i] < best[0] + 1e-3:
            m = minimize_scalar(g, bounds=(grid[i - 1], grid[i + 1]), method="bounded", options={"xatol": 1e-9})
            for v, a in ((m.fun, m.x), (c[i], grid[i])):
                if v < best[0] - 1e-12:
                    best = (float(v), float(a))
    return best


rows = []
for n in range(40):
    exhaust = n % 2 == 1
    way = rnd.choice(("shape-preserving", "cubic spline"))
    flat = rnd.random() < 0.3
    r, l = round(rnd.uniform(30, 55), 2), 0
    l = round(r * rnd.uniform(3, 4.2), 2)
    e = rnd.choice((0, 0, round(rnd.uniform(-1, 1), 2), round(rnd.uniform(-8, 8), 1)))
    psi = rnd.choice((0, round(rnd.uniform(5, 30), 1)))
    centre, duration, top = rnd.uniform(98, 118) * (-1 if exhaust else 1), rnd.uniform(220, 320), rnd.uniform(7, 13)
    x, a = [], round(centre - duration / 2 - 10, 2)
    while a < centre + duration / 2 + 10:
        x.append(round(a, 2))
        a += rnd.choice((1, 2, 5)) if n < 30 else rnd.uniform(4, 11)
    y = [round(top * math.sin(math.pi * ((a - centre) / duration + 0.5)) ** 2, 4) if abs(a - centre) < duration / 2 else 0.0 for a in x]
    f = PchipInterpolator(x, y) if way == "shape-preserving" else CubicSpline(x, y, bc_type="not-a-knot")
    k = 1 / math.cos(math.radians(psi)) if flat else math.cos(math.radians(psi))
    c0 = round(rnd.uniform(2, 9), 3)
    xa = numpy.array(x)
    c, at = least(f, xa, c0, k, r, l, e)
    wanted, left, free = round(min(max(0.3, rnd.uniform(0.3, c + 1)), c0 - 0.2), 3), "-", "-"
    sign = -1 if exhaust else 1
    peak = x[y.index(max(y))]
    if n < 20:
        h = lambda s: least(f, xa, c0, k, r, l, e, sign * s)[0] - wanted
        if h(-80) > 0 > h(abs(peak) - 1):
            left, free = f"{brentq(h, -80, abs(peak) - 1, xtol=1e-9):.8f} ± 2e-6", "no"
    rows.append([way, "flat" if flat else "pocket", f"{r}", f"{l}", f"{e}", f"{psi}", f"{c0}", ",".join(f"{a:g}" for a in x), ",".join(f"{b:g}" for b in y),
                 f"{c:.12f} ± 5e-9", "-" if at is None else f"{at:.5f} ± 1e-3", f"{wanted}", left])

print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, Python {platform.python_version()}; made by valvetrain_pistonvalve.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Crown, throw, rod, offset (mm), the valve's angle to the bore (°), the drop at dead centre (mm) and the lift curve at")
print("# the valve: the least clearance (mm), the crank angle of it (none where it is with the valve shut), a wanted clearance")
print("# and how far the camshaft may be moved toward dead centre, in degrees of the crankshaft, until that is left.")
print("columns: way; crown; throw; rod; offset; psi; drop; angles; lifts; least; at; wanted; left")
for row in rows:
    print(" ; ".join(row))
