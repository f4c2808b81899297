"""Formulas chosen by chance, propagated by the package uncertainties: value, standard uncertainty, and the
correlation of the result with its first input.

python3 uncertainty_propagations.py > uncertainty_propagations.txt

A formula is in reverse Polish notation, x0 … being the inputs; kind number keeps to what one quantity allows
(inputs are whole numbers of quanta), kind real crosses quantities. Inputs may be correlated: rho is the lower
triangle of their correlation coefficients, row by row.
"""

import math
import platform
import random

import numpy
import uncertainties
from uncertainties import umath

rnd = random.Random(19930701)


def push(stack, token, inputs):
    op, _, arg = token.partition(":")
    if op[0] == "x" and op[1:].isdigit():
        return stack.append(inputs[int(op[1:])])
    if op == "const":
        return stack.append(uncertainties.ufloat(float(arg), 0))
    if op == "scale":
        n, d = map(int, arg.split("/"))
        return stack.append(stack.pop() * n / d)
    if op == "scalepi":
        n, d = map(int, arg.split("/"))
        return stack.append(stack.pop() * math.pi * n / d)
    if op in ("abs", "sqrt", "sin", "cos"):
        f = {"abs": umath.fabs, "sqrt": umath.sqrt, "sin": umath.sin, "cos": umath.cos}[op]
        return stack.append(f(stack.pop()))
    if op == "spread":
        many = [stack.pop() for _ in range(int(arg))]
        key = lambda v: v.nominal_value
        return stack.append(max(many, key=key) - min(many, key=key))
    if op in ("muldiv", "share"):
        c, b, a = stack.pop(), stack.pop(), stack.pop()
        return stack.append(a * b / c if op == "muldiv" else a * b / (b + c))
    b, a = stack.pop(), stack.pop()
    stack.append(
        {
            "add": lambda: a + b,
            "sub": lambda: a - b,
            "mul": lambda: a * b,
            "quo": lambda: a / b,
            "min": lambda: a if a.nominal_value <= b.nominal_value else b,
            "max": lambda: a if a.nominal_value >= b.nominal_value else b,
            "atan2": lambda: umath.atan2(a, b),
        }[op]()
    )


def formula(kind, n):
    """Tokens that leave one value, from about a dozen steps."""
    tokens, depth = [], 0
    unary = ["abs", "scale", "scalepi"] if kind == "number" else ["sqrt", "sin", "cos", "const"]
    binary = ["add", "sub", "min", "max"] if kind == "number" else ["add", "sub", "mul", "quo", "atan2"]
    steps = rnd.randint(3, 12)
    while steps > 0 or depth != 1:
        steps -= 1
        choice = rnd.random()
        if depth < 2 or (steps > 0 and choice < 0.4):
            tokens.append(f"x{rnd.randrange(n)}")
            depth += 1
        elif kind == "number" and depth >= 3 and choice < 0.55:
            tokens.append(rnd.choice(["muldiv", "share", "spread:3"]))
            depth -= 2
        elif steps > 0 and choice < 0.65:
            op = rnd.choice(unary)
            if op in ("scale", "scalepi"):
                op += f":{rnd.randint(1, 9)}/{rnd.randint(1, 9)}"
            if op == "const":
                tokens.append(f"const:{rnd.uniform(0.1, 10):.3f}")
                op = rnd.choice(["add", "mul"])
            tokens.append(op)
        else:
            tokens.append(rnd.choice(binary))
            depth -= 1
    return tokens


def correlations(n):
    """A table that quantities can have: made of random directions."""
    rows = [[rnd.gauss(0, 1) for _ in range(n)] for _ in range(n)]
    rows = [[v / math.sqrt(sum(x * x for x in r)) for v in r] for r in rows]
    table = [[round(sum(a * b for a, b in zip(p, q)), 3) for q in rows] for p in rows]
    for i in range(n):
        table[i][i] = 1.0
    return table if min(numpy.linalg.eigvalsh(numpy.array(table))) > 0.02 else correlations(n)


def attempt(kind, correlated):
    n = rnd.randint(2, 6)
    if kind == "number":
        values = [rnd.randrange(10**9, 10**11) for _ in range(n)]
        sigmas = [rnd.randrange(10**5, 10**7) for _ in range(n)]
    else:
        values = [round(rnd.uniform(0.2, 5), 4) for _ in range(n)]
        sigmas = [round(rnd.uniform(1e-4, 1e-2), 6) for _ in range(n)]
    rho = "-"
    if correlated:
        table = correlations(n)
        cov = [[table[i][j] * sigmas[i] * sigmas[j] for j in range(n)] for i in range(n)]
        inputs = uncertainties.correlated_values(values, cov)
        rho = " ".join(f"{table[i][j]:.3f}" for i in range(n) for j in range(i))
    else:
        inputs = [uncertainties.ufloat(v, s) for v, s in zip(values, sigmas)]
    tokens = formula(kind, n)
    if "x0" not in tokens:
        return None
    stack = []
    for token in tokens:
        push(stack, token, inputs)
        top = stack[-1].nominal_value
        if not math.isfinite(top) or abs(top) > (1e17 if kind == "number" else 1e6) or (kind == "real" and abs(top) < 1e-3):
            return None
    y = stack[0]
    u = y.std_dev
    if not math.isfinite(u) or u == 0 or u > abs(y.nominal_value) * 1e3 + 1 or u < (1e3 if kind == "number" else 1e-9):
        return None
    r = float(uncertainties.correlation_matrix([y, inputs[0]])[0][1])
    given = " ".join(f"{v}±{s}" for v, s in zip(values, sigmas))
    # A value in quanta is rounded at each step, and a later step may magnify that.
    value = f"{y.nominal_value:.17g} ± 1e-6 %" if kind == "real" else f"{y.nominal_value:.1f} ± {100:.0f}"
    return f"{kind} ; {given} ; {rho} ; {' '.join(tokens)} ; {value} ; {u:.15g} ± 1e-5 % ; {r:.12f} ± 1e-7"


rows = []
for kind, correlated in (("number", False), ("number", True), ("real", False), ("real", True)):
    some = []
    while len(some) < 60:
        try:
            row = attempt(kind, correlated)
        except (ZeroDivisionError, ValueError, OverflowError):
            continue
        if row:
            some.append(row)
    rows += some
print(f"# source: Python {platform.python_version()}, uncertainties {uncertainties.__version__}, numpy {numpy.__version__}; made by uncertainty_propagations.py")
print("# kind: reference")
print(f"# count: {len(rows)}")
print("# Formulas in reverse Polish notation over inputs x0 …; rho is the lower triangle of the inputs' correlations; with_first is")
print("# the correlation of the result with x0.")
print("columns: id; kind; inputs; rho; formula; value; standard; with_first")
for i, row in enumerate(rows):
    print(i + 1, ";", row)
