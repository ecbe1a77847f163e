//! How near two rigid bodies of a row come to one another where the row bends.
//!
//! **Problem.** Neighbours of a closed row turn towards one another: their axes lean by angles a and b from the line
//! through their centres. Balls then touch where they did; a tube's rims meet on the inner side and its ends part.
//! Wanted is the distance of the centres at which the bodies just touch.
//!
//! **Equation.** Convex bodies do not meet if a line parts them. Seen across its normal, at an angle t from the first
//! one's axis and a + b - t from the other's, they reach s(t) and s'(a + b - t) from their centres (their support
//! functions), and the centres are D cos(t - a) apart: D is the least of (s(t) + s'(a + b - t)) / cos(t - a) over all t.
//!
//! **Tolerance.** The quotient has one least value, since the directions in which it stays below a bound are those of a
//! convex cone. It lies at an axis, at the line of the centres, or is found by the golden section to 1e-7 mm.
//!
//! **Source.** Support functions of convex bodies: the parting line is the separating hyperplane theorem of any textbook
//! of convex geometry. The rest is derived here.

use std::f64::consts::FRAC_PI_2;

use super::Point;

/// Steps of the golden section: half a turn becomes a millionth of a degree.
const STEPS: u32 = 40;
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
    /// Half of it along.
    pub along: f64,
    /// Half of it across.
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
        if hole <= self.rim.y.max(centre.y) {
            return *self;
        }
        let out = hole - centre.y;
        let reach = match along > 0.0 {
            true => centre.x + along * (1.0 - (out / across).powi(2)).max(0.0).sqrt(),
            false => self.rim.between(centre, (hole - self.rim.y) / (centre.y - self.rim.y)).x,
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

    /// How much farther apart the centres are than in a straight row, towards another body's end, where axes lean so
    /// far from the line through the centres.
    #[must_use]
    pub fn parts(&self, other: &Self, [lean, leans]: [f64; 2]) -> f64 {
        let turn = lean + leans;
        let apart = |angle: f64| (self.reach(angle) + other.reach(turn - angle)) / libm::cos(angle - lean);
        let likely = [0.0, lean, turn].map(apart);
        let least = likely.into_iter().fold(least(apart, lean - FRAC_PI_2, lean + FRAC_PI_2), f64::min);
        least - self.reach(0.0) - other.reach(0.0)
    }
}

/// The least value of what falls and then rises between two numbers.
fn least(value: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let inner = |low: f64, high: f64| [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    let [mut left, mut right] = inner(low, high).map(&value);
    for _ in 0..STEPS {
        if left < right {
            (high, right) = (inner(low, high)[1], left);
            left = value(inner(low, high)[0]);
        } else {
            (low, left) = (inner(low, high)[0], right);
            right = value(inner(low, high)[1]);
        }
    }
    left.min(right)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn ball(radius: f64, hole: f64, reach: f64) -> Nose {
        Nose { rim: Point::new(reach, hole), swell: Oval { centre: Point::ORIGIN, along: radius, across: radius } }
    }

    #[test]
    fn balls_touch_as_in_a_straight_row() {
        let ball = ball(4.0, 0.0, 4.0);
        assert_eq!(ball.parts(&ball, [0.15, 0.1]), 0.0);
    }

    #[test]
    fn drilled_balls_touch_beside_their_holes() {
        // 3-4-5: a ball of 5 mm drilled 3 mm wide to either side reaches 4 mm; turned far enough it touches as a ball.
        let drilled = ball(5.0, 3.0, 4.0);
        assert_eq!(drilled.reach(0.0), 4.0);
        assert!((drilled.parts(&drilled, [0.7, 0.7]) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn equal_tubes_hinge_at_their_inner_rims() {
        let tube = Nose::flat(Point::new(4.0, 2.0));
        let lean = 0.2_f64;
        let hinged = 2.0 * (4.0 * libm::cos(lean) + 2.0 * libm::sin(lean));
        assert!((tube.parts(&tube, [lean; 2]) + 8.0 - hinged).abs() < 1e-12);
    }

    #[test]
    fn a_ball_rests_on_a_tubes_flat_end() {
        // The ball's centre stays its radius before the end's plane, wherever it lies across the end.
        let (tube, ball) = (Nose::flat(Point::new(4.0, 2.0)), ball(2.0, 0.0, 2.0));
        let apart = 6.0 / libm::cos(0.15);
        assert!((tube.parts(&ball, [0.15; 2]) + 6.0 - apart).abs() < 1e-9);
        assert!((ball.parts(&tube, [0.15; 2]) + 6.0 - apart).abs() < 1e-9);
    }

    #[test]
    fn a_ball_rolls_over_the_rim_of_a_narrow_tube() {
        // The rim, 0.5 mm off the axis, turned by 0.3 from the line of the centres, 2 mm from the ball's centre.
        let (tube, ball) = (Nose::flat(Point::new(4.0, 0.5)), ball(2.0, 0.0, 2.0));
        let rim = Point::new(4.0, -0.5).turned(0.3);
        let apart = rim.x + libm::sqrt(4.0 - rim.y * rim.y);
        assert!((tube.parts(&ball, [0.3, 0.1]) + 6.0 - apart).abs() < 1e-6, "{apart}");
    }
}
