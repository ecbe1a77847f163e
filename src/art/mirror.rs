//! Marks mirrored in the line along a finding: the other of a pair, under the same light.

use super::light::Light;
use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark};
use crate::paint::outline;

/// The angle in radians at which a thing sees the light as its mirror image sees it at the given one.
pub fn seen(angle: f64) -> f64 {
    2.0 * Light::on_turn(0).towards.angle() - angle
}

/// Marks of a symbol mirrored in the line along it.
pub fn mirrored(marks: Vec<Mark>) -> Vec<Mark> {
    marks.into_iter().map(across).collect()
}

fn across(mark: Mark) -> Mark {
    match mark {
        Mark::Shape { outline, fill, stroke } => {
            Mark::Shape { outline: outline::mapped(&outline, over), fill: fill.map(filled), stroke }
        }
        held => held.map_inner(mirrored),
    }
}

fn filled(fill: Fill) -> Fill {
    match fill {
        Fill::Flat(..) => fill,
        Fill::Linear(from, to, stops) => Fill::Linear(over(from), over(to), stops),
        Fill::Radial(centre, radius, stops) => Fill::Radial(over(centre), radius, stops),
    }
}

const fn over(at: Point) -> Point {
    Point::new(at.x, -at.y)
}
