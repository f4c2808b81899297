"""Reference vectors for the best stack of blades, by going through every combination.

python3 feeler_stacks.py > feeler_stacks.txt
"""

import platform
import random
from itertools import combinations

rnd = random.Random(24500127)
rows = []


def show(nm):
    """Micrometres, exactly: all sizes here are whole nanometres."""
    whole, rest = divmod(nm, 1000)
    return f"{whole}" + (f".{rest:03d}".rstrip("0") if rest else "")


def best(blades, target, most, fit):
    """The nearest total, then the fewest blades, then the thickest first."""
    found = None
    for count in range(1, min(most, len(blades)) + 1):
        for choice in combinations(sorted(blades, reverse=True), count):
            off = sum(choice) - target
            if (fit == "most" and off > 0) or (fit == "least" and off < 0):
                continue
            key = (abs(off), count, [-t for t in choice])
            if found is None or key < found[0]:
                found = (key, choice)
    return found and found[1]


def add(blades, target, most, fit):
    choice = best(blades, target, most, fit)
    rows.append((blades, target, most, fit, choice))


# an inch set, a metric set, blades by micrometer, alike blades, few blades
inch = [38100, 50800, 63500, 76200, 101600, 127000, 152400, 177800, 203200, 228600, 254000]
metric = [50000 * i for i in range(1, 13)]
for fit in ("nearest", "most", "least"):
    for most in (1, 2, 3, 4):
        for target in (0, 20000, 70000, 114300, 120000, 317500, 444500, 1000000, 5000000):
            add(inch, target, most, fit)
        for target in (25000, 75000, 275000, 310000, 1225000):
            add(metric, target, most, fit)
while len(rows) < 500:
    count = rnd.randint(1, 10)
    step = rnd.choice((1, 100, 1000, 12700))
    blades = [step * rnd.randint(max(1, 20000 // step), 300000 // step) for _ in range(count)]
    for _ in range(rnd.choice((0, 0, 1, 3))):
        blades.append(rnd.choice(blades))
    target = rnd.randint(0, sum(blades) * 5 // 4)
    if rnd.random() < 0.5:
        target -= target % step
    if rnd.random() < 0.3 and len(blades) > 2:
        # halfway between two totals: a tie
        a, b = (sum(rnd.sample(blades, 2)) for _ in range(2))
        if (a + b) % 2 == 0:
            target = (a + b) // 2
    add(sorted(blades), target, rnd.randint(1, 8), rnd.choice(("nearest", "nearest", "most", "least")))

unique = list(dict.fromkeys((tuple(b), t, m, f, c) for b, t, m, f, c in rows))
print(f"# source: every combination tried, by itertools of Python {platform.python_version()}, sizes in whole nanometres (feeler_stacks.py beside it)")
print("# kind: reference")
print(f"# count: {len(unique)}")
print("# blades: thicknesses in micrometres, each once for each blade. most: blades to a stack at most.")
print("# fit: nearest the target, at most it or at least it. stack: the best total, of equally near ones that")
print("# of the fewest blades, of those the one with the thickest blade, then the thickest second, and so on;")
print("# none where no stack will do.")
print("columns: blades; target; most; fit; stack; total")
for blades, target, most, fit, choice in unique:
    cells = [" ".join(map(show, choice)), show(sum(choice))] if choice else ["-", "-"]
    print(" ; ".join([" ".join(map(show, blades)), show(target), str(most), fit, *cells]))
