"""Reference vectors for x·num/den rounded to whole numbers, by exact fractions.

python3 ratio.py > ratio.txt
"""

import platform
import random
from fractions import Fraction
from math import ceil, floor

LIMIT = 2**61  # of x and of the results
LEAST, MOST = -(2**63), 2**63 - 1  # of num and den

rows = {}


def add(x, num, den):
    """Enter a case, if its result is within the limit."""
    exact = Fraction(x * num, den)
    if abs(x) > LIMIT or not LEAST <= num <= MOST or not LEAST <= den <= MOST:
        raise ValueError((x, num, den))
    if abs(exact) > LIMIT:
        return
    # Fraction rounds half to even
    rows[x, num, den] = (round(exact), floor(exact), ceil(exact), exact.denominator == 2)


def signs(x, num, den):
    for a in (1, -1):
        for b in (1, -1):
            for c in (1, -1):
                add(a * x, b * num, c * den)


rnd = random.Random(20240229)

# ties of both parities and all signs, small and large
for whole in (0, 1, 2, 3, 41, 42, 10**9, 10**9 + 1, 2**60 - 2, 2**60 - 1):
    signs(2 * whole + 1, 1, 2)
for whole in (6, 7):
    signs((2 * whole + 1) * 5, 3, 30)
# a hair beside a tie, with divisors of 63 bits
for den in (2**63 - 1, 2**63 - 25, 2**62 + 1):
    for off in (-1, 0, 1):
        num = (den + off) // 2
        for x in (1, -1, 3, 2**40 + 1, -(2**40) - 1):
            add(x, num, den)
# nought, one, and the ends of every range
for x in (0, 1, -1, LIMIT - 1, LIMIT, -LIMIT):
    for num in (0, 1, -1, MOST, LEAST, LEAST + 1):
        for den in (1, -1, 2, 3, MOST, LEAST, LEAST + 1):
            add(x, num, den)
# what engines ask for: halves, means, wear rates, feet per inch
for x in (25_400_000_000, 86_012_700_000, -38_100_000, 63_500_000, 1):
    for num, den in ((1, 2), (1, 3), (2, 3), (1, 12), (7, 8), (1, 1000), (127, 5), (5, 127), (1, 360), (-3, 4), (1, -7)):
        add(x, num, den)
# at random, at every size
while len(rows) < 560:
    num = rnd.getrandbits(rnd.randint(1, 63)) * rnd.choice((1, -1))
    den = rnd.getrandbits(rnd.randint(1, 63)) * rnd.choice((1, -1)) or 1
    x = rnd.getrandbits(rnd.randint(1, 61)) * rnd.choice((1, -1))
    add(x, num, den)

print(f"# source: Python {platform.python_version()}, fractions.Fraction; made by ratio.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# x·num/den as a whole number: to the nearest (a tie to the even one), down, and up.")
print("# x and the results lie within ±2^61, num and den are any int64 (den not 0).")
print("columns: x; num; den; even; floor; ceil")
for (x, num, den), (even, down, up, tie) in rows.items():
    print(f"{x} ; {num} ; {den} ; {even} ; {down} ; {up}" + (" # a tie" if tie else ""))
