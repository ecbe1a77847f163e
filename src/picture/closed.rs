//! A necklace laid closed, in the frame of [`crate::drape::Closed`].

use crate::Piece;
use crate::art::Stencils;
use crate::drape::{self, Hung};
use crate::geometry::{Extent, Point};
use crate::paint::mark::Mark;
use crate::sheet::figure::{
    ClosureWay, DrawnIn, Frame, Layers, Track, closed_box, closing_on, hooked, joined, mouths, on_tracks,
};

use super::shade::Shade;
use super::subject::strung;

/// A piece that lies closed.
pub struct Arranged {
    tracks: Vec<Option<Track>>,
    strands: Vec<Option<Hung>>,
    closing: Vec<Point>,
}

impl Arranged {
    /// Lays a piece closed, where it closes behind a neck.
    pub fn of(piece: &Piece) -> Option<Self> {
        let drape::Closed { lines, closing } = drape::lay_closed(&piece.design, &piece.drape)?;
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
        let closure = |frame: &Frame, stencils: &mut Stencils<'_>| self.closure(piece, frame, stencils);
        closed_box(piece, &self.strands, closure).unwrap_or_default()
    }

    /// Its marks.
    pub fn marks(&self, piece: &Piece, shade: Shade, frame: &Frame, stencils: &mut Stencils<'_>) -> Mark {
        let closure = self.closure(piece, frame, stencils);
        let strands = strung(piece, &self.strands, shade, frame, stencils);
        shade.resting(shade.closed(strands, closure))
    }

    /// The closure, hooked up, and what of an extender is loose, which lies inside.
    fn closure(&self, piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Layers {
        if drape::fall::falls(&piece.design) {
            return closing_on(&self.tracks, piece, frame, stencils);
        }
        let closure = &piece.design.closure;
        let drawn = [closure.left(), closure.right()].map(hooked);
        let [first, last] = mouths(&piece.design, self.strands.iter().map(Option::as_ref));
        let inward = ClosureWay { line: self.closing.iter().rev().copied().collect(), mouth: first };
        let outward = ClosureWay { line: self.closing.clone(), mouth: last };
        let down = [Point::new(0.0, -1.0); 2];
        joined([inward, outward], drawn, down, &piece.design, frame, stencils)
    }
}
