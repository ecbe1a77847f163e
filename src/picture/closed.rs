//! A necklace laid closed, in the frame of [`crate::drape::Closed`], and a strap in a loose curve.

use crate::design::{Entries, Strand};
use crate::drape::{self, Hung};
use crate::geometry::{Extent, Point};
use crate::paint::mark::Mark;
use crate::piece::Piece;
use crate::sheet::figure::{
    Canvas, ClosureWay, DrawnIn, Layers, Track, closed_box, closing_on, hooked, joined, mouths, on_tracks,
};

use super::loose;
use super::shade::Shade;
use super::subject::strung;

/// A piece that a hand has laid out.
pub struct Arranged {
    tracks: Entries<Option<Track>, Strand>,
    strands: Entries<Option<Hung>, Strand>,
    /// The way between its ends; none where they lie apart.
    closing: Vec<Point>,
}

impl Arranged {
    /// Lays a piece closed, where it closes behind a neck, or in a loose curve, where it is a strap.
    pub fn of(piece: &Piece) -> Option<Self> {
        let closed = drape::lay_closed(&piece.design, &piece.drape);
        let loose = || Some(drape::Closed { lines: vec![loose::way(&piece.design)?].into(), closing: Vec::new() });
        let drape::Closed { lines, closing } = closed.or_else(loose)?;
        let tracks = Track::all(&lines);
        let laid = on_tracks(piece, &tracks);
        let Some(closed) = DrawnIn::of(&piece.design, &closing, laid.iter().flatten()) else {
            return Some(Self { strands: laid, tracks, closing });
        };
        let strands = laid.iter().map(|hung| Some(closed.strand(hung.as_ref()?))).collect();
        Some(Self { strands, tracks, closing: closing.into_iter().map(|place| closed.at(place)).collect() })
    }

    /// The box round all of it.
    pub fn extent(&self, piece: &Piece) -> Extent {
        closed_box(piece, &self.strands, |canvas| self.closure(canvas)).unwrap_or_default()
    }

    /// Its marks.
    pub fn marks(&self, shade: Shade, canvas: Canvas<'_>) -> Mark {
        let closure = self.closure(canvas);
        let strands = strung(&self.strands, shade, canvas);
        shade.resting(shade.closed(strands, closure))
    }

    /// The closure as far as it is in front, or hooked up, and what of an extender is loose, which lies inside.
    fn closure(&self, canvas: Canvas<'_>) -> Layers {
        let design = canvas.design();
        if drape::fall::falls(design) || self.closing.is_empty() {
            return closing_on(&self.tracks, canvas);
        }
        let drawn = [design.closure.left(), design.closure.right()].map(hooked);
        let [first, last] = mouths(design, self.strands.iter().map(Option::as_ref));
        let inward = ClosureWay { line: self.closing.iter().rev().copied().collect(), mouth: first };
        let outward = ClosureWay { line: self.closing.clone(), mouth: last };
        let down = [Point::new(0.0, -1.0); 2];
        joined([inward, outward], drawn, down, canvas)
    }
}
