"""Reference vectors for planning the shims of a head, by scipy.

/usr/bin/python3 valvetrain_shims.py > valvetrain_shims.txt

Whole micrometres. Of each head: most valves in band for certain, then fewest shims bought, then fewest in-band valves
disturbed, then the least sum of distances from the clearance aimed at (doubled, so that they are whole), then the least
greatest one. The judge is scipy.optimize.milp, one objective after another with the earlier ones held fixed, for heads
of up to 8 valves and every fourth larger one; and scipy.optimize.linear_sum_assignment over weighted costs (exact in
double precision here, all sums being below 2^53), for all. Where both judge, they must agree.
"""

import platform
import random

import numpy
import scipy
from scipy.optimize import Bounds, LinearConstraint, linear_sum_assignment, milp

rnd = random.Random(7026)


def predicted(measured, old, new):
    """Both ends of measured + old - new; the upper end is never reached, the blade being refused."""
    return measured[0] + old[0] - new[1], measured[1] + old[1] - new[0]


def inside(clearance, band):
    return band[0] <= clearance[0] and clearance[1] <= band[1]


def twice_off(clearance, aim):
    return abs(clearance[0] + clearance[1] - 2 * aim)


def model(head):
    """Rows that may change and, for each, its choices: (shim it uses up or None, bought, disturbed, open, twice off)."""
    valves, drawer, series, disturb = head
    now = [inside(m, band) for m, _, band, _ in valves]
    rows = [i for i in range(len(valves)) if disturb or not now[i]]
    hand = [("v", i, valves[i][1]) for i in rows] + [("d", k, s) for k, s in enumerate(drawer)]
    choices = []
    for i in rows:
        m, old, band, aim = valves[i]
        mine = []
        for kind, k, shim in hand:
            if (kind, k) == ("v", i):
                # its own shim: as it is where it is in band, else not settled
                mine.append(((kind, k), 0, 0, 0, twice_off(m, aim)) if now[i] else ((kind, k), 0, 0, 1, 0))
                continue
            c = predicted(m, old, shim)
            if inside(c, band):
                mine.append(((kind, k), 0, int(now[i]), 0, twice_off(c, aim)))
        bought = [twice_off(predicted(m, old, s), aim) for s in series if inside(predicted(m, old, s), band)]
        if bought:
            mine.append((None, 1, int(now[i]), 0, min(bought)))
        choices.append(mine)
    fixed = [twice_off(m, aim) for ok, (m, _, _, aim) in zip(now, valves) if ok and not disturb]
    return rows, hand, choices, fixed, sum(now)


def by_milp(head):
    rows, hand, choices, fixed, _ = model(head)
    flat = [(i, c) for i, mine in enumerate(choices) for c in mine]
    n = len(flat)
    if not n:
        return 0, 0, 0, 0, 0
    # The last variable is the greatest distance.
    one = numpy.zeros((len(rows), n + 1))
    use = numpy.zeros((len(hand), n + 1))
    top = numpy.zeros((n, n + 1))
    place = {(kind, k): j for j, (kind, k, _) in enumerate(hand)}
    for x, (i, c) in enumerate(flat):
        one[i, x] = 1
        if c[0] is not None:
            use[place[c[0]], x] = 1
        top[x, x], top[x, n] = c[4], -1
    constraints = [LinearConstraint(one, 1, 1), LinearConstraint(use, 0, 1), LinearConstraint(top, -numpy.inf, 0)]
    goals = [[c[3] for _, c in flat] + [0], [c[1] for _, c in flat] + [0], [c[2] for _, c in flat] + [0], [c[4] for _, c in flat] + [0], [0] * n + [1]]
    values = []
    for goal in goals:
        r = milp(goal, integrality=numpy.array([1] * n + [0]), bounds=Bounds(0, [1] * n + [numpy.inf]), constraints=constraints,
                 options={"mip_rel_gap": 0})
        assert r.success, r.message
        v = round(r.fun)
        assert abs(v - r.fun) < 1e-5
        values.append(v)
        constraints.append(LinearConstraint(numpy.array([goal]), -numpy.inf, v + 1e-6))
    return tuple(values)


def by_assignment(head, most=None):
    rows, hand, choices, fixed, _ = model(head)
    m = len(rows)
    if not m:
        return 0, 0, 0, 0, 0
    far = max(c[4] for mine in choices for c in mine)
    disturbed = m * far + 1
    bought = disturbed * (m + 1)
    opened = bought * (m + 1)
    never = opened * (m + 1)
    assert never * (m + 1) < 2**53
    cols = len(hand) + m
    place = {(kind, k): j for j, (kind, k, _) in enumerate(hand)}
    table = numpy.full((m, cols), float(never))
    kept = {}
    for i, mine in enumerate(choices):
        for c in mine:
            if most is not None and not c[3] and c[4] > most:
                continue
            j = len(hand) + i if c[0] is None else place[c[0]]
            table[i, j] = c[4] + disturbed * c[2] + bought * c[1] + opened * c[3]
            kept[i, j] = c
    i, j = linear_sum_assignment(table)
    picked = [kept.get(p) for p in zip(i, j)]
    if any(c is None for c in picked):
        return None
    return (sum(c[3] for c in picked), sum(c[1] for c in picked), sum(c[2] for c in picked), sum(c[4] for c in picked), max(c[4] for c in picked))


def best(head):
    answer = by_assignment(head)
    while answer[4] > 0:
        less = by_assignment(head, answer[4] - 1)
        if less is None or less[:4] != answer[:4]:
            break
        answer = less
    return answer


def pair(p):
    return f"{p[0]}-{p[1]}"


def draw(valves, drawer, disturb):
    def shim():
        m, e = 2300 + 5 * rnd.randint(0, 120) + rnd.randint(-1, 1), rnd.choice((0, 1, 2))
        return m - e, m + e

    spread = rnd.choice((60, 150, 300))
    rows = []
    for _ in range(valves):
        least = rnd.choice((150, 200, 250))
        band = least, least + rnd.choice((50, 60, 80, 100))
        middle = (band[0] + band[1]) // 2 + rnd.randint(-spread, spread) // 2
        lo = max(10, middle - rnd.choice((5, 10, 12, 25)))
        measured = lo, lo + rnd.choice((10, 20, 25, 30))
        rows.append((measured, shim(), band, rnd.choice(((band[0] + band[1]) // 2, least + 20))))
    step = rnd.choice((10, 20, 25, 50))
    series = [(at - 2, at + 2) for at in range(2300 + rnd.randint(0, 60), 2600 + rnd.randint(0, 300), step) if rnd.random() > 0.15]
    return rows, [shim() for _ in range(drawer)], series, disturb


cases = []
for count, valves in ((60, (1, 4)), (60, (3, 6)), (60, (6, 8)), (60, (8, 12)), (60, (12, 16)), (40, (16, 24)), (40, (24, 32)), (20, (32, 32))):
    for k in range(count):
        n = rnd.randint(*valves)
        head = draw(n, rnd.randint(0, n), k % 2 == 1)
        answer = best(head)
        if n <= 8 or k % 4 == 0:
            other = by_milp(head)
            assert other == answer, (head, other, answer)
        rows, _, _, fixed, now = model(head)
        opened, bought, disturbed, total, greatest = answer
        cases.append((head, n - opened, bought, disturbed, total + sum(fixed), max([greatest] + fixed)))

print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, Python {platform.python_version()}; made by valvetrain_shims.py")
print("# kind: reference")
print(f"# count: {len(cases)}")
print("# Whole micrometres. valves: each its clearance (the upper end open), its shim, its band and the clearance aimed at, as")
print("# a-b/a-b/a-b/a, blank after each. drawer: spare shims. series: sizes to buy. disturb: whether the shim of an in-band")
print("# valve may be taken. The best plan: valves in band, shims bought, in-band valves disturbed, and twice the sum and twice")
print("# the greatest of the distances from the aim.")
print("columns: valves; drawer; series; disturb; in_band; bought; disturbed; twice_off; twice_greatest")
for (valves, drawer, series, disturb), *answer in cases:
    print(" ; ".join([
        " ".join(f"{pair(m)}/{pair(s)}/{pair(b)}/{a}" for m, s, b, a in valves),
        " ".join(map(pair, drawer)) or "-",
        " ".join(map(pair, series)) or "-",
        "yes" if disturb else "no",
        *map(str, answer),
    ]))
