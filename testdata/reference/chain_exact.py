"""Reference vectors for dimension chains, by exact fractions and integer roots.

python3 chain_exact.py > chain_exact.txt

Sizes are whole quanta. A link is its limits, its sensitivity and its scatter: n with how many standard
deviations go from the middle to an end, r rectangular, t triangular, u U-shaped. Roots are bracketed between
whole numbers by decimal arithmetic of 120 digits; a root that comes out whole is checked by squaring.
"""

import platform
import random
from decimal import Decimal, getcontext
from fractions import Fraction
from math import ceil, floor

getcontext().prec = 120
FINE = 10**40
SQUARES = {"r": Fraction(3), "t": Fraction(6), "u": Fraction(2)}


def root(x):
    """A fraction within 10^-40 of the root, or the root itself."""
    d = Decimal(x.numerator) / Decimal(x.denominator)
    near = Fraction(int((d.sqrt() * FINE).to_integral_value()), FINE)
    for den in (1, 2, 3, 4, 5, 6, 8, 10, 12, 20, 24, 40, 60, 120):
        exact = Fraction(round(near * den), den)
        if exact * exact == x:
            return exact
    for n in (floor(near * 2), ceil(near * 2)):  # a near miss would make the rounding doubtful
        assert abs(near - Fraction(n, 2)) > Fraction(1, 10**30), x
    return near


def squares(scatter, k):
    return SQUARES.get(scatter) or k * k


def moments(links):
    middle = sum((s * Fraction(lo + hi, 2) for lo, hi, s, _, _ in links), Fraction(0))
    variance = sum((s * s * Fraction(hi - lo, 2) ** 2 / squares(c, k) for lo, hi, s, c, k in links), Fraction(0))
    return middle, variance


def worst(links):
    low = sum((min(s * lo, s * hi) for lo, hi, s, _, _ in links), Fraction(0))
    high = sum((max(s * lo, s * hi) for lo, hi, s, _, _ in links), Fraction(0))
    return low, high


def band(low, high):
    low, high = ceil(low), floor(high)
    return f"{low} {high}" if low <= high else "none"


def room_worst(links, at, wanted):
    low, high = worst(links[:at] + links[at + 1 :])
    if high - low > wanted[1] - wanted[0]:
        return "none"
    s = links[at][2]
    ends = sorted(((wanted[0] - low) / s, (wanted[1] - high) / s))
    return band(*ends)


def half_width(link, variance, half, k):
    under = half * half / (k * k) - variance
    if half < 0 or under < 0:
        return None
    return root(under * squares(link[3], link[4]) / (link[2] * link[2]))


def room_root(links, at, wanted, k):
    middle, variance = moments(links[:at] + links[at + 1 :])
    a = half_width(links[at], variance, Fraction(wanted[1] - wanted[0], 2), k)
    if a is None:
        return "none"
    m = (Fraction(sum(wanted), 2) - middle) / links[at][2]
    return band(m - a, m + a)


def room_about(links, at, wanted, k, m):
    middle, variance = moments(links[:at] + links[at + 1 :])
    closing = middle + links[at][2] * m
    a = half_width(links[at], variance, min(wanted[1] - closing, closing - wanted[0]), k)
    return "none" if a is None else band(m - floor(a), m + floor(a))


rnd = random.Random(20240307)
lines = []


def add(links, k, at, wanted):
    low, high = worst(links)
    middle, variance = moments(links)
    a = root(k * k * variance)
    text = " / ".join(f"{lo} {hi} {s} {c}{'' if c != 'n' else ' ' + str(float(kk))}" for lo, hi, s, c, kk in links)
    about = floor((links[at][0] + links[at][1]) / 2) + rnd.randint(-3, 3)
    share = float(links[at][2] ** 2 * Fraction(links[at][1] - links[at][0], 2) ** 2 / squares(*links[at][3:]) / variance)
    worst_share = float(abs(links[at][2]) * (links[at][1] - links[at][0]) / (high - low))
    lines.append(
        f"{text} ; {float(k)} ; {floor(low)} {ceil(high)} ; {'yes' if low.denominator == 1 else 'no'} ; {'yes' if high.denominator == 1 else 'no'} ; "
        f"{round(middle)} ; {ceil(a)} ; {floor(middle - a)} {ceil(middle + a)} ; {at} ; {wanted[0]} {wanted[1]} ; "
        f"{room_worst(links, at, wanted)} ; {room_root(links, at, wanted, k)} ; {about} ; {room_about(links, at, wanted, k, about)} ; "
        f"{share:.15g} ± 1e-13 ; {worst_share:.15g} ± 1e-13"
    )


def link(span, whole):
    lo = rnd.randint(-span, span)
    width = rnd.randint(1, max(2, span // rnd.choice((3, 100, 10000))))
    s = rnd.choice((1, -1)) if whole else Fraction(rnd.choice((1, -1)) * rnd.randint(1, 40), rnd.randint(1, 12))
    scatter = rnd.choice("nnrtu")
    return lo, lo + width, Fraction(s), scatter, Fraction(rnd.choice((1.0, 2.0, 2.5, 3.0, 3.3, 1.96))) if scatter == "n" else Fraction(0)


for _ in range(400):
    span = rnd.choice((20, 1000, 10**6, 10**9, 10**11, 10**14))
    links = [link(span, rnd.random() < 0.5) for _ in range(rnd.randint(1, 8))]
    k = Fraction(rnd.choice((1.0, 2.0, 3.0, 3.0, 3.0, 4.5, 1.96)))
    low, high = worst(links)
    spare = rnd.choice((0.5, 1.0, 1.3))
    wanted = (floor(low + (high - low) * Fraction(1 - spare) / 2), floor(high - (high - low) * Fraction(1 - spare) / 2))
    if wanted[0] < wanted[1]:
        add(links, k, rnd.randrange(len(links)), wanted)

# Whole roots: 3, 4 and 12 make 13.
for scale in (2, 20, 2 * 10**6, 2 * 10**10):
    links = [(5 * scale, 5 * scale + n * scale, Fraction(s), "n", Fraction(3)) for n, s in ((3, 1), (4, -1), (12, 1))]
    low, high = worst(links)
    add(links, Fraction(3), 1, (floor(low), floor(high)))

print(f"# source: Python {platform.python_version()}, fractions and decimal; made by chain_exact.py")
print("# kind: reference")
print(f"# count: {len(lines)}")
print("# Links between strokes: least, greatest, sensitivity, scatter (n with its sigmas, r, t, u), in whole quanta.")
print("# Then the sigmas of the closing size; the worst case, outward, and whether its ends are exact; the middle to the")
print("# nearest (even) quantum; the root-sum-square half-width, up; the range, outward; then for one link, counted from 0,")
print("# and a wanted band: what it may be by worst case, by root-sum-square, and about a middle, inward, none where")
print("# nothing is left; and its shares of the variance and of the worst case.")
print("columns: links; sigmas; worst; least_exact; greatest_exact; middle; each; range; link; wanted; room_worst; room_root; about; room_about; variance_share; worst_share")
for line in lines:
    print(line)
