"""Reference vectors for crank, rod and piston, by mpmath.

python3 crank_slider.py > crank_slider.txt

The gudgeon pin's height is found by a root finder on the rod's length, dead
centres on the derivative of the height, speed and acceleration by numerical
differentiation: no closed form is used.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 60
rnd = random.Random(60)


def height(r, l, e, t):
    """The pin's height where the throw stands t after upright and the pin travels at −e."""
    guess = r * mp.cos(t) + l
    f = lambda y: (r * mp.sin(t) + e) ** 2 + (y - r * mp.cos(t)) ** 2 - l * l
    return mp.findroot(f, (guess, guess - l / 100), tol=mpf(10) ** -90)


def dead(r, l, e, guess):
    return mp.findroot(lambda t: mp.diff(lambda u: height(r, l, e, u), t), guess, tol=mpf(10) ** -60)


rows = []
sizes = [("43", "143.5", "0"), ("43", "143.5", "0.8"), ("43", "143.5", "-0.8"), ("3", "12", "0"), ("1.5", "6", "0")]
while len(sizes) < 14:
    r = f"{rnd.uniform(20, 90):.2f}"
    sizes.append((r, f"{float(r) * rnd.uniform(2.6, 5):.2f}", f"{rnd.uniform(-0.25, 0.25) * float(r):.2f}"))
sizes.append(("50", "62", "11"))  # hardly goes round
for r_, l_, e_ in sizes:
    r, l, e = mpf(r_), mpf(l_), mpf(e_)
    top = dead(r, l, e, (-e / (l + r), -e / (l + r) + mpf("0.01")))
    bottom = dead(r, l, e, (mp.pi - e / (l - r), mp.pi - e / (l - r) + mpf("0.01")))
    y0 = height(r, l, e, top)
    x = lambda p: y0 - height(r, l, e, top + p)
    stroke = x(bottom - top)
    for deg in ("0.01", "1", f"{rnd.uniform(2, 90):.2f}", f"{rnd.uniform(90, 179):.2f}", f"{rnd.uniform(181, 359):.2f}"):
        p = mp.radians(mpf(deg))
        rows.append([r_, l_, e_, deg] + [mp.nstr(v, 17) for v in (
            x(p), mp.diff(x, p), mp.diff(x, p, 2), stroke, mp.degrees(top), mp.degrees(bottom - top))])

print(f"# source: mpmath {mpmath.__version__} at 60 digits, Python {platform.python_version()}; made by crank_slider.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Throw, rod and offset (above zero towards the side where the crankpin rises) and the crank angle after top dead")
print("# centre in degrees give the piston's position below top dead centre, its first and second derivative by the angle")
print("# in radians, the stroke, top dead centre after upright, and bottom dead centre after top, both in degrees.")
print("columns: throw; rod; offset; angle; position; speed; acceleration; stroke; top; bottom")
for row in rows:
    print(" ; ".join(row))
