//! What both ends of a strand go through where they meet, below its row: laid along the line, the two ends at its left.

use crate::art::Stencils;
use crate::design::{Design, Strand};
use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Segment};
use crate::paint::{outline, style};
use crate::sheet::english::{ENDS, figure};
use crate::sheet::figure::strands::branched;
use crate::sheet::said::Alternative;
use crate::steps::english::chart::MEETING;

use super::label::{LETTER, runs};
use super::span;

/// Room between what is said of a cord and the cord.
const APART: f64 = 1.5;
/// How far the cords run side by side, and on to where they meet.
const WAY: [f64; 2] = [8.0, 12.0];
/// How far from the middle each of them begins.
const ASIDE: f64 = 2.4;
/// Room between letters and what they stand for.
const ABOVE: f64 = 1.0;

/// The meeting on a line of a width, and whether it is drawn smaller than it is.
pub fn meeting(design: &Design, strand: &Strand, width: f64, stencils: &mut Stencils<'_>) -> Option<(Block, bool)> {
    let meeting = strand.meeting()?;
    let face = Type::TINY.coloured(style::INK);
    let words = ENDS.map(|words| face.width(words)).into_iter().fold(0.0, f64::max) + APART;
    let from = words + WAY.iter().sum::<f64>();
    let scale = ((width - from) / meeting.drop).min(1.0);
    let half = meeting.bits.iter().map(|bit| span::half(bit, design)).fold(0.0, f64::max) * scale;
    let top = Type::STRONG.line_height() + LETTER.line_height() + ABOVE;
    let middle = Point::new(from, top + half.max(ASIDE + face.size));
    let mut marks = vec![Type::STRONG.mark(MEETING, Point::new(0.0, Type::STRONG.size), Anchor::Start)];
    let mut drawn = Vec::new();
    for (side, end) in [-1.0, 1.0].into_iter().zip(ENDS) {
        let level = middle.y + side * ASIDE;
        marks.push(face.mark(end, Point::new(0.0, level + face.size * 0.35), Anchor::Start));
        drawn.push(stencils.strand_cord(strand, &way(Point::new(words, level), middle), 1.0));
    }
    drawn.extend(branched(meeting, middle, 0.0, design, scale, stencils));
    let letter = |(words, level): &(String, f64)| {
        LETTER.mark(words, middle + Point::new(level * scale, -half - ABOVE), Anchor::Middle)
    };
    marks.extend(runs(meeting, design).iter().map(letter));
    marks.push(Mark::figure(figure(&Alternative::Meeting(&strand.name)), drawn));
    Some((Block::new(width, middle.y + half.max(ASIDE + face.size), marks), scale < 1.0))
}

/// An end's way to where both meet: level, then across.
fn way(start: Point, meet: Point) -> Vec<Point> {
    let turn = start + Point::new(WAY[0], 0.0);
    let half = Point::new(WAY[1] / 2.0, 0.0);
    outline::flattened(&[Segment::Move(start), Segment::Line(turn), Segment::Curve(turn + half, meet - half, meet)])
}
