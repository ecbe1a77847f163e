//! Layout in mm: boxes of marks that are measured before they are placed.
//!
//! A [`Block`] is a finished drawing with a width and a height, its upper left corner at the origin.
//! Blocks are stacked, set side by side, put in [`table`]s and poured into pages by [`flow`]. No page
//! counts lines by itself.

pub mod flow;
pub mod table;
pub mod text;

use crate::geometry::Point;

use super::mark::{Fill, Mark, Role, Segment, Text};

/// An upright rectangle on a page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Left edge, in mm.
    pub left: f64,
    /// Upper edge, in mm.
    pub top: f64,
    /// Width, in mm.
    pub width: f64,
    /// Height, in mm.
    pub height: f64,
}

impl Rect {
    /// Makes one from its corner and size.
    #[must_use]
    pub const fn new(left: f64, top: f64, width: f64, height: f64) -> Self {
        Self { left, top, width, height }
    }

    /// Its upper left corner.
    #[must_use]
    pub const fn corner(&self) -> Point {
        Point::new(self.left, self.top)
    }

    /// Its lower edge.
    #[must_use]
    pub fn bottom(&self) -> f64 {
        self.top + self.height
    }

    /// Its right edge.
    #[must_use]
    pub fn right(&self) -> f64 {
        self.left + self.width
    }

    /// What is left below a strip of a height.
    #[must_use]
    pub fn below(&self, height: f64) -> Self {
        Self { top: self.top + height, height: (self.height - height).max(0.0), ..*self }
    }

    /// What is left above a strip of a height.
    #[must_use]
    pub fn above(&self, height: f64) -> Self {
        Self { height: (self.height - height).max(0.0), ..*self }
    }

    /// A strip of a width at the right, and what is left of it, with a gap between them.
    #[must_use]
    pub fn split_right(&self, width: f64, gap: f64) -> (Self, Self) {
        let rest = (self.width - width - gap).max(0.0);
        (Self { width: rest, ..*self }, Self { left: self.left + rest + gap, width, ..*self })
    }
}

/// A finished drawing with its upper left corner at the origin.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Block {
    /// Width in mm.
    pub width: f64,
    /// Height in mm.
    pub height: f64,
    /// What is drawn, first to last.
    pub marks: Vec<Mark>,
}

impl Block {
    /// A block of marks.
    #[must_use]
    pub const fn new(width: f64, height: f64, marks: Vec<Mark>) -> Self {
        Self { width, height, marks }
    }

    /// Empty room of a height.
    #[must_use]
    pub const fn gap(height: f64) -> Self {
        Self { width: 0.0, height, marks: Vec::new() }
    }

    /// The same as one thing to readers who cannot see it.
    #[must_use]
    pub fn in_role(self, role: Role) -> Self {
        Self { marks: vec![Mark::Group { role, marks: self.marks }], ..self }
    }

    /// The marks with the block's corner at a point.
    #[must_use]
    pub fn at(self, corner: Point) -> Vec<Mark> {
        self.marks.into_iter().map(|mark| moved(mark, corner)).collect()
    }

    /// Blocks below one another.
    #[must_use]
    pub fn stack(blocks: impl IntoIterator<Item = Self>, gap: f64) -> Self {
        let mut whole = Self::default();
        for block in blocks {
            let top = if whole.marks.is_empty() && whole.height == 0.0 { 0.0 } else { whole.height + gap };
            whole.width = whole.width.max(block.width);
            whole.height = top + block.height;
            whole.marks.extend(block.at(Point::new(0.0, top)));
        }
        whole
    }

    /// Blocks side by side, their upper edges in line.
    #[must_use]
    pub fn row(blocks: impl IntoIterator<Item = Self>, gap: f64) -> Self {
        let mut whole = Self::default();
        for (index, block) in blocks.into_iter().enumerate() {
            let left = if index == 0 { 0.0 } else { whole.width + gap };
            whole.width = left + block.width;
            whole.height = whole.height.max(block.height);
            whole.marks.extend(block.at(Point::new(left, 0.0)));
        }
        whole
    }
}

impl Block {
    /// Blocks side by side, their middles in line.
    #[must_use]
    pub fn middled(blocks: impl IntoIterator<Item = Self>, gap: f64) -> Self {
        let blocks: Vec<_> = blocks.into_iter().collect();
        let height = blocks.iter().map(|block| block.height).fold(0.0, f64::max);
        let middle = |block: Self| {
            Self::new(block.width, height, block.clone().at(Point::new(0.0, (height - block.height) / 2.0)))
        };
        Self::row(blocks.into_iter().map(middle), gap)
    }

    /// Blocks side by side, in as many rows as they need, none wider than a width unless a block
    /// alone is.
    #[must_use]
    pub fn rows(blocks: impl IntoIterator<Item = Self>, gap: f64, width: f64) -> Vec<Self> {
        let (mut rows, mut taken): (Vec<Vec<Self>>, f64) = (Vec::new(), 0.0);
        for block in blocks {
            let fits = taken + gap + block.width <= width;
            taken = if fits { taken + gap + block.width } else { block.width };
            match rows.last_mut().filter(|_| fits) {
                Some(row) => row.push(block),
                None => {
                    taken = block.width;
                    rows.push(vec![block]);
                }
            }
        }
        rows.into_iter().map(|row| Self::middled(row, gap)).collect()
    }
}

/// The width of one of so many columns that stand so far apart in a width.
#[must_use]
pub fn column(width: f64, count: usize, apart: f64) -> f64 {
    (width - apart * (count - 1) as f64) / count as f64
}

/// A mark somewhere else.
#[must_use]
pub fn moved(mark: Mark, by: Point) -> Mark {
    match mark {
        Mark::Shape { outline, fill, stroke } => Mark::Shape {
            outline: outline.into_iter().map(|segment| moved_segment(segment, by)).collect(),
            fill: fill.map(|fill| moved_fill(fill, by)),
            stroke,
        },
        Mark::Text(text) => Mark::Text(Text { at: text.at + by, ..text }),
        Mark::Stamp { symbol, at, angle, scale, along } => Mark::Stamp { symbol, at: at + by, angle, scale, along },
        Mark::Clipped { within, marks } => Mark::Clipped { within: within.moved(by), marks: all_moved(marks, by) },
        held => held.map_inner(|marks| all_moved(marks, by)),
    }
}

fn all_moved(marks: Vec<Mark>, by: Point) -> Vec<Mark> {
    marks.into_iter().map(|mark| moved(mark, by)).collect()
}

fn moved_segment(segment: Segment, by: Point) -> Segment {
    match segment {
        Segment::Move(to) => Segment::Move(to + by),
        Segment::Line(to) => Segment::Line(to + by),
        Segment::Curve(one, other, to) => Segment::Curve(one + by, other + by, to + by),
        Segment::Close => Segment::Close,
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

    #[test]
    fn stacks_and_rows_measure_what_they_hold() {
        let block = |width, height| Block::new(width, height, Vec::new());
        let stack = Block::stack([block(10.0, 4.0), block(6.0, 5.0)], 1.0);
        assert_eq!((stack.width, stack.height), (10.0, 10.0));
        let row = Block::row([block(10.0, 4.0), block(6.0, 5.0)], 1.0);
        assert_eq!((row.width, row.height), (17.0, 5.0));
    }

    #[test]
    fn splitting_loses_no_room() {
        let (left, right) = Rect::new(10.0, 0.0, 100.0, 50.0).split_right(30.0, 5.0);
        assert_eq!((left.width, right.left, right.right()), (65.0, 80.0, 110.0));
    }
}
