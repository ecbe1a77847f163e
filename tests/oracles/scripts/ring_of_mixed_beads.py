#!/usr/bin/env python3
"""The largest round wrist that closed rows go round, found by a general optimiser.

Writes ../data/ring_of_mixed_beads.csv. Needs numpy and scipy; run it with `python3 ring_of_mixed_beads.py`.

Unknown are the centres c(i) in the plane, as Cartesian coordinates, and the wrist's radius r:

    maximise r  so that  |c(i)| >= r + reach(i)  and  |c(i+1) - c(i)| = after(i) + before(i+1)

round the whole row, the last to the first included. Sequential quadratic programming (SLSQP) from several
starts, each once round the origin: the best that keeps all conditions to a millionth of a millimetre counts.
"""

import csv
import pathlib

import numpy as np
from scipy.optimize import minimize

STARTS = 6
KEPT = 1e-6


def even(length, reach):
    return (length / 2, length / 2, reach)


def ball(size):
    return even(size, size / 2)


def drilled(size, hole=1):
    """A ball that meets its neighbours at the rim of its hole."""
    return even((size**2 - hole**2) ** 0.5, size / 2)


def random_row(seed, count, clasp=()):
    chance = np.random.default_rng(seed)
    kinds = [even(round(chance.uniform(2, 14), 1), round(chance.uniform(1.5, 7), 1)) for _ in range(5)]
    return [kinds[chance.integers(5)] for _ in range(count)] + list(clasp)


RING, CLASP = even(4, 0.5), even(14, 3)
CASES = {
    "20 of 8 mm": [ball(8)] * 20,
    "15 of 12 mm": [ball(12)] * 15,
    "(14; 5 x 4 mm) x 6": ([ball(14)] + [ball(4)] * 5) * 6,
    "(10; 8 x 4 mm) x 5": ([ball(10)] + [ball(4)] * 8) * 5,
    "20 of 8 mm; holes of 1 mm": [drilled(8)] * 20,
    "(14; 5 x 4 mm) x 6; holes of 1 mm": ([drilled(14)] + [drilled(4)] * 5) * 6,
    "(10; 8 x 4 mm) x 5; holes of 1 mm": ([drilled(10)] + [drilled(4)] * 8) * 5,
    "one of 16 mm among 34 of 4 mm": [ball(16)] + [ball(4)] * 34,
    "a disc of 20 x 4 mm among 34 of 4 mm": [even(4, 10)] + [ball(4)] * 34,
    "18 of 8 mm; ring; clasp; ring": [ball(8)] * 18 + [RING, CLASP, RING],
    "36 of 4 mm; ring; clasp; ring": [ball(4)] * 36 + [RING, CLASP, RING],
    "22 of 6 mm; a clasp of 25 mm": [ball(6)] * 22 + [even(25, 3)],
    "(10; 3 x 4 mm) x 6; thick clasp of 30 mm": ([ball(10)] + [ball(4)] * 3) * 6 + [even(30, 6)],
    "pendants off their middle": [(3, 5, 2), (5, 3, 4), (2, 2, 1), (1, 6, 3)] * 6,
    "tubes of 20 mm and 5 mm rounds": [even(20, 2), ball(5)] * 6,
    "random 1": random_row(1, 24),
    "random 2": random_row(2, 27),
    "random 3": random_row(3, 22, [RING, CLASP, RING]),
    "random 4": random_row(4, 30),
    "random 5": random_row(5, 26, [even(20, 2.5)]),
    "random 6": random_row(6, 24, [even(6, 2), CLASP]),
}


def solve(links, seed):
    before, after, reach = np.array(links).T
    count, pitch = len(links), after + np.roll(before, -1)
    chance = np.random.default_rng(seed)
    turn = 2 * np.pi * (np.cumsum(pitch) - pitch[0]) / pitch.sum()
    radius = pitch.sum() / (2 * np.pi) * (1 + 0.02 * seed * chance.standard_normal(count))
    start = np.concatenate([radius * np.cos(turn), radius * np.sin(turn), [radius.min() - reach.max()]])
    at, after_at = np.arange(count), (np.arange(count) + 1) % count

    def split(v):
        return v[:count], v[count:-1], v[-1]

    def room(v):
        x, y, r = split(v)
        return x**2 + y**2 - (r + reach) ** 2

    def room_slope(v):
        x, y, r = split(v)
        slope = np.zeros((count, 2 * count + 1))
        slope[at, at], slope[at, count + at], slope[:, -1] = 2 * x, 2 * y, -2 * (r + reach)
        return slope

    def taut(v):
        x, y, _ = split(v)
        return (x[after_at] - x) ** 2 + (y[after_at] - y) ** 2 - pitch**2

    def taut_slope(v):
        x, y, _ = split(v)
        dx, dy = 2 * (x[after_at] - x), 2 * (y[after_at] - y)
        slope = np.zeros((count, 2 * count + 1))
        slope[at, at], slope[at, after_at] = -dx, dx
        slope[at, count + at], slope[at, count + after_at] = -dy, dy
        return slope

    last = np.zeros(2 * count + 1)
    last[-1] = -1
    found = minimize(
        lambda v: -v[-1], start, jac=lambda v: last, method="SLSQP", options={"maxiter": 2000, "ftol": 1e-13},
        constraints=[{"type": "ineq", "fun": room, "jac": room_slope}, {"type": "eq", "fun": taut, "jac": taut_slope}],
    )
    x, y, r = split(found.x)
    wound = np.angle((x[after_at] + 1j * y[after_at]) / (x + 1j * y)).sum() / (2 * np.pi)
    outside = (np.hypot(x, y) - r - reach).min()
    stretched = abs(np.hypot(x[after_at] - x, y[after_at] - y) - pitch).max()
    return r if outside > -KEPT and stretched < KEPT and abs(wound - 1) < 1e-9 else None


def main():
    here = pathlib.Path(__file__)
    with open(here.parent.parent / "data" / "ring_of_mixed_beads.csv", "w", newline="") as file:
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["row", "links before+after:reach", "inside_girth_mm", "source"])
        for name, links in CASES.items():
            found = [r for r in (solve(links, seed) for seed in range(STARTS)) if r is not None]
            girth = 2 * np.pi * max(found)
            print(f"{name}: {girth:.4f} ({len(found)} of {STARTS} starts, least {2 * np.pi * min(found):.4f})")
            words = " ".join(f"{before:.9g}+{after:.9g}:{reach:.9g}" for before, after, reach in links)
            source = f"tests/oracles/scripts/{here.name}: SLSQP of scipy; best of {STARTS} starts"
            table.writerow([name, words, f"{girth:.4f}", source])


if __name__ == "__main__":
    main()
