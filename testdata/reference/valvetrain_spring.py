"""Reference vectors for springs, by mpmath.

python3 valvetrain_spring.py > valvetrain_spring.txt

A coil's closing is found by integrating the twist along the wire turn by turn
(no closed form), the load at a height from two readings by solving the straight
line through them, and the least and greatest over brackets by trying a grid of
inner points as well as the ends.
"""

import itertools
import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 30
rnd = random.Random(8)


def rate(G, d, D, n):
    """Load over closing: the wire at angle t about the coil's axis carries the
    torque F·D/2; each element D/2·dt turns by T/(G·J) and closes the spring by
    that times D/2. J is the integral of r² over the section."""
    J = mp.quad(lambda r: 2 * mp.pi * r**3, [0, d / 2])
    closing = mp.quad(lambda t: (D / 2) * (D / 2) / (G * J) * (D / 2), mp.linspace(0, 2 * mp.pi * n, 3))
    return 1 / closing


def shear(d, D):
    """The part that shear alone adds to the closing, by Castigliano: the strain
    energy of the load as shear over that of its torque, along one turn."""
    J = mp.quad(lambda r: 2 * mp.pi * r**3, [0, d / 2])
    A = mp.quad(lambda r: 2 * mp.pi * r, [0, d / 2])
    torsion = mp.quad(lambda t: (D / 2) ** 2 / (2 * J) * (D / 2), [0, 2 * mp.pi])
    direct = mp.quad(lambda t: 1 / (2 * A) * (D / 2), [0, 2 * mp.pi])
    return direct / torsion


rows = []
for _ in range(40):
    d = f"{rnd.uniform(2.5, 5.5):.2f}"
    D = f"{float(d) * rnd.uniform(4.5, 9):.2f}"
    n = f"{rnd.randint(12, 40) / 4:.2f}"
    G = str(rnd.choice([79300, 81370, 78500, 84000]))
    k = rate(*map(mpf, (G, d, D, n)))
    # Two readings with errors, and a height.
    h1, h2 = f"{rnd.uniform(36, 42):.1f}", f"{rnd.uniform(26, 32):.1f}"
    f1, f2 = f"{rnd.uniform(150, 350):.0f}", f"{rnd.uniform(500, 900):.0f}"
    eh, ef = rnd.choice(["0", "0.1", "0.05"]), rnd.choice(["0", "5", "10"])
    h = f"{rnd.uniform(25, 43):.1f}"
    loads, rates = [], []
    steps = (-1, mpf(-1) / 3, mpf(2) / 5, 1)
    for a, b, c, e in itertools.product(steps, repeat=4):
        x1, y1 = mpf(h1) + a * mpf(eh), mpf(f1) + b * mpf(ef)
        x2, y2 = mpf(h2) + c * mpf(eh), mpf(f2) + e * mpf(ef)
        s = mp.lu_solve(mp.matrix([[x1, 1], [x2, 1]]), mp.matrix([y1, y2]))
        loads.append(s[0] * mpf(h) + s[1])
        rates.append(-s[0])
    rows.append([G, d, D, n, mp.nstr(k, 17), h1, f1, h2, f2, eh, ef, h] + [mp.nstr(x, 17) for x in (min(rates), max(rates), min(loads), max(loads), shear(mpf(d), mpf(D)))])

print(f"# source: mpmath {mpmath.__version__} at 30 digits, Python {platform.python_version()}; made by valvetrain_spring.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# The rate of a coil, N/mm, from its shear modulus (N/mm²), wire, mean diameter (mm) and active coils; and of a spring")
print("# read at two heights (mm) with loads (N), give or take eh and ef: the least and greatest rate, and load at a height h.")
print("# And the part that plain shear would add to the closing.")
print("columns: shear; wire; mean; active; rate; h1; f1; h2; f2; eh; ef; h; k_least; k_greatest; f_least; f_greatest; shear_part")
for r in rows:
    print(" ; ".join(r))
