//! The drops dimensioned: a line beside the drape from the level of the strands' ends down to the lowest
//! of them, with a tick at each strand's lowest point. The lengths stand in the strands' labels, that of an only strand, or of twisted ones, along the line too.

use std::f64::consts::FRAC_PI_2;

use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Text};
use crate::paint::{outline, style};
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::{Alternative, HangsDown};
use crate::units::{Length, UnitStyle};

use super::Frame;
use super::labels::{DISC, DISC_ROOM, disc, is_numbered, levels};

/// Width of the dimension with its numbers.
pub const DROPS_WIDTH: f64 = 2.0 * DISC + BESIDE_TICK + 2.0 * HALF_TICK + style::THIN;
/// Half a tick's length in mm.
const HALF_TICK: f64 = 1.2;
/// Room in mm between a tick and its number.
const BESIDE_TICK: f64 = 0.5;
/// Room in mm between a line and the baseline of words along it, below which letters hang.
const BESIDE_LINE: f64 = 1.2;

/// The dimension with its left edge on the page; none where no strand has a cord.
pub fn drops(piece: &Piece, frame: &Frame, left: f64) -> Vec<Mark> {
    if piece.design.strands.iter().all(|strand| strand.is_on_pin(&piece.design)) {
        return Vec::new();
    }
    let x = left + DROPS_WIDTH - HALF_TICK - style::THIN / 2.0;
    let lows: Vec<_> = levels(piece).into_iter().map(|level| frame.page(Point::new(0.0, level)).y).collect();
    let ends = piece.drape.strands.iter().flat_map(|hung| hung.ends).map(|end| frame.page(end).y);
    let top = ends.fold(f64::INFINITY, f64::min);
    let foot = lows.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut marks = vec![line(Point::new(x, top), Point::new(x, foot))];
    marks.extend(tick(x, top, None));
    let numbers = Some(apart(&lows, DISC_ROOM)).filter(|_| is_numbered(piece));
    for (index, low) in lows.iter().enumerate() {
        let seat = numbers.as_ref().map(|numbers| Point::new(left + DISC + style::THIN / 2.0, numbers[index]));
        marks.extend(tick(x, *low, seat.map(|seat| Point::new(left + 2.0 * DISC + style::THIN, seat.y))));
        marks.extend(seat.into_iter().flat_map(|seat| disc(index + 1, seat)));
    }
    if let ([hung, ..], false) = (piece.drape.strands.as_slice(), is_numbered(piece)) {
        marks.extend(named(Length::mm(hung.drop), piece.telling.units, Point::new(x, top), foot));
    }
    vec![Mark::figure(english::figure(&Alternative::Drops), marks)]
}

/// A tick on the upright line; where its number lies higher or lower, bent towards that.
fn tick(x: f64, y: f64, number: Option<Point>) -> Vec<Mark> {
    let at = |aside: f64| Point::new(x + aside, y);
    match number.filter(|number| (number.y - y).abs() > style::THIN) {
        Some(number) => vec![line(at(0.0), at(HALF_TICK)), line(number, at(0.0))],
        None => vec![line(at(-HALF_TICK), at(HALF_TICK))],
    }
}

/// Levels moved so far apart, in their order, by the least sum of squares: those in each other's way move together, to
/// where they are right on the mean.
fn apart(levels: &[f64], room: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..levels.len()).collect();
    order.sort_by(|one, other| levels[*one].total_cmp(&levels[*other]));
    let moved = rising(order.iter().enumerate().map(|(place, index)| levels[*index] - place as f64 * room));
    let mut apart = vec![0.0; levels.len()];
    for ((place, index), level) in order.iter().enumerate().zip(moved) {
        apart[*index] = level + place as f64 * room;
    }
    apart
}

/// Numbers that fall nowhere, nearest to the given ones by the sum of squares: those that fall are one group, on its mean.
fn rising(numbers: impl Iterator<Item = f64>) -> impl Iterator<Item = f64> {
    let mean = |(sum, count): (f64, usize)| sum / count as f64;
    let mut groups: Vec<(f64, usize)> = Vec::new();
    for number in numbers {
        groups.push((number, 1));
        while let [.., above, below] = groups.as_slice()
            && mean(*above) > mean(*below)
        {
            let joined = (above.0 + below.0, above.1 + below.1);
            groups.truncate(groups.len() - 2);
            groups.push(joined);
        }
    }
    groups.into_iter().flat_map(move |group| std::iter::repeat_n(mean(group), group.1))
}

/// The only strand's drop along its line, where that is long enough.
fn named(drop: Length, units: UnitStyle, top: Point, foot: f64) -> Option<Mark> {
    let (face, words) = (Type::TINY.coloured(style::INK), english::hangs(HangsDown::Strand(drop), units));
    let at = Point::new(top.x - BESIDE_LINE - style::THIN, top.y.midpoint(foot));
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
    Mark::Shape { outline: outline::line(from, to), fill: None, stroke: Some(style::RULE_LINE) }
}

#[cfg(test)]
mod tests {
    use super::apart;

    #[test]
    fn levels_move_apart_as_little_as_may_be() {
        // Three that are one apart want two: the middle stays. One far off is left alone; order is kept.
        assert_eq!(apart(&[2.0, 1.0, 3.0, 20.0], 2.0), [2.0, 0.0, 4.0, 20.0]);
        // Of two pairs that would meet all four move.
        assert_eq!(apart(&[0.0, 0.0, 2.0, 2.0], 2.0), [-2.0, 0.0, 2.0, 4.0]);
    }
}
