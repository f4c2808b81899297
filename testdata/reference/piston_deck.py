"""Reference vectors for a piston's height and rocking, and a rod's balance pads, by mpmath.

python3 piston_deck.py > piston_deck.txt

The top dead centre of an offset slider-crank is found by maximising the pin's height over the crank's angle (a root
of its derivative), not by the triangle. The rock of a skirt is found as a root of the slot's equation, not by
rearranging. The crown's point is turned about the pin by a rotation matrix. What to take off two pads is solved from
the balance of moments and masses as a linear system.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 50
random.seed(20265)


def s(x, n=17):
    return repr(float(x)) if n == 17 else mpmath.nstr(x, n, strip_zeros=True)


def double(n, d):
    """What a reader gets from the decimal: the nearest float64."""
    return mpf(n / d)


def near(x):
    return s(x, 20) + " ± " + mpmath.nstr(abs(x) * mpf(10) ** -14 + mpf(10) ** -17, 3)


rows = []
for _ in range(60):
    rod, throw = double(random.randrange(100000, 260000), 1000), double(random.randrange(25000, 80000), 1000)
    offset = double(random.randrange(100, 12000), 1000)

    def slope(a):  # of the pin's height, by the crank's angle from the cylinder's line
        side = throw * mpmath.sin(a) - offset
        return -throw * mpmath.sin(a) - side * throw * mpmath.cos(a) / mpmath.sqrt(rod**2 - side**2)

    top = mpmath.findroot(slope, offset / (rod + throw))
    height = throw * mpmath.cos(top) + mpmath.sqrt(rod**2 - (throw * mpmath.sin(top) - offset) ** 2)
    rows.append(["offset", s(offset), s(rod), s(throw), "-", "-", near(rod + throw - height), "-"])

for _ in range(60):
    height, off = double(random.randrange(20000, 90000), 1000), double(random.randrange(-60000, 60001), 1000)
    rock = double(random.randrange(-8000, 8001), 1000000)
    turned = mpmath.matrix([[mpmath.cos(rock), -mpmath.sin(rock)], [mpmath.sin(rock), mpmath.cos(rock)]]) * mpmath.matrix([off, height])
    rows.append(["shift", s(height), s(off), s(rock), "-", "-", near(turned[1] - height), "-"])

for _ in range(60):
    skirt, length = double(random.randrange(50000, 150000), 1000), double(random.randrange(30000, 90000), 1000)
    bore = mpf(float(skirt + double(random.randrange(10, 900), 1000)))
    rock = mpmath.findroot(lambda t: skirt * mpmath.cos(t) + length * mpmath.sin(t) - bore, (bore - skirt) / length)
    rows.append(["rock", s(bore), s(skirt), s(length), "-", "-", near(rock), "-"])

for _ in range(60):
    big, small = double(random.randrange(0, 20000), 1000), double(random.randrange(0, 9000), 1000)
    centres = double(random.randrange(100000, 260000), 1000)
    bigpad, smallpad = double(random.randrange(0, 60000), 1000), double(random.randrange(0, 40000), 1000)
    # Unknown masses at −bigpad and centres + smallpad do what big at 0 and small at centres do: same sum, same moment.
    x = mpmath.lu_solve(mpmath.matrix([[1, 1], [-bigpad, centres + smallpad]]), mpmath.matrix([big + small, small * centres]))
    rows.append(["pads", s(big), s(small), s(centres), s(bigpad), s(smallpad), near(x[0]), near(x[1])])

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by piston_deck.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Lengths in mm, masses in g, angles in radians; each is the float64 nearest to the decimal.")
print("# offset: offset, rod, throw; the crown's drop. shift: height, off,")
print("# rock; the rise of the point. rock: bore, skirt, length; the angle. pads: what the big and the small end should lose,")
print("# centres, how far the big and the small pad lie beyond; what to take off the big pad and off the small one.")
print("columns: kind; a; b; c; d; e; answer; second")
for r in rows:
    print(" ; ".join(r))
