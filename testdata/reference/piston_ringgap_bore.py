"""Reference vectors for a ring's end gap in other and in worn bores, by mpmath.

python3 piston_ringgap_bore.py > piston_ringgap_bore.txt

The way round a bore is the arc length of its wall, integrated. In another round bore the ring is a beam whose middle line
keeps its length, as in piston_ringgap_heat.py.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf, pi, cos, sin, sqrt

mp.dps = 40
random.seed(5050)
n = lambda x, d=14: mpmath.nstr(x, d, strip_zeros=True)


def way(r, dr, ends=(0, 2 * pi)):
    """Arc length of a wall at distance r(angle) from the axis."""
    cuts = [ends[0] + (ends[1] - ends[0]) * i / 8 for i in range(9)]
    return mpmath.quad(lambda a: sqrt(r(a) ** 2 + dr(a) ** 2), cuts)


rows = []
for _ in range(40):
    d0 = mpf(random.randrange(50000, 160000)) / 1000
    d1 = d0 + mpf(random.randrange(-500, 500)) / 1000
    gap = mpf(random.randrange(200, 2500)) / 1000
    t = mpf(int(d0 * 1000 / random.randrange(20, 31))) / 1000
    turns = 2 * pi - gap / (d0 / 2)
    after = 2 * pi - turns * (d0 - t) / (d1 - t)
    # face, middle and back of a ring with radial ends
    size = [after * (d1 / 2 - x) - (2 * pi - turns) * (d0 / 2 - x) for x in (0, t / 2, t)]
    # the gap itself is carried to the second order only: gap * thickness * change / bore^2
    tol = n(abs(gap * t * (d1 - d0) / d0**2) * mpf("1.2") + mpf(10) ** -9, 3)
    rows.append(["bore", n(d0), n(d1), n(t), *[mpmath.nstr(x, 16) + " ± " + tol for x in size]])
for _ in range(12):  # R + a cos 2φ
    d, a = mpf(random.randrange(50000, 160000)) / 1000, mpf(random.randrange(5, 200)) / 1000
    extra = way(lambda p: d / 2 + a * cos(2 * p), lambda p: -2 * a * sin(2 * p)) - pi * d
    rows.append(["oval", n(d + 2 * a), n(d - 2 * a), "-", mpmath.nstr(extra, 16) + " ± " + n(abs(extra) * 30 * (a / d) ** 2 + mpf(10) ** -8, 3), "-", "-"])
for _ in range(12):  # an ellipse
    d, a = mpf(random.randrange(50000, 160000)) / 1000, mpf(random.randrange(5, 200)) / 1000
    big, small = (d + a) / 2, (d - a) / 2
    p = 4 * big * mpmath.ellipe(1 - (small / big) ** 2)
    rows.append(["ellipse", n(2 * big), n(2 * small), "-", mpmath.nstr(p - pi * d, 16) + " ± " + n(abs(p - pi * d) * (a / d) ** 2 + mpf(10) ** -8, 3), "-", "-"])
for _ in range(12):  # one half of a round wall moved over by w: two half circles and two straight parts
    d, w = mpf(random.randrange(50000, 160000)) / 1000, mpf(random.randrange(5, 300)) / 1000
    wall = lambda p: w * cos(p) + sqrt((d / 2) ** 2 - (w * sin(p)) ** 2)
    edge = mpmath.atan2(d / 2, w)
    slope = lambda p: -w * sin(p) - w * w * sin(p) * cos(p) / sqrt((d / 2) ** 2 - (w * sin(p)) ** 2)
    total = way(wall, slope, (-edge, edge)) + pi * d / 2 + 2 * w
    rows.append(["side", n(d), n(w), "-", mpmath.nstr(total - pi * d, 16) + " ± 1e-9", "-", "-"])
for _ in range(12):  # a patch of wear with a raised-cosine section, its mean half its depth
    d, w = mpf(random.randrange(50000, 160000)) / 1000, mpf(random.randrange(5, 200)) / 1000
    wide = mpf(random.randrange(80, 200)) / 100  # radians
    k = 2 * pi / wide
    r = lambda p: d / 2 + w / 2 * (1 + cos(k * p))
    total = way(r, lambda p: -w / 2 * k * sin(k * p), (-wide / 2, wide / 2)) - d / 2 * wide
    # the second order is about pi^2 w^2 / (wide d)
    rows.append(["arc", n(d), n(w / 2), n(wide * d / 2, 9), mpmath.nstr(total, 16) + " ± " + n(12 * w * w / (wide * d), 3), "-", "-"])
for _ in range(12):  # a ring out of square lies on an ellipse
    d, rise = mpf(random.randrange(50000, 160000)) / 1000, mpf(random.randrange(100, 2000)) / 1000
    big, small = sqrt(d**2 + rise**2) / 2, d / 2
    p = 4 * big * mpmath.ellipe(1 - (small / big) ** 2)
    rows.append(["tilt", n(d), n(rise), "-", mpmath.nstr(p - pi * d, 16) + " ± " + n((p - pi * d) * (rise / d) ** 2, 3), "-", "-"])

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by piston_ringgap_bore.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# In mm. bore: from bore a to bore b with a ring of thickness c the gap opens by face, middle and back. oval and ellipse:")
print("# greatest and least diameter a and b, the way round exceeds pi times their mean by face. side: the half of a bore a has")
print("# worn by b, arc: c of the wall of a bore a by b on average, tilt: one side of the ring is higher by b: the gap opens by face.")
print("columns: what; a; b; c; face; middle; back")
for r in rows:
    print(" ; ".join(r))
