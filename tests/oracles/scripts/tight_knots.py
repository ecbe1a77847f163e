"""How much shorter a cord becomes when a tight overhand knot is pulled into it.

The cord is a polygon with edges of equal length and a tube of diameter 1 round it. Two pulls draw its
ends apart along the x axis: the end-to-end distance is made as large as it goes while no two points
come closer than the tube lets them. For a tube of diameter 1 that is sin(s) for points that are s
apart along it, up to a quarter turn of the tightest bend (radius 1/2), and 1 beyond. What is left of
the overlap at the end is taken off the tube: the figure printed is shortening / true thickness, which
a tighter knot can only make smaller. So it is an upper bound for an ideal knot without friction.

Single overhand: the trefoil, 3_1, open. Double overhand: the cinquefoil, 5_1, open.

Run: python3 tight_knots.py > ../data/tight_knots.csv   (numpy, scipy; about two minutes)
"""

import numpy as np
from scipy.optimize import minimize

COARSE, FINE = 0.3, 0.12  # edge lengths in diameters


def overhand(turns, size, tails):
    """A loose knot: a (2, 2 turns + 1) torus knot, cut open where it is farthest out, its ends led outward
    and then apart along the x axis, so that they cross nothing."""
    t = np.linspace(0.006, 0.994, 2000)
    phi, psi = 4 * np.pi * t, (2 * turns + 1) * 2 * np.pi * t
    r = size * (2.0 + np.cos(psi))
    # Axes: y outward from the ring's middle at the cut, x along the curve there.
    curve = np.stack([r * np.sin(phi), r * np.cos(phi), size * np.sin(psi)], axis=1)
    out = 4.0 * size
    head = np.array([[-out - tails, out, 0.0], [-0.5 * size, out, 0.0]]) * np.array([-1.0, 1.0, 1.0])
    foot = np.array([[-0.5 * size, out, 0.0], [-out - tails, out, 0.0]])
    return np.concatenate([head, curve, foot])[::-1]


def trimmed(p, tails):
    """The knot with straight tails of so many diameters."""
    off = np.nonzero(np.linalg.norm(p[:, 1:], axis=1) > 0.05)[0]
    cut = p[max(off[0] - 1, 0):off[-1] + 2]
    out = np.array([tails, 0.0, 0.0])
    return np.concatenate([[cut[0] - out], cut, [cut[-1] + out]])


def resampled(curve, step):
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(curve, axis=0), axis=1))])
    n = int(along[-1] / step) + 1
    at = np.linspace(0.0, along[-1], n)
    return np.stack([np.interp(at, along, curve[:, k]) for k in range(3)], axis=1), along[-1] / (n - 1)


def tighten(points, edge, rounds):
    n = len(points)
    i, j = np.triu_indices(n, 3)
    room = np.sin(np.minimum((j - i) * edge, np.pi / 2))

    def energy(flat, stiff):
        p = flat.reshape(n, 3)
        grad = np.zeros_like(p)
        value = -(p[-1, 0] - p[0, 0])
        grad[0, 0] += 1.0
        grad[-1, 0] -= 1.0
        edges = np.diff(p, axis=0)
        length = np.linalg.norm(edges, axis=1)
        off = length - edge
        value += 20 * stiff * np.sum(off**2)
        pull = (40 * stiff * off / length)[:, None] * edges
        grad[1:] += pull
        grad[:-1] -= pull
        for row in (0, -1):  # the ends stay on the axis of the pull
            value += stiff * np.sum(p[row, 1:] ** 2)
            grad[row, 1:] += 2 * stiff * p[row, 1:]
        d = p[j] - p[i]
        far = np.linalg.norm(d, axis=1)
        short = room - far
        near = short > 0
        value += stiff * np.sum(short[near] ** 2)
        push = (-2 * stiff * short[near] / far[near])[:, None] * d[near]
        np.add.at(grad, j[near], push)
        np.add.at(grad, i[near], -push)
        return value, grad.ravel()

    flat = points.ravel()
    for stiff, steps in rounds:
        flat = minimize(energy, flat, args=(stiff,), jac=True, method="L-BFGS-B",
                        options={"maxiter": steps, "maxfun": 2 * steps, "maxcor": 30, "ftol": 1e-13, "gtol": 1e-7}).x
    p = flat.reshape(n, 3)
    far = np.linalg.norm(p[j] - p[i], axis=1)
    thickness = float(np.min(far / room))
    length = float(np.sum(np.linalg.norm(np.diff(p, axis=0), axis=1)))
    return p, (length - (p[-1, 0] - p[0, 0])) / thickness, thickness


def knotted(p):
    """Crossings of the projection along z, signed: 3 alike for a trefoil that is kept, 5 for a cinquefoil."""
    total = 0
    for a in range(len(p) - 1):
        for b in range(a + 2, len(p) - 1):
            u, v, w = p[a + 1] - p[a], p[b + 1] - p[b], p[b] - p[a]
            det = u[0] * v[1] - u[1] * v[0]
            if abs(det) < 1e-12:
                continue
            s, t = (w[0] * v[1] - w[1] * v[0]) / det, (w[0] * u[1] - w[1] * u[0]) / det
            if 0 <= s < 1 and 0 <= t < 1:
                over = (p[a] + s * u)[2] - (p[b] + t * v)[2]
                total += int(np.sign(det * over))
    return total


def tightened(turns, radius):
    points, edge = resampled(overhand(turns, radius, 1.0), COARSE)
    p, _, _ = tighten(points, edge, [(3.0, 30000), (30.0, 20000)])
    points, edge = resampled(trimmed(p, 2.0), FINE)
    return tighten(points, edge, [(30.0, 8000), (300.0, 8000), (3000.0, 8000)])


if __name__ == "__main__":
    print("knot,shortening_in_diameters,thickness_left,signed_crossings,source")
    for name, turns, radius in [("overhand", 1, 0.9), ("double overhand", 2, 1.1)]:
        p, shortening, thickness = tightened(turns, radius)
        print(f"{name},{shortening:.3f},{thickness:.4f},{knotted(p)},computed by tests/oracles/scripts/tight_knots.py",
              flush=True)
