//! The bar that tells whether a page was printed at its size: 50 mm on its upper edge, 2 in on its lower, each told at its end.

use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark};
use crate::paint::{outline, style};
use crate::units::INCH;

use super::english;
use super::said::Alternative;

/// Lengths of the bar's edges in mm, with what is printed beside them.
const MM: (f64, f64) = (50.0, 10.0);
const IN: (f64, f64) = (2.0 * INCH, INCH / 2.0);
/// Length of the ticks at its ends, clear of the footer's words, and of those between.
const TICKS: (f64, f64) = (1.2, 0.7);
/// Room in mm between the words and the bar, and how far above that they stand; between its ends and their lengths.
const GAP: (f64, f64) = (2.0, 0.8);
const BEFORE_LENGTH: f64 = 0.8;
/// Room in mm that the bar and its lengths leave at the right of the footer's words.
pub const FROM_RIGHT: f64 = 28.0;

/// The bar on a line that ends at a point, with its words before it, above a line of words that stand at a height.
pub fn bar(end: Point, words_at: f64) -> Mark {
    let start = end - Point::new(IN.0 + FROM_RIGHT, 0.0);
    let edges = [edge(start, MM, -1.0), edge(start, IN, 1.0)];
    let line = |outline| Mark::Shape { outline, fill: None, stroke: Some(style::INK_LINE) };
    let words = Type::TINY.mark(english::CHECK_PRINT, start - Point::new(GAP.0, GAP.1), Anchor::End);
    let heights = [start.y - GAP.1, words_at];
    let lengths = [MM.0, IN.0].into_iter().zip(heights).zip(english::CHECK_LENGTHS).map(|((length, y), words)| {
        Type::TINY.mark(words, Point::new(start.x + length + BEFORE_LENGTH, y), Anchor::Start)
    });
    let marks = edges.map(line).into_iter().chain([words]).chain(lengths).collect();
    Mark::figure(english::figure(&Alternative::Bar), marks)
}

/// A line of a length with ticks every so many mm, on its one side or the other.
fn edge(start: Point, (length, every): (f64, f64), side: f64) -> Vec<crate::paint::mark::Segment> {
    let count = (length / every).round() as u32;
    let tick = |at: u32| {
        let long = if at == 0 || at == count { TICKS.0 } else { TICKS.1 };
        let foot = start + Point::new(every * f64::from(at), 0.0);
        outline::line(foot, foot + Point::new(0.0, side * long))
    };
    let line = outline::line(start, start + Point::new(length, 0.0));
    std::iter::once(line).chain((0..=count).map(tick)).flatten().collect()
}
