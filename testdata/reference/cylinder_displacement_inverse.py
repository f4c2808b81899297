"""Reference vectors for what gives a wanted compression ratio, by mpmath.

python3 cylinder_displacement_inverse.py > cylinder_displacement_inverse.txt

Each answer is found by a root finder on the forward formula, not by algebra.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40
rnd = random.Random(785)


def cyl(d, h):
    """π/4·d²·h in cm³, from mm."""
    return mp.pi / 4 * d * d * h / 1000


def ratio(bore, stroke, chamber, gbore, gasket, deck, crown):
    return 1 + cyl(bore, stroke) / (chamber + cyl(gbore, gasket) + cyl(bore, deck) + crown)


def find(f, guess):
    x = mp.findroot(f, (mpf(guess), mpf(guess) * mpf("1.01") + mpf("0.01")), tol=mpf(10) ** -60)
    if abs(f(x)) > mpf(10) ** -30:
        raise ArithmeticError("no root")
    return mp.nstr(x, 17)


rows = []
while len(rows) < 40:
    bore, stroke = f"{rnd.uniform(60, 110):.2f}", f"{rnd.uniform(50, 110):.2f}"
    chamber, gbore = f"{rnd.uniform(25, 60):.1f}", f"{float(bore) + rnd.uniform(0.5, 3):.1f}"
    gasket, deck, crown = f"{rnd.uniform(0.8, 2):.2f}", f"{rnd.uniform(0.3, 1.5):.2f}", f"{rnd.uniform(-3, 6):.1f}"
    area = f"{rnd.uniform(0.5, 0.9) * float(bore) ** 2 * 0.785:.0f}"
    b, s, c, gb, g, d, k, a = map(mpf, (bore, stroke, chamber, gbore, gasket, deck, crown, area))
    now = ratio(b, s, c, gb, g, d, k)
    if not 7 < now < 14:
        continue
    wanted = f"{float(now) + rnd.uniform(0.1, 0.5):.2f}"
    w = mpf(wanted)
    rows.append([
        bore, stroke, chamber, gbore, gasket, deck, crown, area, wanted,
        find(lambda x: ratio(b, s, c, gb, x, d, k) - w, g),
        find(lambda x: ratio(b, s, x, gb, g, d, k) - w, c),
        find(lambda x: ratio(b, s, c, gb, g, x, k) - w, d),
        find(lambda x: ratio(b, s, c - a * x / 1000, gb, g, d, k) - w, mpf("0.1")),
        find(lambda x: ratio(b, s, c, gb, g, d - x, k) - w, mpf("0.1")),
        find(lambda x: ratio(b, x, c, gb, g, d, k) - w, s),
        # The same rod and piston: the crown rises by half of what the stroke gains.
        find(lambda x: ratio(b, x, c, gb, g, d - (x - s) / 2, k) - w, s),
    ])

print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by cylinder_displacement_inverse.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# The gasket, chamber, deck, head skim, block skim, stroke (crown at the same deck) and stroke (same rod and piston)")
print("# that give the wanted ratio, each alone. Lengths in mm, areas in mm², volumes in cm³; crown above zero is a dish.")
print("columns: bore; stroke; chamber; gbore; gasket; deck; crown; area; wanted; to_gasket; to_chamber; to_deck; to_headskim; to_blockskim; to_stroke; to_strokesamerod")
for r in rows:
    print(" ; ".join(r))
