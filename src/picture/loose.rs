//! A strap laid in a loose curve, most bent in its middle and ever less towards its ends.
//!
//! So far from the middle as s of the S to an end it bends by 1 + cos π s / S, so that it has turned by
//! T (s / S + sin (π s / S) / π), where T is what it turns by from the middle to an end. That nothing crosses itself is true
//! of turns below about 125°. How a hand lays it out is a matter of choice; its lengths are true.

use std::f64::consts::PI;

use crate::design::Design;
use crate::drape::{Waypoint, fall};
use crate::geometry::{Point, Point3};
use crate::pattern::Kind;

/// By how much it turns from its middle to an end, in radians.
const TURN: f64 = 1.9;
/// Longest step in mm along it.
const STEP: f64 = 1.0;

/// The way of the one strand of a strap, with its closure at either end, the middle at the foot.
pub fn way(design: &Design) -> Option<Vec<Waypoint>> {
    let ([strand], Kind::Strap) = (design.strands.as_slice(), design.heading.kind) else { return None };
    let (from, to) = (-(fall::before(design) + STEP), strand.finished.value() + (fall::beyond(design) + STEP));
    let half = 0.5 * (to - from);
    let side = side(half);
    let place = |sign: f64, (along, at): &(f64, Point)| Waypoint {
        station: from + half + sign * along,
        at: Point3::new(sign * at.x, at.y, 0.0),
        hidden: false,
    };
    let first = side.iter().skip(1).rev().map(|spot| place(-1.0, spot));
    Some(first.chain(side.iter().map(|spot| place(1.0, spot))).collect())
}

/// How far it has turned at a share of the way from its middle to an end.
fn turned(share: f64) -> f64 {
    TURN * (share + libm::sin(PI * share) / PI)
}

/// Places from the middle to an end, each with how far along that is.
fn side(half: f64) -> Vec<(f64, Point)> {
    let steps = (half / STEP).ceil().max(1.0);
    let mut places = vec![(0.0, Point::ORIGIN)];
    while places.len() as f64 <= steps {
        let done = places.len() as f64;
        let before = places.last().map_or(Point::ORIGIN, |(_, at)| *at);
        places.push((half * done / steps, before + Point::towards(turned((done - 0.5) / steps)) * (half / steps)));
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Choice;
    use crate::source::Source;

    /// Against Simpson's rule for the way's last place: the integral of (cos, sin) of the turn.
    #[test]
    fn it_ends_where_its_turns_lead() {
        let weight = |at: u32| {
            if at == 0 || at == 600 {
                1.0
            } else if at % 2 == 1 {
                4.0
            } else {
                2.0
            }
        };
        let sum =
            (0..=600).fold(Point::ORIGIN, |sum, at| sum + Point::towards(turned(f64::from(at) / 600.0)) * weight(at));
        let places = side(350.0);
        let (along, end) = places[places.len() - 1];
        assert!((along - 350.0).abs() < 1e-9);
        assert!(end.distance(sum * (350.0 / 1800.0)) < 0.01, "{end:?}");
    }

    #[test]
    fn a_strap_is_laid_at_its_length_and_does_not_cross_itself() {
        let source = Source::new("halyard", include_str!("../../patterns/halyard.yaml"));
        let design = crate::piece(&source, &Choice::default(), None).0.unwrap().design;
        let way = way(&design).unwrap();
        for pair in way.windows(2) {
            let [one, other] = [pair[0], pair[1]];
            assert!((one.at.front().distance(other.at.front()) - (other.station - one.station)).abs() < 1e-9);
        }
        let (left, right) = way.split_at(way.len() / 2);
        assert!(left.iter().all(|spot| spot.at.x < 0.0) && right.iter().all(|spot| spot.at.x >= 0.0));
    }
}
