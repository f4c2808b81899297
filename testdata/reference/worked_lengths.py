"""Reference vectors for worked solutions of length formulas, by fractions and mpmath.

python3 worked_lengths.py > worked_lengths.txt

Sizes are whole picometres. Each formula is worked out exactly, rounded once to a picometre and once more to
the places asked for, both to nearest, ties to even. An answer is exact where neither rounding moved it.
"""

import platform
import random
from fractions import Fraction

import mpmath

BITS = 600
mpmath.mp.prec = BITS
PI = Fraction(int(mpmath.floor(mpmath.ldexp(mpmath.pi, BITS - 8))), 2 ** (BITS - 8))
UNITS = {"mm": 10**9, "in": 254 * 10**8, "µm": 10**6, "thou": 254 * 10**5, "pm": 1}

FORMULAS = {
    "clearance": lambda a, b, c: Fraction(a - b),
    "mean": lambda a, b, c: Fraction(a + b, 2),
    "gap": lambda a, b, c: a + round(PI * (b - c)),
    "proportion": lambda a, b, c: Fraction(a * b, c),
    "share": lambda a, b, c: Fraction(a * b, b + c),
    "spread": lambda a, b, c: Fraction(max(a, b, c) - min(a, b, c)),
    "two_thirds": lambda a, b, c: Fraction(2 * a, 3),
    "circumference": lambda a, b, c: PI * a,
}


def text(n, places):
    sign, digits = "-" if n < 0 else "", str(abs(n)).rjust(places + 1, "0")
    return sign + (digits[:-places] + "." + digits[-places:] if places else digits)


rnd = random.Random(1560)
rows = []
for name, formula in FORMULAS.items():
    for k in range(40):
        kind = k % 4
        if kind == 0:  # as a metric micrometer reads
            a, b, c = (rnd.randrange(1, 120_000) * 10**6 for _ in range(3))
        elif kind == 1:  # tenths of a thou
            a, b, c = (rnd.randrange(1, 60_000) * 2_540_000 for _ in range(3))
        elif kind == 2:
            a, b, c = (rnd.randrange(1, 10**12) for _ in range(3))
        else:
            a, b, c = (rnd.randrange(1, 10 ** rnd.randint(6, 13)) for _ in range(3))
        unit = ("mm", "in", "µm", "thou")[rnd.randrange(4)]
        places = rnd.randrange({"mm": 7, "in": 6, "µm": 4, "thou": 4}[unit])
        value = formula(a, b, c)
        held = round(value)
        scaled = Fraction(held * 10**places, UNITS[unit])
        shown = round(scaled)
        exact = held == value and scaled == shown and name not in ("gap", "circumference")
        # in print, from the value itself: where the two differ, one place is not enough
        if round(value * 10**places / UNITS[unit]) != shown:
            continue
        rows.append(f"{name} ; {a} ; {b} ; {c} ; {unit} ; {places} ; {text(shown, places)} ; {'yes' if exact else 'no'}")

print(f"# source: Python {platform.python_version()} fractions, π by mpmath {mpmath.__version__} at {BITS} bits; made by worked_lengths.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# a, b, c in picometres; the answer in the unit, to the places.")
print("columns: formula; a; b; c; unit; places; answer; exact")
for row in rows:
    print(row)
