"""Reference vectors for the shift of a rod's cap, by geometry at 40 digits.

python3 crank_rod_capshift.py > crank_rod_capshift.txt

Two half circles, the cap's centre moved along the parting line. The diameter is
the chord through the middle between the centres at an angle from that line.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40
rnd = random.Random(7)


def ray(cx, r, x0, ux, uy):
    """Distance from (x0, 0) along (ux, uy) to the circle about (cx, 0)."""
    b = (x0 - cx) * ux
    c = (x0 - cx) ** 2 - r ** 2
    return -b + mp.sqrt(b * b - c)


rows = []
for _ in range(20):
    d, s, angle = f"{rnd.uniform(40, 90):.3f}", f"{rnd.uniform(-0.08, 0.08):.4f}", str(rnd.choice([15, 20, 30, 45, 60]))
    r, shift, a = mpf(d) / 2, mpf(s), mp.radians(mpf(angle))
    x0 = shift / 2
    def chord(a):
        ux, uy = mp.cos(a), mp.sin(a)
        return ray(0, r, x0, ux, uy) + ray(shift, r, x0, -ux, -uy)  # rod half above, cap half below
    rows.append([mp.nstr(chord(a), 15), mp.nstr(chord(mp.pi - a), 15), angle, f"{s} ± 0.0001 %"])

print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by crank_rod_capshift.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Millimetres and degrees from the parting line.")
print("columns: diameter; mirrored; angle; shift")
for x in rows:
    print(" ; ".join(x))
