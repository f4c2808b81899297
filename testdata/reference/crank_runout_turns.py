"""Reference vectors for run-out: readings of a turn with eccentricity, ovality,
lobes and noise, taken apart by numpy.

python3 crank_runout_turns.py > crank_runout_turns.txt

At equal angles by the discrete Fourier transform; at others by least squares
with harmonics up to (n - 1)/2, at most 3. The greatest error of the
eccentricity, for errors of at most 1 in each reading, by trying 7200
directions.
"""

import platform

import numpy as np

rng = np.random.default_rng(2606)
rows = []
for i in range(40):
    even = i % 2 == 0
    n = int(rng.integers(3, 17)) if even else int(rng.integers(4, 15))
    if even:
        angles = np.arange(n) * 360.0 / n
    else:
        angles = np.round((np.arange(n) + rng.uniform(-0.3, 0.3, n)) * 360.0 / n, 2)
    a = np.radians(angles)
    e, phi = rng.uniform(2, 60), rng.uniform(0, 2 * np.pi)
    oval, lobes = rng.uniform(0, 8), rng.uniform(0, 3)
    r = e * np.cos(a - phi) + oval * np.cos(2 * a - rng.uniform(0, 6)) + lobes * np.cos(3 * a - rng.uniform(0, 6)) + rng.normal(0, 0.7, n) + rng.uniform(-50, 50)
    r = np.round(r, 1)  # in micrometres
    if even:
        c = np.fft.rfft(r) * 2 / n
        cosine, sine = c[1].real, -c[1].imag
        ovality = 4 * abs(c[2]) if n > 4 else None
        weights = np.array([np.cos(a), np.sin(a)]) * 2 / n
    else:
        top = min((n - 1) // 2, 3)
        design = np.column_stack([np.ones(n)] + [f(k * a) for k in range(1, top + 1) for f in (np.cos, np.sin)])
        x = np.linalg.lstsq(design, r, rcond=None)[0]
        cosine, sine = x[1], x[2]
        ovality = 4 * np.hypot(x[3], x[4]) if n > 4 else None
        weights = np.linalg.pinv(design)[1:3]
    u = np.radians(np.arange(0, 360, 0.05))
    worst = np.abs(np.outer(np.cos(u), weights[0]) + np.outer(np.sin(u), weights[1])).sum(axis=1).max()
    own = r - cosine * np.cos(a) - sine * np.sin(a)
    rows.append([
        " ".join(f"{x:g}" for x in angles) if not even else "-",
        " ".join(f"{x:.1f}" for x in r),
        f"{cosine:.9f} ± 0.000002", f"{sine:.9f} ± 0.000002",
        f"{2 * np.hypot(cosine, sine):.9f} ± 0.00001", f"{np.degrees(np.arctan2(sine, cosine)) % 360:.7f} ± 0.00001",
        f"{np.ptp(r):.1f}", f"{np.ptp(own):.9f} ± 0.000004",
        f"{ovality:.9f} ± 0.00001" if ovality is not None else "-",
        f"{worst:.6f} ± 0.00001",
    ])

print(f"# source: numpy {np.__version__}, Python {platform.python_version()}; made by crank_runout_turns.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Readings and results in micrometres, angles in degrees; a dash for equal angles. Own is the swing without the")
print("# eccentricity, worst how far errors of 1 in every reading can move it.")
print("columns: angles; readings; cosine; sine; runout; high; total; own; ovality; worst")
for x in rows:
    print(" ; ".join(x))
