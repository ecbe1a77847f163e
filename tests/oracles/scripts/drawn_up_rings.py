"""Largest round limb inside a ring of rigid drilled balls, for so much cord: SLSQP of scipy, best of 4 starts.

A ring of N alike parts, each a large ball and five small ones, mirrored about both: the large ball, two small ones and
the middle one are free in place and turn, and the cord free across each mouth by its play. Balls do not overlap, the limb
is round and outside of all, and the cord is as long as the row of balls laid straight, and `extra` mm more. Prints the
table tests/oracles/data/drawn_up_rings.csv.
"""
import numpy as np
from scipy.optimize import minimize

PLAY = 0.3


def largest(big, small, parts, extra):
    half = np.pi / parts
    straight = parts * (2 * big + 10 * small)
    mirror, along = np.array([np.sin(half), np.cos(half)]), np.array([np.cos(half), -np.sin(half)])
    radii = [big, small, small, small]

    def placed(v):
        _, first, x1, y1, t1, x2, y2, t2, last = v[:9]
        centres = [np.array([0, first]), np.array([x1, y1]), np.array([x2, y2]), mirror * last]
        axes = [np.array([1.0, 0]), np.array([np.cos(t1), -np.sin(t1)]), np.array([np.cos(t2), -np.sin(t2)]), along]
        return centres, axes

    def cord(v):
        (c, e), o = placed(v), v[9:]
        n = [np.array([-a[1], a[0]]) for a in e]
        way = [c[0] + n[0] * o[0], c[0] + big * e[0] + n[0] * o[0]]
        for ball, (before, after) in ((1, (1, 2)), (2, (3, 4))):
            way += [c[ball] - small * e[ball] + n[ball] * o[before], c[ball] + small * e[ball] + n[ball] * o[after]]
        way += [c[3] - small * e[3] + n[3] * o[5], c[3] + n[3] * o[5]]
        return sum(np.sqrt(((a - b) ** 2).sum() + 1e-14) for a, b in zip(way, way[1:]))

    def kept(v):
        c, _ = placed(v)
        apart = [np.hypot(*(c[i + 1] - c[i])) - radii[i] - radii[i + 1] for i in range(3)]
        clear = [np.hypot(*c[i]) - radii[i] - v[0] for i in range(4)]
        return np.array(apart + clear + [(straight + extra) / (2 * parts) - cord(v)])

    best = 0.0
    for trial in range(4):
        circle = straight / 2 / np.pi + 0.4 * trial
        angles = np.cumsum([0] + [2 * np.arcsin(d / 2 / circle) for d in (big + small, 2 * small, 2 * small)])
        angles *= half / angles[-1]
        v = [circle - big, circle]
        for i in (1, 2):
            v += [circle * np.sin(angles[i]), circle * np.cos(angles[i]), angles[i]]
        v += [circle] + [0.0] * 6
        bounds = [(None, None)] * 9 + [(-PLAY, PLAY)] * 6
        found = minimize(lambda v: -v[0], v, constraints=[{"type": "ineq", "fun": kept}], bounds=bounds, method="SLSQP",
                         options=dict(maxiter=2000, ftol=1e-12))
        if found.success and kept(found.x).min() > -1e-7:
            best = max(best, -found.fun)
    return 2 * np.pi * best


print("big_mm,small_mm,parts,extra_mm,inside_girth_mm,source")
for big, small, parts in [(7, 2, 6), (5, 2, 8), (5, 3, 7), (4, 3, 8), (3, 1.25, 9), (4, 4, 4)]:
    for extra in (1.0, 2.0, 4.0):
        inside = largest(big, small, parts, extra)
        print(f"{big},{small},{parts},{extra},{inside:.4f},tests/oracles/scripts/drawn_up_rings.py: SLSQP of scipy; best of 4 starts")
