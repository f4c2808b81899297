"""Reference vectors for the greatest piston speeds and the crank angles of a
position, by mpmath.

python3 crank_slider_peaks.py > crank_slider_peaks.txt

The greatest speeds are the greatest of 3600 steps round the crank, improved by
a golden-section search; the angles of a position are found by bisection on the
position. The height is written with the throw's angle after upright.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40
rnd = random.Random(61)


def golden(f, a, b):
    """Where f is greatest between a and b, which hold one hump."""
    g = (mp.sqrt(5) - 1) / 2
    c, d = b - g * (b - a), a + g * (b - a)
    fc, fd = f(c), f(d)
    while b - a > mpf(10) ** -17:
        if fc > fd:
            b, d, fd = d, c, fc
            c = b - g * (b - a)
            fc = f(c)
        else:
            a, c, fc = c, d, fd
            d = a + g * (b - a)
            fd = f(d)
    return (a + b) / 2


def bisect(f, a, b):
    for _ in range(130):
        m = (a + b) / 2
        if (f(m) > 0) == (f(b) > 0):
            b = m
        else:
            a = m
    return (a + b) / 2


rows = []
sizes = [("0.3", "1.0", "0"), ("0.3", "1.5", "0"), ("43", "143.5", "0"), ("43", "143.5", "0.8"), ("43", "143.5", "-0.8"), ("50", "62", "11"), ("50", "50.5", "0")]
while len(sizes) < 20:
    r = f"{rnd.uniform(20, 90):.2f}"
    sizes.append((r, f"{float(r) * rnd.uniform(1.4, 5):.2f}", f"{rnd.uniform(-0.3, 0.3) * float(r):.2f}"))
for r_, l_, e_ in sizes:
    r, l, e = mpf(r_), mpf(l_), mpf(e_)
    y = lambda t: r * mp.cos(t) + mp.sqrt(l * l - (r * mp.sin(t) + e) ** 2)
    v = lambda t: -mp.diff(y, t)
    top, bottom = -mp.asin(e / (l + r)), mp.pi - mp.asin(e / (l - r))
    n = 3600
    steps = [2 * mp.pi * i / n for i in range(n)]
    # A closed form of the speed for the coarse search only.
    coarse = [r * mp.sin(t) + (r * mp.sin(t) + e) * r * mp.cos(t) / mp.sqrt(l * l - (r * mp.sin(t) + e) ** 2) for t in steps]
    down = steps[max(range(n), key=lambda i: coarse[i])]
    up = steps[min(range(n), key=lambda i: coarse[i])]
    w = 2 * mp.pi / n
    down, up = golden(v, down - w, down + w), golden(lambda t: -v(t), up - w, up + w)
    stroke = y(top) - y(bottom)
    x_ = mp.nstr(stroke * mpf(rnd.uniform(0.001, 0.999)), 8)
    x = mpf(x_)
    after = bisect(lambda t: y(top) - y(t) - x, top, bottom) - top
    before = top - bisect(lambda t: y(t) - y(top) + x, bottom - 2 * mp.pi, top)
    # A maximum of a smooth function is sharp in its value, not in its place.
    rows.append([r_, l_, e_, mp.nstr(mp.degrees((down - top) % (2 * mp.pi)), 12), mp.nstr(v(down), 17),
                 mp.nstr(mp.degrees((up - top) % (2 * mp.pi)), 12), mp.nstr(v(up), 17),
                 x_, mp.nstr(mp.degrees(after), 17), mp.nstr(mp.degrees(before), 17)])

print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by crank_slider_peaks.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Angles are in degrees after top dead centre, before it in the column before; the speeds are for each radian of")
print("# the crank, below zero upwards. offset is above zero towards the side where the crankpin rises.")
print("columns: throw; rod; offset; down; downspeed; up; upspeed; position; after; before")
for row in rows:
    print(" ; ".join(row))
