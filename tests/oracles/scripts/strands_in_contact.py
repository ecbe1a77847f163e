"""Two strands of balls that touch before an upright board, by an optimiser that knows nothing of cones or rounds.

Each strand hangs from two points on a level; its links are stiff and without weight, a ball sits at each joint.
scipy's SLSQP finds the least potential energy under |link| = length and |ball - other strand's ball| >= the sum of
the radii, from the strands as they hang alone, pushed apart along the line between them. Writes
tests/oracles/data/strands_in_contact.csv: a row a joint, in mm and N. pip install numpy scipy
"""

import csv
import pathlib

import numpy as np
from scipy.optimize import minimize

STRANDS = [
    {"from": 0.0, "to": 100.0, "link": 15.0, "balls": 9, "radius": 5.0, "weight": 0.01},
    {"from": -6.0, "to": 106.0, "link": 15.0, "balls": 10, "radius": 6.0, "weight": 0.03},
]


def split(flat):
    parts, at = [], 0
    for strand in STRANDS:
        inner = flat[at : at + 2 * strand["balls"]].reshape(-1, 2)
        parts.append(np.vstack([[strand["from"], 0.0], inner, [strand["to"], 0.0]]))
        at += 2 * strand["balls"]
    return parts


def energy(flat):
    return sum(strand["weight"] * part[1:-1, 1].sum() for strand, part in zip(STRANDS, split(flat)))


def links(flat):
    each = [np.sum(np.diff(part, axis=0) ** 2, axis=1) - strand["link"] ** 2 for strand, part in zip(STRANDS, split(flat))]
    return np.concatenate(each) / 100.0


def gaps(flat):
    one, other = (part[1:-1] for part in split(flat))
    reach = STRANDS[0]["radius"] + STRANDS[1]["radius"]
    return (np.linalg.norm(one[:, None] - other[None], axis=2) - reach).ravel()


def solve(start, contact):
    rules = [{"type": "eq", "fun": links}] + ([{"type": "ineq", "fun": gaps}] if contact else [])
    found = minimize(energy, start, constraints=rules, method="SLSQP", options={"maxiter": 5000, "ftol": 1e-14})
    assert found.success, found.message
    return found.x


def main():
    arcs = []
    for strand in STRANDS:
        share = np.linspace(0, 1, strand["balls"] + 2)[1:-1]
        arcs.append(np.stack([strand["from"] + (strand["to"] - strand["from"]) * share, -50 * np.sin(np.pi * share)], 1))
    alone = solve(np.concatenate(arcs).ravel(), False)
    print("alone", gaps(alone).min(), energy(alone))
    found = solve(alone, True)
    print("together", gaps(found).min(), energy(found), "touching", int((gaps(found) < 1e-6).sum()))
    path = pathlib.Path(__file__).parent.parent / "data" / "strands_in_contact.csv"
    with path.open("w", newline="") as file:
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["strand", "joint", "link_mm", "radius_mm", "weight_n", "alone_x", "alone_y", "x", "y", "source"])
        for at, (strand, before, after) in enumerate(zip(STRANDS, split(alone), split(found))):
            last = len(after) - 1
            for joint, (one, two) in enumerate(zip(before, after)):
                is_ball = 0 < joint < last
                row = [at, joint, strand["link"] if joint > 0 else 0.0]
                row += [strand["radius"] if is_ball else 0.0, strand["weight"] if is_ball else 0.0]
                row += [f"{value:.5f}" for value in (*one, *two)]
                table.writerow([*row, "scipy SLSQP, scripts/strands_in_contact.py"])


if __name__ == "__main__":
    main()
