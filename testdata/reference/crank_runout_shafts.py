"""Reference vectors for a bent shaft seen from two supports, by numpy.

python3 crank_runout_shafts.py > crank_runout_shafts.txt

Centres are complex numbers. The line between the supports is interpolated with
numpy.interp; the straight line nearest to all centres with numpy.polyfit in
each plane; a neighbour's run-out is twice the modulus of a difference.
"""

import platform

import numpy as np

rng = np.random.default_rng(99)
rows = []
for _ in range(25):
    n = int(rng.integers(3, 8))
    z = np.round(np.cumsum(rng.uniform(40, 160, n)), 1)
    c = np.round(rng.uniform(-40, 40, n), 2) + 1j * np.round(rng.uniform(-40, 40, n), 2)
    first, second = 0, n - 1
    line = np.interp(z, [z[first], z[second]], [c[first].real, c[second].real]) + 1j * np.interp(z, [z[first], z[second]], [c[first].imag, c[second].imag])
    rel = c - line
    fit = np.polyfit(z - z.mean(), c.real, 1), np.polyfit(z - z.mean(), c.imag, 1)
    off = np.hypot(c.real - np.polyval(fit[0], z - z.mean()), c.imag - np.polyval(fit[1], z - z.mean()))
    rows.append([
        " ".join(f"{x:.1f}" for x in z), " ".join(f"{x.real:.2f}" for x in c), " ".join(f"{x.imag:.2f}" for x in c),
        " ".join(f"{abs(x):.7f}" for x in rel), " ".join(f"{2 * abs(a - b):.7f}" for a, b in zip(rel, rel[1:])),
        f"{off.max():.7f} ± 0.000003", str(int(off.argmax()) + 1),
    ])

print(f"# source: numpy {np.__version__}, Python {platform.python_version()}; made by crank_runout_shafts.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Places in mm, centres and results in micrometres. Bends are seen from the first and the last journal.")
print("columns: places; cosines; sines; bends; neighbours; most; most_at")
for x in rows:
    print(" ; ".join(x))
