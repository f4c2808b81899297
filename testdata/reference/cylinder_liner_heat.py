"""Reference vectors for dropping a liner into a heated block, by mpmath.

python3 cylinder_liner_heat.py > cylinder_liner_heat.txt

The size of each part at a temperature is its size where it was measured times 1 + coefficient times rise. The
temperatures at which the hole is larger than the liner by the gap are found as roots (Anderson-Bjoerck), not by
rearranging.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40

random.seed(20262)
rows = []
for _ in range(120):
    bore = mpf(random.randrange(50000, 160000)) / 1000
    liner = bore + mpf(random.randrange(-20, 150)) / 1000
    gap = mpf(random.randrange(0, 120)) / 1000
    at = mpf(random.randrange(10, 31))
    ab, al = mpf(random.randrange(90, 240)) / 10**7, mpf(random.randrange(90, 240)) / 10**7
    tl, tb = mpf(random.randrange(-196, 30)), mpf(random.randrange(60, 220))

    def room(b, l):
        return bore * (1 + ab * (b - at)) - liner * (1 + al * (l - at))

    block = mpmath.findroot(lambda t: room(t, tl) - gap, (mpf(-1000), mpf(5000)), solver="anderson")
    chill = mpmath.findroot(lambda t: room(tb, t) - gap, (mpf(-5000), mpf(5000)), solver="anderson")
    given = [mpmath.nstr(x, 12, strip_zeros=True) for x in (bore, liner, gap, at)]
    given += [mpmath.nstr(x * 10**6, 6) for x in (ab, al)] + [mpmath.nstr(x, 6) for x in (tl, tb)]
    rows.append(given + [mpmath.nstr(block, 18) + " ± 3e-9", mpmath.nstr(chill, 18) + " ± 3e-9", mpmath.nstr(room(tb, tl), 18) + " ± 3e-9"])

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by cylinder_liner_heat.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Sizes in mm where both were measured at so many °C; coefficients in millionths per kelvin. block is the temperature")
print("# that the block needs with the liner at liner_at, chill the one that the liner needs with the block at block_at,")
print("# room the room with the block at block_at and the liner at liner_at, in mm.")
print("columns: bore; liner; gap; measured_at; block_expansion; liner_expansion; liner_at; block_at; block; chill; room")
for r in rows:
    print(" ; ".join(r))
