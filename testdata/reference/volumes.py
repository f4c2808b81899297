"""Reference vectors for the volume of a box and of a cylinder, by mpmath.

python3 volumes.py > volumes.txt
"""

import platform
import random
from fractions import Fraction
from math import ceil, floor

import mpmath

BITS = 800
mpmath.mp.prec = BITS
PI = Fraction(int(mpmath.floor(mpmath.ldexp(mpmath.pi, BITS - 8))), 2 ** (BITS - 8))
SLACK = Fraction(1, 2 ** (BITS - 9))  # π lies between PI and PI + SLACK
STEP = 10**19  # cubic picometres in 10 fL
LIMIT = 2**61

rnd = random.Random(16001800)
rows = {}


def add(shape, a, b, c):
    """A box of sides a, b, c; a cylinder of bore a = b and height c. Lengths in pm, volumes in 10 fL."""
    exact = Fraction(a * b * c, STEP)
    values = [exact] if shape == "box" else [exact * PI / 4, exact * (PI + SLACK) / 4]
    answers = [(round(v), floor(v), ceil(v)) for v in values]
    if answers[0] != answers[-1] and exact:
        raise ArithmeticError("π is not held to enough places")
    if max(map(abs, answers[0])) > LIMIT:
        rows[shape, a, b, c] = "-", "-", "-"
    else:
        rows[shape, a, b, c] = answers[0]


def side():
    return rnd.randint(0, int(10 ** rnd.uniform(0, 18.3)))


MM = 10**9
for shape, c in (("box", 1), ("cylinder", 1)):
    for bore, height in ((68, 75), (86, 86), (90, 86), (200, 250), (87.5, 1.2), (86, 0.3), (86, -0.3), (139.7, 139.7), (0, 1), (1, 0)):
        bore, height = int(bore * MM), int(height * MM)
        add(shape, bore, bore, height)
# ties of a box, and what stands a cubic picometre beside them
for k in (1, 3, 5, 7, -1, -3, 10**6 + 1):
    add("box", 5 * 10**9, 10**9, k)
    add("box", 10**9, 5 * 10**9, k)
# at the end of the range
for a, b, c in ((2**61, 10**19 // 2**19, 2**19), (2**61, 5 * 10**9, 2 * 10**9), (2**61, 5 * 10**9, 2 * 10**9 + 1), (2**61, 2**61, 2**61), (-(2**61), 2**61, 2**61), (2**61, 2**61, 1)):
    add("box", a, b, c)
    add("cylinder", abs(a), abs(a), c)
for bore in (5_416_350_000_000, 5_416_370_000_000):  # 4·2^61·10^19/π at a height of 1 mm, below and above
    add("cylinder", bore * 10, bore * 10, 10**10)
while len(rows) < 220:
    add("box", side() * rnd.choice((-1, 1)), side(), side())
while len(rows) < 420:
    bore = int(10 ** rnd.uniform(9, 14))
    add("cylinder", bore, bore, rnd.randint(1, int(min(2**61, 10 ** (38 - 2 * len(str(bore)) + 1)))) * rnd.choice((-1, 1)))

print(f"# source: mpmath {mpmath.__version__} at {BITS} bits, Python {platform.python_version()}; made by volumes.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# length·width·height, and π/4·bore²·height (where length and width are the bore), as a whole number of")
print("# 10 fL: to the nearest (a tie to the even one), down, up; a dash beyond ±2^61 of them. Lengths in pm.")
print("columns: shape; length; width; height; even; floor; ceil")
for key, answers in rows.items():
    print(" ; ".join(map(str, key + answers)))
