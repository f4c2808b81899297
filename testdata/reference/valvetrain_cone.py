"""Reference vectors for the cuts of a valve seat, by mpmath.

python3 valvetrain_cone.py > valvetrain_cone.txt

Seat, cutters and throat are straight lines in the half plane of radius and
height. Edges are where two lines meet, found by solving for the meeting point;
a feed moves a line down, and the feed that gives a wanted edge is found by a
root finder. Volumes are numerical integrals of the closed chamber before and
after. None of the formulas under test is used.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 30
rnd = random.Random(45)


def line(angle, r, z):
    """Through (r, z), rising by the angle (degrees from the square plane)."""
    t = mp.radians(angle)
    return (-mp.sin(t), mp.cos(t), -mp.sin(t) * r + mp.cos(t) * z)  # n·(r, z) = c


def meet(a, b):
    m = mp.matrix([[a[0], a[1]], [b[0], b[1]]])
    x = mp.lu_solve(m, mp.matrix([a[2], b[2]]))
    return x[0], x[1]


def lowered(a, feed):
    """The line moved along the stem, away from the chamber."""
    return (a[0], a[1], a[2] - a[1] * feed)


def find(f, guess):
    x = mp.findroot(f, (mpf(guess), mpf(guess) + mpf("0.05")), tol=mpf(10) ** -40)
    if abs(f(x)) > mpf(10) ** -18:
        raise ArithmeticError("no root")
    return x


def height(a, r):
    return (a[2] - a[0] * r) / a[1]


def chamber(seat, above, face, bottom, head, contact, end):
    """Volume of the chamber below z = 20, out to the radius end: under the valve's
    flat within the contact, and outside it from the seat and the cone above it
    down, less the valve's rim."""
    floor = mpf(20)
    edge = meet(seat, above)[0]
    v = mp.pi * contact**2 * (floor - bottom)
    roof = lambda r: height(seat, r) if r < edge else height(above, r)
    v += mp.quad(lambda r: 2 * mp.pi * r * (floor - roof(r)), [contact, edge, end])
    v -= mp.quad(lambda r: 2 * mp.pi * r * (bottom - height(face, r)), [contact, head])
    return v


rows = []
while len(rows) < 60:
    alpha = rnd.choice(["30", "45", "45", "46", "45.5", "20"])
    beta = rnd.choice(["0", "15", "10", "30"])
    gamma = rnd.choice(["60", "75", "70", "62.5"])
    if float(beta) >= float(alpha) - 4:
        continue
    outer = f"{rnd.uniform(24, 46):.2f}"
    width = f"{rnd.uniform(1.2, 3.2):.2f}"
    a, b, g, o, w = map(mpf, (alpha, beta, gamma, outer, width))
    R = o / 2
    # The width along the cone, laid off from the outer edge.
    inner_edge = (R - w * mp.cos(mp.radians(a)), -w * mp.sin(mp.radians(a)))
    seat, above, below = line(a, R, 0), line(b, R, 0), line(g, *inner_edge)
    inner = 2 * inner_edge[0]
    feed_a, feed_b, depth = (f"{rnd.uniform(0.05, 0.5):.3f}" for _ in range(3))
    outer_fed = 2 * meet(seat, lowered(above, mpf(feed_a)))[0]
    inner_fed = 2 * meet(seat, lowered(below, mpf(feed_b)))[0]
    if outer_fed <= inner + mpf("0.2") or inner_fed >= o - mpf("0.2"):
        continue
    deeper = lowered(seat, mpf(depth))
    outer_cut, inner_cut = 2 * meet(deeper, above)[0], 2 * meet(deeper, below)[0]
    # To narrow by half a millimetre along the cone, from either side.
    along = lambda p, q: mp.hypot(p[0] - q[0], p[1] - q[1])
    to_above = find(lambda x: along(meet(seat, lowered(above, x)), inner_edge) - (w - mpf("0.5")), "0.2")
    to_below = find(lambda x: along(meet(seat, lowered(below, x)), (R, mpf(0))) - (w - mpf("0.5")), "0.2")
    # Volumes: a valve whose head is a little larger than the seat, then its seat
    # cut by depth; then its face ground by depth instead.
    head = R + mpf("0.4")
    contact = R - mpf("0.1")
    bottom = height(seat, head) + mpf("1.2")
    end = R + mpf("2.5")
    d = mpf(depth)
    before = chamber(seat, above, seat, bottom, head, contact, end)
    v_seat = chamber(deeper, above, deeper, bottom - d, head, contact, end) - before
    v_face = chamber(seat, above, seat, bottom - d, head, contact, end) - before
    # Narrowed again from above by feed_a: the cone above, from the new edge out
    # to end, is lower.
    lower = lowered(above, mpf(feed_a))
    r_new = outer_fed / 2
    v_top = mp.quad(lambda r: 2 * mp.pi * r * (height(seat if r < R else above, r) - height(lower, r)), [r_new, R, end])
    # The shift of a seat's axis by 0.02 as a dial square to the cone sees it.
    n = mp.sin(mp.radians(a))
    e = mpf("0.02")
    near, far = e * n, -e * n
    # From the distance of a point to a line, not by this product: the line moved
    # sideways by e, seen from a point on it.
    moved = line(a, R + e, 0)
    off = abs(moved[0] * R + moved[1] * 0 - moved[2])
    if abs(off - near) > mpf(10) ** -25:
        raise ArithmeticError("not square")
    out = [mp.nstr(x, 16) for x in (inner, outer_fed, inner_fed, outer_cut, inner_cut, to_above, to_below, 2 * off, v_seat, v_face, v_top)]
    rows.append([alpha, beta, gamma, outer, width, feed_a, feed_b, depth, mp.nstr(2 * head, 16), mp.nstr(2 * end, 16)] + out)

print(f"# source: mpmath {mpmath.__version__} at 30 digits, Python {platform.python_version()}; made by valvetrain_cone.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# A seat (alpha, outer, width along the cone) below a cone (beta) and above a throat (gamma), degrees from the plane")
print("# square to the stem, mm. Its inner diameter; its edges after feeds; both after it is cut deeper; the feeds that narrow")
print("# it by 0.5 along the cone; the run-out, square to the cone, of an axis 0.02 off; and what the chamber gains, in mm³,")
print("# when the seat is cut by depth, when the face is ground by depth, and by the feed from above with a cone out to end.")
print("columns: alpha; beta; gamma; outer; width; feed_a; feed_b; depth; head; end; inner; outer_fed; inner_fed; outer_cut; inner_cut; to_above; to_below; run; v_seat; v_face; v_top")
for r in rows:
    print(" ; ".join(r))
