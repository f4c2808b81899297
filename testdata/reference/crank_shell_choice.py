"""Reference vectors for sharing out bearing shells: every way tried.

python3 crank_shell_choice.py > crank_shell_choice.txt

Every bearing is given every pair of an upper and a lower half, in every combination that the stock allows
(itertools.product, no pruning). Of all of them the best is kept by: the most clearances in the wanted band for
certain, then the least greatest distance from the aim, then the least sum of distances. Lengths are whole
nanometres; a distance is the greatest that the brackets of housing, journal and walls allow.
"""

import itertools
import platform
import random


def best(bearings, classes, band, aim, mixed, step):
    n = range(len(classes))
    pairs = [(u, l) for u in n for l in n if u == l or mixed and (step == 0 or abs(sum(classes[u][0]) - sum(classes[l][0])) <= 2 * step)]
    answer = None
    for ways in itertools.product(pairs, repeat=len(bearings)):
        uppers, lowers = [0] * len(classes), [0] * len(classes)
        for u, l in ways:
            uppers[u] += 1
            lowers[l] += 1
        if any(uppers[c] > classes[c][1] or lowers[c] > classes[c][2] for c in n):
            continue
        out, greatest, total = 0, 0, 0
        for (housing, journal), (u, l) in zip(bearings, ways):
            lo = housing[0] - journal[1] - classes[u][0][1] - classes[l][0][1]
            hi = housing[1] - journal[0] - classes[u][0][0] - classes[l][0][0]
            d = max(hi - aim, aim - lo)
            out += not (band[0] <= lo and hi <= band[1])
            greatest = max(greatest, d)
            total += d
        score = (out, greatest, total)
        if answer is None or score < answer:
            answer = score
    return answer


def main():
    rng = random.Random(30)
    cases = []
    while len(cases) < 150:
        k, n = rng.choice([(2, 3), (3, 3), (4, 3), (3, 4), (2, 5), (5, 2), (4, 2), (2, 6)])
        mixed = rng.random() < 0.75
        step = rng.choice([0, 0, 6000])
        e = rng.choice([0, 0, 1000, 2000])
        f = rng.choice([0, 500])
        wall = 1_990_000
        classes = []
        for c in range(n):
            wall += rng.choice([3000, 4000, 5000, 6350])
            classes.append(((wall - f, wall + f), rng.choice([0, 1, 2, 2, k, k]), rng.choice([0, 1, 2, 2, k, k])))
        bearings = []
        for _ in range(k):
            h, j = 64_000_000 + rng.randrange(-8000, 8001), 59_965_000 + rng.randrange(-15000, 10001)
            bearings.append(((h - e, h + e), (j - e, j + e)))
        band, aim = (20_000, 50_000), rng.choice([30_000, 35_000, 40_000])
        answer = best(bearings, classes, band, aim, mixed, step)
        cases.append((bearings, classes, mixed, step, aim, answer))
    print(f"# source: exhaustive search, Python {platform.python_version()}; crank_shell_choice.py")
    print("# kind: reference")
    print(f"# count: {len(cases)}")
    print("# Bearings as housing:journal and classes as wall:uppers:lowers, sizes as least/greatest in nm; wanted from 20000 to 50000 nm.")
    print("# mixed: halves of two classes may go together, whose middles differ by step at the most (0: any). Expected: how many are")
    print("# not in band for certain, the greatest distance from the aim and the sum of distances; none where the stock doesn't do.")
    print("columns: id; bearings; classes; mixed; step; aim; out; greatest; sum")
    for i, (bearings, classes, mixed, step, aim, answer) in enumerate(cases):
        b = " ".join(f"{h[0]}/{h[1]}:{j[0]}/{j[1]}" for h, j in bearings)
        c = " ".join(f"{w[0]}/{w[1]}:{u}:{l}" for w, u, l in classes)
        a = " ; ".join(map(str, answer)) if answer else "none ; - ; -"
        print(f"{i + 1} ; {b} ; {c} ; {'yes' if mixed else 'no'} ; {step} ; {aim} ; {a}")


main()
