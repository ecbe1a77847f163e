//! How far two neighbours of a row part where it bends.
//!
//! **Problem.** The cord runs along the middle of two beads and turns by an angle t from the one's hole to the other's, by
//! half of it at each mouth. Wanted is the least cord between their mouths for which they do not lie in one another.
//!
//! **Equation.** Both axes go on by d beyond their mouths to where they meet; the cord between is 2 d cos(t/2) long. A line
//! parts the bodies whose normal makes the angle p with the one's axis and t - p with the other's if, with s and s' the
//! support functions of their ends and m, m' their mouths (see [`nose`](super::nose)),
//! (m + d) cos p + (m' + d) cos(t - p) is s(p) + s'(t - p) or more. With e(p) = s(p) - m cos p that asks for
//! d = (e(p) + e'(t - p)) / 2 cos(t/2) cos(p - t/2), and the least over all p is the d wanted. As e grows with its angle,
//! that p lies between both axes. Ends that are alike it parts in the middle: the place that each is touched at there asks for
//! as much at any other p. While both bodies are touched at their rims, b and b' off the axis, e is b sin p, and d is
//! the lesser of both times tan(t/2): rims of one breadth touch, and the narrower end touches the broader face.
//!
//! Cord in tension lies at the inner side of both holes, c and c' off their axes, and goes straight from mouth to mouth: the
//! row takes 2 d cos(t/2) - (c + c') sin(t/2) more of it than laid straight. Where holes differ, or a row bends back and
//! forth, the cord crosses from side to side of a hole; what that takes is left out.
//!
//! **Tolerance.** Exact at rims; else by the golden section, to 1e-6 mm of what tests by brute force find.
//!
//! **Source.** The parting line is the separating hyperplane theorem of any textbook of convex geometry. The rest is
//! derived here.

use super::nose::{Nose, least};

/// A sharper turn is told as this one, in radians: no axes meet where a row turns back on itself.
const SHARPEST: f64 = 2.0;

/// The ends of two neighbours that meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hinge {
    noses: [Nose; 2],
    /// How far off both axes, added up, the cord lies that is drawn to the inner side of the bend.
    play: f64,
}

impl Hinge {
    /// Of the end of one body and the start of the next, whose holes and whose cord have these radii in mm.
    #[must_use]
    pub fn new([one, other]: [Nose; 2], [hole, next]: [f64; 2], cord: f64) -> Self {
        let play = |hole: f64| (hole - cord).max(0.0);
        Self { noses: [one.beside(next), other.beside(hole)], play: play(hole) + play(next) }
    }

    /// How much more cord in mm the row takes for a turn by an angle in radians.
    #[must_use]
    pub fn takes(&self, turn: f64) -> f64 {
        let (sin, cos) = libm::sincos(0.5 * turn.min(SHARPEST));
        2.0 * self.opens(turn) * cos - self.play * sin
    }

    /// How far in mm both axes go on beyond their mouths where the row turns by an angle in radians.
    #[must_use]
    pub fn opens(&self, turn: f64) -> f64 {
        let turn = turn.min(SHARPEST);
        if self.noses.iter().all(|nose| nose.meets_at_rim(turn)) {
            let [one, other] = self.noses.map(|nose| nose.rim.y);
            return one.min(other) * libm::tan(0.5 * turn);
        }
        let [one, other] = &self.noses;
        if one == other {
            return one.rises(0.5 * turn) / libm::cos(0.5 * turn);
        }
        let apart = |angle: f64| {
            let out = one.rises(angle) + other.rises(turn - angle);
            out / (2.0 * libm::cos(0.5 * turn) * libm::cos(angle - 0.5 * turn))
        };
        let at = least(apart, 0.0, turn);
        apart(at).min(apart(0.0)).min(apart(turn))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;
    use crate::geometry::chord::{Chord, Profile};
    use crate::geometry::nose::Oval;
    use crate::geometry::taut::close;

    /// The end of a drilled ball or oval, half so long and so broad.
    fn oval(along: f64, across: f64, hole: f64) -> Nose {
        let rim = Point::new(along * (1.0 - (hole / across).powi(2)).sqrt(), hole);
        Nose { rim, swell: Oval { centre: Point::ORIGIN, along, across } }
    }

    const HOLE: f64 = 0.5;

    fn noses() -> Vec<Nose> {
        vec![
            Nose::flat(Point::new(2.0, 2.0)),
            Nose::flat(Point::new(3.0, 0.9)),
            oval(3.0, 3.0, HOLE),
            oval(1.0, 1.0, HOLE),
            oval(1.5, 4.0, HOLE),
            oval(6.0, 2.5, HOLE),
            Nose::cornered(Point::new(3.0, HOLE), Point::new(0.0, 3.0)),
            Nose::cornered(Point::new(5.0, 1.4), Point::new(0.0, 2.0)),
        ]
    }

    /// The outline of a body alike at both ends, in places between which it bows by less than 0.0001 mm, from its hole out
    /// on the inner side.
    fn outline(nose: &Nose) -> Vec<Point> {
        let Oval { centre, along, across } = nose.swell;
        let swell = (0..=300).map(|step| {
            let (sin, cos) = libm::sincos(std::f64::consts::FRAC_PI_2 * f64::from(step) / 300.0);
            Point::new(centre.x + along * cos, centre.y + across * sin)
        });
        let points = std::iter::once(nose.rim).chain(swell.filter(|at| at.y >= nose.rim.y));
        points.map(|at| Point::new(at.x, -at.y)).collect()
    }

    /// How far apart two bodies lie along a direction.
    fn gap(bodies: &[Vec<Point>; 2], along: Point) -> f64 {
        let most = bodies[0].iter().map(|at| at.dot(along)).fold(f64::NEG_INFINITY, f64::max);
        bodies[1].iter().map(|at| at.dot(along)).fold(f64::INFINITY, f64::min) - most
    }

    /// The farthest apart that two bodies lie along any of a hundred directions between their axes, and of a hundred about the
    /// best of those.
    fn parted(bodies: &[Vec<Point>; 2], turn: f64) -> f64 {
        let at = |angle: f64| (gap(bodies, Point::towards(-angle)), angle);
        let best = |from: f64, step: f64| {
            let found = (0..=100).map(|count| at((from + step * f64::from(count)).clamp(0.0, turn)));
            found.max_by(|one, other| one.0.total_cmp(&other.0)).unwrap()
        };
        best(best(0.0, turn / 100.0).1 - turn / 100.0, turn / 5000.0).0
    }

    /// By brute force: outlines as polygons, pushed apart by halving until a direction parts them.
    fn by_force(noses: [Nose; 2], turn: f64) -> f64 {
        let outlines = noses.map(|nose| outline(&nose));
        let mouths = noses.map(|nose| nose.rim.x);
        let parts = |beyond: f64| {
            let one = outlines[0].iter().map(|at| Point::new(at.x - mouths[0] - beyond, at.y)).collect();
            let other =
                outlines[1].iter().map(|at| Point::new(mouths[1] + beyond - at.x, at.y).turned(-turn)).collect();
            let bodies = [one, other];
            parted(&bodies, turn) >= -1e-9
        };
        let (mut low, mut high) = (0.0, 16.0);
        for _ in 0..19 {
            let middle = 0.5 * (low + high);
            *if parts(middle) { &mut high } else { &mut low } = middle;
        }
        high
    }

    #[test]
    fn neighbours_part_as_far_as_brute_force_finds() {
        let noses = noses();
        for (at, one) in noses.iter().enumerate() {
            for other in &noses[at..] {
                for turn in [0.15, 1.1] {
                    let (found, other) = (Hinge::new([*one, *other], [HOLE; 2], HOLE).opens(turn), *other);
                    let expected = by_force([one.beside(HOLE), other.beside(HOLE)], turn);
                    assert!((found - expected).abs() < 2e-4, "{one:?} {other:?} by {turn}: {found}, {expected}");
                }
            }
        }
    }

    /// By pencil: cubes 4 mm broad hinge at their rims, and the cord between is twice 2 sin(t/2).
    #[test]
    fn cubes_hinge_at_their_rims() {
        let cube = Nose::flat(Point::new(2.0, 2.0));
        for turn in [0.1_f64, 0.6] {
            let cord = |cord: f64| Hinge::new([cube; 2], [HOLE; 2], cord).takes(turn) / libm::sin(0.5 * turn);
            assert!((cord(HOLE) - 4.0).abs() < 1e-12 && (cord(0.2) - 3.4).abs() < 1e-12);
        }
    }

    /// A second derivation: as many beads closed to a ring take as much cord as `geometry/taut.rs` finds drawn up round a limb.
    #[test]
    fn a_ring_takes_as_much_as_all_of_its_hinges() {
        const BEADS: u32 = 40;
        for nose in noses() {
            let body = Profile { noses: [nose; 2], hole: HOLE, play: 0.3 };
            let chord = Chord { body: Some(body), ..Chord::even(2.0 * nose.rim.x, 3.0) };
            let ring = close(&vec![chord; BEADS as usize]).unwrap();
            let hinge = Hinge::new([nose; 2], [HOLE; 2], HOLE - 0.3);
            let takes = f64::from(BEADS) * hinge.takes(std::f64::consts::TAU / f64::from(BEADS));
            assert!((takes - ring.slack).abs() < 1e-6, "{nose:?}: {takes} and {}", ring.slack);
        }
    }

    /// Turned far enough, balls touch as if they were not drilled: their middles are as far apart as both are thick.
    #[test]
    fn balls_touch_as_balls_once_they_roll_off_their_holes() {
        let (ball, turn) = (oval(3.0, 3.0, HOLE), 0.8);
        let beyond = Hinge::new([ball; 2], [HOLE; 2], HOLE).opens(turn);
        let apart = 2.0 * (ball.rim.x + beyond) * libm::cos(0.5 * turn);
        assert!((apart - 6.0).abs() < 1e-6, "{apart}");
    }
}
