//! Labels of hanging strands: name, finished length and drop, beside the drape at the level of each
//! strand's lowest point.

use crate::Piece;
use crate::geometry::Point;
use crate::sheet::mark::{Anchor, Mark, Stroke, Text, Weight};
use crate::sheet::{metrics, outline, style};
use crate::units::Length;

use super::{Extent, Frame};

/// Distance in mm between the drape and a label's leader, and between leader and label.
const CLEAR: f64 = 1.5;
/// Length in mm of a leader's level part beside the label.
const LEVEL: f64 = 2.0;

/// One strand's label.
struct Label {
    name: String,
    lines: Vec<String>,
    /// Where its strand's lowest point is, on the page.
    level: f64,
    /// Where its first baseline stands.
    top: f64,
}

impl Label {
    fn height(&self) -> f64 {
        style::SMALL * 1.25 + style::TINY * 1.25 * self.lines.len() as f64
    }

    fn width(&self) -> f64 {
        let name = metrics::width(&self.name, style::SMALL, Weight::Semibold);
        let lines = self.lines.iter().map(|line| metrics::width(line, style::TINY, Weight::Regular));
        lines.fold(name, f64::max)
    }
}

/// Width in mm that the labels of a piece need, leaders included.
pub fn labels_width(piece: &Piece) -> f64 {
    let widths = texts(piece).into_iter().map(|label| label.width());
    widths.fold(0.0, f64::max) + 2.0 * CLEAR + LEVEL
}

/// The labels to the right of a drape whose strands fill `extent`, none higher than `top`.
pub fn labels(piece: &Piece, frame: &Frame, extent: Extent, top: f64) -> Vec<Mark> {
    let mut labels = texts(piece);
    for (label, hung) in labels.iter_mut().zip(&piece.drape.strands) {
        label.level = frame.page(Point::new(0.0, hung.bounds()[0].y)).y;
    }
    labels.sort_by(|a, b| a.level.total_cmp(&b.level));
    stack(&mut labels, top);
    let edge = frame.page(extent.high).x + CLEAR;
    labels.iter().flat_map(|label| marks(label, edge)).collect()
}

fn texts(piece: &Piece) -> Vec<Label> {
    let units = piece.design.heading.units;
    let strands = piece.design.strands.iter().zip(&piece.drape.strands);
    let label = |(strand, hung): (&crate::design::Strand, &crate::drape::Hung)| Label {
        name: metrics::fit(&strand.name, style::SMALL, Weight::Semibold, 40.0),
        lines: vec![units.ruler(strand.finished), format!("drop {}", units.ruler(Length::mm(hung.drop)))],
        level: 0.0,
        top: 0.0,
    };
    strands.map(label).collect()
}

/// Sets every label beside its level, or as near as those above leave room.
fn stack(labels: &mut [Label], top: f64) {
    let mut free = top;
    for label in labels.iter_mut() {
        label.top = (label.level - label.height() / 2.0).max(free);
        free = label.top + label.height() + 1.0;
    }
}

fn marks(label: &Label, edge: f64) -> Vec<Mark> {
    let middle = label.top + label.height() / 2.0;
    let turn = edge + CLEAR;
    let text = turn + LEVEL;
    let way = [Point::new(edge, label.level), Point::new(turn, middle), Point::new(text - 0.7, middle)];
    let leader =
        Mark::Shape { outline: outline::polyline(&way), fill: None, stroke: Some(Stroke::new(style::RULE, 0.2)) };
    let mut at = Point::new(text, label.top + style::SMALL);
    let mut marks = vec![leader, line(&label.name, style::SMALL, Weight::Semibold, at)];
    for words in &label.lines {
        at.y += style::TINY * 1.25;
        marks.push(line(words, style::TINY, Weight::Regular, at));
    }
    marks
}

fn line(words: &str, size: f64, weight: Weight, at: Point) -> Mark {
    let text = words.to_owned();
    Mark::Text(Text { at, text, size, weight, colour: style::INK, anchor: Anchor::Start, angle: 0.0 })
}
