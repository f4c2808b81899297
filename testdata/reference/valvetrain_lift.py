"""Reference vectors for lift curves, by scipy.

python3 valvetrain_lift.py > valvetrain_lift.txt

Curves are scipy.interpolate.PchipInterpolator's and CubicSpline's (not-a-knot).
Angles at a lift are scipy.optimize.brentq's on them, areas scipy.integrate.quad's
of what is above, piece by piece, the greatest lift that of
scipy.optimize.minimize_scalar in each piece, velocities and accelerations the
extremes of the derived piecewise polynomials at their knots and turns.
"""

import math
import platform
import random

import numpy
import scipy
from scipy.integrate import quad
from scipy.interpolate import CubicSpline, PchipInterpolator
from scipy.optimize import brentq, minimize_scalar

rnd = random.Random(310)


def lobe(a, centre, duration, top, skew):
    """An invented smooth lobe: zero outside, skewed by a power."""
    u = (a - centre) / duration + 0.5
    if not 0 < u < 1:
        return 0.0
    return top * math.sin(math.pi * u**skew) ** 2


def tables():
    for n in range(24):
        way = ("shape-preserving", "cubic spline")[n % 2]
        centre, duration, top = rnd.uniform(-120, 120), rnd.uniform(200, 300), rnd.uniform(5, 14)
        skew = rnd.choice((1, 1, rnd.uniform(0.85, 1.15)))
        lo, hi = centre - duration / 2 - 12, centre + duration / 2 + 12
        a = lo
        angles = []
        while a < hi:
            angles.append(round(a, 2))
            a += 5 if n < 8 else rnd.choice((1, 2, 5, 10)) if n < 16 else rnd.uniform(1, 12)
        noise = 0.004 if n % 3 == 2 and way == "shape-preserving" else 0
        lifts = [round(max(0, lobe(a, centre, duration, top, skew) + rnd.uniform(-noise, noise)), 4) if lobe(a, centre, duration, top, skew) > 0.05 else 0.0 for a in angles]
        # A noisy flank is kept monotone: the test of a flank that isn't is another one.
        k = lifts.index(max(lifts))
        lifts[: k + 1] = list(numpy.maximum.accumulate(lifts[: k + 1]))
        lifts[k:] = list(numpy.maximum.accumulate(lifts[k:][::-1])[::-1])
        yield way, angles, lifts


def pieces(p, f):
    """The points at which a piecewise polynomial's extremes can lie."""
    places = list(p.x)
    d = p.derivative()
    places += [r for r in d.roots(extrapolate=False) if math.isfinite(r)]
    if f:
        places += [min(x + 1e-12, p.x[-1]) for x in p.x]
    return places


rows = []
for n, (way, x, y) in enumerate(tables()):
    f = PchipInterpolator(x, y) if way == "shape-preserving" else CubicSpline(x, y, bc_type="not-a-knot")
    q = round(rnd.uniform(x[0], x[-1]), 4)
    top, at = max((y[i], x[i]) for i in range(len(x)))
    for a, b in zip(x, x[1:]):
        m = minimize_scalar(lambda t: -float(f(t)), bounds=(a, b), method="bounded", options={"xatol": 1e-10})
        if -m.fun > top + 1e-13:
            top, at = -m.fun, m.x
    level = round(rnd.uniform(0.05, 0.9) * top, 4)
    grid = sorted({*x, at})
    rise = [(a, b) for a, b in zip(grid, grid[1:]) if f(a) <= level < f(b) and b <= at + 1e-9]
    down = [(a, b) for a, b in zip(grid, grid[1:]) if f(a) > level >= f(b) and a >= at - 1e-9]
    opening = brentq(lambda t: f(t) - level, *rise[-1], xtol=1e-13, rtol=1e-14)
    closing = brentq(lambda t: f(t) - level, *down[0], xtol=1e-13, rtol=1e-14)

    def above(lift):
        total = 0.0
        for a, b in zip(x, x[1:]):
            cuts = [a, b] + [r for r in f.solve(lift, extrapolate=False) if a < r < b]
            cuts = sorted(c for c in cuts if math.isfinite(c))
            for c, d in zip(cuts, cuts[1:]):
                total += quad(lambda t: max(0.0, float(f(t)) - lift), c, d, epsabs=1e-13, epsrel=1e-13)[0]
        return total

    d1, d2 = f.derivative(1), f.derivative(2)
    v = [float(d1(t)) for t in list(x) + [r for r in d2.roots(extrapolate=False) if math.isfinite(r)]]
    c2 = []
    for i, (a, b) in enumerate(zip(x, x[1:])):
        k = f.c[:, i]
        c2 += [2 * k[1], 2 * k[1] + 6 * k[0] * (b - a)]
    rows.append([way, ",".join(f"{a:g}" for a in x), ",".join(f"{b:g}" for b in y), f"{q}", f"{float(f(q)):.12f} ± 2e-9",
                 f"{level}", f"{opening:.11f} ± 1e-7", f"{closing:.11f} ± 1e-7", f"{at:.8f} ± 2e-5", f"{top:.12f} ± 2e-9",
                 f"{above(0):.11f} ± 1e-8", f"{above(level):.11f} ± 1e-8",
                 f"{max(v):.12f} ± 1e-10", f"{min(v):.12f} ± 1e-10", f"{max(c2):.12f} ± 1e-10", f"{min(c2):.12f} ± 1e-10"])

print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, Python {platform.python_version()}; made by valvetrain_lift.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# A lift table (degrees of the crankshaft, mm) and a way between its points; the lift at an angle; the two angles at a")
print("# level; the greatest lift; areas above zero and above the level (mm·°); greatest and least velocity and acceleration.")
print("columns: way; angles; lifts; query; lift; level; opening; closing; peak_at; peak; area; area_above; up; down; faster; slower")
for r in rows:
    print(" ; ".join(r))
