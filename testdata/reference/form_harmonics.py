"""Harmonics of radii by numpy's FFT at equal angles, and by its least squares at others.

python3 form_harmonics.py > form_harmonics.txt
"""

import platform

import numpy as np

rng = np.random.default_rng(20250404)
rows = []
sizes = [3, 4, 5, 6, 7, 8, 11, 12, 13, 16, 24, 31, 36, 48, 64, 72, 97, 100, 128, 180]
while len(rows) < 60:
    n = sizes[len(rows) % len(sizes)]
    r = 43_000_000 + np.rint(rng.normal(0, 3000, n)).astype(int)  # nm
    r += np.rint(9000 * np.cos(2 * np.pi * np.arange(n) / n - rng.uniform(0, 6))).astype(int)
    if len(rows) % 3 < 2:
        c = np.fft.rfft(r - 43_000_000) / n
        amplitude = np.abs(c) * 2
        amplitude[0], c[0] = c[0].real + 43_000_000, 0
        if n % 2 == 0:
            amplitude[-1] /= 2
        # A·cos(kθ + angle): a crest where kθ = −angle
        crest = np.degrees(np.mod(-np.angle(c), 2 * np.pi)) / np.maximum(np.arange(len(c)), 1)
        rms = np.std(r)
        angles = "-"
    else:
        degrees = np.sort(rng.choice(np.arange(0, 3600), n, replace=False))  # tenths of a degree
        t = np.radians(degrees / 10)
        top = (n - 1) // 4
        a = np.column_stack([np.ones(n)] + [f(k * t) for k in range(1, top + 1) for f in (np.cos, np.sin)])
        if np.linalg.cond(a) > 1e4:
            continue
        x = np.linalg.lstsq(a, r - 43_000_000.0, rcond=None)[0]
        amplitude = np.hstack([x[0] + 43_000_000, np.hypot(x[1::2], x[2::2])])
        crest = np.hstack([0, np.degrees(np.mod(np.arctan2(x[2::2], x[1::2]), 2 * np.pi)) / np.arange(1, top + 1)])
        rms = None
        angles = " ".join(map(str, degrees))
    rows.append(f"{len(rows) + 1} ; {n} ; " + ("-" if rms is None else "%.6f" % rms) + " ; " + " ".join("%.5f" % v for v in amplitude)
                + " ; " + " ".join("%.6f" % v for v in crest) + f" ; {angles} ; " + " ".join(str(v) for v in r - 43_000_000))

print(f"# source: numpy {np.__version__}, Python {platform.python_version()}; made by form_harmonics.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Mean and amplitudes in nm and crests in degrees, by order from 0. rms is that of the readings about their mean.")
print("# Angles in tenths of a degree, or none: equally spaced. Deviations from 43 mm in nm.")
print("columns: id; n; rms; amplitudes; crests; angles; deviations")
print("\n".join(rows))
