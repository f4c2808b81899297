"""Reference vectors for nip, gap and interference of bearing shells, by mpmath.

python3 crank_shell_nip.py > crank_shell_nip.txt

Two half shells whose backs have the peripheries a and b go in a housing of bore d. Bent to one ring they have the
diameter (a + b)/pi, so the interference is (a + b)/pi - d; each half stands a - pi d/2 above its half housing; and
with one side of the joint closed the other stands open by a + b - pi d.
"""

import platform
import random

import mpmath

mpmath.mp.dps = 40


def main():
    rng = random.Random(7)
    print(f"# source: mpmath {mpmath.__version__} (40 digits), Python {platform.python_version()}; crank_shell_nip.py")
    print("# kind: reference")
    print("# count: 100")
    print("# Half peripheries a and b and housing d in pm; nip of each half, gap with one bolt slack and interference on the")
    print("# diameter in pm.")
    print("columns: id; a; b; d; nip_a; nip_b; gap; interference")
    for i in range(100):
        d = rng.randrange(30_000_000_000, 120_000_000_000)
        half = mpmath.pi * d / 2
        a = int(half) + rng.randrange(0, 100_000_000)
        b = int(half) + rng.randrange(0, 100_000_000)
        nip_a, nip_b, gap = a - half, b - half, a + b - 2 * half
        show = lambda x: mpmath.nstr(x, 20, strip_zeros=False)
        print(f"{i + 1} ; {a} ; {b} ; {d} ; {show(nip_a)} ± 1 ; {show(nip_b)} ± 1 ; {show(gap)} ± 2 ; {show((a + b) / mpmath.pi - d)} ± 2")


main()
