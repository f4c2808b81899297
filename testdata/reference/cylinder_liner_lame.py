"""Reference vectors for a liner pressed into a block, by mpmath.

python3 cylinder_liner_lame.py > cylinder_liner_lame.txt

Two rings in plane stress. The displacement of each is the general solution u = A r + B/r of
u'' + u'/r - u/r^2 = 0. The four constants are found from the four boundary conditions as a system of linear
equations: no radial stress at the liner's bore and at the block's outside, equal radial stress at the joint, and
displacements at the joint that differ by the radial interference. No closed form for pressure or stress is used.
Every tenth case is worked out again by integrating the equilibrium equation numerically (Taylor series) and
shooting for the boundary conditions; the two must agree to 20 figures.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40


def stresses(e, nu, u, du, r):
    f = e / (1 - nu**2)
    return f * (du + nu * u / r), f * (u / r + nu * du)


def linear(a, b, c, delta, el, nl, eb, nb):
    def basis(e, nu, r):
        return [(r, mpf(1), *stresses(e, nu, r, mpf(1), r)), (1 / r, -1 / r**2, *stresses(e, nu, 1 / r, -1 / r**2, r))]

    la, lb, bb, bc = basis(el, nl, a), basis(el, nl, b), basis(eb, nb, b), basis(eb, nb, c)
    m = mpmath.matrix(
        [
            [la[0][2], la[1][2], 0, 0],
            [0, 0, bc[0][2], bc[1][2]],
            [lb[0][2], lb[1][2], -bb[0][2], -bb[1][2]],
            [-lb[0][0], -lb[1][0], bb[0][0], bb[1][0]],
        ]
    )
    x = mpmath.lu_solve(m, mpmath.matrix([0, 0, 0, delta / 2]))

    def at(base, i, k):
        return x[i] * base[0][k] + x[i + 1] * base[1][k]

    return {
        "pressure": -at(lb, 0, 2),
        "block": at(bb, 2, 3),
        "outside": at(bc, 2, 3),
        "liner": at(lb, 0, 3),
        "bore": at(la, 0, 3),
        "closing": -2 * at(la, 0, 0),
    }


def shooting(a, b, c, delta, el, nl, eb, nb):
    def run(r0, r1, u, du, e, nu):
        f = mpmath.odefun(lambda r, y: [y[1], y[0] / r**2 - y[1] / r], r0, [u, du])
        v, dv = f(r1)
        return v, stresses(e, nu, v, dv, r1)

    # From the free faces inward, where du = -nu u / r: both are proportional to the displacement they begin with.
    u1, (s1, _) = run(a, b, mpf(1), -nl / a, el, nl)
    f = mpmath.odefun(lambda t, y: [-y[1], -(y[0] / (c - t) ** 2 - y[1] / (c - t))], 0, [mpf(1), -nb / c])
    v2, dv2 = f(c - b)
    s2, _ = stresses(eb, nb, v2, dv2, b)
    # k1 s1 = k2 s2, k2 v2 - k1 u1 = delta/2
    k2 = delta / 2 / (v2 - u1 * s2 / s1)
    return -k2 * s2


random.seed(20261)
rows = []
for i in range(120):
    joint = mpf(random.randrange(50000, 160000)) / 1000
    bore = joint - 2 * mpf(random.randrange(1200, 6000)) / 1000
    outside = joint + 2 * mpf(random.randrange(3000, 40000)) / 1000
    delta = mpf(random.randrange(1, 120)) / 1000
    el, eb = mpf(random.randrange(90, 215)) * 1000, mpf(random.randrange(65, 215)) * 1000
    nl, nb = mpf(random.randrange(20, 36)) / 100, mpf(random.randrange(20, 36)) / 100
    args = (bore / 2, joint / 2, outside / 2, delta, el, nl, eb, nb)
    r = linear(*args)
    if i % 10 == 0:
        assert abs(shooting(*args) / r["pressure"] - 1) < mpf(10) ** -20
    given = [mpmath.nstr(x, 12, strip_zeros=True) for x in (bore, joint, outside, delta, el, nl, eb, nb)]
    rows.append(given + [mpmath.nstr(r[k], 16) + " ± 1e-10 %" for k in ("pressure", "block", "outside", "liner", "bore", "closing")])

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by cylinder_liner_lame.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Diameters and interference in mm, moduli and stresses in N/mm2. block and outside are the block's hoop stresses")
print("# at the joint and at its outside; liner and bore the liner's at the joint and at its bore; closing the bore's, in mm.")
print("columns: bore; joint; outside; interference; liner_modulus; liner_poisson; block_modulus; block_poisson; pressure; block_stress; outside_stress; liner_stress; bore_stress; closing")
for r in rows:
    print(" ; ".join(r))
