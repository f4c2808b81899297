"""Reference vectors for unbalance readings brought to the bearing planes, by
mpmath.

python3 crank_unbalance.py > crank_unbalance.txt

The two unbalances that stand for the readings are solved for as complex numbers
from the balance of forces and of moments. The least and greatest that errors and
unknown angles allow are sought by trying angles.
"""

import platform
import random

import mpmath
from mpmath import mp, mpc, mpf

mp.dps = 30
rnd = random.Random(63)


def planes(a, b, list_):
    """Unbalances at a and b with the same sum and the same moment about a."""
    total = mp.fsum(u for _, u in list_)
    moment = mp.fsum((z - a) * u for z, u in list_)
    at_b = moment / (b - a)
    return total - at_b, at_b


rows = []
for i in range(40):
    a_, b_ = f"{rnd.uniform(-50, 50):.1f}", f"{rnd.uniform(200, 600):.1f}"
    a, b = mpf(a_), mpf(b_)
    z_ = [f"{rnd.uniform(-150, 700):.1f}" for _ in range(2)]
    u_ = [f"{rnd.uniform(5, 400):.2f}" for _ in range(2)]
    t_ = [f"{rnd.uniform(0, 360):.1f}" for _ in range(2)]
    at = planes(a, b, [(mpf(z), mpf(u) * mp.expj(mp.radians(mpf(t)))) for z, u, t in zip(z_, u_, t_)])
    # With the second angle unknown: the turn of it that is best and worst.
    spans = []
    for k in (0, 1):
        one, two = [planes(a, b, [(mpf(z_[j]), mpc(u_[j]))])[k] for j in (0, 1)]
        one *= mp.expj(mp.radians(mpf(t_[0])))
        sizes = [abs(one + two * mp.expj(mp.arg(one) - mp.arg(two) + s)) for s in (0, mp.pi)]
        more = [abs(one + two * mp.expj(mp.pi * s / 50)) for s in range(100)]
        assert min(sizes) <= min(more) + mpf("1e-20") and max(sizes) >= max(more) - mpf("1e-20")
        spans += [min(sizes), max(sizes)]
    turn = lambda v: mp.degrees(mp.arg(v)) % 360
    rows.append([a_, b_, z_[0], u_[0], t_[0], z_[1], u_[1], t_[1]] + [mp.nstr(v, 14) for v in (
        abs(at[0]), turn(at[0]), abs(at[1]), turn(at[1]), *spans)])

print(f"# source: mpmath {mpmath.__version__} at 30 digits, Python {platform.python_version()}; made by crank_unbalance.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Bearing planes a and b, two readings (place in mm, amount in g·mm, angle in degrees), what acts in the bearing planes,")
print("# and its least and greatest where the second reading's angle is unknown.")
print("columns: a; b; z1; u1; t1; z2; u2; t2; ua; ta; ub; tb; aleast; agreatest; bleast; bgreatest")
for row in rows:
    print(" ; ".join(row))
