//! What a picture shows: the piece laid down, closed, in a pair, or on the bust.

use crate::Piece;
use crate::art::Stencils;
use crate::geometry::Point;
use crate::pattern::Kind;
use crate::sheet::figure::{self, Extent, Frame};
use crate::sheet::mark::Mark;

use super::{Ground, shade, worn};

/// Room between the two earrings of a pair, as a share of one's width, and at least so many mm.
const PAIR_GAP: (f64, f64) = (0.9, 14.0);

/// A piece and the way it is shown.
pub struct Subject<'a> {
    /// The piece.
    pub piece: &'a Piece,
    pose: Pose,
}

enum Pose {
    Laid,
    Closed(Extent),
    Pair,
    Worn(worn::Bearing),
}

impl<'a> Subject<'a> {
    /// The way to show a piece on a ground.
    pub fn of(piece: &'a Piece, ground: Ground) -> Self {
        let on_bust = (ground == Ground::Neck).then(|| worn::Bearing::of(piece)).flatten();
        let pose = match (on_bust, figure::ring_extent(piece)) {
            (Some(bearing), _) => Pose::Worn(bearing),
            (None, Some(extent)) => Pose::Closed(extent),
            (None, None) if piece.design.heading.kind == Kind::Earrings => Pose::Pair,
            (None, None) => Pose::Laid,
        };
        Self { piece, pose }
    }

    /// The box round all of it, in its own frame.
    pub fn extent(&self) -> Extent {
        match &self.pose {
            Pose::Laid => laid_extent(self.piece),
            Pose::Closed(extent) => *extent,
            Pose::Pair => {
                let one = laid_extent(self.piece);
                let other = Point::new(pair_step(one), 0.0);
                one.and(Extent { low: one.low + other, high: one.high + other })
            }
            Pose::Worn(bearing) => bearing.extent(),
        }
    }

    /// Its marks in a frame.
    pub fn marks(&self, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        match &self.pose {
            Pose::Laid => vec![laid(self.piece, frame, stencils)],
            Pose::Closed(_) => {
                let ring = figure::ring(self.piece, frame, stencils).unwrap_or_default();
                vec![shade::resting(vec![shade::touching(ring)])]
            }
            Pose::Pair => {
                let step = pair_step(laid_extent(self.piece));
                let other = Frame { origin: frame.origin + Point::new(step * frame.scale, 0.0), ..*frame };
                vec![laid(self.piece, frame, stencils), laid(self.piece, &other, stencils)]
            }
            Pose::Worn(bearing) => bearing.marks(self.piece, frame, stencils),
        }
    }
}

/// The box round strands and closure, in the drape's frame.
fn laid_extent(piece: &Piece) -> Extent {
    let strands = figure::outline_box(piece).unwrap_or(Extent { low: Point::ORIGIN, high: Point::ORIGIN });
    let closure = figure::closing(piece).and_then(|closing| closing.extent(&piece.design));
    closure.map_or(strands, |closure| strands.and(closure))
}

fn pair_step(one: Extent) -> f64 {
    one.width() + (one.width() * PAIR_GAP.0).max(PAIR_GAP.1)
}

/// The strands, the longest first, so that shorter ones lie over longer ones, and the closure.
fn laid(piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Mark {
    let mut marks: Vec<_> = figure::longest_first(piece)
        .into_iter()
        .map(|index| {
            let (strand, hung) = (&piece.design.strands[index], &piece.drape.strands[index]);
            let label = format!("strand {}", strand.name);
            let marks = figure::strand(&piece.design, strand, hung, frame, stencils);
            Mark::Group { label, marks: vec![shade::touching(marks)] }
        })
        .collect();
    let bars = figure::bars(piece, frame, stencils);
    marks.extend(Some(bars).filter(|bars| !bars.is_empty()).map(shade::touching));
    let closing = figure::closing(piece).map(|closing| closing.marks(&piece.design, frame, stencils));
    marks.extend(closing.filter(|marks| !marks.is_empty()).map(shade::touching));
    shade::resting(marks)
}
