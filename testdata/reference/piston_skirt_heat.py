"""Reference vectors for a piston and its bore when hot, by mpmath.

python3 piston_skirt_heat.py > piston_skirt_heat.txt

The size of bore and skirt at a temperature is the size where it was measured times 1 + coefficient times rise; the
clearance is their difference. Temperatures and cold clearances are found as roots of that (Anderson-Bjoerck), not by
rearranging.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40

random.seed(20271)
rows = []
for _ in range(150):
    bore = mpf(random.randrange(40000, 160000)) / 1000
    clearance = mpf(random.randrange(10, 300)) / 1000
    at = mpf(random.randrange(10, 33))
    ab, ap = mpf(random.randrange(90, 240)) / 10**7, mpf(random.randrange(100, 240)) / 10**7
    if abs(ap - ab) < mpf(1) / 10**6:  # too little apart to close by warming together
        ap += mpf(2) / 10**6
    tb, ts = mpf(random.randrange(60, 180)), mpf(random.randrange(80, 320))
    hot = clearance * random.randrange(0, 10) / 10

    def left(c, b, s):
        return bore * (1 + ab * (b - at)) - (bore - c) * (1 + ap * (s - at))

    most = mpmath.findroot(lambda t: left(clearance, tb, t) - hot, (mpf(-1000), mpf(5000)), solver="anderson")
    warm = mpmath.findroot(lambda t: left(clearance, t, ts) - hot, (mpf(-1000), mpf(5000)), solver="anderson")
    together = mpmath.findroot(lambda t: left(clearance, t, t) - hot, (mpf(-1000), mpf(5000)), solver="anderson")
    cold = mpmath.findroot(lambda c: left(c, tb, ts) - hot, (mpf(-5), mpf(5)), solver="anderson")
    given = [mpmath.nstr(x, 12, strip_zeros=True) for x in (clearance, bore, at, hot)]
    given += [mpmath.nstr(x * 10**6, 6) for x in (ab, ap)] + [mpmath.nstr(x, 6) for x in (tb, ts)]
    found = [mpmath.nstr(x, 18) + " ± 3e-9" for x in (left(clearance, tb, ts), most, warm, together, cold)]
    if together < at:
        found[3] = "-"
    rows.append(given + found)

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by piston_skirt_heat.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Clearance, bore and wanted hot clearance in mm, bore and clearance measured at so many °C; coefficients in")
print("# millionths per kelvin; temperatures in °C. left is the clearance with both at their temperatures, most the skirt's")
print("# temperature that leaves the hot clearance in the bore at its own, warm the bore's for the skirt at its own, together")
print("# that of both alike, cold the clearance that leaves the hot one with both at their temperatures. A dash: warming both")
print("# alike opens the clearance.")
print("columns: clearance; bore; measured_at; hot; bore_expansion; skirt_expansion; bore_at; skirt_at; left; most; warm; together; cold")
for r in rows:
    print(" ; ".join(r))
