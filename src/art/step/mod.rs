//! Small drawings of the work, beside the steps: few lines, the accent colour for what moves.
//!
//! They show the way of working and not the piece's own beads; nothing in them is to scale. Each
//! fills a box of [`SIZE`] with its upper left corner at the origin. Practice as commonly taught,
//! no source.

mod crimp;
mod held;
mod hung;
mod knot;
mod noose;
mod pen;
mod pin;
mod tight;
mod wound;

use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::mark::Mark;
use crate::steps::{Drawing, english};

/// Width and height of every drawing, the thickness of its lines included.
pub const SIZE: (f64, f64) = (ROOM.0 + 2.0 * EDGE, ROOM.1 + 2.0 * EDGE);
/// Width and height in which the middles of lines run.
const ROOM: (f64, f64) = (24.0, 18.0);
/// What a cord's half thickness takes beyond them.
const EDGE: f64 = 0.5;

/// The drawing beside a step.
#[must_use]
pub fn step(drawing: Drawing) -> Vec<Mark> {
    let marks = match drawing {
        Drawing::CrimpOpen => crimp::open(),
        Drawing::CrimpPacked => crimp::packed(),
        Drawing::CrimpPressed => crimp::pressed(),
        Drawing::Gather(strands) => crimp::gather(strands),
        Drawing::Cone(strands) => pin::cone(strands),
        Drawing::PlainLoop => pin::plain_loop(),
        Drawing::TurnedEnd => pin::turned_end(),
        Drawing::OpenLink => pin::open_link(),
        Drawing::Knot(knot) => knot::tied(knot),
        Drawing::KnotGlued(knot) => tight::glued(knot),
        Drawing::KnotCover(bead) => tight::covered(bead),
        Drawing::Dangle(open) => pin::dangle(open),
        Drawing::InLink => hung::dangle(),
        Drawing::Bail => hung::bail(),
        Drawing::LarksHead => noose::larks_head(),
        Drawing::Guard => crimp::guarded(),
        Drawing::GuardPacked => crimp::guarded_packed(),
        Drawing::TailCut => crimp::tail_cut(),
        Drawing::Cover => crimp::covered(),
        Drawing::Glue => crimp::glued(),
        Drawing::KnotLed => knot::led(),
        Drawing::Stop(bead) => held::stop(bead),
        Drawing::Measure(among) => held::measured(among),
        Drawing::Bar(strands) => held::bar(strands),
        Drawing::Chain => held::chain(),
        Drawing::Group => held::group(),
        Drawing::Gap => pin::gap(),
        Drawing::Tassel => wound::tassel(),
        Drawing::Twist(strands) => wound::twisted(strands),
        Drawing::Clasp => hung::clasp(),
        Drawing::InLoop => hung::in_loop(),
        Drawing::Charm => hung::charm(),
        Drawing::LetOut => hung::let_out(),
    };
    let marks = Block::new(ROOM.0, ROOM.1, marks).at(Point::new(EDGE, EDGE));
    vec![Mark::figure(english::drawing(drawing), marks)]
}
