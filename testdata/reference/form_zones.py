"""Minimum zone, inscribed and circumscribed circles of the NIST reference data sets, by the judge of form_profiles.py.

python3 form_zones.py > form_zones.txt
"""

import platform

import numpy as np
import scipy

import form_profiles as judge

rows = []
for line in open("../published/form_circles.txt", encoding="utf-8"):
    cells = line.split(" ; ")
    if not cells[0].startswith("cir2d"):
        continue
    p = np.array(cells[-1].split(), float).reshape(-1, 2)
    middle = p.mean(0)
    p = p - middle
    size = np.abs(p).max()
    lc, lr, lt, lq = judge.least(p, np.array([float(c.split(" ")[0]) for c in cells[2:4]]) - middle, size)
    zc, zw = ((lc, 0.0) if len(p) == 3 else judge.zone(p))
    cc, cr = judge.circumscribed(p)
    if len(p) > 3:
        assert judge.prove_zone(p, zc, zw) < 1e-9 * size
    near = lambda v: "%.12g ± %.0e" % (v, 1e-9 * size)
    ring = "- ; - ; -"
    ic, ir = judge.inscribed(p)
    if ic is not None and ir > lr / 2:  # not one between two teeth of the noise
        assert judge.prove_inscribed(p, ic, ir) < 1e-9 * size
        ring = " ; ".join(near(v) for v in (ic[0] + middle[0], ic[1] + middle[1], ir))
    rows.append(" ; ".join([cells[0], near(lt), near(lq), near(zc[0] + middle[0]), near(zc[1] + middle[1]), near(zw), ring,
                            near(cc[0] + middle[0]), near(cc[1] + middle[1]), near(cr)]))

print(f"# source: scipy {scipy.__version__}, numpy {np.__version__}, Python {platform.python_version()}; made by form_zones.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Reference circles of the sets of published/form_circles.txt; names as in form_profiles.txt. No inscribed circle:\n# no Delaunay triangle of that size holds its own centre, as on a partial arc.")
print("columns: id; lt; lq; zx; zy; zw; ix; iy; ir; cx; cy; cr")
print("\n".join(rows))
