//! A bracelet or anklet closed: its rows and its closure round the limb.
//!
//! One row is seen along the limb, as a true ring, its flat beads turned as they lie on a table: with their faces up. Several side by side, or one that goes round more than once, are
//! seen from a little above, see [`coil`](super::coil), the first row lowest.

use crate::art::{Ink, Stencils};
use crate::design::{Bead, Design, Entries, Index, Part, Strand};
use crate::drape::{Hung, Ring, fall};
use crate::geometry::{Extent, Point, path};
use crate::paint::mark::Mark;
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::{Alternative, SeenAs};
use crate::units::Length;

use super::bars::bars;
use super::coil::{Seen, from_above, level, raised, shortened};
use super::extender::{DrawnIn, hooked, joined, overlap};
use super::strands::{Sketch, strand_box, strands};
use super::{Canvas, ClosureWay, Frame, Layers, mouths};

/// How far in mm the closure's way is level where it leaves the rows.
const LEVEL_START: f64 = 0.1;

/// The closed piece about the frame's origin, the middle of its first row at the foot.
pub fn ring(piece: &Piece, canvas: Canvas<'_>) -> Option<Vec<Mark>> {
    let tightest = piece.drape.ring()?;
    let rows = rows(piece);
    let closure = closing(tightest, &rows, piece, canvas);
    let rows = rows.iter().map(Option::as_ref).collect();
    let mut marks = laid(&rows, canvas);
    marks.extend(bars(&rows, canvas));
    Some(vec![Mark::figure(english::figure(&Alternative::Closed), closure.around(marks))])
}

/// The rows: of what meets on the page the higher is nearer.
fn laid(rows: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>) -> Vec<Mark> {
    let design = canvas.design();
    if design.twist.is_some() {
        return strands(rows, canvas);
    }
    let laid = design.strands.iter().zip(rows).filter_map(|(strand, hung)| Some((strand, (*hung)?)));
    laid.flat_map(|(strand, hung)| Sketch::new(strand, hung, canvas).strand()).collect()
}

/// The box round the closed piece: its rows, and all that is drawn of the closure and of bars across the rows.
pub fn ring_extent(piece: &Piece) -> Option<Extent> {
    let tightest = piece.drape.ring()?;
    let rows = rows(piece);
    closed_box(piece, &rows, |canvas| closing(tightest, &rows, piece, canvas))
}

/// The box round strands, bars across them, and the closure.
pub fn closed_box(
    piece: &Piece,
    strands: &Entries<Option<Hung>, Strand>,
    closing: impl FnOnce(Canvas<'_>) -> Layers,
) -> Option<Extent> {
    let design = &piece.design;
    let rows = design.strands.iter().zip(strands);
    let boxes = rows.filter_map(|(strand, row)| strand_box(design, strand, row.as_ref()?));
    let stencils = Stencils::new(design, &piece.palette, Ink::Colour);
    let canvas = Canvas::new(Frame::ACTUAL, &stencils);
    let mut marks = closing(canvas).around(Vec::new());
    marks.extend(bars(&strands.iter().map(Option::as_ref).collect(), canvas));
    let drawn = stencils.around(&marks).map(|drawn| canvas.frame.piece(drawn));
    boxes.chain(drawn).reduce(Extent::and)
}

/// Every strand's row where it closes, as it is seen.
#[must_use]
pub fn rows(piece: &Piece) -> Entries<Option<Hung>, Strand> {
    let of = |(index, along): (Index<Strand>, Length)| {
        let ring = piece.drape.rings.iter().find(|ring| ring.strand == index)?;
        let round = || drawn_in(ring, piece).map_or_else(|| ring.round.clone(), |closed| closed.strand(&ring.round));
        Some(match &ring.coil {
            Some(coil) => Seen::new(coil).strand(&piece.design.strands[index], &ring.round),
            None if is_several(piece) => level(&round(), along.value()),
            None => round(),
        })
    };
    piece.design.strands.indices().zip(piece.design.abreast()).map(of).collect()
}

/// A ring that lies in a clasp that holds an extender.
fn drawn_in(ring: &Ring, piece: &Piece) -> Option<DrawnIn> {
    DrawnIn::of(&piece.design, &ring.closing, std::iter::once(&ring.round))
}

/// What is to be known of a figure before it is measured: from where it hangs, how it is seen, or that beads are turned
/// in it.
#[must_use]
pub fn seen_as(piece: &Piece) -> Option<SeenAs> {
    match piece.drape.ring() {
        None => over(piece),
        Some(_) if is_aslant(piece) => Some(SeenAs::FromAbove),
        Some(_) => piece.design.beads.iter().any(Bead::lies_flat).then_some(SeenAs::FacesUp),
    }
}

/// Over what a piece hangs that neither closes to a ring, nor hangs from an ear.
fn over(piece: &Piece) -> Option<SeenAs> {
    let apart = || SeenAs::HungApart(Length::mm(piece.drape.span));
    let hung = if fall::falls(&piece.design) { SeenAs::OverRail } else { apart() };
    (piece.design.heading.kind != Kind::Earrings).then_some(hung)
}

/// Whether the piece is seen from a little above.
fn is_aslant(piece: &Piece) -> bool {
    is_several(piece) || piece.drape.ring().is_some_and(|ring| ring.coil.is_some())
}

/// Whether rows lie side by side.
fn is_several(piece: &Piece) -> bool {
    piece.drape.rings.len() > 1 && piece.design.twist.is_none()
}

/// How high on the limb the closure lies: in the middle of the rows.
fn middle(design: &Design) -> f64 {
    design.abreast().last().map_or(0.0, |last| last.value() / 2.0)
}

/// Both sides of the closure, hooked up as short as it goes, along the joints in the gap.
fn closing(ring: &Ring, rows: &Entries<Option<Hung>, Strand>, piece: &Piece, canvas: Canvas<'_>) -> Layers {
    let (design, several) = (&piece.design, is_several(piece));
    let hooked = [design.closure.left(), design.closure.right()].map(hooked);
    let (outward, sides) = gap(ring, piece, hooked);
    let inward: Vec<_> = outward.iter().rev().copied().collect();
    let inward = if ring.coil.is_some() { inward } else { across_bars(inward) };
    let hangs = [&inward, &outward].map(|way| hangs(ring, way));
    let [first, last] = mouths(design, rows.iter().map(Option::as_ref));
    let ways = [ClosureWay { line: inward, mouth: first }, ClosureWay { line: outward, mouth: last }];
    let layers = joined(ways, sides, hangs, canvas);
    let layers = if several { layers.map(from_above) } else { layers };
    // What closes a coil lies over the turns between its ends.
    if ring.coil.is_some() { Layers { before: layers.around(Vec::new()), ..Layers::default() } } else { layers }
}

/// The way that the closure takes from the last ends to the first, as it is seen, and its sides: those of a coil are
/// shortened as the way is.
fn gap(ring: &Ring, piece: &Piece, sides: [Vec<Part>; 2]) -> (Vec<Point>, [Vec<Part>; 2]) {
    let design = &piece.design;
    if let Some(coil) = &ring.coil {
        let way = Seen::new(coil).closing(&design.strands[ring.strand]);
        let closed = design.closure_length().0.value() - overlap(design).unwrap_or_default();
        let share = path::length(&way) / closed.max(f64::MIN_POSITIVE);
        return (way, sides.map(|parts| shortened(&parts, share)));
    }
    let closed = drawn_in(ring, piece);
    let raise = |at: &Point| {
        let at = closed.as_ref().map_or(*at, |closed| closed.at(*at));
        if is_several(piece) { raised(at, middle(design)) } else { at }
    };
    (across_bars(ring.closing.iter().map(raise).collect()), sides)
}

/// Which way what is loose lies: outside a ring that lies flat, and below what is seen from above.
fn hangs(ring: &Ring, way: &[Point]) -> Point {
    let out = way.first().filter(|_| ring.coil.is_none()).map_or(-1.0, |first| first.y.signum());
    Point::new(0.0, out)
}

/// The way that a side of the closure takes from the rows, which a bar at their end, square to it, must cross:
/// it begins level.
fn across_bars(way: Vec<Point>) -> Vec<Point> {
    let Some(&[from, to]) = way.get(..2) else { return way };
    let level = from + Point::new(LEVEL_START.copysign(to.x - from.x), 0.0);
    [from, level].into_iter().chain(way.into_iter().skip(1)).collect()
}
