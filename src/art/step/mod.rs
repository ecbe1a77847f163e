//! Small drawings of the work, beside the steps: few lines, the accent colour for what moves.
//!
//! Beads, clasps and charms are the piece's own ([`Cast`]), enlarged or reduced by one factor a drawing; tools and the ways of
//! cords are drawn as large as they are told best. Each fills a box of [`SIZE`] with its upper left corner at the origin.
//! Lengths in mm. Practice as commonly taught, no source.

mod crimp;
mod cut;
mod held;
mod hung;
mod knot;
mod noose;
mod own;
mod pin;
mod strung;
mod tight;
mod wound;

use crate::geometry::{Extent, Point};
use crate::paint::layout::Block;
use crate::paint::mark::{Mark, Stroke, Text};

use crate::paint::outline;
use crate::steps::{Cast, Drawing, english};

use super::Stencils;
use own::Props;

pub use held::{RULER, ruler, ruler_upright};
pub use own::clipped;

/// Width and height of every drawing, the thickness of its lines included.
pub const SIZE: (f64, f64) = (ROOM.0 + 2.0 * EDGE, ROOM.1 + 2.0 * EDGE);
/// Width and height in which the middles of lines run.
pub const ROOM: (f64, f64) = (24.0, 18.0);
/// What a cord's half thickness takes beyond them.
const EDGE: f64 = 0.5;

/// The drawing beside a step so many times as large as usual, as high as what is drawn of it; its numbers are as large as
/// ever.
#[must_use]
pub fn beside(drawing: Drawing, cast: &Cast, stencils: &Stencils<'_>, scale: f64) -> Block {
    reduced(step(drawing, cast, stencils), stencils, scale)
}

/// A drawing in its box so many times as large, as high as what is drawn of it.
#[must_use]
pub fn reduced(marks: Vec<Mark>, stencils: &Stencils<'_>, scale: f64) -> Block {
    let marks: Vec<_> = marks.into_iter().map(|mark| scaled(mark, scale)).collect();
    let Extent { low, high } = around(&marks, stencils).unwrap_or_default();
    let marks = Block::new(SIZE.0 * scale, SIZE.1 * scale, marks).at(Point::new(0.0, -low.y));
    Block::new(SIZE.0 * scale, high.y - low.y, marks)
}

fn scaled(mark: Mark, scale: f64) -> Mark {
    match mark {
        Mark::Shape { outline, fill, stroke } => {
            let drawn = |stroke: Stroke| Stroke {
                width: stroke.width * scale,
                dashes: stroke.dashes.iter().map(|dash| dash * scale).collect(),
                ..stroke
            };
            Mark::Shape { outline: outline::mapped(&outline, |point| point * scale), fill, stroke: stroke.map(drawn) }
        }
        Mark::Text(text) => Mark::Text(Text { at: text.at * scale, ..text }),
        Mark::Stamp { symbol, at, angle, scale: own, along } => {
            Mark::Stamp { symbol, at: at * scale, angle, scale: own * scale, along }
        }
        Mark::Clipped { within: Extent { low, high }, marks } => {
            let marks = marks.into_iter().map(|mark| scaled(mark, scale)).collect();
            Mark::Clipped { within: Extent { low: low * scale, high: high * scale }, marks }
        }
        held => held.map_inner(|marks| marks.into_iter().map(|mark| scaled(mark, scale)).collect()),
    }
}

/// The box round marks, the edges of their lines and the height of their numbers included.
#[must_use]
pub fn around(marks: &[Mark], stencils: &Stencils<'_>) -> Option<Extent> {
    let of = |mark: &Mark| match mark {
        Mark::Text(number) => Some(Extent { low: number.at - Point::new(0.0, number.size), high: number.at }),
        Mark::Clipped { within, marks } => Some(around(marks, stencils)?.within(*within)),
        Mark::Shape { .. } | Mark::Stamp { .. } => stencils.bounds(mark),
        held => around(held.inner(), stencils),
    };
    marks.iter().filter_map(of).reduce(Extent::and)
}

/// Marks in a box whose upper left corner is at the origin: what reaches beyond its edges is cut off there.
#[must_use]
pub fn boxed(label: &str, marks: Vec<Mark>) -> Vec<Mark> {
    let marks = Block::new(ROOM.0, ROOM.1, marks).at(Point::new(EDGE, EDGE));
    vec![Mark::figure(label, marks)]
}

/// The drawing beside a step, in its box.
#[must_use]
pub fn step(drawing: Drawing, cast: &Cast, stencils: &Stencils<'_>) -> Vec<Mark> {
    let own = Props { stencils, cast };
    boxed(english::drawing(drawing), drawn(drawing, own))
}

fn drawn(drawing: Drawing, own: Props<'_>) -> Vec<Mark> {
    match drawing {
        Drawing::CrimpOpen => crimp::open(own),
        Drawing::CrimpPacked => crimp::packed(own),
        Drawing::CrimpPressed => crimp::pressed(),
        Drawing::Gather(strands) => crimp::gather(strands),
        Drawing::Cone(strands) => pin::cone(strands, own),
        Drawing::PlainLoop(open) => pin::plain_loop(open, own),
        Drawing::TurnedEnd => pin::turned_end(),
        Drawing::OpenLink => pin::open_link(),
        Drawing::Knot(knot) => knot::tied(knot, own),
        Drawing::KnotGlued(knot) => tight::glued(knot, own),
        Drawing::KnotCover(_) => tight::covered(own),
        Drawing::Dangle(open) => pin::dangle(open, own),
        Drawing::InLink => hung::dangle(own),
        Drawing::Bail => hung::bail(own),
        Drawing::LarksHead => noose::larks_head(),
        Drawing::Guard => crimp::guarded(own),
        Drawing::GuardPacked => crimp::guarded_packed(own),
        Drawing::TailCut => crimp::tail_cut(own),
        Drawing::Cover => crimp::covered(),
        Drawing::Glue => crimp::glued(own),
        Drawing::KnotLed => knot::led(own),
        Drawing::Stop(bead) => held::stop(bead, own),
        Drawing::Measure(among) => held::measured(among, own),
        Drawing::Bar(strands) => held::bar(strands, own),
        Drawing::Bored(pass) => held::bored(pass, own),
        Drawing::Chain => held::chain(),
        Drawing::Group => held::group(own),
        Drawing::Gap => pin::gap(),
        Drawing::Tassel => wound::tassel(),
        Drawing::Twist(strands) => wound::twisted(strands, own),
        Drawing::Clasp => hung::clasp(own),
        Drawing::InLoop => hung::in_loop(own),
        Drawing::Charm => hung::charm(own),
        Drawing::LaidOut => strung::laid_out(own),
        Drawing::CutToLength => cut::measured(),
        Drawing::CutCoil => cut::coil(own),
        Drawing::CountedCoil => cut::counted(own),
        Drawing::CutSquare => cut::square(),
        Drawing::Tag => cut::tagged(),
        Drawing::OnPin(eye) => pin::threaded(eye, own),
        Drawing::BentPin(below) => pin::bent(below, own),
        Drawing::CutPin(below) => pin::cut(below, own),
        Drawing::OnEnd => strung::on_end(own),
        Drawing::CoverOnEnd => strung::cover_on_end(),
        Drawing::DrawnUp(slack) => strung::drawn_up(slack, own),
        Drawing::TailCovered => strung::over_tail(own),
        Drawing::TailOut => strung::tail_out(own),
        Drawing::Stopper => strung::stopped(),
        Drawing::KnotHidden => strung::knot_hidden(own),
        Drawing::EndBar(strands) => strung::end_bar(strands, own),
        Drawing::Threaded(needle) => strung::threaded(needle, own),
        Drawing::Spaced => strung::spaced(own),
        // The piece itself, which who lays it out draws.
        Drawing::Inspected(_) | Drawing::OnArm => Vec::new(),
    }
}
