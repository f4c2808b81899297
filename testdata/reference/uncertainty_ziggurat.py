"""The layers of the ziggurat of the normal density (Marsaglia and Tsang 2000), 256 of equal area, by mpmath.

python3 uncertainty_ziggurat.py > uncertainty_ziggurat.txt
"""

import platform

import mpmath
from mpmath import mpf

mpmath.mp.dps = 60
LAYERS = 256


def density(x):
    return mpmath.exp(-x * x / 2)


def area(r):
    """The area of the lowest layer, which holds the tail beyond r."""
    return r * density(r) + mpmath.sqrt(mpmath.pi / 2) * mpmath.erfc(r / mpmath.sqrt(2))


def edges(r):
    """The right edges from the lowest layer upwards, and the height by which the top misses 1."""
    v = area(r)
    x = [v / density(r), r]
    height = density(r)
    for _ in range(2, LAYERS):
        height += v / x[-1]
        if height >= 1:
            return x, mpf(1)
        x.append(mpmath.sqrt(-2 * mpmath.log(height)))
    return x, height + v / x[-1] - 1


low, high = mpf(3), mpf(4)
for _ in range(190):
    middle = (low + high) / 2
    if edges(middle)[1] > 0:
        low = middle
    else:
        high = middle
x, miss = edges(high)
assert len(x) == LAYERS and abs(miss) < mpf(10) ** -40, miss
x.append(mpf(0))
print(f"# source: mpmath {mpmath.__version__} at 60 digits, Python {platform.python_version()}; made by uncertainty_ziggurat.py")
print("# kind: reference")
print(f"# count: {len(x)}")
print("# Right edges of the layers, the lowest (with the tail) first; Marsaglia and Tsang print 3.6541528853610088 for the second.")
print("columns: layer; edge")
for i, v in enumerate(x):
    print(i, ";", mpmath.nstr(v, 25) if v else "0")
