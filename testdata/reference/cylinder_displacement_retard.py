"""Reference vectors for a camshaft's retard when the head comes down, by mpmath.

python3 cylinder_displacement_retard.py > cylinder_displacement_retard.txt

The tight side is drawn as it lies: the outer tangent of two circles, with the
arcs to a fixed tooth of each. The camshaft's circle comes down, and the angle
that it must turn back for the way to be as long as before is found by a root
finder. Nothing is differentiated.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf

mp.dps = 40
rnd = random.Random(720)


def way(centres, r, q, turned):
    """From a tooth of the crankshaft's sprocket (radius q, centre 0, 0), fixed at
    (-q, 0) or lower, over the tangent, to a tooth of the camshaft's (radius r,
    centre 0, centres) that has turned so far from (-r, centres) along the drive."""
    # The tangent on the left touches both circles at direction u from the centres.
    phi = mp.asin((r - q) / centres)
    u = (-mp.cos(phi), mp.sin(phi) * -1)
    a = (q * u[0], q * u[1])
    b = (r * u[0], centres + r * u[1])
    strand = mp.hypot(b[0] - a[0], b[1] - a[1])
    # It must be a tangent of both circles.
    for p, c in ((a, 0), (b, centres)):
        dot = (b[0] - a[0]) * p[0] + (b[1] - a[1]) * (p[1] - c)
        if abs(dot) > mpf(10) ** -30:
            raise ArithmeticError("not a tangent")
    # Arcs from the leftmost points: above it on the camshaft, below it on the
    # crankshaft, by how far the touching point lies from there.
    arc_q = q * (mp.pi - mp.atan2(-a[1], a[0]) if a[1] < 0 else -(mp.pi - mp.atan2(a[1], a[0])))
    over = b[1] - centres
    arc_r = r * (mp.pi - mp.atan2(-over, b[0]) if over < 0 else -(mp.pi - mp.atan2(over, b[0])))
    return strand - arc_q + arc_r + r * turned


rows = []
for i in range(40):
    pitch = rnd.choice(["8", "9.525", "9.525", "12.7"])
    teeth = rnd.randint(16, 24) * 2
    crank = teeth // 2 if i % 2 else teeth
    r, q = mpf(pitch) * teeth / (2 * mp.pi), mpf(pitch) * crank / (2 * mp.pi)
    centres = f"{rnd.uniform(180, 420):.1f}"
    down = f"{rnd.choice([-0.3, 0.05, 0.1, 0.15, 0.25, 0.5, 1.0]):.2f}"
    c, d = mpf(centres), mpf(down)
    before = way(c, r, q, 0)
    back = mp.findroot(lambda x: way(c - d, r, q, x) - before, (mpf(0), mpf("0.01")))
    rows.append([pitch, str(teeth), str(crank), centres, down, mp.nstr(mp.degrees(back), 15), mp.nstr(mp.degrees(d / r), 17)])

print(f"# source: mpmath {mpmath.__version__} at 40 digits, Python {platform.python_version()}; made by cylinder_displacement_retard.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# By how many degrees a camshaft is late when it comes down: exactly, and by lowering over pitch radius. mm.")
print("columns: pitch; teeth; crank; centres; down; exact; parallel")
for x in rows:
    print(" ; ".join(x))
