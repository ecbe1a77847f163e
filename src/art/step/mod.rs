//! Small drawings of the work, beside the steps: few lines, the accent colour for what moves.
//!
//! They show the way of working and not the piece's own beads; nothing in them is to scale. Each
//! fills a box of [`SIZE`] with its upper left corner at the origin. Practice as commonly taught,
//! no source.

mod crimp;
mod cut;
mod held;
mod hung;
mod knot;
mod noose;
mod pen;
mod pin;
mod strung;
mod tight;
mod whole;
mod wound;

use crate::geometry::{Extent, Point};
use crate::paint::layout::Block;
use crate::paint::mark::{Mark, Stroke, Text};
use crate::paint::outline;
use crate::steps::{Drawing, english};

/// Width and height of every drawing, the thickness of its lines included.
pub const SIZE: (f64, f64) = (ROOM.0 + 2.0 * EDGE, ROOM.1 + 2.0 * EDGE);
/// Width and height in which the middles of lines run.
const ROOM: (f64, f64) = (24.0, 18.0);
/// What a cord's half thickness takes beyond them.
const EDGE: f64 = 0.5;

/// The drawing beside a step so many times as large as usual, as high as what is drawn of it; its numbers are as large as
/// ever.
#[must_use]
pub fn beside(drawing: Drawing, scale: f64) -> Block {
    let marks: Vec<_> = step(drawing).into_iter().map(|mark| scaled(mark, scale)).collect();
    let Extent { low, high } = around(&marks).unwrap_or_default();
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
        held => held.map_inner(|marks| marks.into_iter().map(|mark| scaled(mark, scale)).collect()),
    }
}

/// The box round marks, the edges of their lines and the height of their numbers included.
fn around(marks: &[Mark]) -> Option<Extent> {
    let of = |mark: &Mark| match mark {
        Mark::Shape { outline, stroke, .. } => {
            let half = stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
            Extent::of(outline::flattened(outline)).map(|extent| extent.grown(half))
        }
        Mark::Text(number) => Some(Extent { low: number.at - Point::new(0.0, number.size), high: number.at }),
        held => around(held.inner()),
    };
    marks.iter().filter_map(of).reduce(Extent::and)
}

/// The drawing beside a step, in its box.
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
        Drawing::LaidOut(kinds) => strung::laid_out(kinds),
        Drawing::CutToLength => cut::measured(),
        Drawing::CutCoil => cut::coil(),
        Drawing::CutSquare => cut::square(),
        Drawing::Tag => cut::tagged(),
        Drawing::OnPin(eye) => pin::threaded(eye),
        Drawing::BentPin(below) => pin::bent(below),
        Drawing::CutPin(below) => pin::cut(below),
        Drawing::OnEnd => strung::on_end(),
        Drawing::CoverOnEnd => strung::cover_on_end(),
        Drawing::DrawnUp => strung::drawn_up(),
        Drawing::TailCovered => strung::over_tail(),
        Drawing::TailOut => strung::tail_out(),
        Drawing::Stopper => strung::stopped(),
        Drawing::KnotHidden => strung::knot_hidden(),
        Drawing::EndBar(strands) => strung::end_bar(strands),
        Drawing::Threaded(needle) => strung::threaded(needle),
        Drawing::Spaced => strung::spaced(),
        Drawing::Inspected(how) => whole::measured(how),
        Drawing::OnArm => whole::on_arm(),
    };
    let marks = Block::new(ROOM.0, ROOM.1, marks).at(Point::new(EDGE, EDGE));
    vec![Mark::figure(english::drawing(drawing), marks)]
}
