"""Reference vectors for a shaft in two V-blocks, by geometry, with numpy.

python3 crank_runout_blocks.py > crank_runout_blocks.txt

Each support is a closed curve of 20 000 points, turned step by step and let down
into its V until both faces touch; the dial above it reads its highest point, and
the dial at a place between the supports what its own curve has there, carried by
the line between the two centres. Nothing of lobes, factors or harmonics is used.
"""

import platform

import numpy as np

rng = np.random.default_rng(4)
fine = np.linspace(0, 2 * np.pi, 20000, endpoint=False)
R = 30000.0  # micrometres


def radius(shape, at):
    return R + sum(a * np.cos(k * at - p) for k, a, p in shape)


def settle(shape, turned, included):
    """Height of the centre in the V, and of the highest point above it."""
    r = radius(shape, fine)
    world = fine - turned  # the place on the shaft that now stands at this angle from the top
    half = included / 2
    # Outward normals of the faces stand at 90 degrees + half from the top.
    reach = [(r * np.cos(world - s * (np.pi / 2 + half))).max() for s in (1, -1)]
    # centre y (up), x (left): for both faces reach = distance along the normal.
    down = np.sin(half)
    y = (reach[0] + reach[1]) / (2 * down)
    top = radius(shape, turned)  # dial pointed, on the bisector
    return y, y + top


rows = []
for i in range(8):
    included = [90, 60, 108, 120, 72, 90, 108, 90][i]
    n, places = 12, (0.0, round(rng.uniform(100, 300), 1), 400.0)
    orders = [2, 3] if included in (90, 108, 120) else [3]
    def shape(scale):
        return [(k, rng.uniform(1, scale), rng.uniform(0, 6)) for k in orders]
    first, second = shape(6), shape(6)
    mid = [(1, rng.uniform(10, 30), rng.uniform(0, 6)), (2, rng.uniform(1, 5), rng.uniform(0, 6)), (3, rng.uniform(1, 3), rng.uniform(0, 6))]
    turns = np.arange(n) * 2 * np.pi / n
    y1, d1 = np.array([settle(first, t, np.radians(included)) for t in turns]).T
    y2, d2 = np.array([settle(second, t, np.radians(included)) for t in turns]).T
    w = places[1] / places[2]
    dm = (1 - w) * y1 + w * y2 + radius(mid, turns)
    line = lambda d: " ".join(f"{x:.4f}" for x in d - d[0])
    rows.append([str(included), f"{places[1]}", line(d1), line(dm), line(d2),
                 f"{2 * mid[0][1]:.4f} ± 0.02", f"{4 * mid[1][1]:.4f} ± 0.05", f"{2 * mid[2][1]:.4f} ± 0.05"])

print(f"# source: numpy {np.__version__}, Python {platform.python_version()}; made by crank_runout_blocks.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Included angle in degrees, the middle journal's place in mm between supports at 0 and 400, 12 readings at equal angles")
print("# of the three journals in micrometres; then what the middle one truly is: run-out of its eccentricity, ovality (of")
print("# diameters), swing of its three lobes. Tolerances hold the curves' second order and their points.")
print("columns: included; place; first; middle; second; runout; ovality; lobing")
for x in rows:
    print(" ; ".join(x))
