"""Reference vectors for pairing rows with columns, by scipy.

python3 assign_scipy.py > assign_scipy.txt

Least sums are scipy.optimize.linear_sum_assignment's. Where pairs are forbidden, each row gets a column of
its own for staying out, at a cost beyond all sums. The least greatest cost is the least at which
scipy.sparse.csgraph.maximum_bipartite_matching still makes as many pairs; dearer pairs are then forbidden.
The lowest columns are found by giving one row after the other each column in turn and solving what is left.
"""

import platform
import random

import numpy
import scipy
from scipy.optimize import linear_sum_assignment
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_bipartite_matching

OUT = 10**12


def least_sum(table):
    """The pairs, their sum and their columns; None in the table is forbidden."""
    rows, cols = len(table), len(table[0])
    padded = numpy.full((rows, cols + rows), float(OUT))
    padded[:, :cols] = [[OUT * 2.0 if c is None else c for c in row] for row in table]
    columns = [-1] * rows
    for i, j in zip(*linear_sum_assignment(padded)):
        if j < cols and table[i][j] is not None:
            columns[i] = int(j)
    pairs = [(i, j) for i, j in enumerate(columns) if j >= 0]
    return len(pairs), sum(table[i][j] for i, j in pairs), columns


def most_pairs(table, limit):
    graph = csr_matrix([[int(c is not None and c <= limit) for c in row] for row in table])
    return int((maximum_bipartite_matching(graph, perm_type="column") >= 0).sum())


def least_greatest(table):
    costs = sorted({c for row in table for c in row if c is not None})
    wanted = most_pairs(table, costs[-1])
    low, high = 0, len(costs) - 1
    while low < high:
        mid = (low + high) // 2
        if most_pairs(table, costs[mid]) == wanted:
            high = mid
        else:
            low = mid + 1
    return costs[low]


def lowest(table, pairs, total):
    """The best columns that are lowest for the first rows: what is left without a row and a column must be as good."""
    columns = []
    for row in table:
        rest = table[len(columns) + 1 :]
        for j in [*(j for j, c in enumerate(row) if c is not None and j not in columns), -1]:
            taken = {*columns, j}
            left = [[None if k in taken else c for k, c in enumerate(r)] for r in rest]
            made, cost = least_sum(left)[:2] if left else (0, 0)
            if j >= 0:
                made, cost = made + 1, cost + row[j]
            if (made, cost) == (pairs, total):
                break
        else:
            raise AssertionError(columns)
        columns.append(j)
        if j >= 0:
            pairs, total = pairs - 1, total - row[j]
    return columns


def named(columns):
    return " ".join("x" if j < 0 else str(j) for j in columns)


def write(kind, table, show):
    cells = " / ".join(" ".join("x" if c is None else str(c) for c in row) for row in table)
    pairs, total, columns = least_sum(table)
    greatest = least_greatest(table)
    capped = [[c if c is not None and c <= greatest else None for c in row] for row in table]
    assert least_sum(capped)[0] == pairs
    capped_total = least_sum(capped)[1]
    text = capped_text = "-"
    if show:
        text = named(lowest(table, pairs, total))
        capped_text = named(lowest(capped, pairs, capped_total))
    return f"{kind} ; {cells} ; {pairs} ; {total} ; {text} ; {greatest} ; {capped_total} ; {capped_text}"


rnd = random.Random(20240306)
lines, seen = [], set()


def add(kind, rows, cols, pick, show):
    while True:
        table = [[pick() for _ in range(cols)] for _ in range(rows)]
        if any(c is not None for row in table for c in row) and str(table) not in seen:
            break
    seen.add(str(table))
    lines.append(write(kind, table, show))


for n in range(1, 8):
    for _ in range(9):
        add("square", n, n, lambda: rnd.randint(0, 999), True)
    for _ in range(9):
        add("ties", n, n + 1, lambda: rnd.randint(0, 3), True)
        add("ties", n + 1, n, lambda: rnd.randint(-1, 2), True)
for _ in range(40):
    add("oblong", rnd.randint(1, 6), rnd.randint(1, 6), lambda: rnd.randint(-999, 999), True)
for _ in range(70):
    share = rnd.choice((0.3, 0.5, 0.8))
    add("forbidden", rnd.randint(1, 6), rnd.randint(1, 6), lambda: rnd.randint(-9, 99) if rnd.random() < share else None, True)
for n in (10, 15, 20):
    for _ in range(6):
        add("square", n, n, lambda: rnd.randint(0, 99999), False)
        add("forbidden", n, n + 2, lambda: rnd.randint(0, 999) if rnd.random() < 0.3 else None, False)
add("square", 64, 64, lambda: rnd.randint(0, 9999), False)
add("forbidden", 64, 64, lambda: rnd.randint(0, 99) if rnd.random() < 0.2 else None, False)

print(f"# source: scipy {scipy.__version__}, numpy {numpy.__version__}, Python {platform.python_version()}; made by assign_scipy.py")
print("# kind: reference")
print(f"# count: {len(lines)}")
print("# Rows of costs between strokes, x a pair that may not be. As many pairs as can be made: their least sum, and the")
print("# columns of the rows (lowest first where several ways are as good; - where not worked out); then the least")
print("# greatest cost, the least sum with it, and the columns.")
print("columns: kind; costs; pairs; sum; columns; greatest; capped_sum; capped_columns")
for line in lines:
    print(line)
