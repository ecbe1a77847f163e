"""Strands hung from points, in contact and joined by bars: SLSQP of scipy.

Reads tests/oracles/data/held_strands.csv on standard input, or the lines that `cargo test --test oracles_contact` asks for
where the cases have changed: case, strand, x of both its ends, how stiff its cord is in N mm2, and of each link length in mm,
weight in mN, where along it the weight acts, radius if it is a ball, and how far across a bar its hole is if it goes
through one. Prints them with the place of each link's far joint. The directions of all links are free; each strand ends
where it is held; balls, in their links where their weight acts, do not overlap another strand's; both joints of links through the
n-th bar of two strands are as far apart as its holes. Cord bends evenly from the middle of each link to the middle of
the next. The sum of weights times heights and of what is in bent cord is least.
"""
import sys

import numpy as np
from scipy.optimize import minimize

lines = [",".join(line.strip().split(",")[:10]) for line in sys.stdin if not line.startswith("case,")]
cases = {}
for line in lines:
    case, strand, *numbers, across = line.split(",")
    of = cases.setdefault(case, {}).setdefault(int(strand), dict(links=[]))
    first, last, of["stiff"], *link = map(float, numbers)
    of["ends"] = (first, last)
    of["links"].append((*link, across))


class Net:
    """Joints as linear functions of the cosines and sines of all links' directions."""

    def __init__(self, strands):
        links = [link for strand in strands.values() for link in strand["links"]]
        self.count = len(links)
        self.of, self.origin, self.start, self.last, self.springs = [], [], {}, {}, []
        self.balls, self.bars, self.force, at = [], {}, [], 0
        for s, strand in strands.items():
            self.start[s], nth = len(self.of), 0
            reach = np.zeros(self.count)
            self.joint(reach, strand["ends"][0])
            for k, (length, weight, centre, radius, across) in enumerate(strand["links"]):
                reach = reach.copy()
                reach[at + k] = length
                self.joint(reach, strand["ends"][0])
                node = self.start[s] + k
                self.force[node] += weight * (1 - centre)
                self.force[node + 1] += weight * centre
                if radius > 0:
                    self.balls.append((s, ((node, 1 - centre), (node + 1, centre)), radius))
                if across:
                    self.bars.setdefault(nth, []).append((float(across), node))
                    nth += 1
            for k, (one, other) in enumerate(zip(strand["links"], strand["links"][1:])):
                # Of the length from middle to middle, in mN mm for each radian.
                self.springs.append((at + k, 1000 * strand["stiff"] / ((one[0] + other[0]) / 2)))
            at += len(strand["links"])
            self.last[s] = len(self.of) - 1
        self.of, self.origin, self.force = np.array(self.of), np.array(self.origin), np.array(self.force)

    def joint(self, reach, x):
        self.of.append(reach)
        self.origin.append(x)
        self.force.append(0.0)

    def places(self, turns):
        return np.stack([self.origin + self.of @ np.cos(turns), self.of @ np.sin(turns)], 1)

    def slopes(self, turns):
        return np.stack([self.of * -np.sin(turns), self.of * np.cos(turns)], 1)


def solved(strands):
    net = Net(strands)
    ends = [(net.last[s], strand["ends"][1]) for s, strand in strands.items()]
    equal = []
    for through in net.bars.values():
        (p, a), (q, b) = sorted(through)[0], sorted(through)[-1]
        equal += [(((a, 1),), ((b, 1),), q - p), (((a + 1, 1),), ((b + 1, 1),), q - p)]
    apart = [(a, b, r + q) for s, a, r in net.balls for t, b, q in net.balls if s < t]

    def distances(pairs, turns):
        p, d = net.places(turns), net.slopes(turns)
        values, slopes = [], []
        for one, other, wanted in pairs:
            gap, turn = (sum(part[n] * k for n, k in one) - sum(part[n] * k for n, k in other) for part in (p, d))
            values.append((gap @ gap - wanted**2) / (2 * wanted))
            slopes.append(gap @ turn / wanted)
        return np.array(values), np.array(slopes)

    def held(turns, joined=()):
        p, d = net.places(turns), net.slopes(turns)
        value = np.concatenate([p[node] - (x, 0.0) for node, x in ends])
        slope = np.concatenate([d[node] for node, _ in ends])
        if not joined:
            return value, slope
        bars = distances(joined, turns)
        return np.concatenate([value, bars[0]]), np.concatenate([slope, bars[1]])

    weight = net.force / net.force.sum()
    bent, spring = (np.array(part) for part in zip(*net.springs))
    spring = spring / net.force.sum()

    def lowest(turns, joined, pairs):
        rules = [dict(type="eq", fun=lambda t: held(t, joined)[0], jac=lambda t: held(t, joined)[1])]
        if pairs:
            rules.append(dict(type="ineq", fun=lambda t: distances(pairs, t)[0], jac=lambda t: distances(pairs, t)[1]))
        def energy(t):
            return weight @ net.places(t)[:, 1] + spring @ (t[bent + 1] - t[bent]) ** 2 / 2

        def slope(t):
            moment, slope = spring * (t[bent + 1] - t[bent]), weight @ net.slopes(t)[:, 1]
            np.add.at(slope, bent + 1, moment)
            np.add.at(slope, bent, -moment)
            return slope

        return minimize(energy, turns, jac=slope, method="SLSQP", constraints=rules,
                        options=dict(maxiter=2000, ftol=1e-13))

    turns = np.concatenate([np.linspace(-1.2, 1.2, len(strand["links"])) for strand in strands.values()])
    # Each by itself first, then joined.
    near, found = [], lowest(lowest(turns, [], []).x, equal, [])
    # Balls that overlap are kept apart from then on, until none do.
    for _ in range(30):
        gaps = distances(apart, found.x)[0]
        more = [pair for pair, gap in zip(apart, gaps) if gap < -1e-8 and pair not in near]
        if not more:
            break
        near += more
        found = lowest(found.x, equal, near)
    off, depth = abs(held(found.x, equal)[0]).max(), -distances(apart, found.x)[0].min()
    print(found.message, len(near), "off", off, "depth", depth, file=sys.stderr)
    assert off < 1e-6 and depth < 1e-6
    p = net.places(found.x)
    return np.concatenate([p[net.start[s] + 1:net.last[s] + 1] for s in strands])


print("case,strand,first_mm,last_mm,stiffness_Nmm2,length_mm,weight_mN,centre,radius_mm,across_mm,x_mm,y_mm")
for case, strands in cases.items():
    own = [line for line in lines if line.startswith(case + ",")]
    for line, (x, y) in zip(own, solved(strands)):
        print(f"{line},{x:.4f},{y:.4f}")
