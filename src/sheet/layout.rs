//! Boxes on a page: [`Rect`]s to divide it, and [`Block`]s that know their own size, in mm.

use super::mark::{Anchor, Fill, Mark, Stroke, Text};
use super::outline::{line, mapped};
use super::style::{HAIRLINE, RULE, Type};
use super::{mark::Rgb, metrics};
use crate::geometry::Point;

/// An upright rectangle on a page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Rect {
    /// Makes one from its upper left corner and size.
    #[must_use]
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self { x, y, width, height }
    }

    /// Upper left corner.
    #[must_use]
    pub const fn corner(self) -> Point {
        Point::new(self.x, self.y)
    }

    /// Middle.
    #[must_use]
    pub fn centre(self) -> Point {
        Point::new(self.x + self.width / 2.0, self.y + self.height / 2.0)
    }

    /// Right edge.
    #[must_use]
    pub fn right(self) -> f64 {
        self.x + self.width
    }

    /// Lower edge.
    #[must_use]
    pub fn bottom(self) -> f64 {
        self.y + self.height
    }

    /// Smaller by so much on every side, but never less than nothing.
    #[must_use]
    pub fn inset(self, by: f64) -> Self {
        let (width, height) = ((self.width - 2.0 * by).max(0.0), (self.height - 2.0 * by).max(0.0));
        Self::new(self.x + by, self.y + by, width, height)
    }

    /// The left part of a width and the rest beyond a gap.
    #[must_use]
    pub fn split_left(self, width: f64, gap: f64) -> (Self, Self) {
        let rest = (self.width - width - gap).max(0.0);
        let left = Self { width, ..self };
        (left, Self { x: self.x + width + gap, width: rest, ..self })
    }

    /// The upper part of a height and the rest below a gap.
    #[must_use]
    pub fn split_top(self, height: f64, gap: f64) -> (Self, Self) {
        let rest = (self.height - height - gap).max(0.0);
        let top = Self { height, ..self };
        (top, Self { y: self.y + height + gap, height: rest, ..self })
    }

    /// Side by side, as broad as their shares say, with gaps between.
    #[must_use]
    pub fn columns(self, shares: &[f64], gap: f64) -> Vec<Self> {
        let parts = divided(self.width, shares, gap);
        parts.into_iter().map(|(at, width)| Self { x: self.x + at, width, ..self }).collect()
    }

    /// One below the other, as high as their shares say, with gaps between.
    #[must_use]
    pub fn rows(self, shares: &[f64], gap: f64) -> Vec<Self> {
        let parts = divided(self.height, shares, gap);
        parts.into_iter().map(|(at, height)| Self { y: self.y + at, height, ..self }).collect()
    }
}

/// Start and length of each part of a length.
fn divided(length: f64, shares: &[f64], gap: f64) -> Vec<(f64, f64)> {
    let gaps = gap * shares.len().saturating_sub(1) as f64;
    let unit = (length - gaps).max(0.0) / shares.iter().sum::<f64>();
    let mut at = 0.0;
    let part = |share: &f64| {
        let part = (at, share * unit);
        at += share * unit + gap;
        part
    };
    shares.iter().map(part).collect()
}

/// Marks with the size of the room that they take; their origin is its upper left corner.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Block {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// What is drawn.
    pub marks: Vec<Mark>,
}

/// Which side lines of text keep to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Side {
    /// The left edge.
    #[default]
    Left,
    /// The middle.
    Middle,
    /// The right edge.
    Right,
}

impl Block {
    /// Makes one from marks about its upper left corner.
    #[must_use]
    pub const fn new(width: f64, height: f64, marks: Vec<Mark>) -> Self {
        Self { width, height, marks }
    }

    /// Empty room.
    #[must_use]
    pub const fn space(width: f64, height: f64) -> Self {
        Self::new(width, height, Vec::new())
    }

    /// One line of text, as wide as it is.
    #[must_use]
    pub fn line(text: &str, face: Type) -> Self {
        let width = metrics::width(text, face.size, face.weight);
        Self::new(width, face.leading, vec![text_line(text, face, Point::new(0.0, baseline(face)), Anchor::Start)])
    }

    /// Text wrapped to a width.
    #[must_use]
    pub fn paragraph(text: &str, face: Type, width: f64) -> Self {
        Self::aligned(text, face, width, Side::Left)
    }

    /// Text wrapped to a width, keeping to a side.
    #[must_use]
    pub fn aligned(text: &str, face: Type, width: f64, side: Side) -> Self {
        let (x, anchor) = match side {
            Side::Left => (0.0, Anchor::Start),
            Side::Middle => (width / 2.0, Anchor::Middle),
            Side::Right => (width, Anchor::End),
        };
        let lines = metrics::wrap(text, face.size, face.weight, width);
        let at = |index: usize| Point::new(x, index as f64 * face.leading + baseline(face));
        let marks = lines.iter().enumerate().map(|(index, line)| text_line(line, face, at(index), anchor)).collect();
        Self::new(width, lines.len() as f64 * face.leading, marks)
    }

    /// A thin rule over a width.
    #[must_use]
    pub fn rule(width: f64) -> Self {
        let stroke = Some(Stroke::new(RULE, HAIRLINE));
        let outline = line(Point::ORIGIN, Point::new(width, 0.0));
        Self::new(width, HAIRLINE, vec![Mark::Shape { outline, fill: None, stroke }])
    }

    /// One below the other with gaps between.
    #[must_use]
    pub fn stack(blocks: Vec<Self>, gap: f64) -> Self {
        let mut all = Self::default();
        for (index, block) in blocks.into_iter().enumerate() {
            let y = if index == 0 { 0.0 } else { all.height + gap };
            all.width = all.width.max(block.width);
            all.height = y + block.height;
            all.marks.extend(block.placed(Point::new(0.0, y)));
        }
        all
    }

    /// Side by side with gaps between, their upper edges level.
    #[must_use]
    pub fn beside(blocks: Vec<Self>, gap: f64) -> Self {
        let mut all = Self::default();
        for (index, block) in blocks.into_iter().enumerate() {
            let x = if index == 0 { 0.0 } else { all.width + gap };
            all.width = x + block.width;
            all.height = all.height.max(block.height);
            all.marks.extend(block.placed(Point::new(x, 0.0)));
        }
        all
    }

    /// The marks with the upper left corner at a point.
    #[must_use]
    pub fn placed(self, at: Point) -> Vec<Mark> {
        self.marks.into_iter().map(|mark| moved(mark, at)).collect()
    }

    /// The marks in one group with a text alternative.
    #[must_use]
    pub fn labelled(self, label: &str) -> Self {
        let group = Mark::Group { label: label.into(), marks: self.marks };
        Self { marks: vec![group], ..self }
    }
}

/// From the top of a line's room to its baseline: capitals stand in the middle of the room.
#[must_use]
pub fn baseline(face: Type) -> f64 {
    f64::midpoint(face.leading, metrics::cap_height(face.size, face.weight))
}

/// A line of text with its anchor at a point of its baseline.
#[must_use]
pub fn text_line(text: &str, face: Type, at: Point, anchor: Anchor) -> Mark {
    let Type { size, weight, colour, .. } = face;
    Mark::Text(Text { at, text: text.into(), size, weight, colour, anchor, angle: 0.0 })
}

/// A filled rectangle.
#[must_use]
pub fn panel(rect: Rect, colour: Rgb) -> Mark {
    let outline = super::outline::rect(rect.corner(), rect.width, rect.height);
    Mark::Shape { outline, fill: Some(Fill::Flat(colour, 1.0)), stroke: None }
}

/// The mark, moved.
#[must_use]
pub fn moved(mark: Mark, by: Point) -> Mark {
    match mark {
        Mark::Shape { outline, fill, stroke } => {
            let fill = fill.map(|fill| moved_fill(fill, by));
            Mark::Shape { outline: mapped(&outline, |point| point + by), fill, stroke }
        }
        Mark::Text(text) => Mark::Text(Text { at: text.at + by, ..text }),
        Mark::Stamp { symbol, at, angle, scale } => Mark::Stamp { symbol, at: at + by, angle, scale },
        Mark::Group { label, marks } => {
            Mark::Group { label, marks: marks.into_iter().map(|mark| moved(mark, by)).collect() }
        }
    }
}

fn moved_fill(fill: Fill, by: Point) -> Fill {
    match fill {
        Fill::Flat(..) => fill,
        Fill::Linear(from, to, stops) => Fill::Linear(from + by, to + by, stops),
        Fill::Radial(centre, radius, stops) => Fill::Radial(centre + by, radius, stops),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::style::BODY;

    #[test]
    fn columns_and_gaps_fill_the_width() {
        let columns = Rect::new(10.0, 5.0, 100.0, 20.0).columns(&[1.0, 2.0, 1.0], 4.0);
        assert_eq!(columns[0], Rect::new(10.0, 5.0, 23.0, 20.0));
        assert_eq!(columns[1], Rect::new(37.0, 5.0, 46.0, 20.0));
        assert_eq!(columns[2].right(), 110.0);
        let rows = Rect::new(0.0, 0.0, 10.0, 22.0).rows(&[1.0, 1.0], 2.0);
        assert_eq!((rows[1].y, rows[1].height), (12.0, 10.0));
    }

    #[test]
    fn a_paragraph_is_as_high_as_its_lines() {
        let block = Block::paragraph("Warm the wire between your fingers before stringing.", BODY, 30.0);
        assert_eq!(block.height, block.marks.len() as f64 * BODY.leading);
        assert!(block.marks.len() > 2);
    }

    #[test]
    fn stacked_blocks_keep_their_gaps() {
        let block = |height| Block::new(5.0, height, vec![text_line("a", BODY, Point::ORIGIN, Anchor::Start)]);
        let stack = Block::stack(vec![block(3.0), block(4.0)], 2.0);
        assert_eq!((stack.width, stack.height), (5.0, 9.0));
        let Mark::Text(text) = &stack.marks[1] else { panic!("a text") };
        assert_eq!(text.at, Point::new(0.0, 5.0));
        assert_eq!(Block::beside(vec![block(3.0), block(4.0)], 2.0).width, 12.0);
    }
}
