"""Reference vectors for the greatest circle within a worn journal, by scipy.

python3 crank_undersize_centre.py > crank_undersize_centre.txt

What is gone of the journal is all beyond R - w along each direction that was dialled, and all beyond R
elsewhere. The greatest circle that contains nothing of that has the radius

    max over C of min( min_i |P_i - C|, R - |C| ),   P_i = (R - w_i) u_i

which scipy.optimize.minimize (SLSQP) finds from several starting points with the true distances, not their
linear parts; of these the greatest is kept whose constraints hold. Wear is given in picometres.
"""

import math
import platform
import random

import numpy
import scipy
from scipy.optimize import minimize

SCALE = 1e7  # picometres in a hundredth of a millimetre


def solve(radius, walls):
    u = numpy.array([(math.cos(a), math.sin(a)) for a, _ in walls])
    w = numpy.array([x for _, x in walls]) / SCALE
    r = radius / SCALE
    points = (r - w)[:, None] * u

    def slack(v):
        d = numpy.hypot(points[:, 0] - v[0], points[:, 1] - v[1])
        return numpy.append(d - (r - v[2]), v[2] - math.hypot(v[0], v[1]))

    def jacobian(v):
        dx, dy = v[0] - points[:, 0], v[1] - points[:, 1]
        d = numpy.hypot(dx, dy)
        rows = numpy.column_stack([dx / d, dy / d, numpy.ones(len(d))])
        h = math.hypot(v[0], v[1]) or 1.0
        return numpy.vstack([rows, [-v[0] / h, -v[1] / h, 1.0]])

    best = None
    most = max(max(w), 0.0)
    for start in ([0.0, 0.0, most], [most / 3, most / 5, most], [-most / 4, most / 3, most], [-most / 3, -most / 3, most], [most / 4, -most / 3, most]):
        found = minimize(
            lambda v: v[2], start, jac=lambda v: numpy.array([0.0, 0.0, 1.0]), method="SLSQP",
            constraints=[{"type": "ineq", "fun": slack, "jac": jacobian}], options={"ftol": 1e-15, "maxiter": 1000})
        t = found.x[2] + max(0.0, -slack(found.x).min())
        if best is None or t < best[0]:
            best = (t, math.hypot(found.x[0], found.x[1]))
    return best[0] * SCALE, best[1] * SCALE


def main():
    rng = random.Random(6)
    cases = []
    for i in range(200):
        size = rng.choice([38, 50, 60, 101.6]) * 1_000_000_000
        n = rng.choice([1, 2, 3, 4, 4, 8, 8, 12])
        planes = rng.choice([1, 1, 2, 3])
        first = rng.choice([0, 0, 7, 30])
        walls = []
        for _ in range(planes):
            for k in range(n):
                walls.append((first + 360 * k / n, rng.choice([0, rng.randrange(0, 150_000_000)])))
        excess, shift = solve(size / 2, [(math.radians(a), w) for a, w in walls])
        # The linear parts of the distances, which the package takes, say up to shift^2/(size - 2 wear) more on the radius.
        cases.append((i + 1, size, " ".join(f"{a:.6f}:{w}" for a, w in walls), 2 * excess, 2 * shift * shift / (size - 2 * max(w for _, w in walls)) + 2000))
    print(f"# source: scipy {scipy.__version__} minimize (SLSQP), numpy {numpy.__version__}, Python {platform.python_version()}; crank_undersize_centre.py")
    print("# kind: reference")
    print(f"# count: {len(cases)}")
    print("# The greatest circle within a journal of the given size (pm) that is worn at heading (degrees) by so much on the")
    print("# radius (pm), and not elsewhere: how much less than the journal's its diameter is, in pm, and how much more than")
    print("# that the package may say, in pm.")
    print("columns: id; size; walls; less; slack")
    for i, size, walls, less, slack in cases:
        print(f"{i} ; {size:.0f} ; {walls} ; {less:.0f} ; {slack:.0f}")


main()
