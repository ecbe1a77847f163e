//! The face page: what the piece is and how it hangs.

use crate::Piece;
use crate::art::Stencils;
use crate::geometry::Point;

use super::Style;
use super::figure::{self, Extent, Frame, Scale};
use super::mark::{Mark, Page};
use super::style::MARGIN;

/// Draws the face page.
pub fn face(piece: &Piece, style: &Style) -> Page {
    let (width, height) = style.paper.size();
    let mut stencils = Stencils::new(&piece.design, style.ink);
    let marks = drape(piece, Point::new(MARGIN, 45.0), (width - 2.0 * MARGIN - 60.0, 190.0), &mut stencils);
    let heading = &piece.design.heading;
    Page {
        width,
        height,
        title: heading.title.clone(),
        description: heading.summary.clone().unwrap_or_default(),
        symbols: stencils.into_symbols(),
        marks,
    }
}

/// The drape in a room on the page, as large as a round scale allows.
fn drape(piece: &Piece, corner: Point, room: (f64, f64), stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let closing = figure::closing(piece);
    let strands = figure::outline_box(piece);
    let closure = closing.as_ref().and_then(|closing| closing.extent(&piece.design));
    let Some(strands) = strands else { return Vec::new() };
    let whole = closure.map_or(strands, |closure| strands.and(closure));
    let labels = figure::labels_width(piece);
    let scale = Scale::fitting((whole.width(), whole.height()), (room.0 - labels, room.1 - 10.0));
    let factor = scale.factor();
    let frame =
        Frame { origin: Point::new(corner.x - whole.low.x * factor, corner.y + whole.high.y * factor), scale: factor };
    let mut marks = figure::strands(piece, &frame, stencils);
    marks.extend(closing.iter().flat_map(|closing| closing.marks(&piece.design, &frame, stencils)));
    marks.extend(figure::labels(
        piece,
        &frame,
        Extent { high: Point::new(whole.high.x, strands.high.y), ..strands },
        corner.y,
    ));
    marks.extend(figure::scale_bar(Point::new(corner.x, corner.y + room.1), scale, piece.design.heading.units));
    marks
}
