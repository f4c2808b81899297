"""The guard band that makes the probability of conforming p at the acceptance limit, by mpmath.

python3 uncertainty_acceptance.py > uncertainty_acceptance.txt
"""

import platform

import mpmath
from mpmath import mpf

mpmath.mp.dps = 40


def phi(z):
    return mpmath.erfc(-z / mpmath.sqrt(2)) / 2


rows = []
for width in ("3.5", "3.95", "4", "5", "6", "8", "20", "100"):  # of the band, in standard uncertainties
    for p in ("0.5", "0.8", "0.9", "0.95", "0.9545", "0.99"):
        w, q = mpf(width), mpf(float(p))
        conforms = lambda g: 1 - phi(-g) - phi(g - w)
        if conforms(w / 2) < q:
            rows.append(f"{width} ; {p} ; none")
            continue
        low, high = mpf(0), w / 2
        if conforms(low) >= q:
            high = low
        for _ in range(120):
            middle = (low + high) / 2
            if conforms(middle) < q:
                low = middle
            else:
                high = middle
        rows.append(f"{width} ; {p} ; {mpmath.nstr(high, 15)}")
print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by uncertainty_acceptance.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Width of a two-sided band and guard band in standard uncertainties; none: no reading proves it.")
print("columns: width; probability; guard")
print("\n".join(rows))
