//! Round scales and the bar that shows them.

use crate::geometry::Point;
use crate::paint::mark::{Anchor, Fill, Mark, Text, Weight};
use crate::paint::{outline, style};
use crate::sheet::english;
use crate::sheet::said::SeenAs;
use crate::units::{INCH, Length, UnitStyle};

/// A round scale: so many on paper to so many of the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale {
    /// On paper.
    pub paper: u32,
    /// Of the piece.
    pub piece: u32,
}

impl Scale {
    /// The scales that a sheet is drawn at, largest first.
    pub const ROUND: &[Self] = &[
        Self::new(2, 1),
        Self::new(3, 2),
        Self::new(5, 4),
        Self::new(1, 1),
        Self::new(4, 5),
        Self::new(3, 4),
        Self::new(2, 3),
        Self::new(3, 5),
        Self::new(1, 2),
        Self::new(1, 3),
        Self::new(1, 4),
        Self::new(1, 5),
        Self::new(1, 8),
        Self::new(1, 10),
        Self::new(1, 20),
        Self::new(1, 50),
        Self::new(1, 100),
        Self::new(1, 200),
        Self::new(1, 500),
        Self::new(1, 1000),
    ];

    /// As large as it is.
    pub const ACTUAL: Self = Self::new(1, 1);

    const fn new(paper: u32, piece: u32) -> Self {
        Self { paper, piece }
    }

    /// The largest round scale at which a width and a height come within a room's.
    pub fn fitting((width, height): (f64, f64), room: (f64, f64)) -> Self {
        let fits = |scale: &&Self| width * scale.factor() <= room.0 && height * scale.factor() <= room.1;
        Self::ROUND.iter().find(fits).copied().unwrap_or(Self::new(1, 10_000))
    }

    /// Page mm for each mm of the piece.
    pub fn factor(self) -> f64 {
        f64::from(self.paper) / f64::from(self.piece)
    }
}

/// Height in mm of a scale bar with its text.
pub const BAR_HEIGHT: f64 = 8.0;

/// Room in mm for the words beside it.
const BAR_WORDS: f64 = 26.0;
/// From one line of its words to the next, in mm.
const LINE_HEIGHT: f64 = 3.0;

/// Height of the bar itself in mm, and of the baseline of its figures.
const BAR: f64 = 1.2;
const FIGURES: f64 = -2.2;
/// Room in mm between it and the words beside it.
const BESIDE_BAR: f64 = 3.0;
/// Shortest bar in mm on paper, with room for its words.
const SHORTEST_BAR: f64 = 16.0;

/// A bar that measures the piece, with its scale, from a lower left corner in a width, and how what it measures is seen.
pub fn scale_bar((at, width): (Point, f64), scale: Scale, units: UnitStyle, seen: Option<SeenAs>) -> Vec<Mark> {
    let (each, count) = divided(width, scale, units);
    let step = each * scale.factor();
    let end = at + Point::new(step * f64::from(count), 0.0);
    let size = english::bar_length(Length::mm(each * f64::from(count)), units);
    let beside = end + Point::new(BESIDE_BAR, 0.0);
    let mut marks: Vec<_> = (0..count).map(|part| shaded(at, step, part)).collect();
    marks.push(text(at + Point::new(0.0, FIGURES), "0", Anchor::Start));
    marks.push(text(end + Point::new(0.0, FIGURES), &size, Anchor::End));
    marks.push(text(
        beside - Point::new(0.0, seen.map_or(0.0, |_| LINE_HEIGHT)),
        &english::beside_bar(scale),
        Anchor::Start,
    ));
    marks.extend(seen.map(|seen| text(beside, &english::seen_as(seen, units), Anchor::Start)));
    marks
}

/// How long each part of the bar is in mm of the piece, and how many parts have room in a width with the words.
fn divided(width: f64, scale: Scale, units: UnitStyle) -> (f64, u32) {
    let (least, most) = match units {
        UnitStyle::Mm => (10.0, 5),
        UnitStyle::In | UnitStyle::Both => (INCH / 2.0, 4),
    };
    let each = least * times(least * f64::from(most) * scale.factor());
    let fits = |count: &u32| each * scale.factor() * f64::from(*count) + BAR_WORDS <= width;
    // Half inches are told in pairs.
    (each, (1..=most).rev().step_by(2).find(fits).unwrap_or(2 - most % 2))
}

/// A part of the bar, every other one black.
fn shaded(at: Point, step: f64, part: u32) -> Mark {
    let corner = at + Point::new(step * f64::from(part), -BAR);
    let fill = part.is_multiple_of(2).then_some(Fill::Flat(style::INK, 1.0));
    let stroke = Some(style::INK_HAIRLINE);
    Mark::Shape { outline: outline::rect(corner, step, BAR), fill, stroke }
}

/// How many times as long a bar of a length must be to be read: 1, 2, 5, 10, 20, …
fn times(length: f64) -> f64 {
    let decades = (0..6).map(|power| (0..power).fold(1.0, |ten, _| ten * 10.0));
    let steps = decades.flat_map(|ten| [1.0, 2.0, 5.0].map(|step| step * ten));
    steps.into_iter().find(|times| length * times >= SHORTEST_BAR).unwrap_or(1.0)
}

fn text(at: Point, words: &str, anchor: Anchor) -> Mark {
    Mark::Text(Text {
        at,
        text: words.to_owned(),
        size: style::TINY,
        weight: Weight::Regular,
        colour: style::INK,
        anchor,
        angle: 0.0,
    })
}
