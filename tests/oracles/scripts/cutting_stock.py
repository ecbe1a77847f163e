"""The fewest spools from which pieces can be cut, found by a general integer programme.

Arc flow (Valério de Carvalho, "Exact solution of bin-packing problems using column generation and
branch-and-bound", Annals of Operations Research 86, 1999; from memory): a spool is a path from 0 to its
length whose steps are pieces or waste of 1; as few paths as possible carry every piece. A length in hand
is one path more, through a graph of its own, that costs nothing. Lengths are whole millimetres.

Run: python3 cutting_stock.py > ../data/cutting_stock.csv   (numpy, scipy with HiGHS; some minutes)
"""

import collections
import random

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix

CASES = 420
MOST_PIECES = 24


def arcs(kinds, size):
    """Steps of a path as (from, to, kind or None for waste), pieces in falling order of length."""
    reached, steps = {0}, set()
    for kind, count in sorted(kinds.items(), reverse=True):
        for start in sorted(reached):
            at = start
            for _ in range(count):
                if at + kind > size:
                    break
                steps.add((at, at + kind, kind))
                at += kind
                reached.add(at)
    stops = sorted(reached | {size})
    return sorted(steps, key=str) + [(a, b, None) for a, b in zip(stops, stops[1:])]


def fewest(pieces, lot, stash):
    kinds = collections.Counter(pieces)
    sizes = [lot] + ([stash] if stash else [])
    columns, cost, entries, rows = 0, [], [], {}

    def row(key):
        return rows.setdefault(key, len(rows))

    whole = []
    for graph, size in enumerate(sizes):
        for a, b, kind in arcs(kinds, size):
            entries += [(row((graph, a)), columns, -1), (row((graph, b)), columns, 1)]
            if kind is not None:
                entries.append((row(("piece", kind)), columns, 1))
            cost.append(0)
            columns += 1
        # Back from the end to the start: one for each spool.
        entries += [(row((graph, size)), columns, -1), (row((graph, 0)), columns, 1)]
        cost.append(1 if graph == 0 else 0)
        whole.append((columns, np.inf if graph == 0 else 1))
        columns += 1
    at, column, value = zip(*entries)
    matrix = coo_matrix((value, (at, column)), shape=(len(rows), columns)).tocsr()
    low, high = np.zeros(len(rows)), np.zeros(len(rows))
    for kind, count in kinds.items():
        low[rows[("piece", kind)]], high[rows[("piece", kind)]] = count, np.inf
    most = np.full(columns, float(len(pieces)))
    for index, limit in whole:
        most[index] = min(most[index], limit)
    found = milp(cost, constraints=LinearConstraint(matrix, low, high), integrality=np.ones(columns), bounds=Bounds(0, most))
    assert found.status == 0, found.message
    return round(found.fun)


def perfect(chance, lot, count):
    """Spools cut without waste."""
    pieces = []
    while len(pieces) + 4 <= count:
        cuts = sorted(chance.sample(range(10, lot - 10), chance.randint(1, 3)))
        pieces += [b - a for a, b in zip([0] + cuts, cuts + [lot])]
    return pieces


def case(chance):
    lot = chance.choice([100, 150, 200, 240, 300])
    count = chance.randint(2, MOST_PIECES)
    style = chance.choice(["any", "kinds", "long", "perfect", "third", "short"])
    if style == "any":
        pieces = [chance.randint(1, lot) for _ in range(count)]
    elif style == "kinds":
        of = [chance.randint(lot // 8, lot * 2 // 3) for _ in range(chance.randint(1, 4))]
        pieces = [chance.choice(of) for _ in range(count)]
    elif style == "long":
        pieces = [chance.randint(lot // 4, lot * 3 // 5) for _ in range(count)]
    elif style == "perfect":
        pieces = perfect(chance, lot, max(count, 8))
    elif style == "third":
        pieces = [chance.randint(lot * 26 // 100, lot * 45 // 100) for _ in range(count)]
    else:
        pieces = [chance.randint(lot // 20, lot // 4) for _ in range(count)]
    stash = chance.choice([None, None, chance.randint(5, lot), chance.randint(lot, 2 * lot + lot // 2)])
    return sorted((piece for piece in pieces if piece > 0), reverse=True), lot, stash


def main():
    chance = random.Random(24)
    print("lot,stash,pieces,fewest,source")
    for _ in range(CASES):
        pieces, lot, stash = case(chance)
        words = " ".join(map(str, pieces))
        best = fewest(pieces, lot, stash)
        print(f"{lot},{stash or ''},{words},{best},tests/oracles/scripts/cutting_stock.py: milp of scipy", flush=True)


if __name__ == "__main__":
    main()
