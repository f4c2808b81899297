"""Reference vectors for pairing pistons with bores and with rods, by scipy and by trying every way.

python3 piston_matches.py > piston_matches.txt

Bores: the least sum is scipy.optimize.linear_sum_assignment's; how many pairs can be made, and the least greatest
deviation, are scipy.sparse.csgraph.maximum_bipartite_matching's, by bisection. Rods: up to 7 of each every way is
tried (itertools.permutations); beyond, bisection and linear_sum_assignment.
"""

import itertools
import platform
import random

import numpy
import scipy
from scipy.optimize import linear_sum_assignment
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_bipartite_matching

OUT = 10**9


def most(allowed):
    return int((maximum_bipartite_matching(csr_matrix(numpy.array(allowed, dtype=int)), perm_type="column") >= 0).sum())


def least_sum(cost, allowed):
    """Of pairings with as many allowed pairs as can be, the least sum over those."""
    table = numpy.where(numpy.array(allowed), numpy.array(cost, dtype=float), float(OUT))
    i, j = linear_sum_assignment(table)
    return int(sum(table[a, b] for a, b in zip(i, j) if table[a, b] < OUT))


def bottleneck(cost, allowed, pairs):
    """The least greatest cost at which as many pairs can be made."""
    values = sorted({c for r, k in zip(cost, allowed) for c, ok in zip(r, k) if ok})
    low, high = 0, len(values) - 1
    while low < high:
        mid = (low + high) // 2
        if most([[k and c <= values[mid] for c, k in zip(r, ks)] for r, ks in zip(cost, allowed)]) == pairs:
            high = mid
        else:
            low = mid + 1
    return values[low]


def text(readings):
    return " ".join(f"{q}±{e}" for q, e in readings)


def bores(n, span, error):
    """Micrometres. A bracket counts with its worst end."""
    bore = [(86000 + rnd.randint(0, span), rnd.choice(error)) for _ in range(n)]
    piston = [(85950 + rnd.randint(0, span), rnd.choice(error)) for _ in range(n)]
    lo, hi = 50 - rnd.randint(3, 25), 50 + rnd.randint(3, 25)
    aim = rnd.randint(lo, hi)
    clear = [[(b - p - be - pe, b - p + be + pe) for p, pe in piston] for b, be in bore]
    cost = [[max(h - aim, aim - l) for l, h in r] for r in clear]
    sure = [[lo <= l and h <= hi for l, h in r] for r in clear]
    may = [[h >= lo and l <= hi for l, h in r] for r in clear]
    pairs = most(sure)
    greatest = total = 0
    if pairs:
        greatest = bottleneck(cost, sure, pairs)
        total = least_sum(cost, [[k and c <= greatest for c, k in zip(r, ks)] for r, ks in zip(cost, sure)])
    return ["bores", text(bore), text(piston), f"{lo} {hi}", str(aim), str(pairs), str(most(may)), str(greatest), "-", str(total)]


def rods(n, span, error):
    """Milligrams. Deviations are from the mean total, rounded to the nearest half even."""
    piston = [(500000 + rnd.randint(0, span), rnd.choice(error)) for _ in range(n)]
    rod = [(700000 + rnd.randint(0, span), rnd.choice(error)) for _ in range(n)]
    # A mean that is a whole number of milligrams, so that nothing is rounded.
    short = -sum(q for q, _ in piston + rod) % n
    rod[0] = (rod[0][0] + short, rod[0][1])
    mean = sum(q for q, _ in piston + rod) // n
    above = [[p + r + pe + re - mean for r, re in rod] for p, pe in piston]
    below = [[mean - (p + r - pe - re) for r, re in rod] for p, pe in piston]
    worst = [[max(a, b) for a, b in zip(x, y)] for x, y in zip(above, below)]
    if n <= 7:
        best = None
        for way in itertools.permutations(range(n)):
            a, b = max(above[i][j] for i, j in enumerate(way)), max(below[i][j] for i, j in enumerate(way))
            key = (max(a, b), a + b, sum(worst[i][j] for i, j in enumerate(way)))
            best = key if best is None or key < best else best
        greatest, reach, total = best
    else:
        every = [[True] * n for _ in range(n)]
        greatest = bottleneck(worst, every, n)
        kept = [[w <= greatest for w in r] for r in worst]
        sides = []
        for side in (above, below):
            other = bottleneck(side, kept, n)
            within = [[k and s <= other for k, s in zip(ks, r)] for ks, r in zip(kept, side)]
            sides.append((greatest + other, least_sum(worst, within)))
        reach, total = min(sides)
    return ["rods", text(piston), text(rod), "-", str(mean), str(n), "-", str(greatest), str(reach), str(total)]


rnd = random.Random(20266)
rows = []
for n in range(1, 13):
    for _ in range(16):
        rows.append(bores(n, rnd.choice((8, 20, 40, 60)), rnd.choice(((0,), (1,), (0, 1, 2, 4)))))
for n in range(1, 8):
    for _ in range(18):
        rows.append(rods(n, rnd.choice((6, 400, 9000)), rnd.choice(((0,), (50,), (0, 20, 100)))))
for n in (8, 12, 16):
    for _ in range(8):
        rows.append(bores(n, 30, (1,)))
        rows.append(rods(n, 9000, rnd.choice(((0,), (50,), (0, 20, 100)))))
rows = list(dict.fromkeys(map(tuple, rows)))

print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, Python {platform.python_version()}; made by piston_matches.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# bores: bores and pistons in µm, each with its error, the wanted band and the clearance aimed at; how many pairs can be")
print("# in the band for certain, how many at the most, their least greatest deviation, and the least sum with it. rods:")
print("# pistons and rods in mg and the mean total; the least greatest deviation, the least from the greatest possible total to")
print("# the least with it, and the least sum with both.")
print("columns: kind; first; second; band; aim; pairs; possible; greatest; reach; sum")
for r in rows:
    print(" ; ".join(r))
