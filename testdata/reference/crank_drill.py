"""Reference vectors for balancing holes, by mpmath.

python3 crank_drill.py > crank_drill.txt

Volume and first moment are integrated numerically over the hole: slice by
slice for a flat mouth, over the mouth's disc for a round rim.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 25
rnd = random.Random(62)


def flat(d, h, c):
    """Volume, and first moment about the mouth, of the hole under a flat mouth."""
    a = d / 2
    wide = lambda z: a if z <= h else a * (h + c - z) / c
    cuts = [0, h, h + c] if h > 0 else [0, c]
    v = mp.quad(lambda z: mp.pi * wide(z) ** 2, cuts)
    m = mp.quad(lambda z: mp.pi * wide(z) ** 2 * z, cuts)
    return v, m


def rim(d, h, c, R):
    """Volume, and first moment about the shaft's axis, of a hole in a round rim."""
    a = d / 2

    def over(f):
        return mp.quad(lambda p: mp.quad(lambda q: q * f(q, q * mp.sin(p)), [0, a]), [0, mp.pi / 2]) * 4

    low = lambda q: h + c * (1 - q / a)
    s = lambda y: R - mp.sqrt(R * R - y * y)
    v = over(lambda q, y: low(q) - s(y))
    m = over(lambda q, y: (low(q) - s(y)) * (R - (low(q) + s(y)) / 2))
    return v, m


rows = []
for i in range(30):
    d_, a_ = f"{rnd.uniform(5, 20):.1f}", rnd.choice(["90", "118", "135", "140"])
    h_, R_, rho_ = f"{rnd.uniform(1.5, 30):.2f}", f"{rnd.uniform(55, 110):.1f}", f"{rnd.uniform(6.9, 8):.2f}"
    d, a, h, R, rho = map(mpf, (d_, a_, h_, R_, rho_))
    c = d / 2 / mp.tan(mp.radians(a) / 2)
    v, m = flat(d, h, c)
    mp.dps = 18
    vr, mr = rim(d, h, c, R)
    mp.dps = 25
    rows.append([d_, a_, h_, R_, rho_] + [mp.nstr(x, 15) for x in (
        c, v, m / v, rho * (v * R - m) / 1000, rho * v * R / 1000)] + [mp.nstr(vr, 13), mp.nstr(rho * mr / 1000, 13)])

print(f"# source: mpmath {mpmath.__version__} at 18 to 25 digits, Python {platform.python_version()}; made by crank_drill.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# A hole of a diameter, with a point of an included angle in degrees and a depth of the full diameter, at a radius in metal")
print("# of a density in g/cm³: height of its point, volume, depth of its mass centre under a flat mouth, the unbalance in")
print("# g·mm that it takes away drilled radially through a flat mouth and drilled along the shaft; volume and unbalance")
print("# drilled radially in a round rim, the depth being measured at the hole's axis. Millimetres.")
print("columns: diameter; point; depth; radius; density; height; volume; centroid; radial; axial; rimvolume; rim")
for row in rows:
    print(" ; ".join(row))
