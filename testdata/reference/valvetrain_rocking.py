"""Reference vectors for a valve rocked in its guide, by mpmath and scipy.

python3 valvetrain_rocking.py > valvetrain_rocking.txt
python3 valvetrain_rocking.py mouths > valvetrain_mouths.txt

The tilt is found by a root finder on the width of the bore square to a leaning
stem. The travel in a guide of several clearances is a linear programme: the
axis must stay within half the clearance at each depth, and the greatest reach
to one side at the dial is sought; scipy's HiGHS is the judge.
"""

import platform
import random
import sys

import mpmath
import scipy
from mpmath import mp, mpf
from scipy.optimize import linprog

mp.dps = 40
rnd = random.Random(43)


def tilt():
    rows = []
    fixed = [("8.05", "8.00", "50", "20"), ("8.05", "8.00", "50", "25"), ("7.05", "7.00", "40", "10")]
    while len(rows) < 60:
        if len(rows) < len(fixed):
            D, d, L, h = fixed[len(rows)]
        else:
            d = f"{rnd.uniform(4.5, 14):.3f}"
            D = f"{float(d) + rnd.choice([0.001, 0.02, 0.05, 0.1, 0.3, 1.0]):.3f}"
            L, h = f"{rnd.uniform(15, 80):.1f}", f"{rnd.choice([0, rnd.uniform(1, 60)]):.1f}"
        D_, d_, L_, h_ = map(mpf, (D, d, L, h))
        phi = mp.findroot(lambda x: D_ * mp.cos(x) - L_ * mp.sin(x) - d_, (D_ - d_) / L_)
        if abs(D_ * mp.cos(phi) - L_ * mp.sin(phi) - d_) > mpf(10) ** -35:
            raise ArithmeticError("no root")
        R = (L_ + 2 * h_) * mp.tan(phi)
        rows.append([D, d, L, h, mp.nstr(mp.tan(phi), 18), mp.nstr(R, 18)])
    print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by valvetrain_rocking.py")
    print("# kind: reference")
    print(f"# count: {len(rows)}")
    print("# A stem leaning in a straight guide until it touches both ends: the tangent of its tilt, and a dial's travel. mm.")
    print("columns: bore; stem; engaged; beyond; slope; travel")
    for r in rows:
        print(" ; ".join(r))


def mouths():
    rows = []
    while len(rows) < 60:
        n = rnd.randint(2, 5)
        z = sorted(rnd.sample(range(0, 60), n))
        z = [v - z[0] for v in z]
        c = [rnd.randint(5, 150) for _ in range(n)]  # µm
        h = rnd.choice([0, rnd.randint(1, 50)])
        # maximise y(-h) = a - b·h under |a + b·z| <= c/2
        A, b = [], []
        for zi, ci in zip(z, c):
            A += [[1, zi], [-1, -zi]]
            b += [ci / 2, ci / 2]
        s = linprog([-1, h], A_ub=A, b_ub=b, bounds=[(None, None)] * 2, method="highs")
        if s.status:
            raise ArithmeticError(s.message)
        rows.append([",".join(map(str, z)), ",".join(map(str, c)), str(h), f"{-2 * s.fun:.9f} ± 0.000001"])
    print(f"# source: scipy {scipy.__version__} linprog (HiGHS), Python {platform.python_version()}; made by valvetrain_rocking.py mouths")
    print("# kind: reference")
    print(f"# count: {len(rows)}")
    print("# A dial's travel in a guide whose clearances (µm) are known at depths (mm), with the dial so far beyond its end (mm).")
    print("columns: depths; clearances; beyond; travel")
    for r in rows:
        print(" ; ".join(r))


mouths() if sys.argv[1:] == ["mouths"] else tilt()
