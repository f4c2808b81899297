"""Reference vectors for sets of readings with zero error and temperature, by exact fractions.

python3 instrument_sets.py > instrument_sets.txt

Lengths are whole picometres, temperatures kelvins above 20 °C, coefficients the exact values of the floats that are
printed. Every variable is tried at both its ends (the formula is monotone in each); 20 random choices in between
are checked to lie inside.
"""

import itertools
import platform
import random
from fractions import Fraction
from math import ceil, floor

rnd = random.Random(20240310)


def size(shown, standard, scale, of_standard, part):
    return (standard * (1 + of_standard) + shown * (1 + scale)) / (1 + part)


def span(x, e):
    return (x - e, x + e)


def expansions(bodies, together):
    """The expansions of the bodies at the ends of all variables."""
    ks = [span(Fraction(b["k"]), Fraction(b["ke"])) for b in bodies]
    ts = [span(Fraction(b["t"]), Fraction(b["te"])) for b in bodies]
    if together:
        return [tuple(k * t for k in k3) for t in ts[0] for k3 in itertools.product(*ks)]
    return list(itertools.product(*[[k * t for k in k2 for t in t2] for k2, t2 in zip(ks, ts)]))


def within(lo, hi):
    return lo + (hi - lo) * Fraction(rnd.randint(0, 1000), 1000)


def bounds(shown, standard, bodies, together):
    values = [size(d, s, *e) for d in shown for s in standard for e in expansions(bodies, together)]
    low, high = min(values), max(values)
    for _ in range(20):
        if together:
            t = within(*span(Fraction(bodies[0]["t"]), Fraction(bodies[0]["te"])))
            e = [within(*span(Fraction(b["k"]), Fraction(b["ke"]))) * t for b in bodies]
        else:
            e = [within(*span(Fraction(b["k"]), Fraction(b["ke"]))) * within(*span(Fraction(b["t"]), Fraction(b["te"]))) for b in bodies]
        assert low <= size(within(*shown), within(*standard), *e) <= high
    return f"{floor(low)} {ceil(high)}"


def body(warm):
    if not warm:
        return {"k": 0.0, "ke": 0.0, "t": 0, "te": 0}
    k = rnd.choice((11.5e-6, 10.8e-6, 19.4e-6, 23.6e-6, -1e-6))
    return {"k": k, "ke": rnd.choice((0.0, 1e-6, 2.5e-7)), "t": Fraction(rnd.randint(-40, 200), 2), "te": Fraction(rnd.choice((0, 1, 2, 10)), 4)}


def number(x):
    return str(float(x)) if isinstance(x, float) else f"{float(x):g}"


UM = 10**6
lines = []
for n in range(150):
    warm = n % 3 > 0
    together = n % 3 == 2
    bodies = [body(warm) for _ in range(3)]
    if together:
        for b in bodies[1:]:
            b["t"], b["te"] = bodies[0]["t"], bodies[0]["te"]
    step = rnd.choice((0, UM, 2 * UM, 10 * UM, 2_540_000))
    half = (step + 1) // 2
    standard = rnd.choice((0, 25_000 * UM, 86_000 * UM, 50_000_623_000, 101_600_000_000))
    standard_error = rnd.choice((0, UM, 2 * UM, 300_000)) if standard else 0
    unit = step or 12_345
    on_standard = rnd.choice((0, standard // unit * unit, unit * rnd.randint(-5, 5)))
    error = rnd.choice((0, UM, 4 * UM, 500_001))
    middle = rnd.choice((0, 10_000 * UM, 86_020 * UM))
    readings = [(middle // unit + rnd.randint(-30, 30)) * unit for _ in range(3)]
    u = error + half
    sizes = [bounds(span(r - on_standard, u + half), span(standard, standard_error), bodies, together) for r in readings[:2]]
    difference = bounds(span(readings[0] - readings[1], 2 * u), (0, 0), bodies, together)
    top, bottom = max(readings), min(readings)
    spread = bounds((max(0, top - bottom - 2 * u), top - bottom + 2 * u), (0, 0), bodies, together)
    thermal = " / ".join(f"{b['k']} {b['ke']} {number(b['t'])} {number(b['te'])}" for b in bodies)
    lines.append(
        f"{step} ; {error} ; {standard} {standard_error} {on_standard} ; {thermal} ; {'yes' if together else 'no'} ; "
        f"{' '.join(map(str, readings))} ; {sizes[0]} ; {sizes[1]} ; {difference} ; {spread}"
    )
lines = list(dict.fromkeys(lines))
print(f"# source: Python {platform.python_version()}, fractions; made by instrument_sets.py")
print("# kind: reference")
print(f"# count: {len(lines)}")
print("# In picometres: step and permissible error; the standard, its error and the reading on it. For scale, standard and")
print("# part, between strokes: coefficient per kelvin and its error, kelvins above 20 °C and their error; whether the three")
print("# are at one temperature. Three readings; the size of the first and of the second, the first less the second, and")
print("# the spread of the three, at 20 °C, each down and up.")
print("columns: step; error; setting; thermal; together; readings; first; second; difference; spread")
for line in lines:
    print(line)
