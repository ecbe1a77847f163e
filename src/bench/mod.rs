//! The piece on the bench: its drawing as it is worked on, and where each thing strung lies in the drawing and
//! in the pattern's text.
//!
//! A bracelet is drawn closed, with all its rows; everything else as it hangs.

mod plain;
mod things;

use std::sync::Arc;

use crate::art::{Ink, Stencils};
use crate::design::{Entries, Index, Strand};
use crate::drape::Hung;
use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Mark, Page};
use crate::piece::Piece;
use crate::sheet::figure::{self, Canvas, Frame};

pub use plain::plain;
use things::things;
pub use things::{Of, Thing};

/// Room round the piece, as a share of the drawing's longer side.
const MARGIN: f64 = 0.04;
/// Room between the rows of two strands, in mm.
const ROWS_APART: f64 = 7.0;

/// A piece as it is drawn on the bench.
#[non_exhaustive]
pub struct Bench {
    /// The drawing, at the piece's own size.
    pub page: Page,
    /// What is strung, strand by strand, in order.
    pub things: Vec<Thing>,
    /// One a strand that hangs between two points: its lowest point on the page.
    pub lows: Vec<(Index<Strand>, Point)>,
}

/// Draws a piece in an ink.
#[must_use]
pub fn bench(piece: &Piece, ink: Ink) -> Bench {
    let closed = figure::ring_extent(piece);
    let hung = laid(piece, closed.is_some());
    let extent = closed.unwrap_or_else(|| figure::hanging_extent(piece));
    let margin = extent.width().max(extent.height()) * MARGIN;
    let frame = Frame { origin: Point::new(margin - extent.low.x, margin + extent.high.y), scale: 1.0 };
    let stencils = Stencils::new(&piece.design, &piece.palette, ink);
    let canvas = Canvas::new(frame, &stencils);
    let marks =
        if closed.is_some() { figure::ring(piece, canvas).unwrap_or_default() } else { open(piece, &hung, canvas) };
    let size = (extent.width() + 2.0 * margin, extent.height() + 2.0 * margin);
    let lows = if closed.is_some() { Vec::new() } else { lows(&hung, &frame) };
    Bench { page: page(piece, size, marks, stencils), things: things(&piece.design, &hung, &frame), lows }
}

/// Every strand laid straight in lines of a width in mm, at actual size with its ruler.
#[must_use]
pub fn rows(piece: &Piece, width: f64, ink: Ink) -> Page {
    let stencils = Stencils::new(&piece.design, &piece.palette, ink);
    let strand = |index| {
        let row = figure::row(piece, index, width, &stencils);
        let name = Type::STRONG.line(&piece.design.strands[index].name);
        Block::stack(std::iter::once(name).chain(row.lines), ROWS_APART / 2.0)
    };
    let strands: Vec<_> = piece.design.strands.indices().map(strand).collect();
    let block = Block::stack(strands, ROWS_APART);
    page(piece, (width, block.height), block.marks, stencils)
}

/// The strands as they are drawn, in the figure's frame.
fn laid(piece: &Piece, closed: bool) -> Entries<Option<Hung>, Strand> {
    if closed { figure::rows(piece) } else { piece.drape.strands.iter().cloned().map(Some).collect() }
}

fn open(piece: &Piece, hung: &Entries<Option<Hung>, Strand>, canvas: Canvas<'_>) -> Vec<Mark> {
    let hung = hung.iter().map(Option::as_ref).collect();
    let closing = figure::closing(piece);
    let closure = closing.map(|closing| closing.layers(canvas)).unwrap_or_default();
    closure.around(figure::strands(&hung, canvas))
}

/// The lowest point of each strand that hangs between two.
fn lows(hung: &Entries<Option<Hung>, Strand>, frame: &Frame) -> Vec<(Index<Strand>, Point)> {
    let low = |(strand, hung): (Index<Strand>, &Option<Hung>)| {
        let hung = hung.as_ref().filter(|hung| hung.drop > 0.0 && hung.ends[0] != hung.ends[1])?;
        let lowest = hung.joints.iter().min_by(|one, other| one.at.y.total_cmp(&other.at.y))?;
        let middle = hung.ends[0].x.midpoint(hung.ends[1].x);
        Some((strand, frame.page(Point::new(middle, lowest.at.y))))
    };
    hung.entries().filter_map(low).collect()
}

fn page(piece: &Piece, (width, height): (f64, f64), marks: Vec<Mark>, stencils: Stencils<'_>) -> Page {
    Page {
        width,
        height,
        title: piece.design.heading.title.clone(),
        description: crate::picture::alternative(piece),
        symbols: Arc::from(stencils.into_symbols()),
        marks,
    }
}
