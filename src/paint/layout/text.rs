//! Lines and paragraphs of measured text. Lengths are mm of paper.

use crate::geometry::Point;
use crate::paint::mark::{Anchor, Mark, Rgb, Role, Text, Weight};
use crate::paint::{metrics, style};

use super::Block;

/// Distance between baselines as a share of the size of type.
const LEADING: f64 = 1.27;
/// Height of the first baseline below a line's upper edge, as a share of the size of type.
const BASELINE: f64 = 0.98;

/// How a text looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Type {
    /// Size in mm.
    pub size: f64,
    /// Weight.
    pub weight: Weight,
    /// Colour.
    pub colour: Rgb,
}

impl Type {
    /// The sheet's title.
    pub const TITLE: Self = Self::new(style::TITLE, Weight::Semibold, style::INK);
    /// Headings.
    pub const HEADING: Self = Self::new(style::HEADING, Weight::Semibold, style::ACCENT);
    /// Text to read.
    pub const BODY: Self = Self::new(style::BODY, Weight::Regular, style::INK);
    /// Text to find.
    pub const STRONG: Self = Self::new(style::BODY, Weight::Semibold, style::INK);
    /// Table cells and labels.
    pub const SMALL: Self = Self::new(style::SMALL, Weight::Regular, style::INK);
    /// Table headings.
    pub const SMALL_STRONG: Self = Self::new(style::SMALL, Weight::Semibold, style::INK);
    /// Notes and captions.
    pub const TINY: Self = Self::new(style::TINY, Weight::Regular, style::QUIET);

    const fn new(size: f64, weight: Weight, colour: Rgb) -> Self {
        Self { size, weight, colour }
    }

    /// The same in another colour.
    #[must_use]
    pub const fn coloured(self, colour: Rgb) -> Self {
        Self { colour, ..self }
    }

    /// The same in semibold.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self { weight: Weight::Semibold, ..self }
    }

    /// Height of one line.
    #[must_use]
    pub fn line_height(self) -> f64 {
        self.size * LEADING
    }

    /// How far below a line's upper edge its letters stand.
    #[must_use]
    pub fn baseline(self) -> f64 {
        self.size * BASELINE
    }

    /// Width of a line of text.
    #[must_use]
    pub fn width(self, text: &str) -> f64 {
        metrics::width(text, self.size, self.weight)
    }

    /// A mark of a text whose anchor stands on a baseline.
    #[must_use]
    pub fn mark(self, text: &str, at: Point, anchor: Anchor) -> Mark {
        let Self { size, weight, colour } = self;
        Mark::Text(Text { at, text: text.to_owned(), size, weight, colour, anchor, angle: 0.0 })
    }

    /// One line, not wrapped.
    #[must_use]
    pub fn line(self, text: &str) -> Block {
        let mark = self.mark(text, Point::new(0.0, self.baseline()), Anchor::Start);
        Block::new(self.width(text), self.line_height(), vec![mark])
    }

    /// One line, shortened with an ellipsis where it is wider than its room.
    #[must_use]
    pub fn fitted(self, text: &str, width: f64) -> Block {
        self.line(&metrics::fit(text, self.size, self.weight, width))
    }

    /// Width of the widest part of a text that is not broken.
    #[must_use]
    pub fn widest(self, text: &str) -> f64 {
        metrics::widest(text, self.size, self.weight)
    }

    /// Text wrapped to a width, in lines by themselves.
    #[must_use]
    pub fn wrapped(self, text: &str, width: f64) -> Block {
        self.aligned(text, width, 0.0)
    }

    /// The same, before each line such a share of what it is narrower than the widest.
    #[must_use]
    pub fn aligned(self, text: &str, width: f64, share: f64) -> Block {
        let lines = metrics::wrap(text, self.size, self.weight, width);
        let lines: Vec<_> = lines.into_iter().map(|line| self.line(line)).collect();
        let widest = lines.iter().map(|line| line.width).fold(0.0, f64::max);
        let placed = |line: Block| {
            let (left, height) = (share * (widest - line.width), line.height);
            Block::new(widest, height, line.at(Point::new(left, 0.0)))
        };
        Block::stack(lines.into_iter().map(placed), 0.0)
    }

    /// Text wrapped to a width, read as one.
    #[must_use]
    pub fn paragraph(self, text: &str, width: f64) -> Block {
        self.wrapped(text, width).in_role(Role::Paragraph)
    }
}
