"""Reference vectors for a length written in a unit to a number of places, by exact fractions and decimals.

python3 conversions.py > conversions.txt
"""

import decimal
import platform
import random
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import ceil, floor

PICOMETRES = {"mm": 10**9, "µm": 10**6, "in": 25_400_000_000, "thou": 25_400_000}

decimal.getcontext().prec = 60
rnd = random.Random(19590701)
rows = {}


def add(pm, unit, places):
    """Enter a case. The decimal is cut far below any digit that is asked for, and kept off a tie by a last digit 1."""
    exact = Fraction(pm, PICOMETRES[unit])
    scaled = exact * 10**30
    whole = abs(scaled.numerator) // scaled.denominator
    value = Decimal(whole).scaleb(-30)
    if Fraction(value) != abs(exact):
        value += Decimal(1).scaleb(-31)
    value = value.copy_sign(Decimal(pm))
    step = Decimal(1).scaleb(-places)
    texts = []
    for rule in (ROUND_HALF_EVEN, ROUND_HALF_UP, ROUND_FLOOR, ROUND_CEILING):
        rounded = value.quantize(step, rule)
        texts.append(f"{abs(rounded) if rounded == 0 else rounded:f}")
    # the same once more, by fractions alone
    tenths = exact * 10**places
    down, up = floor(tenths), ceil(tenths)
    half = Fraction(1, 2)
    away = floor(tenths + half) if tenths > 0 else ceil(tenths - half)
    for text, want in zip(texts, (round(tenths), away, down, up), strict=True):
        if Fraction(text) != Fraction(want, 10**places):
            raise ArithmeticError((pm, unit, places, text))
    tie = tenths.denominator == 2
    rows[pm, unit, places] = (*texts, "yes" if tenths.denominator == 1 else "no", tie)


units = list(PICOMETRES)
# nought, the smallest, and lengths that vanish at few places
for unit in units:
    for pm in (0, 1, -1, 499, -500):
        add(pm, unit, 0)
        add(pm, unit, 9)
# ties of both parities and signs
while len(rows) < 260:
    unit, places = rnd.choice(units), rnd.randint(0, 9)
    half, odd = divmod(PICOMETRES[unit], 2 * 10**places)
    if odd == 0:
        add((2 * rnd.randint(-10 ** rnd.randint(0, 6), 10 ** rnd.randint(0, 6)) + 1) * half, unit, places)
# a picometre beside a tie
while len(rows) < 340:
    unit, places = rnd.choice(units), rnd.randint(0, 9)
    half, odd = divmod(PICOMETRES[unit], 2 * 10**places)
    if odd == 0:
        add((2 * rnd.randint(-999, 999) + 1) * half + rnd.choice((-1, 1)), unit, places)
# whole numbers of the last place
while len(rows) < 460:
    unit, places = rnd.choice(units), rnd.randint(0, 8)
    step, odd = divmod(PICOMETRES[unit], 10**places)
    if odd == 0:
        add(rnd.randint(-9999, 9999) * step, unit, places)
# at random, at every size up to 100 m
while len(rows) < 1000:
    size = 10 ** rnd.uniform(0, 14)
    add(rnd.randint(-int(size), int(size)), rnd.choice(units), rnd.randint(0, 9))

print(f"# source: Python {platform.python_version()}, fractions and decimal (libmpdec {decimal.__libmpdec_version__}); made by conversions.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# A length in picometres, written in a unit to a number of places: a tie to the even digit, a tie away")
print("# from nought, down (towards minus infinity), up. Nought has no sign. exact: nothing was rounded.")
print("columns: pm; unit; places; even; away; floor; ceil; exact")
for (pm, unit, places), (even, away, down, up, exact, tie) in rows.items():
    print(f"{pm} ; {unit} ; {places} ; {even} ; {away} ; {down} ; {up} ; {exact}" + (" # a tie" if tie else ""))
