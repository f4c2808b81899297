"""Reference vectors for compression ratios of bracketed sizes, by mpmath.

python3 cylinder_displacement_ratio.py > cylinder_displacement_ratio.txt

Each size lies between two ends. The ratio is worked out at every combination of
ends, and its least and greatest kept; random sizes within the ends must not
leave them. No direction in which the ratio moves is taken for granted.
"""

import itertools
import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40
rnd = random.Random(86_1200)


def cyl(d, h):
    """π/4·d²·h in cm³, from mm."""
    return mp.pi / 4 * d * d * h / 1000


def ratio(bore, stroke, chamber, gbore, gasket, deck, dish, dome, depth, fill, land, height):
    clearance = chamber + cyl(gbore, gasket) + cyl(bore, deck) + dish - dome
    clearance += fill - cyl(bore, depth)
    if height:
        clearance += cyl(bore, height) - cyl(land, height)
    return 1 + cyl(bore, stroke) / clearance


def pm(lo, hi, places):
    """A size between two bounds and a small error of it, as texts."""
    x = round(rnd.uniform(lo, hi), places)
    e = rnd.choice([0, 1, 2, 5]) * 10**-places
    return (f"{x - e:.{places}f}", f"{x + e:.{places}f}")


def case(kind):
    bore = pm(60, 110, 2)
    none = ("0", "0")
    s = dict(bore=bore, stroke=pm(50, 110, 2), chamber=pm(20, 60, 1), gbore=pm(float(bore[1]) - 1, float(bore[1]) + 3, 1),
             gasket=pm(0.8, 2, 2), deck=pm(-0.6, 1.5, 2), dish=none, dome=none, depth=none, fill=none, land=none, height=none)
    if kind in ("dish", "both"):
        s["dish"] = pm(1, 9, 1)
    if kind in ("dome", "both"):
        s["dome"] = pm(1, 7, 1)
    if kind == "fill":
        s["depth"] = pm(6, 12, 2)
        net = cyl(mpf(bore[0]), mpf(s["depth"][0]))
        s["fill"] = pm(float(net) - 6, float(net) + 6, 1)
    if kind == "land":
        d = float(bore[0]) - rnd.uniform(0.3, 0.9)
        s["land"] = (f"{d - 0.02:.2f}", f"{d + 0.02:.2f}")
        s["height"] = pm(3, 8, 1)
    return s


names = ["bore", "stroke", "chamber", "gbore", "gasket", "deck", "dish", "dome", "depth", "fill", "land", "height"]
rows = []
# First one of whole figures, to follow by hand: bore and stroke 86, a chamber of 45 cm³, a gasket of 87.5 × 1.20,
# the deck 0.30 below, a dish of 3 cm³.
hand = {n: (v, v) for n, v in dict(bore="86", stroke="86", chamber="45", gbore="87.5", gasket="1.20", deck="0.30", dish="3",
                                   dome="0", depth="0", fill="0", land="0", height="0").items()}
while len(rows) < 61:
    kind = ["flat", "dish", "dome", "both", "fill", "land"][len(rows) % 6]
    s = case(kind) if rows else hand
    ends = [tuple(dict.fromkeys(mpf(e) for e in s[n])) for n in names]
    answers = [ratio(*c) for c in itertools.product(*ends)]
    least, greatest = min(answers), max(answers)
    if least < 4 or greatest > 30:
        continue
    for _ in range(50):
        inside = [e[0] + (e[-1] - e[0]) * mpf(rnd.random()) for e in ends]
        if not least <= ratio(*inside) <= greatest:
            raise ArithmeticError("the ratio leaves its ends between them")
    rows.append([kind] + [f"{s[n][0]} {s[n][1]}" for n in names] + [mpmath.nstr(least, 15), mpmath.nstr(greatest, 15)])

print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by cylinder_displacement_ratio.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# The least and the greatest ratio over every combination of the ends. Lengths in mm, volumes in cm³; the deck is")
print("# above zero below the block face.")
print("columns: kind; " + "; ".join(names) + "; least; greatest")
for r in rows:
    print(" ; ".join(r))
