"""Range factors by scipy, and critical values of Grubbs' test by mpmath.

python3 uncertainty_factors.py > uncertainty_factors.txt
"""

import platform

import mpmath
import scipy
from mpmath import mpf
from scipy import integrate

mpmath.mp.dps = 30


def student(tail, v):
    """The t that a part tail of Student's distribution lies above, by halving. (scipy's own has 9 digits.)"""
    beyond = lambda t: mpmath.betainc(mpf(v) / 2, mpf(1) / 2, 0, v / (v + t * t), regularized=True) / 2
    low, high = mpf(0), mpf(10) ** 4
    while high - low > mpf(10) ** -18 * high:
        middle = (low + high) / 2
        if beyond(middle) > tail:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def quad(f, points):
    return sum(integrate.quad(f, a, b, epsabs=1e-13, epsrel=1e-12)[0] for a, b in zip(points, points[1:]))


def moments(n):
    """Mean and mean square of the range of n standard normal values: by Tippett's integral, and by order statistics
    as E[(max − min)²] = 2·E[max²] − 2·E[min·max]."""
    from math import erfc, exp, pi, sqrt
    cdf = lambda x: erfc(-x / sqrt(2)) / 2
    pdf = lambda x: exp(-x * x / 2) / sqrt(2 * pi)
    points = [-9, -4, -2, -1, 0, 1, 2, 4, 9]
    mean = quad(lambda x: 1 - cdf(x) ** n - cdf(-x) ** n, points)
    square = quad(lambda x: x * x * n * cdf(x) ** (n - 1) * pdf(x), points)

    def both(lo):
        """∫ over hi > lo of hi times the joint density of least and greatest, divided by lo's own part."""
        inner = [lo] + [p for p in points if p > lo]
        return quad(lambda hi: hi * n * (n - 1) * (cdf(hi) - cdf(lo)) ** (n - 2) * pdf(hi), inner) * lo * pdf(lo)

    return mean, 2 * square - 2 * quad(both, points)


rows = []
for n in (2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 25, 100):
    mean, square = moments(n)
    g = ["-", "-"]
    for i, a in enumerate((0.05, 0.01)):
        if n > 2:
            t = student(a / (2 * n), n - 2)
            g[i] = mpmath.nstr((n - 1) / mpmath.sqrt(n) * mpmath.sqrt(t**2 / (n - 2 + t**2)), 12)
    rows.append(f"{n} ; {mean:.9f} ; {square**0.5:.9f} ; {g[0]} ; {g[1]}")
print(f"# source: scipy {scipy.__version__}, mpmath {mpmath.__version__}, Python {platform.python_version()}; made by uncertainty_factors.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# For n values: the mean range (d2), the root of the mean square of one range (d2*), and Grubbs' two-sided critical values.")
print("columns: n; mean; single; grubbs_05; grubbs_01")
print("\n".join(rows))
