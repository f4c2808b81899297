"""Reference vectors for worked solutions of formulas that cross quantities, by mpmath.

python3 worked_reals.py > worked_reals.txt

Inputs are decimals and are taken exactly; the answer is worked out to 50 digits and given to the figures.
"""

import platform
import random

import mpmath
from mpmath import mpf

mpmath.mp.dps = 50


def swept(b, s, _):
    return mpmath.pi / 4 * b * b * s


def drop(r, l, theta):
    side = r * mpmath.sin(theta)
    return r - r * mpmath.cos(theta) + l - mpmath.sqrt(l * l - side * side)


def swing(r, l, theta):
    side = r * mpmath.sin(theta)
    return mpmath.atan2(side, mpmath.sqrt(l * l - side * side)) * 180 / mpmath.pi


FORMULAS = {"swept": swept, "drop": drop, "swing": swing}


def fixed(v, figures):
    """v to so many significant figures, without an exponent, and its decimal places."""
    places = max(figures - 1 - int(mpmath.floor(mpmath.log10(abs(v)))), 0)
    n = int(mpmath.nint(v * mpf(10) ** places))
    sign, digits = "-" if n < 0 else "", str(abs(n)).rjust(places + 1, "0")
    return sign + (digits[:-places] + "." + digits[-places:] if places else digits)


rnd = random.Random(8686)
rows = []
for name, formula in FORMULAS.items():
    for _ in range(60):
        if name == "swept":
            a, b, c = f"{rnd.randrange(6000, 13000) / 100:.2f}", f"{rnd.randrange(500, 1400) / 10:.1f}", "0"
        else:
            r = rnd.randrange(250, 800)
            a, b, c = f"{r / 10:.1f}", f"{r * rnd.randrange(30, 45) / 100:.2f}", f"{rnd.randrange(1, 3100) / 1000:.3f}"
        figures = rnd.randrange(3, 10)
        rows.append(f"{name} ; {a} ; {b} ; {c} ; {figures} ; {fixed(formula(mpf(a), mpf(b), mpf(c)), figures)}")

print(f"# source: mpmath {mpmath.__version__} at {mpmath.mp.dps} digits, Python {platform.python_version()}; made by worked_reals.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# swept: bore a, stroke b. drop (below top dead centre) and swing (of the rod, in degrees): throw a, rod b, crank angle c in radians.")
print("columns: formula; a; b; c; figures; answer")
for row in rows:
    print(row)
