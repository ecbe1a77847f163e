"""Strings of beads twisted round one another, drawn out as long as they go: the longest a piece with so many turns gets.

Writes ../data/twisted_strands.csv. Needs numpy, scipy and clarabel; run it with `python3 twisted_strands.py`.

Unlike the program it knows nothing of helices, radii or a common line. One period of some strings is a set of points,
joined by links of one length; the next period is the same set farther along by H, which is looked for. No two balls
about points of different strings lie in one another, and H is to be as great as can be. Each round is a cone program
(links may be shorter than they are; contacts keep the direction in which the balls lay before), and rounds go on until
H stands still. Strings go once round one another in a period, which no small step can undo.
"""
import csv
import pathlib

import clarabel
import numpy as np
from scipy import sparse


def settle(count, links, link, width, rounds=400):
    """H of `count` strings with `links` links of length `link`, balls as wide as `width`."""
    length = links * link
    radius = 0.75 * width / np.sin(np.pi / count)
    rise = np.sqrt(length**2 - (2 * np.pi * radius) ** 2)
    share = np.arange(links) / links
    angles = 2 * np.pi * (share[None, :] + np.arange(count)[:, None] / count)
    at = np.stack([radius * np.cos(angles), radius * np.sin(angles), np.broadcast_to(rise * share, angles.shape)], -1)
    points = count * links
    size = 3 * points + 1
    number = lambda string, bead, axis: 3 * (string * links + bead) + axis
    step, before = 0.5 * width, -np.inf
    for _ in range(rounds):
        flat, rows, cols, vals, right, cones = at.reshape(-1, 3), [], [], [], [], []
        # A link: (l, x(i+1) - x(i)) in the cone; b - A x.
        row = 0
        for string in range(count):
            for bead in range(links):
                right.append(link)
                row += 1
                for axis in range(3):
                    rows += [row, row]
                    cols += [number(string, (bead + 1) % links, axis), number(string, bead, axis)]
                    vals += [-1.0, 1.0]
                    if axis == 2 and bead == links - 1:
                        rows.append(row), cols.append(size - 1), vals.append(-1.0)
                    right.append(0.0)
                    row += 1
                cones.append(clarabel.SecondOrderConeT(4))
        # Contacts of all pairs of strings, with the other's copies above and below.
        linear = 0
        for one in range(count):
            for other in range(one + 1, count):
                for shift in (-1, 0, 1):
                    away = at[one][:, None, :] - at[other][None, :, :] - np.array([0, 0, shift * rise])
                    gap = np.linalg.norm(away, axis=-1)
                    for i, j in zip(*np.nonzero(gap < width + 2 * step + 0.3 * width)):
                        normal = away[i, j] / gap[i, j]
                        # normal . (x - y - shift H) >= width
                        for axis in range(3):
                            rows += [row, row]
                            cols += [number(one, i, axis), number(other, j, axis)]
                            vals += [-normal[axis], normal[axis]]
                        if shift:
                            rows.append(row), cols.append(size - 1), vals.append(shift * normal[2])
                        right.append(-width)
                        row += 1
                        linear += 1
        # No point moves far in a round, and one axis point stays.
        box = 0
        for index in range(size):
            here = flat.ravel()[index] if index < size - 1 else rise
            for sign in (1.0, -1.0):
                rows.append(row), cols.append(index), vals.append(sign)
                right.append(sign * here + step)
                row += 1
                box += 1
        matrix = sparse.csc_matrix((vals, (rows, cols)), shape=(row, size))
        goal = np.zeros(size)
        goal[-1] = -1.0
        settings = clarabel.DefaultSettings()
        settings.verbose = False
        kinds = cones + [clarabel.NonnegativeConeT(linear + box)]
        quadratic = sparse.csc_matrix((size, size))
        found = np.array(clarabel.DefaultSolver(quadratic, goal, matrix, np.array(right), kinds, settings).solve().x)
        at, rise = found[:-1].reshape(count, links, 3), found[-1]
        if abs(rise - before) < 1e-7 * rise:
            step *= 0.5
            if step < 1e-4 * width:
                break
        elif rise < before + 1e-4 * step:
            step *= 0.7
        before = rise
    return rise


CASES = [
    # strings, links, link and width in mm: fine links make tubes; links as long as the balls are wide make beads.
    ("tubes", 2, 100, 0.5, 4.0),
    ("tubes", 2, 76, 0.5, 4.0),
    ("tubes", 3, 120, 0.5, 4.0),
    ("tubes", 3, 88, 0.5, 4.0),
    ("tubes", 4, 120, 0.5, 4.0),
    ("beads", 2, 20, 4.0, 4.0),
    ("beads", 3, 20, 4.0, 4.0),
]

if __name__ == "__main__":
    here = pathlib.Path(__file__).resolve()
    source = "tests/oracles/scripts/twisted_strands.py: rounds of cone programs (clarabel)"
    with open(here.parent.parent / "data" / "twisted_strands.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["kind", "strands", "length_mm", "width_mm", "twisted_mm", "source"])
        for kind, count, links, link, width in CASES:
            rise = settle(count, links, link, width)
            print(kind, count, links * link, width, rise, flush=True)
            out.writerow([kind, count, f"{links * link:g}", f"{width:g}", f"{rise:.4f}", source])
