"""Reference vectors for the plan of trials, by going through every tree of trials there is.

python3 feeler_plans.py > feeler_plans.txt
"""

import platform
import random
from fractions import Fraction

rnd = random.Random(26)
INF = 10**9


def trees(i, j, settled):
    """Every tree of trials on the cells i to j: () where it ends, else (k, refused, entered) for a try between the
    cells k - 1 and k."""
    if i == j or settled(i, j):
        return [()]
    return [(k, r, e) for k in range(i + 1, j + 1) for r in trees(i, k - 1, settled) for e in trees(k, j, settled)]


def expected(tree, i, j, mass):
    if not tree:
        return 0
    k, refused, entered = tree
    return sum(mass[i : j + 1]) + expected(refused, i, k - 1, mass) + expected(entered, k, j, mass)


def plan(blades, spec, prior):
    """The tree of least expectation; of equal ones that with the thinnest blade first, and so on down."""
    cuts = [0, *blades, INF]
    cells = len(cuts) - 1
    total = sum(w for _, w in prior)
    mass = []
    for lo, hi in zip(cuts, cuts[1:]):
        start, sum_ = 0, Fraction(0)
        for upto, weight in prior:
            overlap = min(hi, upto) - max(lo, start)
            if overlap > 0:
                sum_ += Fraction(weight * overlap, upto - start)
            start = upto
        mass.append(sum_ / total)

    def settled(i, j):
        """Whether a gap in [cuts[i], cuts[j + 1]) is known to be allowed or known not to be."""
        lo, hi = cuts[i], cuts[j + 1]
        least, greatest, ends = spec
        allowed = least <= lo and hi <= greatest
        too_small = hi <= least
        too_large = lo > greatest if ends == "max" else lo >= greatest
        return allowed or too_small or too_large

    best = min(trees(0, cells - 1, settled), key=lambda t: (expected(t, 0, cells - 1, mass), t))
    return best, expected(best, 0, cells - 1, mass)


def show(tree, blades):
    return f"({show(tree[1], blades)}{blades[tree[0] - 1]}{show(tree[2], blades)})" if tree else ""


cases = []
while len(cases) < 150:
    count = rnd.randint(1, 7)
    blades = sorted(rnd.sample(range(10, 151, rnd.choice((1, 5))), count))
    least = rnd.choice((0, 30, rnd.randint(5, 80)))
    greatest = least + rnd.choice((40, rnd.randint(1, 80)))
    if rnd.random() < 0.3:
        greatest = rnd.choice(blades)
        least = rnd.randint(0, greatest - 1)
    ends = rnd.choice(("max", "less than"))
    prior = []
    upto = 0
    for _ in range(rnd.randint(1, 4)):
        upto += rnd.randint(10, 120)
        prior.append((upto, rnd.randint(0, 9)))
    if not any(w for _, w in prior):
        continue
    cases.append((blades, (least, greatest, ends), prior))
print(f"# source: every tree of trials tried, in fractions of Python {platform.python_version()} (feeler_plans.py beside it)")
print("# kind: reference")
print(f"# count: {len(cases)}")
print("# blades, limits and the ends of the prior's pieces are in micrometres. The lower limit is itself allowed;")
print("# the upper one is where ends says max, not where it says less than. prior: end and weight of each piece.")
print("# A branch ends where it is known whether the gap is allowed, or where no blade is left. tree: each blade")
print("# tried between the trees for where it doesn't go in and where it does. expected: trials to expect.")
print("columns: blades; least; greatest; ends; prior; tree; expected")
for blades, (least, greatest, ends), prior in cases:
    tree, trials = plan(blades, (least, greatest, ends), prior)
    pieces = " ".join(f"{u}:{w}" for u, w in prior)
    print(" ; ".join([" ".join(map(str, blades)), str(least), str(greatest), ends, pieces, show(tree, blades) or "-", str(trials)]))
