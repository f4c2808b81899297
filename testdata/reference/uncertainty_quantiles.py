"""Quantiles of the normal distribution and of Student's t, by mpmath.

python3 uncertainty_quantiles.py > uncertainty_quantiles.txt
"""

import platform

import mpmath
from mpmath import mpf

mpmath.mp.dps = 40


def below(t, v):
    """The part of Student's t below t < 0."""
    if v == mpmath.inf:
        return mpmath.erfc(-t / mpmath.sqrt(2)) / 2
    return mpmath.betainc(v / 2, mpf(1) / 2, 0, v / (v + t * t), regularized=True) / 2


def quantile(tail, v):
    """The t < 0 that a part tail lies below, by halving."""
    if tail == mpf(1) / 2:
        return mpf(0)
    low, high = mpf(-1), mpf(0)
    while below(low, v) > tail:
        low *= 2
    while high - low > mpf(10) ** -22 * -low:
        middle = (low + high) / 2
        if below(middle, v) > tail:
            high = middle
        else:
            low = middle
    return (low + high) / 2


tails = ["0.4999", "0.45", "0.4", "0.25", "0.15865525393145705", "0.1", "0.05", "0.025", "0.02275", "0.01", "0.005", "0.0005", "1e-6", "1e-10"]
freedoms = ["1", "1.5", "2", "3", "4", "5", "8", "10", "16", "16.75", "19", "20", "30", "50", "100", "1000", "20000", "100000", "1000000", "inf"]
print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by uncertainty_quantiles.py")
print("# kind: reference")
print(f"# count: {len(tails) * len(freedoms)}")
print("# The value that a part p lies above; freedom inf is the normal distribution.")
print("columns: above; freedom; quantile")
for v in freedoms:
    for p in tails:
        # p as the float64 that a program is given, since the quantile is steep
        q = -quantile(mpf(float(p)), mpmath.inf if v == "inf" else mpf(v))
        print(p, ";", v, ";", mpmath.nstr(q, 17), "± 1e-10 %")
