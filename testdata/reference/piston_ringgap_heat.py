"""Reference vectors for a ring's end gap when hot, by mpmath.

python3 piston_ringgap_heat.py > piston_ringgap_heat.txt

The ring is a beam whose middle line keeps its length but for heat, bent into the bore: its ends subtend what angle is
left of a turn. Nothing of the library's closed forms is used: lengths are integrated along the arcs, and the ring's
temperature at which its ends meet is found as a root.
"""

import platform
import random

import mpmath
from mpmath import mp, mpf, pi

mp.dps = 40
random.seed(505)


def face_gap(gap, bore, thick, eb, er):
    """The hot gap between the face's edges of a ring with radial ends, cold gap between them given."""
    r = bore / 2
    turns = 2 * pi - gap / r  # what the ring subtends, cold
    middle = mpmath.quad(lambda a: r - thick / 2, [0, turns])  # its middle line's length
    middle *= 1 + er
    rh, th = r * (1 + eb), thick * (1 + er)
    return rh * (2 * pi - middle / (rh - th / 2))


rows = []
for _ in range(150):
    bore = mpf(random.randrange(40000, 200000)) / 1000
    gap = mpf(random.randrange(100, 1500)) / 1000
    thick = mpf(int(bore * 1000 / random.randrange(20, 31))) / 1000
    at = mpf(random.randrange(10, 31))
    ab, ar = mpf(random.randrange(90, 240)) / 10**7, mpf(random.randrange(90, 180)) / 10**7
    tb, tr = mpf(random.randrange(-20, 250)), mpf(random.randrange(50, 500))
    hot = face_gap(gap, bore, thick, ab * (tb - at), ar * (tr - at))
    line = face_gap(gap, bore, mpf(0), ab * (tb - at), ar * (tr - at))
    butts = mpmath.findroot(lambda t: face_gap(gap, bore, thick, ab * (tb - at), ar * (t - at)), (mpf(0), mpf(3000)), solver="anderson")
    need = mpmath.findroot(lambda g: face_gap(g, bore, thick, ab * (tb - at), ar * (tr - at)), (mpf(-5), mpf(10)), solver="anderson")
    n = lambda x, d=12: mpmath.nstr(x, d, strip_zeros=True)
    rows.append([n(bore), n(gap), n(thick), n(at), n(ab * 10**6), n(ar * 10**6), n(tb), n(tr)]
                + [mpmath.nstr(x, 20) + " ± 3e-9" for x in (hot, line, butts, need)])

print(f"# source: mpmath {mpmath.__version__}, Python {platform.python_version()}; made by piston_ringgap_heat.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Bore, cold end gap and radial thickness in mm, measured at so many °C; coefficients in millionths per kelvin; bore and")
print("# ring at so many °C. hot is the gap then between the edges of the ring's face, line the same for a ring without thickness,")
print("# butts the ring's temperature at which its ends meet, need the cold gap with which they meet at the ring's own.")
print("columns: bore; gap; thickness; measured_at; bore_expansion; ring_expansion; bore_at; ring_at; hot; line; butts; need")
for r in rows:
    print(" ; ".join(r))
