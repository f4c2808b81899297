"""Reference vectors for the scatter of dimension chains, by random numbers.

/usr/bin/python3 chain_montecarlo.py > chain_montecarlo.txt

Each chain is drawn four million times by numpy. The tolerances are four standard errors of the mean, of the
standard deviation (from the fourth moment) and of the share inside.
"""

import platform

import numpy

N = 4_000_000
rng = numpy.random.default_rng(20240308)


def draw(lo, hi, scatter, k):
    m, a = (lo + hi) / 2, (hi - lo) / 2
    if scatter == "n":
        return rng.normal(m, a / k, N)
    if scatter == "r":
        return rng.uniform(lo, hi, N)
    if scatter == "t":
        return m + a * (rng.random(N) + rng.random(N) - 1)
    return m + a * numpy.sin(2 * numpy.pi * rng.random(N))


CHAINS = [
    [(10.0, 10.1, 1, "n", 3.0), (4.0, 4.06, -1, "n", 3.0)],
    [(10.0, 10.1, 1, "r", 0), (4.0, 4.06, -1, "r", 0), (1.0, 1.02, -1, "r", 0)],
    [(20.0, 20.3, 1, "t", 0), (7.0, 7.2, -1.5, "u", 0), (3.0, 3.1, 2, "n", 2.0)],
    [(1.0, 1.1, 1, "u", 0)] * 5,
    [(1.0, 1.1, 1, "n", 3.0), (1.0, 1.1, -1, "r", 0), (1.0, 1.1, 1, "t", 0), (1.0, 1.1, -1, "u", 0), (2.0, 2.02, 3, "n", 4.0)],
    [(100.0, 100.002, 0.5, "n", 1.0), (2.0, 2.4, -0.25, "t", 0)],
]

print(f"# source: numpy {numpy.__version__}, Python {platform.python_version()}; made by chain_montecarlo.py")
print("# kind: reference")
print(f"# count: {len(CHAINS)}")
print("# Links between strokes: least, greatest in mm, sensitivity, scatter (n with its sigmas, r, t, u). The mean and the")
print("# standard deviation of the closing size in mm, and the share of closing sizes within the worst case.")
print("columns: links; mean; deviation; within_worst")
for links in CHAINS:
    x = sum(s * draw(lo, hi, c, k) for lo, hi, s, c, k in links)
    sd = x.std()
    fourth = ((x - x.mean()) ** 4).mean()
    low = sum(min(s * lo, s * hi) for lo, hi, s, _, _ in links)
    high = sum(max(s * lo, s * hi) for lo, hi, s, _, _ in links)
    p = ((x >= low - 1e-12) & (x <= high + 1e-12)).mean()
    text = " / ".join(f"{lo} {hi} {s} {c}{' ' + str(k) if c == 'n' else ''}" for lo, hi, s, c, k in links)
    print(
        f"{text} ; {x.mean():.9f} ± {4 * sd / N**0.5:.1e} ; {sd:.9f} ± {2 * (fourth - sd**4) ** 0.5 / sd / N**0.5:.1e} ; "
        f"{p:.7f} ± {4 * max(p * (1 - p), 1 / N) ** 0.5 / N**0.5:.1e}"
    )
