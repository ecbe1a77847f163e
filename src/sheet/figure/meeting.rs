//! What both ends of a strand go through where they meet, below its row: laid along the line, the two ends at its left.
//! Lengths in mm on paper.

use crate::art::{Deal, Stencils};
use crate::design::{Dangle, Strand};
use crate::geometry::{Point, Point3};
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Segment};
use crate::paint::{outline, style};
use crate::sheet::english::{ENDS, figure};
use crate::sheet::said::Alternative;
use crate::steps::english::chart::MEETING;

use super::row::{LETTER, half, runs};
use super::{Canvas, Frame};

/// Room in mm between what is said of a cord and the cord.
const BEFORE_CORD: f64 = 1.5;
/// How far in mm the cords run side by side, and on to where they meet.
const WAY: [f64; 2] = [8.0, 12.0];
/// How far in mm from the middle each of them begins.
const ASIDE: f64 = 2.4;
/// Where both begin, the first end above.
const LEVELS: [f64; 2] = [-ASIDE, ASIDE];
/// The type of what is said of them.
const FACE: Type = Type::TINY.coloured(style::INK);
/// The way from there on, through what both go through.
const RIGHT: Point3 = Point3::new(1.0, 0.0, 0.0);
/// Room in mm between letters and what they stand for.
const BELOW_LETTERS: f64 = 1.0;

/// The meeting on a line of a width, and whether it is drawn smaller than it is.
pub fn meeting(strand: &Strand, width: f64, stencils: &Stencils<'_>) -> Option<(Block, bool)> {
    let (design, (meeting, deal)) = (stencils.design(), met(strand)?);
    let words = ENDS.map(|words| FACE.width(words)).into_iter().fold(0.0, f64::max) + BEFORE_CORD;
    let from = words + WAY.iter().sum::<f64>();
    let scale = ((width - from) / meeting.drop).min(1.0);
    let half = meeting.bits.iter().map(|bit| half(bit, design)).fold(0.0, f64::max) * scale;
    let below = half.max(ASIDE + FACE.size);
    let middle = Point::new(from, Type::STRONG.line_height() + LETTER.line_height() + BELOW_LETTERS + below);
    let mut drawn: Vec<_> =
        LEVELS.map(|level| stencils.strand_cord(strand, &way(Point::new(words, middle.y + level), middle), 1.0)).into();
    drawn.extend(Canvas::new(Frame { scale, ..Frame::ACTUAL }, stencils).branched((meeting, deal), middle, RIGHT));
    let mut marks = said(middle.y);
    let letter = |(words, level): &(String, f64)| {
        LETTER.mark(words, middle + Point::new(level * scale, -half - BELOW_LETTERS), Anchor::Middle)
    };
    marks.extend(runs(meeting, design).iter().map(letter));
    marks.push(Mark::figure(figure(&Alternative::Meeting(&strand.name)), drawn));
    Some((Block::new(width, middle.y + below, marks), scale < 1.0))
}

/// What both ends go through, and what its place is dealt.
fn met(strand: &Strand) -> Option<(&Dangle, Deal)> {
    let (last, trains) = strand.trains.split_last()?;
    Some((strand.meeting()?, Deal::of(&strand.name, trains.len(), last.bits.len() - 1)))
}

/// What is said of it, and of both cords beside a level.
fn said(middle: f64) -> Vec<Mark> {
    let end = |(level, end): (f64, &str)| {
        FACE.mark(end, Point::new(0.0, middle + level + FACE.size * style::HALF_CAPITAL), Anchor::Start)
    };
    let title = Type::STRONG.mark(MEETING, Point::new(0.0, Type::STRONG.size), Anchor::Start);
    std::iter::once(title).chain(LEVELS.into_iter().zip(ENDS).map(end)).collect()
}

/// An end's way to where both meet: level, then across.
fn way(start: Point, meet: Point) -> Vec<Point> {
    let turn = start + Point::new(WAY[0], 0.0);
    let half = Point::new(WAY[1] / 2.0, 0.0);
    outline::flattened(&[Segment::Move(start), Segment::Line(turn), Segment::Curve(turn + half, meet - half, meet)])
}
