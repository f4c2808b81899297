"""Reference vectors for keystone grooves measured over gauge pins, by mpmath.

python3 piston_keystone_pins.py > piston_keystone_pins.txt

A pin's middle is pushed inward until the distance of its surface from the nearest point of the flank, a cone round the
piston's axis, is zero: a root of the distance from the pin's axis to points of the cone, taken along the pin as well, so
that the pin's length and the flank's curvature are in it. No formula for the groove is used.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf, pi, sqrt, tan

mp.dps = 34
random.seed(55)


def nearest(rc, z0, slope, rg, half):
    """Least distance from the pin's axis (the line x = rc, z = z0, along y) to the cone z = half + (r - rg)*slope."""

    def d2(x, y):
        z = half + (sqrt(x * x + y * y) - rg) * slope
        return (x - rc) ** 2 + (z - z0) ** 2

    best = None
    for y in (mpf(0), mpf(1) / 2, mpf(2)):  # along the pin; at y = 0 it is the least, which is checked
        x = mpmath.findroot(lambda x: mpmath.diff(lambda u: d2(u, y), x), rc)
        d = sqrt(d2(x, y))
        if best is None or d < best[0]:
            best = (d, y)
    assert best[1] == 0
    return best[0]


def over(width, pin, dg, leans, square):
    """The size over pins; leans is the tangent of the flank's lean. In a full groove the pin's middle lies halfway
    between the flanks, in a half one half a pin from the square flank."""
    rg = dg / 2
    middle, flank = (pin / 2, width) if square else (mpf(0), width / 2)
    rc = mpmath.findroot(lambda r: nearest(r, middle, leans, rg, flank) - pin / 2, rg)
    return 2 * rc + pin


rows = []
for i in range(120):
    kind = "half" if i % 4 == 3 else "full"
    angle = mpf(random.choice([6, 7, 10, 15, 20]))
    dg = mpf(random.randrange(60000, 160000)) / 1000
    width = mpf(random.randrange(1500, 4500)) / 1000
    pin = mpf(int(width * random.randrange(950, 1100))) / 1000
    a = angle * pi / 180
    m = over(width, pin, dg, tan(a / 2) if kind == "full" else tan(a), kind == "half")
    rows.append([kind, mpmath.nstr(angle, 6), mpmath.nstr(dg, 10, strip_zeros=True), mpmath.nstr(pin, 10, strip_zeros=True),
                 mpmath.nstr(width, 10, strip_zeros=True), mpmath.nstr(m, 18) + " ± 1e-9"])

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by piston_keystone_pins.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# kind of groove (full: both flanks lean by half the angle; half: one flank square, the other leans by the angle), angle")
print("# in degrees, gauge diameter, pin and axial width at the gauge diameter in mm; the size over the pins in mm.")
print("columns: groove; angle; gauge_diameter; pin; width; over_pins")
for r in rows:
    print(" ; ".join(r))
