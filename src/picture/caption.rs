//! Title and length below a picture.

use crate::geometry::Point;
use crate::paint::layout::Rect;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb};
use crate::paint::{metrics, style};
use crate::piece::Piece;

use super::english;

/// Height of the strip for the caption, as a share of the picture's.
pub const STRIP: f64 = 0.1;
/// Size of the title, as a share of the picture's height.
const TITLE: f64 = 0.03;
/// Size of the line below it, in the same way.
const BELOW: f64 = 0.02;
/// How far the two lie above the picture's foot, in the same way.
const RISES: [f64; 2] = [0.085, 0.055];
/// Share of the picture's width that a line has at most.
const WIDEST: f64 = 0.9;

/// The caption of a piece in the middle of its cell's foot: its title, or among several its
/// colourway, and its length.
#[must_use]
pub fn marks(piece: &Piece, cell: Rect, among_several: bool, on_dark: bool) -> Vec<Mark> {
    let heading = &piece.design.heading;
    let name = if among_several { heading.colourway.as_deref().unwrap_or(&heading.title) } else { &heading.title };
    let (ink, quiet) = if on_dark { (Rgb::WHITE, Rgb(0xcf, 0xd2, 0xd6)) } else { (style::INK, style::QUIET) };
    let line = |looks: Type, text: &str, size: f64, up: f64| {
        let looks = Type { size: cell.height * size, ..looks };
        let text = metrics::fit(text, looks.size, looks.weight, cell.width * WIDEST);
        let at = Point::new(cell.left + cell.width / 2.0, cell.bottom() - cell.height * up);
        looks.mark(&text, at, Anchor::Middle)
    };
    vec![
        line(Type::TITLE.coloured(ink), name, TITLE, RISES[0]),
        line(Type::BODY.coloured(quiet), &english::length(piece), BELOW, RISES[1]),
    ]
}
