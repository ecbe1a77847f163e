"""How long rows of drilled beads run when the narrow ones slip into the holes of their neighbours.

Each bead is a solid of revolution with a hole, sampled at 40,000 radii: where two have substance at the
same radius, their half lengths there must not overlap. Whatever shares no radius goes through. The
shortest row that keeps the beads' order along the cord between two plates is a linear programme.

Run: python3 beads_in_beads.py > ../data/beads_in_beads.csv   (numpy, scipy)
"""

import numpy as np
from scipy.optimize import linprog

RADII = np.linspace(0.0, 10.0, 40001)

ROWS = {
    "a round in a rondelle": "r14x8/5 o4/1",
    "between two rondelles": "r14x8/5 o4/1 r14x8/5",
    "a run of three inside two": "r14x8/5 o4/1 o4/1 o4/1 r14x8/5",
    "more than go inside": "o10/1 r14x8/5 o4/1 o4/1 o4/1 o4/1 o4/1 o4/1 o10/1",
    "at the first end": "o4/1 r14x8/5 o8/1",
    "at both ends": "o3/1 o4/1 r14x8/5 o4/1 o3/1",
    "a stopped one": "o10/1 t8x4/5 o4/1 o10/1",
    "as broad as the hole": "r14x8/4 o4/1 r14x8/4",
    "a thin ring about two balls": "o8/1 t5x0.5/4 o8/1",
    "seeds between wide holes": "o12/3 o2/0.8 o2/0.8 o12/3 o2/0.8 o12/3",
    "none inside": "o8/1 o6/2 o4/0.8 t6x3/1 o8/1",
}


def half_lengths(word):
    kind, rest = word[0], word[1:]
    size, hole = rest.split("/")
    across, along = ([float(x) for x in size.split("x")] * 2)[:2]
    wide, half = across / 2, along / 2
    solid = (RADII >= float(hole) / 2 - 1e-9) & (RADII <= wide + 1e-9)
    outline = half * np.sqrt(np.clip(1 - (RADII / wide) ** 2, 0, None)) if kind in "or" else np.full_like(RADII, half)
    return np.where(solid, outline, -np.inf)


def length(row):
    beads = [half_lengths(word) for word in row.split()]
    n = len(beads)
    less, limit = [], []
    for i in range(n):
        reach = beads[i].max()
        less.append([-1.0 if k == i else 0.0 for k in range(n + 1)])  # x_i >= reach
        limit.append(-reach)
        less.append([1.0 if k == i else -1.0 if k == n else 0.0 for k in range(n + 1)])  # x_i + reach <= length
        limit.append(-reach)
        for j in range(i + 1, n):
            touch = (beads[i] + beads[j]).max()
            if np.isfinite(touch):
                less.append([1.0 if k == i else -1.0 if k == j else 0.0 for k in range(n + 1)])
                limit.append(-touch)
    cost = [0.0] * n + [1.0]
    return linprog(cost, A_ub=less, b_ub=limit, bounds=[(None, None)] * (n + 1)).fun


print("what,row,length_mm,source")
for what, row in ROWS.items():
    print(f"{what},{row},{length(row):.4f},computed by tests/oracles/scripts/beads_in_beads.py")
