//! The band on top of every page of the proof: two squares to measure, and what to do with them.
//! Lengths in mm on paper.

use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Mark, Role};
use crate::paint::{outline, style};
use crate::sheet::said::Alternative;
use crate::sheet::{Sheet, english};
use crate::units::INCH;

/// Sides of the squares, with what is printed in them.
const SQUARES: [(f64, &str); 2] = [(50.0, "50 mm"), (2.0 * INCH, "2 in")];
/// Room between the squares, and between them and the words.
const GAP: f64 = 6.0;
/// Narrowest column of words beside the squares.
const NARROWEST: f64 = 45.0;
/// Height of the words where they stand below the squares.
const WORDS: f64 = 36.0;
/// The type of the sizes in the squares.
const SIZE: Type = Type::HEADING.coloured(style::INK);
/// Room that the line takes outside the square.
const EDGE: f64 = style::THIN / 2.0;
/// Room in mm between the lines of words, and above them below the squares.
const LINES_APART: f64 = 0.8;
const BELOW_SQUARES: f64 = 2.0;

/// Width of both squares with the gap after them.
fn squares_width() -> f64 {
    SQUARES.iter().map(|(side, _)| side + GAP).sum()
}

const fn squares_height() -> f64 {
    SQUARES[1].0 + 2.0 * EDGE
}

fn is_beside(width: f64) -> bool {
    width - squares_width() >= NARROWEST
}

/// Height of the band on a width.
pub fn height(width: f64) -> f64 {
    squares_height() + if is_beside(width) { 0.0 } else { WORDS }
}

/// The band; with what to do with strips that join, where there are any.
pub fn marks(sheet: &Sheet<'_>, room: Rect, has_joins: bool) -> Vec<Mark> {
    let mut marks = squares().at(room.corner());
    let beside = if is_beside(room.width) {
        Rect { width: room.width - squares_width(), ..room.split_right(room.width - squares_width(), 0.0).1 }
            .above(room.height - squares_height())
    } else {
        room.below(squares_height() + BELOW_SQUARES).above(room.height - squares_height() - WORDS)
    };
    marks.extend(words(sheet, beside.width, has_joins).at(beside.corner()));
    marks
}

/// The squares with their sizes, from an upper left corner.
fn squares() -> Block {
    Block::row(SQUARES.map(|(side, name)| square(side, name)), GAP)
}

fn square(side: f64, name: &str) -> Block {
    let edge = outline::rect(Point::new(EDGE, EDGE), side, side);
    let mut marks = vec![Mark::Shape { outline: edge, fill: None, stroke: Some(style::INK_LINE) }];
    let size = SIZE.line(name);
    let note = Type::TINY.line(english::EACH_SIDE);
    let words = Block::stack([size, note], 0.0);
    let corner = Point::new((side - words.width) / 2.0, (side - words.height) / 2.0);
    marks.extend(words.at(corner));
    Block::new(side, side + 2.0 * EDGE, vec![Mark::figure(english::figure(&Alternative::Square(name)), marks)])
}

fn words(sheet: &Sheet<'_>, width: f64, has_joins: bool) -> Block {
    let heading = &sheet.piece.design.heading;
    let title = Type::HEADING.fitted(&english::actual_size(&heading.title), width).in_role(Role::Heading(1));
    let say = std::iter::once(english::MEASURE).chain(has_joins.then_some(english::JOIN));
    let words = say.map(|say| Type::SMALL.paragraph(say, width));
    Block::stack(std::iter::once(title).chain(words), LINES_APART)
}
