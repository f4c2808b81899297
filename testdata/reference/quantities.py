"""Reference vectors for every quantity but length, by the pint library with exact fractions.

python3 quantities.py > quantities.txt
"""

import platform
import random
from fractions import Fraction
from math import ceil, floor

import pint

registry = pint.UnitRegistry(non_int_type=Fraction)

# the name of each unit here, pint's name of it, decimal places that a value is given with
QUANTITIES = {
    "angle": [("°", "degree", 8), ("arcmin", "arcminute", 7), ("arcsec", "arcsecond", 6)],
    "volume": [("cm³", "cm**3", 11), ("in³", "inch**3", 5), ("L", "liter", 14), ("mm³", "mm**3", 8)],
    "mass": [("g", "g", 12), ("kg", "kg", 15), ("oz", "oz", 3), ("lb", "lb", 7), ("grain", "grain", 4), ("mg", "mg", 9)],
    "force": [("N", "newton", 14), ("lbf", "lbf", 2), ("kgf", "kgf", 10), ("kN", "kilonewton", 17)],
    "pressure": [("kPa", "kPa", 9), ("bar", "bar", 11), ("psi", "psi", 2), ("MPa", "MPa", 12), ("kgf/cm²", "kgf/cm**2", 6)],
    "spring rate": [("N/mm", "N/mm", 13), ("lbf/in", "lbf/inch", 2), ("kgf/mm", "kgf/mm", 9)],
    "temperature difference": [("K", "delta_degC", 9), ("F°", "delta_degF", 9)],
    "temperature": [("°C", "degC", 9), ("°F", "degF", 9), ("K", "kelvin", 9)],
}
# the greatest whole part in the first unit that a value is given with
MOST = {"angle": 10**6, "volume": 9 * 10**6, "mass": 10**6, "force": 9000, "pressure": 15000, "spring rate": 390,
        "temperature difference": 90_000, "temperature": 90_000}

rnd = random.Random(19010322)
rows = {}


def text(n, places):
    """n/10^places in decimals; nought has no sign."""
    digits = f"{abs(n):0{places + 1}}"
    out = digits[: len(digits) - places] + ("." + digits[len(digits) - places :] if places else "")
    return "-" * (n < 0) + out


def add(quantity, source, target, n, given, places):
    symbol, name, _ = source
    to, to_name, _ = target
    magnitude = registry.Quantity(Fraction(n, 10**given), name).to(to_name).magnitude
    scaled = Fraction(magnitude) * 10**places
    down, up = floor(scaled), ceil(scaled)
    half = Fraction(1, 2)
    away = floor(scaled + half) if scaled > 0 else ceil(scaled - half)
    answers = [text(v, places) for v in (round(scaled), away, down, up)]
    exact = "yes" if scaled.denominator == 1 else "no"
    rows[quantity, f"{text(n, given)} {symbol}", to, places] = (*answers, exact, scaled.denominator == 2)


for quantity, units in QUANTITIES.items():
    ties = 0
    start = len(rows)
    while len(rows) - start < 80:
        source, target = rnd.choice(units), rnd.choice(units)
        first = registry.Quantity(Fraction(MOST[quantity]), units[0][1].replace("degC", "delta_degC") if quantity == "temperature" else units[0][1])
        name = {"degC": "delta_degC", "degF": "delta_degF", "kelvin": "delta_degC"}.get(source[1], source[1])
        most = int(first.to(name).magnitude)
        given = min(source[2], 17 - len(str(most)))
        given = rnd.randint(0, given)
        size = 10 ** rnd.uniform(0, len(str(most * 10**given)) - 1)
        n = rnd.randint(-int(size), int(size))
        if quantity == "temperature":
            n = abs(n)
            if source[0] != "K" and rnd.random() < 0.3:
                n = -n % (270 * 10**given) - 270 * 10**given
        places = rnd.randint(0, 6)
        add(quantity, source, target, n, given, places)
        # beside it, a tie in the same unit
        if ties < 15 and given and source[2] >= given:
            ties += 1
            add(quantity, source, source, 10 * (n // 10) + 5, given, given - 1)

print(f"# source: pint {pint.__version__} with fractions.Fraction, Python {platform.python_version()}; made by quantities.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# A quantity as given, written in another unit to a number of places: a tie to the even digit, a tie")
print("# away from nought, down (towards minus infinity), up. Nought has no sign. exact: nothing was rounded.")
print("columns: quantity; value; unit; places; even; away; floor; ceil; exact")
for (quantity, value, to, places), (even, away, down, up, exact, tie) in rows.items():
    print(f"{quantity} ; {value} ; {to} ; {places} ; {even} ; {away} ; {down} ; {up} ; {exact}" + (" # a tie" if tie else ""))
