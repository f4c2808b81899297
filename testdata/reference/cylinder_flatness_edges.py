"""Reference vectors for what a straight-edge shows, by numpy and scipy.

python3 cylinder_flatness_edges.py > cylinder_flatness_edges.txt

humps: a profile of 4001 points; the straight-edge is a line that lies on it and
touches it at one of them. The gaps under its ends, and the least distance of two
parallel lines that hold the profile (by linear programming).
faces: nine heights at random; the bows of the six lines read off them as the
middle over the line between the ends, and the least distance of two parallel
planes that hold the nine (by linear programming).
"""

import platform

import numpy
import scipy
from scipy.optimize import linprog

rng = numpy.random.default_rng(1955)


def zone(points):
    """Least vertical distance of two parallel lines or planes that hold the points (last column: heights)."""
    x, z = points[:, :-1], points[:, -1]
    n = x.shape[1]
    one = numpy.ones((len(z), 1))
    # Unknown: slopes, offset, half-distance. |z - slopes·x - offset| <= half.
    a = numpy.block([[-x, -one, -one], [x, one, -one]])
    b = numpy.concatenate([-z, z])
    r = linprog([0] * (n + 1) + [1], A_ub=a, b_ub=b, bounds=[(None, None)] * (n + 1) + [(0, None)], method="highs")
    return 2 * r.x[-1]


x = numpy.linspace(-1, 1, 4001)
rows = []
for i in range(36):
    shape = ["parabola", "ridge", "quartic", "lopsided"][i % 4]
    height = rng.integers(4, 40) / 100  # 0.04 to 0.39 mm
    z = {"parabola": 1 - x**2, "ridge": 1 - abs(x), "quartic": 1 - x**4, "lopsided": (1 + x) * numpy.sqrt((1 - x) / 2 + 1e-9)}[shape] * height
    touch = rng.integers(300, 3700) if shape != "ridge" else 2000
    slope = (z[touch + 1] - z[touch - 1]) / (x[touch + 1] - x[touch - 1])
    if shape == "ridge":
        slope = height * rng.uniform(-1, 1)
    edge = z[touch] + slope * (x - x[touch])
    edge += max(0, (z - edge).max())
    g1, g2 = edge[0] - z[0], edge[-1] - z[-1]
    coarse = slice(None, None, 20)
    h = zone(numpy.column_stack([x[coarse], z[coarse]]))
    rows.append(f"hump ; {shape} ; {g1:.9f} {g2:.9f} ; {h:.6f} ; -")
grid = numpy.array([(i, j) for i in (-1, 0, 1) for j in (-1, 0, 1)], float)
for i in range(24):
    z = rng.integers(-60, 61, (3, 3)) / 1000
    if i == 0:
        z = 0.05 * numpy.array([[1, 0, -1], [0, 0, 0], [-1, 0, 1]])  # a pure twist of 0.05
    bow = lambda a, m, b: z[m] - (z[a] + z[b]) / 2
    bows = [bow((0, 0), (1, 0), (2, 0)), bow((0, 2), (1, 2), (2, 2)), bow((0, 0), (0, 1), (0, 2)),
            bow((2, 0), (2, 1), (2, 2)), bow((0, 0), (1, 1), (2, 2)), bow((0, 2), (1, 1), (2, 0))]
    # How far the rear left corner lies off the plane through the other three.
    off = abs(z[2, 0] - (z[0, 0] + z[2, 2] - z[0, 2]))
    least = zone(numpy.column_stack([grid, z.reshape(-1)]))
    rows.append(f"face ; {'twist' if i == 0 else 'random'} ; {' '.join(f'{b:.4f}' for b in bows)} ; {least:.6f} ; {off:.4f}")

print(f"# source: numpy {numpy.__version__}, scipy {scipy.__version__} (linprog, HiGHS), Python {platform.python_version()}; made by cylinder_flatness_edges.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# hump: the gaps under the two ends of a straight-edge that touches it once, and the hump's departure from straight.")
print("# face: the bows of the lines (left, right, front, rear, first and second diagonal), the departure of the nine points")
print("# from flat, and how far one corner lies off the plane of the others. mm.")
print("columns: kind; shape; readings; departure; corner")
for r in rows:
    print(r)
