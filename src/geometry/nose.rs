//! How near two rigid bodies of a row come to one another where the row bends.
//!
//! **Problem.** Neighbours of a closed row turn towards one another. Balls then touch where they did; a tube's rims meet
//! on the inner side and its ends part. Wanted is by how much two bodies are parted, or lie in one another.
//!
//! **Equation.** Convex bodies do not meet if a line parts them. Seen across its normal, at an angle t from the first
//! one's axis and a - t from the other's, turned by a, they reach s(t) and s'(a - t) from their centres (their support
//! functions); their centres c apart, they are parted by the most of c . u(t) - s(t) - s'(a - t) over all t.
//!
//! **Tolerance.** It is taken at both axes, and else found by the golden section: to 1e-9 mm of what is round, to 1e-5 mm of a facet.
//!
//! **Source.** The parting line is the separating hyperplane theorem of any textbook of convex geometry. The rest is
//! derived here.

use std::f64::consts::FRAC_PI_2;

use super::Point;

/// Steps of the golden section: half a turn becomes a ten-thousandth of a degree.
const STEPS: u32 = 30;
/// The golden section of 1.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

/// One end of a body that is alike on both sides of its axis: how far it reaches from its centre. Lengths are mm, x along
/// the axis towards this end, y away from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nose {
    /// The edge about its hole, or of its flat end.
    pub rim: Point,
    /// What swells behind the rim.
    pub swell: Oval,
}

/// An ellipse whose axes lie along and across.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oval {
    /// Its centre.
    pub centre: Point,
    /// Half of it along, in mm.
    pub along: f64,
    /// Half of it across, in mm.
    pub across: f64,
}

impl Nose {
    /// Of a body with flat ends.
    #[must_use]
    pub const fn flat(rim: Point) -> Self {
        Self::cornered(rim, rim)
    }

    /// Of one that runs straight from its rim to a corner.
    #[must_use]
    pub const fn cornered(rim: Point, corner: Point) -> Self {
        Self { rim, swell: Oval { centre: corner, along: 0.0, across: 0.0 } }
    }

    /// What of it meets a neighbour whose hole has such a radius: nothing within the hole.
    #[must_use]
    pub fn beside(&self, hole: f64) -> Self {
        let Oval { centre, along, across } = self.swell;
        let flat = if along > 0.0 { self.rim.y.max(centre.y) } else { self.rim.y };
        if hole <= flat {
            return *self;
        }
        let out = hole - centre.y;
        let reach = match along > 0.0 {
            true => centre.x + along * (1.0 - (out / across).powi(2)).max(0.0).sqrt(),
            false => self.rim.between(centre, ((hole - self.rim.y) / (centre.y - self.rim.y)).min(1.0)).x,
        };
        Self { rim: Point::new(reach, hole), ..*self }
    }

    /// How far it reaches in a direction at an angle in radians from its axis.
    #[must_use]
    pub fn reach(&self, angle: f64) -> f64 {
        let (sin, cos) = libm::sincos(angle.abs());
        let Oval { centre, along, across } = self.swell;
        let rim = self.rim.x * cos + self.rim.y * sin;
        let span = libm::hypot(along * cos, across * sin);
        // How far from the axis the swell is touched; the hole has taken what lies within the rim.
        let out = if span > 0.0 { centre.y + across * across * sin / span } else { centre.y };
        if out < self.rim.y { rim } else { rim.max(centre.x * cos + centre.y * sin + span) }
    }

    /// How much farther it reaches in a direction than the middle of its flat end, or of its hole's mouth, does.
    pub(super) fn rises(&self, angle: f64) -> f64 {
        self.reach(angle) - self.reach(0.0) * libm::cos(angle)
    }

    /// Whether a neighbour turned by an angle, and any that is turned less, meets its rim.
    pub(super) fn meets_at_rim(&self, angle: f64) -> bool {
        let (sin, cos) = libm::sincos(angle);
        self.rim.x >= self.reach(0.0) && self.rim.x * cos + self.rim.y * sin >= self.reach(angle)
    }

    /// How another body is parted from this one, whose centre lies at a place seen from this one's and which is turned
    /// towards the inner side, that of -y.
    #[must_use]
    pub fn parted(&self, other: &Self, centre: Point, turn: f64) -> Parted {
        if let Some(parted) = self.balls_parted(other, centre, turn) {
            return parted;
        }
        let across = |angle: f64| Point::towards(-angle);
        let by = |angle: f64| centre.dot(across(angle)) - self.reach(angle) - other.reach(turn - angle);
        let found = most(by, 0.5 * turn - FRAC_PI_2, 0.5 * turn + FRAC_PI_2);
        let best = [0.0, turn].into_iter().fold(found, |best, angle| if by(angle) > by(best) { angle } else { best });
        Parted { by: by(best), across: across(best) }
    }
}

impl Nose {
    /// The radius of a ball about its centre that swells behind its rim.
    fn ball(&self) -> Option<f64> {
        let Oval { centre, along, across } = self.swell;
        (centre == Point::ORIGIN && along == across).then_some(along)
    }

    /// How balls are parted that would touch beside their rims.
    fn balls_parted(&self, other: &Self, centre: Point, turn: f64) -> Option<Parted> {
        let (one, two, angle) = (self.ball()?, other.ball()?, -centre.angle());
        let beside = self.reach(angle) >= one && other.reach(turn - angle) >= two;
        beside.then(|| Parted { by: centre.length() - one - two, across: Point::towards(-angle) })
    }
}

/// How two bodies are parted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parted {
    /// By so much; by less than nothing where they lie in one another.
    pub by: f64,
    /// In this direction.
    pub across: Point,
}

/// Where what falls and then rises between two numbers is least.
pub(super) fn least(value: impl Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    most(|at| -value(at), low, high)
}

/// Where what rises and then falls between two numbers is most.
fn most(value: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let inner = |low: f64, high: f64| [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    let [mut left, mut right] = inner(low, high).map(&value);
    for _ in 0..STEPS {
        if left > right {
            (high, right) = (inner(low, high)[1], left);
            left = value(inner(low, high)[0]);
        } else {
            (low, left) = (inner(low, high)[0], right);
            right = value(inner(low, high)[1]);
        }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn ball(radius: f64, hole: f64, reach: f64) -> Nose {
        Nose { rim: Point::new(reach, hole), swell: Oval { centre: Point::ORIGIN, along: radius, across: radius } }
    }

    #[test]
    fn balls_are_parted_as_far_as_their_centres_say() {
        let parted = ball(4.0, 0.0, 4.0).parted(&ball(3.0, 0.0, 3.0), Point::new(7.0, -2.0), 0.4);
        assert!((parted.by - (libm::hypot(7.0, 2.0) - 7.0)).abs() < 1e-9, "{parted:?}");
    }

    #[test]
    fn drilled_balls_touch_beside_their_holes() {
        // 3-4-5: a ball of 5 mm drilled 3 mm wide to either side reaches 4 mm; turned far enough it touches as a ball.
        let drilled = ball(5.0, 3.0, 4.0);
        assert_eq!(drilled.reach(0.0), 4.0);
        assert!((drilled.reach(0.7) - 5.0).abs() < 1e-12);
        assert!(drilled.parted(&drilled, Point::new(8.0, 0.0), 0.0).by.abs() < 1e-9);
    }

    #[test]
    fn equal_tubes_hinge_at_their_inner_rims() {
        let (tube, lean) = (Nose::flat(Point::new(4.0, 2.0)), 0.2_f64);
        // Both rims at one place: the centre of the other seen from the one's.
        let rim = Point::new(4.0, -2.0);
        let centre = rim + Point::new(4.0, 2.0).turned(-2.0 * lean);
        assert!(tube.parted(&tube, centre, 2.0 * lean).by.abs() < 1e-9);
    }

    #[test]
    fn a_ball_rests_on_a_tubes_flat_end() {
        // The ball's centre stays its radius before the end's plane, wherever it lies across the end.
        let (tube, ball) = (Nose::flat(Point::new(4.0, 2.0)), ball(2.0, 0.0, 2.0));
        assert!((tube.parted(&ball, Point::new(6.5, -1.2), 0.3).by - 0.5).abs() < 1e-9);
    }

    #[test]
    fn a_ball_rolls_over_the_rim_of_a_narrow_tube() {
        let (tube, ball) = (Nose::flat(Point::new(4.0, 0.5)), ball(2.0, 0.0, 2.0));
        let centre = Point::new(4.0, -0.5) + Point::new(1.2, -1.6);
        assert!(tube.parted(&ball, centre, 0.4).by.abs() < 1e-9);
    }
}
