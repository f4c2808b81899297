"""Reference vectors for honing cross-hatch, by mpmath.

python3 cylinder_crosshatch_angles.py > cylinder_crosshatch_angles.txt

The angle is that between two marks unrolled: the way of a stone out and back,
as vectors, and the angle between them from their dot product.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40
rnd = random.Random(4590)

rows = []
for i in range(50):
    bore = f"{rnd.uniform(40, 160):.3f}"
    spindle = f"{rnd.uniform(60, 400):.1f}"
    travel = f"{rnd.uniform(50, 260):.2f}"
    cycles = f"{rnd.uniform(10, 90):.1f}"
    d, n, l, c = map(mpf, (bore, spindle, travel, cycles))
    out = (mp.pi * d * n, l * 2 * c)
    back = (mp.pi * d * n, -l * 2 * c)
    dot = out[0] * back[0] + out[1] * back[1]
    angle = mp.acos(dot / (out[0] ** 2 + out[1] ** 2))
    rows.append([bore, spindle, travel, cycles, mp.nstr(mp.degrees(angle), 17)])

print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by cylinder_crosshatch_angles.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Included angle about the way round, in degrees. Bore and travel in mm, spindle in turns, rate in cycles a minute.")
print("columns: bore; spindle; travel; cycles; included")
for x in rows:
    print(" ; ".join(x))
