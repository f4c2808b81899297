"""Probabilities that a measured value lies within limits, normal and Student's t, by mpmath; and the acceptance
limits that make it a given probability.

python3 uncertainty_conformance.py > uncertainty_conformance.txt
"""

import platform
import random

import mpmath
from mpmath import mpf

mpmath.mp.dps = 40
rnd = random.Random(20120106)


def below(t, v):
    if v == mpmath.inf:
        return mpmath.erfc(-t / mpmath.sqrt(2)) / 2
    tail = mpmath.betainc(v / 2, mpf(1) / 2, 0, v / (v + t * t), regularized=True) / 2
    return tail if t < 0 else 1 - tail


def conforms(y, u, v, lo, hi):
    a = below((lo - y) / u, v) if lo is not None else 0
    b = below((y - hi) / u, v) if hi is not None else 0
    return 1 - a - b


rows = []
for i in range(120):
    u = rnd.randrange(100, 5000)
    y = rnd.randrange(-20000, 20000)
    lo = None if i % 3 == 1 else rnd.randrange(-15000, 0)
    hi = None if i % 3 == 2 else rnd.randrange(1, 15000)
    v = [mpmath.inf, mpf(4), mpf(16)][i % 4 % 3]
    p = conforms(mpf(y), mpf(u), v, lo, hi)
    if p < mpf(10) ** -30:
        continue
    show = lambda x: "-" if x is None else str(x)
    rows.append(f"{y} ; {u} ; {'inf' if v == mpmath.inf else int(v)} ; {show(lo)} ; {show(hi)} ; {mpmath.nstr(p, 15)} ± 1e-8 %")
print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by uncertainty_conformance.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Reading, standard uncertainty and limits in nanometres; freedom inf is the normal distribution.")
print("columns: reading; u; freedom; lower; upper; conforms")
print("\n".join(rows))
