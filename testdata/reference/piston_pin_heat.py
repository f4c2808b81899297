"""Reference vectors for a gudgeon pin in a hole that is heated, by mpmath.

python3 piston_pin_heat.py > piston_pin_heat.txt

The size of each part at a temperature is its size where it was measured times 1 + coefficient times rise. The
temperatures at which the hole is larger than the pin by the gap, and the clearance that becomes the gap, are found as
roots (Anderson-Bjoerck), not by rearranging.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40

random.seed(20272)
rows = []
for _ in range(150):
    pin = mpf(random.randrange(12000, 60000)) / 1000
    hole = pin + mpf(random.randrange(-60, 30)) / 1000
    gap = mpf(random.randrange(0, 60)) / 1000
    at = mpf(random.randrange(10, 33))
    ah, ap = mpf(random.randrange(100, 240)) / 10**7, mpf(random.randrange(100, 130)) / 10**7
    th, tp = mpf(random.randrange(60, 320)), mpf(random.randrange(-78, 40))

    def clear(hole, h, p):
        return hole * (1 + ah * (h - at)) - pin * (1 + ap * (p - at))

    heat = mpmath.findroot(lambda t: clear(hole, t, tp) - gap, (mpf(-1000), mpf(5000)), solver="anderson")
    chill = mpmath.findroot(lambda t: clear(hole, th, t) - gap, (mpf(-5000), mpf(5000)), solver="anderson")
    cold = mpmath.findroot(lambda c: clear(pin + c, th, tp) - gap, (mpf(-5), mpf(5)), solver="anderson")
    given = [mpmath.nstr(x, 12, strip_zeros=True) for x in (hole, pin, gap, at)]
    given += [mpmath.nstr(x * 10**6, 6) for x in (ah, ap)] + [mpmath.nstr(x, 6) for x in (th, tp)]
    found = [mpmath.nstr(x, 18) + " ± 3e-9" for x in (clear(hole, th, tp), heat, chill, cold)]
    if chill < mpf("-273.15"):
        found[2] = "-"
    rows.append(given + found)

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by piston_pin_heat.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Sizes and gap in mm, measured at so many °C; coefficients in millionths per kelvin; temperatures in °C. clearance is")
print("# that with both at their temperatures, heat the hole's temperature for the gap with the pin at its own, chill the")
print("# pin's with the hole at its own, cold the clearance as measured that becomes the gap. A dash: below absolute zero.")
print("columns: hole; pin; gap; measured_at; hole_expansion; pin_expansion; hole_at; pin_at; clearance; heat; chill; cold")
for r in rows:
    print(" ; ".join(r))
