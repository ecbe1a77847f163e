//! The drops dimensioned: a line beside the drape from the level of the strands' ends down to the lowest
//! of them, with a tick at each strand's lowest point. The lengths stand in the strands' labels, that of an only strand, or of twisted ones, along the line too.

use std::f64::consts::FRAC_PI_2;

use crate::Piece;
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Stroke, Text};
use crate::paint::{outline, style};
use crate::sheet::english;
use crate::sheet::said::{Alternative, HangsDown};
use crate::units::{Length, UnitStyle};

use super::labels::{disc, discs_fit, is_numbered, levels};
use super::{DISC, Frame};

/// Width of the dimension with its numbers.
pub const DROPS_WIDTH: f64 = 2.0 * DISC + CLEAR + 2.0 * TICK + LINE;
/// Width of the lines.
const LINE: f64 = 0.2;
/// Half a tick's length.
const TICK: f64 = 1.2;
/// Room between a tick and its number.
const CLEAR: f64 = 0.5;
/// Room between a line and the baseline of words along it, below which letters hang.
const BESIDE: f64 = 1.2;

/// The dimension with its left edge on the page; none where no strand has a cord.
pub fn drops(piece: &Piece, frame: &Frame, left: f64) -> Vec<Mark> {
    if piece.design.strands.iter().all(|strand| strand.is_on_pin(&piece.design)) {
        return Vec::new();
    }
    let x = left + DROPS_WIDTH - TICK - LINE / 2.0;
    let lows: Vec<_> = levels(piece).into_iter().map(|level| frame.page(Point::new(0.0, level)).y).collect();
    let ends = piece.drape.strands.iter().flat_map(|hung| hung.ends).map(|end| frame.page(end).y);
    let top = ends.fold(f64::INFINITY, f64::min);
    let foot = lows.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut marks = vec![line(Point::new(x, top), Point::new(x, foot))];
    marks.extend(lows.iter().chain([&top]).map(|y| line(Point::new(x - TICK, *y), Point::new(x + TICK, *y))));
    if is_numbered(piece) && discs_fit(piece, frame.scale) {
        let number = |(index, y): (usize, &f64)| disc(index + 1, Point::new(left + DISC + LINE / 2.0, *y));
        marks.extend(lows.iter().enumerate().flat_map(number));
    }
    if let ([hung, ..], false) = (piece.drape.strands.as_slice(), is_numbered(piece)) {
        marks.extend(named(Length::mm(hung.drop), piece.telling.units, Point::new(x, top), foot));
    }
    vec![Mark::figure(english::figure(&Alternative::Drops), marks)]
}

/// The only strand's drop along its line, where that is long enough.
fn named(drop: Length, units: UnitStyle, top: Point, foot: f64) -> Option<Mark> {
    let (face, words) = (Type::TINY.coloured(style::INK), english::hangs(HangsDown::Strand(drop), units));
    let at = Point::new(top.x - BESIDE - LINE, top.y.midpoint(foot));
    let mark = face.mark(&words, at, Anchor::Middle);
    (face.width(&words) < foot - top.y).then_some(turned(mark))
}

/// A text that is read from below.
fn turned(mark: Mark) -> Mark {
    match mark {
        Mark::Text(text) => Mark::Text(Text { angle: -FRAC_PI_2, ..text }),
        other => other,
    }
}

fn line(from: Point, to: Point) -> Mark {
    Mark::Shape { outline: outline::line(from, to), fill: None, stroke: Some(Stroke::new(style::RULE, LINE)) }
}
