"""Reference vectors for relief springs and opening pressures, by mpmath.

python3 crank_relief.py > crank_relief.txt

The least and the greatest are sought over a grid of the brackets, ends
included.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 30
rnd = random.Random(64)


def span(b):
    m, e = map(mpf, b)
    return [m - e + 2 * e * mpf(k) / 4 for k in range(5)]


rows = []
for i in range(30):
    free = (f"{rnd.uniform(40, 70):.2f}", f"{rnd.uniform(0.01, 0.3):.2f}")
    height = f"{float(free[0]) * rnd.uniform(0.5, 0.8):.2f}"
    load = (f"{rnd.uniform(20, 200):.1f}", f"{rnd.uniform(0.1, 2):.1f}")
    inst = (f"{float(free[0]) * rnd.uniform(0.5, 0.9):.2f}", f"{rnd.uniform(0.01, 0.3):.2f}")
    seat = (f"{rnd.uniform(8, 20):.2f}", f"{rnd.uniform(0.01, 0.05):.2f}")
    h = mpf(height)
    rates = [l / (f - h) for l in span(load) for f in span(free)]
    loads = [l / (f - h) * (f - x) for l in span(load) for f in span(free) for x in span(inst)]
    press = [p / (mp.pi / 4 * d * d) for p in (min(loads), max(loads)) for d in span(seat)]
    rows.append([*free, height, *load, *inst, *seat] + [mp.nstr(v, 15) for v in (
        min(rates), max(rates), min(loads), max(loads), min(press), max(press))])

print(f"# source: mpmath {mpmath.__version__} at 30 digits, Python {platform.python_version()}; made by crank_relief.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Free length, height, load at it, installed height and seat's diameter, each with its error, in mm and N, give the rate in")
print("# N/mm, the installed load in N and the opening pressure in MPa, least and greatest.")
print("columns: free; free_e; height; load; load_e; installed; installed_e; seat; seat_e; rate0; rate1; load0; load1; press0; press1")
for row in rows:
    print(" ; ".join(row))
