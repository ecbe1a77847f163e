//! Figures: the piece drawn to a scale, as marks.
//!
//! Figures are laid out in the drape's own frame (mm, x to the right, y up) and put on the page
//! through a [`Frame`].

mod bars;
mod branch;
mod canvas;
mod closure;
mod coil;
mod cord;
mod drops;
mod ends;
mod extender;
mod fastened;
mod labels;
mod meeting;
pub mod names;
mod rail;
mod ring;
mod row;
mod ruler;
mod scale;
mod side;
mod strands;
mod track;
pub mod twined;
mod worn;

pub use bars::{bars, middle};
pub use canvas::{Canvas, Frame};
pub use closure::{OpenClosure, closing, hanging_extent};
pub use drops::{DROPS_WIDTH, drops};
pub use extender::{DrawnIn, hooked, joined, overlap};
pub use labels::{DISC, LabelRoom, disc, labels, room_for_labels, strand_table};
pub use meeting::meeting;
pub use rail::rail;
pub use ring::{closed_box, ring, ring_extent, rows, seen_as};
pub use row::{StrandRow, row};
pub use ruler::{Ruler, RulerStretch};
pub use scale::{BAR_HEIGHT, Scale, scale_bar};
pub use side::{ClosureWay, Layers, laid_side, mouths};
pub use strands::{Sketch, bit_box, longest_first, outline_box, strand_box, strands};
pub use track::{Track, closing_on, on_neck, on_tracks};
pub use worn::worn;

use std::f64::consts::PI;

use crate::geometry::Point;

/// Farthest in mm that a left-out joint of the cord may lie beside the line drawn.
const STRAIGHT: f64 = 0.01;

/// Longest in mm that a line without joints is drawn.
const LONGEST: f64 = 8.0;

/// Points without those that lie on the way between the ones that are kept.
pub fn straightened(points: &[Point]) -> Vec<Point> {
    let [first, second, ..] = points else { return points.to_vec() };
    let (mut kept, mut sleeve) = (vec![*first], Sleeve::new(*first, *second));
    for pair in points[1..].windows(2) {
        sleeve.narrow(pair[0]);
        if !sleeve.holds(pair[1]) {
            kept.push(pair[0]);
            sleeve = Sleeve::new(pair[0], pair[1]);
        }
    }
    kept.extend(points.last());
    kept
}

/// The ways from a point that pass all that follow it within [`STRAIGHT`] (Zhao and Saalfeld, "Linear-time sleeve-fitting
/// polyline simplification algorithms", AutoCarto 13, 1997).
struct Sleeve {
    from: Point,
    /// The way to the point that follows.
    along: Point,
    /// Least and greatest turn from there, in radians.
    turns: [f64; 2],
}

impl Sleeve {
    fn new(from: Point, next: Point) -> Self {
        Self { from, along: next - from, turns: [-PI, PI] }
    }

    fn turn(&self, to: Point) -> f64 {
        let way = to - self.from;
        libm::atan2(self.along.left().dot(way), self.along.dot(way))
    }

    /// Whether a line to a place passes all points.
    fn holds(&self, place: Point) -> bool {
        let turn = self.turn(place);
        self.from.distance(place) < LONGEST && self.turns[0] <= turn && turn <= self.turns[1]
    }

    /// Takes a point in.
    fn narrow(&mut self, point: Point) {
        let (turn, far) = (self.turn(point), self.from.distance(point));
        if far > STRAIGHT {
            let aside = libm::asin(STRAIGHT / far);
            self.turns = [self.turns[0].max(turn - aside), self.turns[1].min(turn + aside)];
        }
    }
}

/// How much higher than the lowest a point may lie and still count as the lowest.
const LEVEL: f64 = 0.05;

/// The lowest of some points, in the middle of all that lie as low.
fn lowest_point(points: impl Iterator<Item = Point> + Clone) -> Point {
    let least = points.clone().map(|point| point.y).fold(f64::INFINITY, f64::min);
    let low: Vec<_> = points.filter(|point| point.y < least + LEVEL).map(|point| point.x).collect();
    let Some((first, last)) = low.first().zip(low.last()) else { return Point::ORIGIN };
    Point::new(first.midpoint(*last), least)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the sagitta of an arc, r − √(r² − c²/4) for a chord c: a line drawn for points on a round of that radius is
    /// no farther from it than is left out, and than the round is from the points.
    #[test]
    fn a_slow_bend_is_no_kink() {
        const STEP: f64 = 0.2;
        for radius in [3.0, 40.0, 400.0] {
            let sagitta = |chord: f64| radius - (radius * radius - 0.25 * chord * chord).sqrt();
            let at = |step: u32| Point::towards(f64::from(step) * STEP / radius) * radius;
            let round: Vec<_> = (0..=600).map(at).collect();
            let drawn = straightened(&round);
            let deepest = drawn.windows(2).map(|pair| sagitta(pair[0].distance(pair[1]))).fold(0.0, f64::max);
            assert!(deepest <= STRAIGHT + sagitta(STEP), "{deepest} on a round of {radius}");
            assert!(drawn.len() < round.len());
            assert_eq!([drawn.first(), drawn.last()], [round.first(), round.last()]);
        }
    }
}
