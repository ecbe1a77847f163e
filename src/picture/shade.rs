//! Shadows under the one light that stands above left.

use crate::geometry::Point;
use crate::sheet::mark::{Mark, Rgb, Shadow};

/// Colour of all shadows: dark and a little warm.
const DARK: Rgb = Rgb(0x1c, 0x16, 0x14);
/// Direction on the page in which shadows fall: away from the light that shades the beads.
const AWAY: Point = Point::new(0.588, 0.809);

/// Marks with the shadow that things throw which touch the ground: short and dark.
#[must_use]
pub fn touching(marks: Vec<Mark>) -> Mark {
    raised(marks, 0.75, 0.55, 0.5)
}

/// Marks with the wide, faint shadow of a whole piece that keeps some light from the ground.
#[must_use]
pub fn resting(marks: Vec<Mark>) -> Mark {
    raised(marks, 2.6, 2.4, 0.34)
}

/// Marks that stand far from the ground behind them.
#[must_use]
pub fn standing(marks: Vec<Mark>) -> Mark {
    raised(marks, 16.0, 14.0, 0.22)
}

fn raised(marks: Vec<Mark>, throw: f64, blur: f64, opacity: f64) -> Mark {
    Mark::Raised { shadow: Shadow { throw: AWAY * throw, blur, colour: DARK, opacity }, marks }
}

/// The mark without its shadows, for paper.
#[must_use]
pub fn without(mark: Mark) -> Mark {
    let all = |marks: Vec<Mark>| marks.into_iter().map(without).collect();
    match mark {
        Mark::Raised { marks, .. } => Mark::Group { label: String::new(), marks: all(marks) },
        held => held.map_inner(all),
    }
}
