"""Reference vectors for x·π·num/den rounded to whole numbers, by mpmath.

python3 pi.py > pi.txt

The hard cases are found by continued fraction: p/q being a convergent of 2π·num/den, x = q brings
x·π·num/den closest to p/2, a half where p is odd and a whole number where p is even. In the wide
cases q is split into x·num and p into den·m, so that the product is long and the result is not.
"""

import platform
import random
from fractions import Fraction
from math import floor

import mpmath

BITS = 1200
mpmath.mp.prec = BITS
PI = Fraction(int(mpmath.floor(mpmath.ldexp(mpmath.pi, BITS - 8))), 2 ** (BITS - 8))
SLACK = Fraction(1, 2 ** (BITS - 9))  # π lies between PI and PI + SLACK
LIMIT = 2**61  # of x and of the results
LEAST, MOST = -(2**63), 2**63 - 1  # of num and den

rows = {}


def rounded(x, num, den, pi):
    value = Fraction(x * num, den) * pi
    down = floor(value)
    up = down + (value != down)
    return floor(value + Fraction(1, 2)), down, up


def add(x, num, den, name):
    """Enter a case, if its result is within the limit."""
    if abs(x) > LIMIT or not LEAST <= num <= MOST or not LEAST <= den <= MOST:
        raise ValueError((x, num, den))
    answer = rounded(x, num, den, PI)
    if answer != rounded(x, num, den, PI + SLACK):
        raise ArithmeticError("π is not held to enough places")
    if max(map(abs, answer)) > LIMIT:
        return
    # π cut, as a machine would hold it, to 64 and to 128 bits
    short = [n for n in (64, 128) if rounded(x, num, den, Fraction(floor(PI * 2 ** (n - 2)), 2 ** (n - 2))) != answer]
    rows.setdefault((x, num, den), (*answer, name, short))


def convergents(value):
    """The convergents p/q of a fraction, and between them the intermediate ones."""
    p0, q0, p1, q1 = 0, 1, 1, 0
    while True:
        a = floor(value)
        for i in range(1, a + 1):
            if i in (1, a // 2 + 1, a):
                yield p0 + i * p1, q0 + i * q1
        p0, q0, p1, q1 = p1, q1, p0 + a * p1, q0 + a * q1
        if value == a or q1.bit_length() > 130:
            return
        value = 1 / (value - a)


def primes(n):
    """The prime factors of n, by trial; a remainder without small ones is given as it is."""
    found, p = [], 2
    while p < 30_000 and p * p <= n:
        while n % p == 0:
            found.append(p)
            n //= p
        p += 1 if p == 2 else 2
    return found + [n] if n > 1 else found


def split(n, most_a, most_b, odd_b=False):
    """n = a·b with a and b in bounds and b as large as can be, or None."""
    divisors = {1}
    for p in primes(n):
        divisors |= {d * p for d in divisors}
    best = None
    for b in divisors:
        if b <= most_b and n // b <= most_a and not (odd_b and b % 2 == 0) and (best is None or b > best[1]):
            best = n // b, b
    return best


rnd = random.Random(355113)

# plain: nought, units, the ends of the range, engine sizes
for x in (0, 1, -1, 2, 3, 7, 113, -113, 355, 33102, 66317, 90396794636485, -90396794636485):
    add(x, 1, 1, "plain")
    add(x, 1, 4, "plain")
    add(x, 1, 180, "plain")
for x in (LIMIT, -LIMIT, LIMIT - 1, 1 - LIMIT):
    for num, den in ((1, 4), (1, 180), (1, 360), (3, 10), (-1, 4), (1, -12), (1, MOST), (1, LEAST), (113, 355)):
        add(x, num, den, "end of the range")
for x in (86_000_000_000, 101_600_000_000, 25_400_000, 2_540_000, 1_000_000_000):
    for num, den in ((1, 1), (1, 2), (2, 1), (1, 4), (1, 180), (1, 360), (5, 6), (-1, 1), (1, -1)):
        add(x, num, den, "engine sizes")

# hard: the closest to a half or a whole number that each ratio has
for num, den in ((1, 1), (1, 4), (2, 1), (1, 2), (1, 180), (1, 360), (3, 4), (-1, 3), (1, -8), (2**31 - 1, 2**31 - 3), (355, 113)):
    for p, q in convergents(2 * PI * abs(Fraction(num, den))):
        if q <= LIMIT and q.bit_length() > 36:
            name = "near a half" if p % 2 else "near a whole number"
            sign = 1 if len(rows) % 2 else -1
            add(sign * q, num, den, name)
            if p % 2 and 3 * q <= LIMIT:
                add(-3 * sign * q, num, den, name)

# wide: a product x·num of up to 124 bits; sums of neighbouring convergents are still close enough
# to defeat 128 bits of π, and there are many of them to split
wide = [(p, q) for p, q in convergents(2 * PI) if 60 <= q.bit_length() <= 118]
found = 0
while found < 48:
    n = rnd.randrange(len(wide) - 1)
    a, b = rnd.randint(1, 2 ** rnd.randint(0, 8)), rnd.randint(0, 2 ** rnd.randint(0, 8))
    p, q = a * wide[n][0] + b * wide[n + 1][0], a * wide[n][1] + b * wide[n + 1][1]
    x_num, den_m = split(q, MOST, LIMIT), split(p, MOST, LIMIT, odd_b=p % 2 == 1)
    if x_num and den_m:
        found += 1
        sign = 1 if found % 2 else -1
        add(x_num[1], sign * x_num[0], den_m[0], "wide, near a half" if p % 2 else "wide, near a whole number")

# at random, at every size
most = len(rows) + 200
while len(rows) < most:
    bits = rnd.choice((8, 31, 62))
    num = rnd.getrandbits(rnd.randint(1, bits)) * rnd.choice((1, 1, 1, -1))
    den = (rnd.getrandbits(rnd.randint(1, bits)) or 1) * rnd.choice((1, 1, 1, -1))
    x = rnd.getrandbits(rnd.randint(1, 61)) * rnd.choice((1, -1))
    add(x, num, den, f"random, {bits} bits")

missed = {n: sum(n in row[4] for row in rows.values()) for n in (64, 128)}
print(f"# source: mpmath {mpmath.__version__} at {BITS} bits, Python {platform.python_version()}; made by pi.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# x·π·num/den as a whole number: to the nearest, down, and up. Only nought is exact, and nothing is a tie.")
print("# x and the results lie within ±2^61, num and den are any int64 (den not 0).")
print(f"# With π cut to 64 bits {missed[64]} cases come out wrong, to 128 bits {missed[128]}; their notes say so.")
print("columns: x; num; den; even; floor; ceil")
for (x, num, den), (even, down, up, name, short) in rows.items():
    note = name + "".join(f"; wrong with {n} bits of π" for n in short)
    print(f"{x} ; {num} ; {den} ; {even} ; {down} ; {up} # {note}")
