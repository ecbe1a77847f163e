"""A closed loop of rods at rest on neck and shoulders: SLSQP of scipy.

Reads tests/oracles/data/loops_on_a_neck.csv on standard input, or the lines that `cargo test --test oracles_neck` asks for where
the case has changed: of each link length in mm, weight in mN, and radius in mm and count of the balls that are spread evenly
along it. Prints them with the place of each link's far joint. The loop begins and ends in one joint at the back, which
stays in the body's middle plane. Joints are where the sum of weights times heights is least, links as long as they are, and
all balls outside the skin.

The body is built from the words and formulas at the head of src/drape/body/skin.rs and the shares of src/trade/bodies.rs.

Run: python3 loops_on_a_neck.py < ../data/loops_on_a_neck.csv   (numpy, scipy; some seconds)
"""

import sys

import numpy as np
from scipy.optimize import brentq, minimize
from scipy.special import ellipe

# The base as a tape measures it: the program makes 96 chords of it 370 mm long, which are 0.3 mm less (skin.rs).
BASE, NECK, BREADTH_TO_DEPTH, CHEST_TILT = 370.3, 328.0, 1.2, np.radians(20)
EXACT = 1e-9


class Skin:
    """Neck and torso, as far as the planes stand from its middle."""

    def __init__(self):
        lean, tilt, slope, back = np.radians([18, 30, 20, 30])
        self.axis = np.array([0, np.cos(lean), np.sin(lean)])
        self.forward = np.array([0, -np.sin(tilt), np.cos(tilt)])
        self.faces = np.array([
            [0, np.sin(CHEST_TILT), np.cos(CHEST_TILT)], [0, np.sin(back), -np.cos(back)],
            [np.sin(slope), np.cos(slope), 0], [-np.sin(slope), np.cos(slope), 0]])
        ratio = BREADTH_TO_DEPTH
        depth = BASE / (4 * ratio * ellipe(1 - ratio**-2))
        self.full = np.array([ratio * depth, depth])
        brentq(self.off_girth, 0.5, 1.4, xtol=1e-9)

    def off_girth(self, scale):
        self.half = self.full * scale
        angles = np.linspace(0, 2 * np.pi, 361)[:-1]
        ways = np.sin(angles)[:, None] * [1, 0, 0] + np.cos(angles)[:, None] * self.forward
        far = np.array([brentq(lambda far: self.value(way * far), 20, 300) for way in ways])
        places = ways * far[:, None]
        return np.linalg.norm(places - np.roll(places, 1, 0), axis=1).sum() - BASE

    def value(self, places):
        """Less than nothing inside the body."""
        a, b = self.half
        feet = np.array([self.forward * b, -self.forward * b, [a, 0, 0], [-a, 0, 0]])
        radius = NECK / (2 * np.pi)
        neck = np.sqrt((places**2).sum(-1) - (places @ self.axis) ** 2) - radius
        edge, fillet = 0.16 * a, 0.2 * a
        torso = edge * np.log(np.exp((places @ self.faces.T - (self.faces * feet).sum(1)) / edge).sum(-1))
        return -fillet * np.log(np.exp(-neck / fillet) + np.exp(-torso / fillet))

    def slope(self, places):
        return derived(self.value, places)

    def distance(self, places):
        """To the first order, and how it changes with places."""
        def far(places):
            return self.value(places) / np.linalg.norm(self.slope(places), axis=-1)
        return far(places), derived(far, places)


def derived(value, places, step=1e-4):
    """By central differences along the three axes."""
    axes = np.eye(3) * step
    return np.stack([(value(places + axis) - value(places - axis)) / (2 * step) for axis in axes], -1)


class Loop:
    """Links, from the joint at the back round to it."""

    def __init__(self, links, skin):
        self.skin, count = skin, len(links)
        self.length, weight, radius, balls = np.array(links).T
        self.one, self.other = np.arange(count), (np.arange(count) + 1) % count
        self.weight = (weight + np.roll(weight, 1)) / 2 / weight.sum()
        self.link = np.repeat(np.arange(count), balls.astype(int))
        self.share = np.concatenate([np.arange(1, ball + 1) / (ball + 1) for ball in balls])
        self.radius = radius[self.link]

    def start(self):
        """An oval round the neck, lower in front."""
        turn = 2 * np.pi * np.concatenate([[0], np.cumsum(self.length)[:-1]]) / self.length.sum()
        wide = self.length.sum() / (2 * np.pi)
        return np.stack([-wide * np.sin(turn), 20 - 0.5 * wide * (1 - np.cos(turn)), -wide * np.cos(turn)], -1)

    def lengths(self, x):
        way = x[self.other] - x[self.one]
        slope = np.zeros((len(way), *x.shape))
        slope[self.one, self.other] = way / self.length[:, None]
        slope[self.one, self.one] = -way / self.length[:, None]
        return ((way**2).sum(1) - self.length**2) / (2 * self.length), slope

    def outside(self, x):
        share, ends = self.share[:, None], (self.one[self.link], self.other[self.link])
        far, normal = self.skin.distance(x[ends[0]] * (1 - share) + x[ends[1]] * share)
        slope, rows = np.zeros((len(far), *x.shape)), np.arange(len(far))
        slope[rows, ends[0]] = normal * (1 - share)
        slope[rows, ends[1]] = normal * share
        return far - self.radius, slope

    def lowest(self):
        x = self.start()
        free = np.ones(x.shape, bool)
        free[0, 0], x[0, 0] = False, 0.0

        def whole(flat):
            places = x.copy()
            places[free] = flat
            return places

        def rule(kind, of):
            return dict(type=kind, fun=lambda flat: of(whole(flat))[0], jac=lambda flat: of(whole(flat))[1][:, free])

        slope = np.zeros(x.shape)
        slope[:, 1] = self.weight
        found = minimize(lambda flat: whole(flat)[:, 1] @ self.weight, x[free], jac=lambda _: slope[free], method="SLSQP",
                         constraints=[rule("eq", self.lengths), rule("ineq", self.outside)],
                         options=dict(maxiter=1000, ftol=EXACT))
        x = whole(found.x)
        off, deep = np.abs(self.lengths(x)[0]).max(), -self.outside(x)[0].min()
        print(found.message, found.nit, "off", off, "deep", deep, "height", self.weight @ x[:, 1], file=sys.stderr)
        assert off < 1e-5 and deep < 1e-5
        return x[self.other]


lines = [",".join(line.strip().split(",")[:4]) for line in sys.stdin if not line.startswith("length")]
loop = Loop([[float(number) for number in line.split(",")] for line in lines], Skin())
print("length_mm,weight_mN,radius_mm,balls,x_mm,y_mm,z_mm")
for line, (x, y, z) in zip(lines, loop.lowest()):
    print(f"{line},{x:.4f},{y:.4f},{z:.4f}")
