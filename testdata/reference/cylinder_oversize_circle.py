"""Reference vectors for the least circle over a worn bore, by scipy.

python3 cylinder_oversize_circle.py > cylinder_oversize_circle.txt

The centre C and the excess t over the bore's radius R solve

    minimise t, subject to |P_i - C| <= R + t for each wall point and |C| <= t for the unworn bore,

a convex problem, which scipy.optimize.minimize (SLSQP) solves from three starting points, in hundredths of
a millimetre; of the three the least is kept whose constraints hold. Wear is given in picometres.
"""

import math
import platform
import random

import numpy
import scipy
from scipy.optimize import minimize

SCALE = 1e7  # picometres in a hundredth of a millimetre


def solve(radius, walls):
    points = numpy.array([((radius + w) * math.cos(a), (radius + w) * math.sin(a)) for a, w in walls]) / SCALE
    r = radius / SCALE

    def slack(v):
        d = numpy.hypot(points[:, 0] - v[0], points[:, 1] - v[1])
        return numpy.append(r + v[2] - d, v[2] - math.hypot(v[0], v[1]))

    def jacobian(v):
        dx, dy = v[0] - points[:, 0], v[1] - points[:, 1]
        d = numpy.hypot(dx, dy)
        rows = numpy.column_stack([-dx / d, -dy / d, numpy.ones(len(d))])
        h = math.hypot(v[0], v[1]) or 1.0
        return numpy.vstack([rows, [-v[0] / h, -v[1] / h, 1.0]])

    best = None
    most = max(max(w for _, w in walls), 0) / SCALE
    for start in ([0.0, 0.0, most], [most / 3, most / 5, most], [-most / 4, most / 3, most]):
        found = minimize(
            lambda v: v[2], start, jac=lambda v: numpy.array([0.0, 0.0, 1.0]), method="SLSQP",
            constraints=[{"type": "ineq", "fun": slack, "jac": jacobian}], options={"ftol": 1e-15, "maxiter": 1000})
        # Whatever the optimiser leaves over is put on the radius, so that the circle covers.
        t = found.x[2] + max(0.0, -slack(found.x).min())
        if best is None or t < best:
            best = t
    return best * SCALE


def main():
    rng = random.Random(4)
    cases = []
    for i in range(200):
        bore = rng.choice([50, 86, 101.6, 150]) * 1_000_000_000
        n = rng.choice([2, 3, 4, 4, 4, 6, 8, 12])
        levels = rng.choice([1, 1, 2, 4, 6])
        heading0 = rng.choice([0, 0, 7, 30])
        walls = []
        for _ in range(levels):
            for k in range(n):
                walls.append((heading0 + 360 * k / n, rng.choice([0, rng.randrange(0, 200_000_000)])))
        t = solve(bore / 2, [(math.radians(a), w) for a, w in walls])
        cases.append((i + 1, bore, " ".join(f"{a:.6f}:{w}" for a, w in walls), t))
    print(f"# source: scipy {scipy.__version__} minimize (SLSQP), numpy {numpy.__version__}, Python {platform.python_version()}; cylinder_oversize_circle.py")
    print("# kind: reference")
    print(f"# count: {len(cases)}")
    print("# The least circle over wall points at heading (degrees) and wear on the radius (pm), and over the unworn bore of the given")
    print("# diameter (pm): its diameter less the bore's, in pm, to 1 nm.")
    print("columns: id; bore; walls; excess")
    for i, bore, walls, t in cases:
        print(f"{i} ; {bore:.0f} ; {walls} ; {2 * t:.0f} ± 1000")


main()
