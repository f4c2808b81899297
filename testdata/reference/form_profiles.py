"""Reference circles of random round profiles at the scale of an 86 mm bore, judged by scipy.

python3 form_profiles.py > form_profiles.txt

The judge knows nothing of linear programmes or descents. It lists every centre that can be best and takes the best:

- minimum zone: where a line equally far from two outer points (neighbours in the farthest-point Delaunay
  triangulation) crosses one equally far from two inner points (neighbours in the nearest-point one);
- maximum inscribed: the centre of the circle round each Delaunay triangle that holds its own centre;
- minimum circumscribed: the middle of each pair and the centre round each triangle of the farthest-point
  triangulation;
- least squares: scipy.optimize.least_squares.

Then scipy.optimize.linprog proves of the first three that no small shift does better, and Nelder and Mead's method from
20 other starts finds none that is better by a picometre.
"""

import platform
import sys

import numpy as np
import scipy
from scipy.optimize import least_squares, linprog, minimize
from scipy.spatial import ConvexHull, Delaunay

RADIUS = 43000.0  # µm


def circle_through(a, b, c):
    """Centres of the circles through rows of three points each."""
    b, c = b - a, c - a
    d = 2 * (b[:, 0] * c[:, 1] - b[:, 1] * c[:, 0])
    with np.errstate(divide="ignore", invalid="ignore"):
        x = (c[:, 1] * (b**2).sum(1) - b[:, 1] * (c**2).sum(1)) / d
        y = (b[:, 0] * (c**2).sum(1) - c[:, 0] * (b**2).sum(1)) / d
    at = np.column_stack([x, y])
    return a + at, at, b, c


def edges(triangles):
    pairs = np.sort(np.vstack([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [0, 2]]]), axis=1)
    return np.unique(pairs, axis=0)


def bisectors(p, pairs):
    a, b = p[pairs[:, 0]], p[pairs[:, 1]]
    n = a - b
    return n, ((a - b) * (a + b)).sum(1) / 2


def spread(p, c):
    d = np.hypot(p[:, 0] - c[0], p[:, 1] - c[1])
    return d.max() - d.min()


def zone(p):
    near, far = edges(Delaunay(p).simplices), edges(farthest(p))
    (nn, nc), (fn, fc) = bisectors(p, near), bisectors(p, far)
    det = nn[:, None, 0] * fn[None, :, 1] - nn[:, None, 1] * fn[None, :, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        x = (nc[:, None] * fn[None, :, 1] - nn[:, None, 1] * fc[None, :]) / det
        y = (nn[:, None, 0] * fc[None, :] - fn[None, :, 0] * nc[:, None]) / det
    i, j = np.meshgrid(np.arange(len(near)), np.arange(len(far)), indexing="ij")
    x, y, i, j = x.ravel(), y.ravel(), i.ravel(), j.ravel()
    inner, outer = p[near[i, 0]], p[far[j, 0]]
    least = np.hypot(x - outer[:, 0], y - outer[:, 1]) - np.hypot(x - inner[:, 0], y - inner[:, 1])
    least[~np.isfinite(least)] = np.inf
    best, at = np.inf, None
    for k in np.argsort(least):
        if least[k] > best:  # the zone at a centre is no narrower than its own pairs say
            break
        if least[k] < -1e-6:
            continue
        c = np.array([x[k], y[k]])
        w = spread(p, c)
        if w < best:
            best, at = w, c
    return at, best


def farthest(p):
    hull = p[ConvexHull(p).vertices]
    index = ConvexHull(p).vertices
    if len(hull) == 3:
        return index[None, :]
    return index[Delaunay(hull, furthest_site=True).simplices]


def inscribed(p):
    t = Delaunay(p).simplices
    at, rel, b, c = circle_through(p[t[:, 0]], p[t[:, 1]], p[t[:, 2]])
    cross = lambda u, v: u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]
    area = cross(b, c)
    inside = np.minimum.reduce([cross(b - rel, c - rel) / area, cross(rel, c) / area, cross(b, rel) / area]) > 0
    if not inside.any():
        return None, None
    r = np.where(inside, np.hypot(rel[:, 0], rel[:, 1]), -1)
    k = np.argmax(r)
    return at[k], np.hypot(p[:, 0] - at[k, 0], p[:, 1] - at[k, 1]).min()


def circumscribed(p):
    hull = ConvexHull(p).vertices
    t = farthest(p)
    at, *_ = circle_through(p[t[:, 0]], p[t[:, 1]], p[t[:, 2]])
    pairs = edges(t)
    at = np.vstack([at[np.isfinite(at).all(1)], (p[pairs[:, 0]] + p[pairs[:, 1]]) / 2])
    r = np.hypot(at[:, None, 0] - p[None, hull, 0], at[:, None, 1] - p[None, hull, 1]).max(1)
    k = np.argmin(r)
    return at[k], r[k]


def least(p, start, size):
    def fun(c):
        d = np.hypot(p[:, 0] - c[0], p[:, 1] - c[1])
        return d - d.mean()

    def jac(c):
        u = (c - p) / np.hypot(p[:, 0] - c[0], p[:, 1] - c[1])[:, None]
        return u - u.mean(0)

    c = start
    for _ in range(60):  # polish: Gauss and Newton by the library's own solver of linear least squares
        c = least_squares(fun, c, jac=jac, xtol=1e-15, ftol=1e-15, gtol=1e-15, x_scale=size).x if _ == 0 else c - np.linalg.lstsq(jac(c), fun(c), rcond=None)[0]
    d = np.hypot(p[:, 0] - c[0], p[:, 1] - c[1])
    return c, d.mean(), d.max() - d.min(), np.sqrt(((d - d.mean()) ** 2).mean())


def directions(p, c):
    d = np.hypot(p[:, 0] - c[0], p[:, 1] - c[1])
    return d, (p - c) / d[:, None]


def prove_zone(p, c, w):
    """The linear programme at c: its least zone is w."""
    d, u = directions(p, c)
    d0 = d.mean()
    one, nil = np.ones((len(p), 1)), np.zeros((len(p), 1))
    a = np.vstack([np.hstack([-one, nil, -u]), np.hstack([nil, one, u])])
    r = linprog([1, -1, 0, 0], A_ub=a, b_ub=np.hstack([-(d - d0), d - d0]), bounds=[(None, None)] * 4, method="highs")
    return abs(r.fun - w)


def prove_inscribed(p, c, r):
    d, u = directions(p, c)
    a = np.hstack([np.ones((len(p), 1)), u])
    s = linprog([-1, 0, 0], A_ub=a, b_ub=d - r, bounds=[(None, None)] * 3, method="highs")
    return abs(s.fun)


def profile(rng, kind, n):
    """Deviations from the nominal radius in whole nanometres."""
    t = 2 * np.pi * np.arange(n) / n
    dev = np.zeros(n)
    if kind in ("lobes", "oval"):
        orders = [2] if kind == "oval" else rng.choice(np.arange(2, 10), 3, replace=False)
        for k in orders:
            dev += rng.uniform(500, 8000) * np.cos(k * t + rng.uniform(0, 2 * np.pi))
    dev += rng.normal(0, {"noise": 3000, "lobes": 300, "oval": 150}[kind], n)
    dev += rng.uniform(0, 20000) * np.cos(t + rng.uniform(0, 2 * np.pi))
    return np.rint(dev + rng.uniform(-30000, 30000)).astype(int)


def main():
    rng = np.random.default_rng(20250401)
    rows, worst = [], dict(zone=0, inscribed=0, search=0)
    kinds = ["noise", "lobes", "oval"]
    while len(rows) < 500:
        kind = kinds[len(rows) % 3]
        n = 360 if len(rows) % 10 == 9 else int(rng.integers(5, 61))
        dev = profile(rng, kind, n)
        t = 2 * np.pi * np.arange(n) / n
        p = (RADIUS + dev / 1000)[:, None] * np.column_stack([np.cos(t), np.sin(t)])
        lc, lr, lt, lq = least(p, p.mean(0), RADIUS)
        zc, zw = zone(p)
        ic, ir = inscribed(p)
        cc, cr = circumscribed(p)
        worst["zone"] = max(worst["zone"], prove_zone(p, zc, zw))
        worst["inscribed"] = max(worst["inscribed"], prove_inscribed(p, ic, ir))
        if len(rows) % 5 == 0:
            for _ in range(20):
                s = zc + rng.normal(0, 10, 2)
                opt = dict(xatol=1e-9, fatol=1e-12, maxiter=4000, initial_simplex=[s, s + [5, 0], s + [0, 5]])
                m = minimize(lambda c: spread(p, c), s, method="Nelder-Mead", options=opt)
                worst["search"] = max(worst["search"], zw - m.fun)
                m = minimize(lambda c: -np.hypot(p[:, 0] - c[0], p[:, 1] - c[1]).min(), s, method="Nelder-Mead", options=opt)
                worst["search"] = max(worst["search"], -m.fun - ir)
                m = minimize(lambda c: np.hypot(p[:, 0] - c[0], p[:, 1] - c[1]).max(), s, method="Nelder-Mead", options=opt)
                worst["search"] = max(worst["search"], cr - m.fun)
        f = lambda *v: " ; ".join("%.6f" % x for x in v)
        g = lambda *v: " ; ".join("%.4f" % x for x in v)
        rows.append(f"{kind} {len(rows) + 1} ; {n} ; {g(*lc)} ; {f(lr, lt, lq)} ; {g(*zc)} ; {f(zw)} ; {g(*ic)} ; {f(ir)} ; {g(*cc)} ; {f(cr)} ; " + " ".join(map(str, dev)))
    print(f"{worst}", file=sys.stderr)
    assert worst["zone"] < 1e-6 and worst["inscribed"] < 1e-6 and worst["search"] < 1e-6, worst
    print(f"# source: scipy {scipy.__version__}, numpy {np.__version__}, Python {platform.python_version()}; made by form_profiles.py")
    print("# kind: reference")
    print(f"# count: {len(rows)}")
    print("# Reference circles of profiles at equally spaced angles, in µm; the nominal radius is 43 mm.")
    print("# Deviations from it, in nm, stand in the last column with blanks between them. l: least squares with its RONt (t)")
    print("# and RONq (q), z: minimum zone with its width w, i: maximum inscribed, c: minimum circumscribed.")
    print("columns: id; n; lx; ly; lr; lt; lq; zx; zy; zw; ix; iy; ir; cx; cy; cr; deviations")
    print("\n".join(rows))


if __name__ == "__main__":
    main()
