"""Global consumer's and producer's risks, by mpmath.

python3 uncertainty_risks.py > uncertainty_risks.txt
"""

import platform

import mpmath
from mpmath import mpf

mpmath.mp.dps = 25
inf = mpmath.inf


def cases():
    # shape, first, second, lower, upper, accept from, accept to, u
    for u in ("0.05", "0.25", "1"):
        yield "normal", "0", "1", "-2", "2", "-2", "2", u
        yield "normal", "0.7", "1", "-2", "2", "-1.8", "1.6", u
        yield "normal", "0", "1", "-", "1.5", "-", "1.2", u
        yield "normal", "0", "1", "-1", "-", "-1.3", "-", u
        yield "gamma", "4", "4", "-", "2", "-", "1.7", u
        yield "gamma", "1.5", "2", "0.1", "2", "0.2", "1.9", u
        yield "normal", "5", "0.3", "-2", "2", "-2", "2", u  # all bad


def number(text, none):
    return none if text == "-" else mpf(text)


rows = []
for shape, first, second, lower, upper, accept_from, accept_to, u_text in cases():
    a, b, u = mpf(first), mpf(second), mpf(u_text)
    if shape == "normal":
        density = lambda x: mpmath.npdf(x, a, b)
        least, greatest = a - 14 * b, a + 14 * b
    else:
        density = lambda x: b**a * x ** (a - 1) * mpmath.exp(-b * x) / mpmath.gamma(a) if x > 0 else mpf(0)
        least, greatest = mpf(0), mpf(60)
    lo, hi, alo, ahi = number(lower, -inf), number(upper, inf), number(accept_from, -inf), number(accept_to, inf)
    beyond = lambda z: mpmath.erfc(z / mpmath.sqrt(2)) / 2
    # of a part of size x: reads above the upper acceptance limit, below the lower
    above = lambda x: beyond((ahi - x) / u) if ahi != inf else mpf(0)
    below = lambda x: beyond((x - alo) / u) if alo != -inf else mpf(0)
    accepted = lambda x: 1 - above(x) - below(x)

    def part(f, start, end):
        start, end = max(start, least), min(end, greatest)
        if start >= end:
            return mpf(0)
        inside = {start, end}
        for limit in (alo, ahi):
            for k in (-12, -6, -3, -1, 0, 1, 3, 6, 12):
                inside.add(limit + k * u)
        inside |= {mpf(k) / 2 for k in range(-20, 40)}
        points = sorted(p for p in inside if start <= p <= end)
        return mpmath.quad(lambda x: density(x) * f(x), points)

    consumer = part(accepted, -inf, lo) + part(accepted, hi, inf)
    producer = part(lambda x: above(x) + below(x), lo, hi)
    rows.append(f"{shape} ; {first} ; {second} ; {lower} ; {upper} ; {accept_from} ; {accept_to} ; {u_text} ; "
                f"{mpmath.nstr(consumer, 14)} ± 1e-12 ; {mpmath.nstr(producer, 14)} ± 1e-12")
print(f"# source: mpmath {mpmath.__version__} at 25 digits, Python {platform.python_version()}; made by uncertainty_risks.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Normal: first mean, second standard deviation. Gamma: first alpha, second beta (rate).")
print("columns: shape; first; second; lower; upper; accept_from; accept_to; u; consumer; producer")
print("\n".join(rows))
