"""Reference vectors for the error of a stack: the sum and the root of the sum of squares, by mpmath.

python3 feeler_errors.py > feeler_errors.txt
"""

import platform
import random

import mpmath

mpmath.mp.dps = 60
rnd = random.Random(957)
cases = [[0], [1], [10**9], [1, 1], [3, 4], [10**9] * 8, [2 * 10**6] * 4, [2 * 10**6] * 2, [999999999, 1], [0, 0, 5]]
while len(cases) < 120:
    top = 10 ** rnd.randint(1, 9)
    errors = [rnd.randint(0, top) for _ in range(rnd.randint(1, 8))]
    if errors not in cases:
        cases.append(errors)
print(f"# source: mpmath {mpmath.__version__} at 60 digits, Python {platform.python_version()} (feeler_errors.py beside it)")
print("# kind: reference")
print(f"# count: {len(cases)}")
print("# errors: of the blades laid together, in picometres. sum: of them. root: the root of the sum of their")
print("# squares, rounded up to the picometre.")
print("columns: errors; sum; root")
for errors in cases:
    root = mpmath.ceil(mpmath.sqrt(mpmath.fsum(mpmath.mpf(e) ** 2 for e in errors)))
    print(" ; ".join([" ".join(map(str, errors)), str(sum(errors)), mpmath.nstr(root, 30, strip_zeros=False).split(".")[0]]))
