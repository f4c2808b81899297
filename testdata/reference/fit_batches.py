"""Reference vectors for pairing a batch of holes with shafts, by trying every way.

python3 fit_batches.py > fit_batches.txt

Sizes are whole micrometres with an error each way. A pair is in band where all that its brackets allow is. Every
way of pairing is ranked by pairs in band, then the greatest possible distance from the aim, then the sum of these
distances, then the mates of the first parts; the first of the best is kept.
"""

import itertools
import platform
import random


def distance(hole, shaft, aim, effect):
    low = hole[0] - hole[1] + min(effect * (shaft[0] - shaft[1]), effect * (shaft[0] + shaft[1]))
    high = hole[0] + hole[1] + max(effect * (shaft[0] - shaft[1]), effect * (shaft[0] + shaft[1]))
    return max(high - aim, aim - low), low, high


def ways(parts, mates):
    """All injections of some parts into the mates, lowest mates first; None is no mate."""
    for pick in itertools.product([*range(mates), None], repeat=parts):
        used = [j for j in pick if j is not None]
        if len(used) == len(set(used)):
            yield pick


rnd = random.Random(20240309)
lines, seen = [], set()
while len(lines) < 120:
    n, m = rnd.randint(1, 5), rnd.randint(1, 5)
    effect = rnd.choice((-1, -1, -2, 1))
    span = rnd.choice((2, 10, 40))
    holes = [(100_000 + rnd.randint(0, span), rnd.choice((0, 0, 1, 2))) for _ in range(n)]
    shafts = [(40_000 + rnd.randint(0, span), rnd.choice((0, 0, 1, 2))) for _ in range(m)]
    aim = 100_000 + effect * 40_000 + rnd.randint(-span, span)
    band = (aim - rnd.randint(0, span), aim + rnd.randint(0, span))
    best = None
    for pick in ways(n, m):
        ds, possible = [], True
        for i, j in enumerate(pick):
            if j is None:
                continue
            d, low, high = distance(holes[i], shafts[j], aim, effect)
            possible = possible and band[0] <= low and high <= band[1]
            ds.append(d)
        key = (-len(ds), max(ds, default=0), sum(ds))
        if possible and (best is None or key < best[0]):
            best = key, pick
    text = (
        f"{' '.join(f'{s}±{e}' for s, e in holes)} ; {' '.join(f'{s}±{e}' for s, e in shafts)} ; {effect} ; {band[0]} {band[1]} ; {aim} ; "
        f"{' '.join('x' if j is None else str(j) for j in best[1])} ; {best[0][1]} ; {best[0][2]}"
    )
    if text not in seen and (best[0][0] < -1 or rnd.random() < 0.1):  # few that hardly pair
        seen.add(text)
        lines.append(text)

print(f"# source: Python {platform.python_version()}, itertools; made by fit_batches.py")
print("# kind: reference")
print(f"# count: {len(lines)}")
print("# Holes and shafts in µm with their errors; a fit is hole + effect × shaft. The wanted band and the aim; then the")
print("# shaft of each hole (x for none), the greatest distance from the aim and the sum of the distances.")
print("columns: holes; shafts; effect; band; aim; mates; greatest; sum")
for line in lines:
    print(line)
