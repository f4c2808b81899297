"""Reference vectors for rocker contact, chains, gears and ball ends, by mpmath and scipy.

/usr/bin/python3 valvetrain_drive.py > valvetrain_drive.txt

sweep: the contact's place is followed through 2001 steps of the lift and refined by scipy.optimize.minimize_scalar, with
the roller's centre taken round the pivot by its angle; the width is greatest less least.
slack: the deflection is the root (scipy.optimize.brentq) of the length of the bent run, less the straight one.
gear: the gap between two involute flanks, one turned by the backlash, as the least distance between points of the two
curves (scipy.optimize.minimize from a grid); for helical teeth times the cosine of the lean of the flank's normal, from the
normal vectors themselves.
cap: the height of a ball's cap over a hole, as the root of the sphere's equation.
"""

import platform
import random

import mpmath
import numpy
import scipy
from scipy.optimize import brentq, minimize, minimize_scalar

rnd = random.Random(1477)
rows = []


def sweep(arm, lift, mid):
    shut, opened = mid + lift / 2, mid - lift / 2
    first, last = numpy.arcsin(shut / arm), numpy.arcsin(opened / arm)

    def reach(angle):
        return arm * numpy.cos(angle)

    angles = numpy.linspace(first, last, 2001)
    places = reach(angles)
    best = minimize_scalar(lambda a: -reach(a), bounds=(min(first, last), max(first, last)), method="bounded", options={"xatol": 1e-12})
    return max(places.max(), -best.fun) - places.min()


for k in range(60):
    arm, lift = rnd.randint(20, 60), rnd.randint(4, 16)
    mid = 0 if k < 20 else rnd.randint(-12, 12) / 2
    rows.append(("sweep", arm, lift, mid, sweep(arm, lift, mid), "1e-8"))

for _ in range(30):
    span, slack = rnd.randint(60, 400), rnd.randint(1, 40) / 10
    d = brentq(lambda d: 2 * numpy.hypot(span / 2, d) - span - slack, 0, span, xtol=1e-14)
    rows.append(("slack", span, slack, "-", d, "1e-9"))


def involute(base, t, turn, side):
    """A point of a flank: the string unwound by t from the base circle, the flank turned, mirrored for side -1."""
    x, y = base * (numpy.cos(t) + t * numpy.sin(t)), side * base * (numpy.sin(t) - t * numpy.cos(t))
    return numpy.array((x * numpy.cos(turn) - y * numpy.sin(turn), x * numpy.sin(turn) + y * numpy.cos(turn)))


for _ in range(30):
    radius, backlash = rnd.randint(20, 120), rnd.randint(5, 40) / 100
    pressure, helix = rnd.choice((14.5, 20, 25)), rnd.choice((0, 0, 15, 23, 30))
    # Of helical teeth alpha is square to the teeth; in the plane of rotation tan = tan(alpha)/cos(beta).
    across = numpy.arctan(numpy.tan(numpy.radians(pressure)) / numpy.cos(numpy.radians(helix)))
    base = radius * numpy.cos(across)
    at = numpy.tan(across)  # where the flank crosses the pitch circle
    fixed = involute(base, at, 0, 1)
    best = None
    for start in numpy.linspace(at - 0.2, at + 0.2, 5):
        r = minimize(lambda t: numpy.sum((involute(base, t[0], backlash / radius, 1) - fixed) ** 2), [start], method="Nelder-Mead",
                     options={"xatol": 1e-13, "fatol": 1e-26, "maxiter": 4000})
        best = r.fun if best is None else min(best, r.fun)
    gap = mpmath.sqrt(best)
    # The flank's normal in space: along the line of action in the plane of rotation, leaning along the axis so that it is
    # square to the helix on the base cylinder, whose tangent is (base, base/tan(base helix)).
    lean = mpmath.atan(mpmath.tan(mpmath.radians(helix)) * float(base) / radius)
    rows.append(("gear", radius, backlash, f"{pressure}/{helix}", float(gap * mpmath.cos(lean)), "2e-8"))

for _ in range(20):
    ball = rnd.randint(60, 120) / 10
    hole = rnd.randint(20, 55) / 10
    height = brentq(lambda h: (ball / 2 - h) ** 2 + (hole / 2) ** 2 - (ball / 2) ** 2, 0, ball / 2, xtol=1e-15)
    rows.append(("cap", ball, hole, "-", height, "1e-10"))

rows = list(dict.fromkeys(rows))
print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, mpmath {mpmath.__version__}, Python {platform.python_version()}; made by valvetrain_drive.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Millimetres and degrees. sweep: arm, lift, height over the pivot at mid-lift; the width wiped. slack: straight run and slack;")
print("# how far its middle goes aside. gear: pitch radius, backlash at it, pressure angle square to the teeth and helix angle; the gap")
print("# between the flanks. cap: ball and gauge hole; how far the ball stands through.")
print("columns: kind; first; second; third; expected")
for kind, a, b, c, x, tol in rows:
    print(" ; ".join([kind, str(a), str(b), str(c), f"{x:.13g} ± {tol}"]))
