"""Quantiles of shapes and of sums of them, for simulations to be judged by, by mpmath and scipy.

python3 uncertainty_sums.py > uncertainty_sums.txt
"""

import platform
from math import acos, comb, cos, erf, exp, factorial, floor, pi, sqrt

import scipy
from scipy import integrate, optimize, stats


def phi(z):
    return (1 + erf(z / sqrt(2))) / 2


def rectangles(n):
    """n rectangular values, each with a standard deviation of 1: Irwin and Hall's distribution."""
    a = sqrt(3)
    def cdf(x):
        t = x / (2 * a) + n / 2
        return sum((-1) ** k * comb(n, k) * (t - k) ** n for k in range(floor(t) + 1)) / factorial(n) if 0 < t < n else float(t >= n)
    return cdf


def triangle(x):
    a = sqrt(6)
    return 1 - (1 - x / a) ** 2 / 2 if x > 0 else (1 + x / a) ** 2 / 2


def arcsine(x):
    return 1 - acos(max(-1, min(1, x / sqrt(2)))) / pi


def with_rectangle(cdf, half):
    """The sum of a value and a rectangular one of ±half."""
    return lambda x: integrate.quad(lambda r: cdf(x - r), -half, half, epsabs=1e-12, limit=200)[0] / (2 * half)


cases = {
    # name: distribution function, bounds to look within
    "normal": (phi, 8),
    "rectangular": (rectangles(1), 1.74),
    "triangular": (triangle, 2.449),
    "u": (arcsine, 1.4142),
    "t4": (lambda x: stats.t.cdf(x, 4), 60),
    "t2.5": (lambda x: stats.t.cdf(x, 2.5), 200),
    "4 rectangular": (rectangles(4), 6.93),
    "5 normal": (lambda x: phi(x / sqrt(5)), 18),
    "normal + rectangular": (with_rectangle(phi, sqrt(3)), 9),
    "u + rectangular": (with_rectangle(arcsine, sqrt(3)), 3.14),
    "|normal + 0.5|": (lambda x: phi(x - 0.5) - phi(-x - 0.5) if x > 0 else 0.0, 9),
    "greater of 2 normal": (lambda x: phi(x) ** 2, 8),
}
points = [0.005, 0.025, 0.05, 0.25, 0.5, 0.75, 0.95, 0.975, 0.995]
print(f"# source: scipy {scipy.__version__}, Python {platform.python_version()}; made by uncertainty_sums.py")
print("# kind: reference")
print(f"# count: {len(cases)}")
print("# Quantiles of shapes with a standard deviation of 1 (t: scale 1) and of sums of them.")
print("columns: id; " + "; ".join(f"q{1000 * p:.0f}" for p in points))
for name, (cdf, bound) in cases.items():
    q = [optimize.brentq(lambda x: cdf(x) - p, -bound, bound, xtol=1e-12) for p in points]
    print(name, ";", " ; ".join(f"{v + 0:.6f}".replace('-0.000000', '0.000000') for v in q))
