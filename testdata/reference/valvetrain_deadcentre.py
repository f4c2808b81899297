"""Reference vectors for finding top dead centre, by mpmath.

python3 valvetrain_deadcentre.py > valvetrain_deadcentre.txt

The gudgeon pin's height is found by a root finder on the rod's length, top dead
centre on the derivative of the height, and the two contacts by a root finder on
the height: no closed form is used.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 50
rnd = random.Random(3110)


def height(r, l, e, t):
    """The pin's height where the throw stands t after upright and the pin travels at −e."""
    guess = r * mp.cos(t) + mp.sqrt(l * l - (r * mp.sin(t) + e) ** 2)
    f = lambda y: (r * mp.sin(t) + e) ** 2 + (y - r * mp.cos(t)) ** 2 - l * l
    return mp.findroot(f, (guess * mpf("1.001"), guess * mpf("0.999")), tol=mpf(10) ** -80)


rows = []
cases = [("43", "143.5", "0", "3"), ("43", "143.5", "0.8", "3"), ("43", "143.5", "-0.8", "3"), ("43", "143.5", "10", "3"), ("1.5", "6", "0", "0.05"), ("3", "12", "0", "0.2032")]
while len(cases) < 24:
    r = f"{rnd.uniform(20, 90):.2f}"
    cases.append((r, f"{float(r) * rnd.uniform(2.6, 4.5):.2f}", f"{rnd.uniform(-0.25, 0.25) * float(r):.2f}", f"{rnd.uniform(0.005, 0.6) * float(r):.3f}"))
for r_, l_, e_, x_ in cases:
    r, l, e, x = mpf(r_), mpf(l_), mpf(e_), mpf(x_)
    top = mp.findroot(lambda t: mp.diff(lambda u: height(r, l, e, u), t), (-e / (l + r), -e / (l + r) + mpf("0.01")), tol=mpf(10) ** -55)
    h = height(r, l, e, top)
    s = mp.sqrt(2 * x / (r * (1 + r / l)))
    side = lambda sign: mp.findroot(lambda t: h - height(r, l, e, t) - x, (top + sign * s * mpf("0.9"), top + sign * s * mpf("1.1")), tol=mpf(10) ** -45)
    after, before = side(1), side(-1)
    rows.append([r_, l_, e_, x_] + [mp.nstr(v, 17) for v in ((after - before) / 2, top - (after + before) / 2)])

print(f"# source: mpmath {mpmath.__version__} at 50 digits, Python {platform.python_version()}; made by valvetrain_deadcentre.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Throw, rod and offset (above zero towards the side where the crankpin rises), and how far below top dead centre the")
print("# piston is at both contacts: half the angle between them, and top dead centre after their middle, in radians.")
print("columns: throw; rod; offset; fall; half; skew")
for row in rows:
    print(" ; ".join(row))
