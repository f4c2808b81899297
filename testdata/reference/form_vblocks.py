"""What an indicator shows of lobed parts turned in a V-block, by the geometry itself.

python3 form_vblocks.py > form_vblocks.txt

A part of radius 1 + A·cos(nθ) lies in the V with its faces tangent to it, and a flat anvil touches it along the
indicator's direction. Each tangent is the greatest of r(θ)·cos(θ − direction), by Newton's method in 40 digits. The part
turns through one lobe; swing over 2A, for A so small that the next order does not show.
"""

import platform

import mpmath as mp

mp.mp.dps = 40
A = mp.mpf("1e-12")


def support(n, turn, direction):
    """The distance of the tangent across a direction from the centre of a part turned by turn."""
    t = direction
    for _ in range(6):
        r, r1, r2 = 1 + A * mp.cos(n * (t - turn)), -n * A * mp.sin(n * (t - turn)), -n * n * A * mp.cos(n * (t - turn))
        s, c = mp.sin(t - direction), mp.cos(t - direction)
        t -= (r1 * c - r * s) / (r2 * c - 2 * r1 * s - r * c)
    return (1 + A * mp.cos(n * (t - turn))) * mp.cos(t - direction)


def swing(n, included, indicator):
    a, i = mp.radians(included), mp.radians(indicator)
    left, right = mp.pi / 2 + a / 2, -mp.pi / 2 - a / 2  # the faces, from the direction opposite the V

    def reading(turn):
        # The centre (x, y), y opposite the V: both faces stay at distance 1 from the origin.
        p, q = 1 - support(n, turn, left), 1 - support(n, turn, right)
        m = mp.matrix([[mp.sin(left), mp.cos(left)], [mp.sin(right), mp.cos(right)]])
        x, y = mp.lu_solve(m, mp.matrix([p, q]))
        return x * mp.sin(i) + y * mp.cos(i) + support(n, turn, i)

    # A sine of the turn: from three readings a quarter of a lobe apart.
    quarter = mp.pi / 2 / n
    r0, r1, r2 = reading(mp.mpf(0)), reading(quarter), reading(2 * quarter)
    mean = (r0 + r2) / 2
    return mp.hypot(r0 - mean, r1 - mean) / A


rows = []
for included, indicator in [(60, 0), (72, 0), (90, 0), (108, 0), (120, 0), (60, 180), (90, 180), (108, 180), (120, 180),
                            (120, 60), (60, 30), (90, 45), (72, -20), (100.5, 123.25)]:
    for n in range(1, 31):
        rows.append(f"{included} ; {indicator} ; {n} ; {mp.nstr(swing(n, included, indicator), 12, min_fixed=-20)} ± 1e-9")

print(f"# source: mpmath {mp.__version__}, Python {platform.python_version()}; made by form_vblocks.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# How many times RONt an indicator swings over a part of n lobes in a V; angles in degrees, the indicator's from the bisector.")
print("columns: included; indicator; lobes; factor")
print("\n".join(rows))
