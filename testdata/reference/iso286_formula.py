"""The ISO 286 formulas for sizes up to 500 mm, evaluated with mpmath.

    python3 testdata/reference/iso286_formula.py > testdata/reference/iso286_formula.txt

Formulas: Machine Drawing (a textbook of the trade), Table 15.4, which gives
those of ISO/R 286 and of ISO 286-1:1988; i = 0.45 D^(1/3) + 0.001 D and its
multiples as every textbook of limits and fits has them; IT01, IT0 and IT1 from
memory (ISO 286-1:1988, annex A). D is the geometric mean of a step's ends, with
1 mm for the lower end of the first.
"""
import itertools
import platform
from pathlib import Path

import mpmath
from mpmath import cbrt, mp, mpf, sqrt

mp.dps = 40
PUBLISHED = Path(__file__).resolve().parent.parent / "published"


def table(name):
    columns, rows = None, []
    for line in (PUBLISHED / name).read_text(encoding="utf-8").splitlines():
        if line.startswith("columns:"):
            columns = [c.strip() for c in line[len("columns:"):].split(";")]
        elif line and not line.startswith("#"):
            cells = [c.strip() for c in line.split(" # ")[0].split(";")]
            rows.append(dict(zip(columns, cells, strict=True)))
    return rows


grades = table("iso286_grades.txt")
shafts = table("iso286_shafts.txt")


def mean(row):
    lower = mpf(row["over"])
    return sqrt((lower if lower > 0 else mpf(1)) * mpf(row["upto"]))


def main_step(row):
    """The row of iso286_grades that holds a finer step."""
    for g in grades:
        if mpf(g["over"]) <= mpf(row["over"]) and mpf(row["upto"]) <= mpf(g["upto"]):
            return g
    raise ValueError(row)


MULTIPLES = {5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100}


def grade_cells():
    for row in grades:
        d = mean(row)
        i = mpf("0.45") * cbrt(d) + mpf("0.001") * d
        yield "it01", row, d, mpf("0.3") + mpf("0.008") * d
        yield "it0", row, d, mpf("0.5") + mpf("0.012") * d
        yield "it1", row, d, mpf("0.8") + mpf("0.020") * d
        # IT2 to IT4 stand in geometric progression between IT1 and IT5.
        first, ratio = mpf(row["it1"]), (mpf(row["it5"]) / mpf(row["it1"])) ** mpf("0.25")
        for n in (2, 3, 4):
            yield f"it{n}", row, d, first * ratio ** (n - 1)
        for n, k in MULTIPLES.items():
            yield f"it{n}", row, d, k * i


def shaft_cells():
    for row in shafts:
        step = main_step(row)
        it = {n: mpf(step[f"it{n}"]) for n in range(6, 11)}
        # Letters whose figures change with the main steps alone use the mean of those.
        d = mean(step)
        c = 52 * d ** mpf("0.2")
        dd, e, f, g = 16 * d ** mpf("0.44"), 11 * d ** mpf("0.41"), mpf("5.5") * d ** mpf("0.41"), mpf("2.5") * d ** mpf("0.34")
        coarse = {
            "d": -dd, "e": -e, "f": -f, "g": -g, "cd": -sqrt(c * dd), "ef": -sqrt(e * f), "fg": -sqrt(f * g),
            "k": mpf("0.6") * cbrt(d), "m": it[7] - it[6], "n": 5 * d ** mpf("0.34"),
        }
        for letter, value in coarse.items():
            yield letter, row, d, value
        d = mean(row)
        fine = {
            "a": -(265 + mpf("1.3") * d) if d <= 120 else -mpf("3.5") * d,
            "b": -(140 + mpf("0.85") * d) if d <= 160 else -mpf("1.8") * d,
            "c": -52 * d ** mpf("0.2") if d <= 40 else -(95 + mpf("0.8") * d),
            "r": sqrt(mpf(row["p"]) * mpf(row["s"])),
            "t": it[7] + mpf("0.63") * d, "u": it[7] + d, "v": it[7] + mpf("1.25") * d, "x": it[7] + mpf("1.6") * d,
            "y": it[7] + 2 * d, "z": it[7] + mpf("2.5") * d,
            "za": it[8] + mpf("3.15") * d, "zb": it[9] + 4 * d, "zc": it[10] + 5 * d,
        }
        if d > 50:
            fine["s"] = it[7] + mpf("0.4") * d
        for letter, value in fine.items():
            yield letter, row, d, value


def cells():
    """Every cell that the published tables have, with its formula."""
    for cell, row, d, value in itertools.chain(grade_cells(), shaft_cells()):
        if row[cell] != "-":
            yield cell, row, d, value


def write(remarks, columns, rows):
    widths = [max(len(r[i]) for r in rows) for i in range(len(columns))]
    print("# source: the formulas of ISO 286, evaluated with mpmath", mpmath.__version__, "on Python", platform.python_version())
    print("# kind: reference")
    print("# count:", len(rows))
    for r in remarks:
        print("#", r)
    print("columns:", "; ".join(columns))
    for r in rows:
        print("; ".join(c.rjust(w) for c, w in zip(r, widths)))


if __name__ == "__main__":
    write(["Each cell by its formula: it… a standard tolerance, otherwise a shaft's fundamental deviation, in",
           "micrometres, by nominal size over … up to and including … mm; d is the mean size in mm."],
          ["cell", "over", "upto", "d", "value"],
          [[cell, row["over"], row["upto"], mpmath.nstr(d, 8), mpmath.nstr(value, 10)] for cell, row, d, value in cells()])
