//! Small drawings of the work, beside the steps: few lines, the accent colour for what moves.
//!
//! They show the way of working and not the piece's own beads; nothing in them is to scale. Each
//! fills a box of [`SIZE`] with its upper left corner at the origin. Practice as commonly taught,
//! no source.

mod crimp;
mod knot;
mod pen;
mod pin;

use crate::geometry::Point;
use crate::sheet::layout::Block;
use crate::sheet::mark::Mark;
use crate::steps::Drawing;

/// Width and height of every drawing, the thickness of its lines included.
pub const SIZE: (f64, f64) = (ROOM.0 + 2.0 * EDGE, ROOM.1 + 2.0 * EDGE);
/// Width and height in which the middles of lines run.
const ROOM: (f64, f64) = (24.0, 18.0);
/// What a cord's half thickness takes beyond them.
const EDGE: f64 = 0.5;

/// The drawing beside a step.
#[must_use]
pub fn step(drawing: Drawing) -> Vec<Mark> {
    let (label, marks) = match drawing {
        Drawing::CrimpOpen => ("a cord through a crimp, round a ring and back through the crimp", crimp::open()),
        Drawing::CrimpPressed => {
            ("a crimp from the side and the end: open, dented between the cords, folded", crimp::pressed())
        }
        Drawing::Gather => ("the loops of three strands on the eye of one pin", crimp::gather()),
        Drawing::Cone => ("a cone sliding down a pin's wire over the loops", pin::cone()),
        Drawing::PlainLoop => ("a wire bent to a right angle, and rolled back into a loop", pin::plain_loop()),
        Drawing::OpenLink => ("a ring opened sideways, and one pulled apart, struck out", pin::open_link()),
        Drawing::Knot => ("a double overhand knot", knot::double_overhand()),
        Drawing::SurgeonsKnot => ("a knot with two turns below and one turn back above", knot::surgeons()),
        Drawing::KnotCover => ("a hinged cup closing over a knot", knot::cover()),
        Drawing::Dangle => ("beads on a pin, its wire bent and then closed in a loop on a cord", pin::dangle()),
    };
    let marks = Block::new(ROOM.0, ROOM.1, marks).at(Point::new(EDGE, EDGE));
    vec![Mark::Group { label: label.to_owned(), marks }]
}
