"""The cells of ISO 286 in which the published table differs from the formula.

    python3 testdata/reference/iso286_off_formula.py > testdata/reference/iso286_off_formula.txt
"""
import mpmath
from mpmath import floor, mpf

from iso286_formula import cells, write


def rounded(value):
    """IT5 to IT11 as the standard rounds them: to 1 up to 100, to 5 up to 200, to 10 above (from memory)."""
    unit = 1 if value <= 100 else 5 if value <= 200 else 10
    return unit * floor(value / unit + mpf("0.5"))


def agrees(cell, published, value):
    if cell in ("it01", "it0", "it1", "it2", "it3", "it4"):
        unit = mpf("0.1") if published < 1 else mpf("0.5") if published < 5 else 1
        return abs(published - value) <= unit / 2
    if cell.startswith("it"):
        return published == rounded(value)
    return abs(published - value) <= max(mpf(1), abs(value) / 100)


write(["The cells in which the published table is not what the formula gives. IT01 to IT4: off by more than",
       "half of 0.1 (below 1), 0.5 (below 5) or 1 micrometre. IT5 to IT11: not the formula rounded to 1 (up to",
       "100), 5 (up to 200) or 10 micrometres. Fundamental deviations: off by more than 1 micrometre and 1 %."],
      ["cell", "over", "upto", "formula", "published"],
      [[cell, row["over"], row["upto"], mpmath.nstr(value, 10), row[cell]]
       for cell, row, d, value in cells() if not agrees(cell, mpf(row[cell]), value)])
