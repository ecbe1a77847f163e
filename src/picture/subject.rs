//! What a picture shows: the piece laid down, closed, in a pair, or on the bust.

use crate::design::{Entries, Index, Strand};
use crate::drape::Hung;
use crate::geometry::{Extent, Point};
use crate::paint::mark::Mark;
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::figure::{self, Canvas, Layers, Sketch};
use crate::sheet::said::Alternative;

use super::closed::Arranged;
use super::shade::Shade;
use super::{Ground, mirror, worn};

/// Room between the two earrings of a pair, as a share of one's width, and at least so many mm.
const PAIR_GAP: (f64, f64) = (0.9, 14.0);

/// A piece and the way it is shown.
pub struct Subject<'a> {
    /// The piece.
    pub piece: &'a Piece,
    shade: Shade,
    pose: Pose<'a>,
}

enum Pose<'a> {
    /// As it hangs, its closure open.
    Open,
    /// A necklace laid closed, or a strap in a loose curve.
    Closed(Arranged),
    /// Round a limb.
    Ring(Extent),
    /// Two, mirrored in an upright line.
    Pair(f64),
    Worn(worn::Bearing<'a>),
}

impl<'a> Subject<'a> {
    /// The way to show a piece on a ground; a bust may be seen from so close that the frame cuts it.
    pub fn of(piece: &'a Piece, ground: Ground, close: bool) -> Self {
        let on_bust = (ground == Ground::Neck).then(|| worn::Bearing::of(piece, close)).flatten();
        let pose = match (on_bust, figure::ring_extent(piece)) {
            (Some(bearing), _) => Pose::Worn(bearing),
            (None, Some(extent)) => Pose::Ring(extent),
            (None, None) if piece.design.heading.kind == Kind::Earrings => {
                Pose::Pair(pair_axis(figure::hanging_extent(piece)))
            }
            (None, None) => Arranged::of(piece).map_or(Pose::Open, Pose::Closed),
        };
        Self { piece, shade: Shade::of(&piece.design, ground.is_dark()), pose }
    }

    /// Whether it is shown as it hangs, its closure open.
    pub const fn hangs(&self) -> bool {
        matches!(self.pose, Pose::Open)
    }

    /// The box round all of it, in its own frame.
    pub fn extent(&self) -> Extent {
        match &self.pose {
            Pose::Open => figure::hanging_extent(self.piece),
            Pose::Closed(closed) => closed.extent(self.piece),
            Pose::Ring(extent) => *extent,
            Pose::Pair(axis) => {
                let one = figure::hanging_extent(self.piece);
                let across = |at: Point| Point::new(2.0 * axis - at.x, at.y);
                one.and(Extent { low: across(one.high), high: across(one.low) })
            }
            Pose::Worn(bearing) => bearing.extent(),
        }
    }

    /// Its marks in a frame.
    pub fn marks(&self, canvas: Canvas<'_>) -> Vec<Mark> {
        match &self.pose {
            Pose::Open => vec![self.laid(canvas)],
            Pose::Closed(closed) => vec![closed.marks(self.shade, canvas)],
            Pose::Ring(_) => {
                let ring = figure::ring(self.piece, canvas).unwrap_or_default();
                vec![self.shade.resting(vec![self.shade.touching(ring)])]
            }
            Pose::Pair(axis) => vec![self.laid(canvas), self.mirrored(*axis, canvas)],
            Pose::Worn(bearing) => bearing.marks(self.piece, self.shade, canvas),
        }
    }

    fn laid(&self, canvas: Canvas<'_>) -> Mark {
        self.with_closing(&self.piece.drape.strands, closing(self.piece, canvas), canvas)
    }

    /// The other earring.
    fn mirrored(&self, axis: f64, canvas: Canvas<'_>) -> Mark {
        let mut piece = self.piece.clone();
        piece.drape.strands.iter_mut().for_each(|hung| *hung = mirror::strand(hung, axis));
        let closure = closing(&piece, canvas).map(|mark| mirror::upright(mark, canvas.stencils));
        self.with_closing(&piece.drape.strands, closure, canvas)
    }

    fn with_closing(&self, strands: &[Hung], closure: Layers, canvas: Canvas<'_>) -> Mark {
        let strands = strands.iter().cloned().map(Some).collect();
        let strands = strung(&strands, self.shade, canvas);
        self.shade.resting(self.shade.closed(strands, closure))
    }
}

/// Where the line is in which one earring is mirrored to give the other.
fn pair_axis(one: Extent) -> f64 {
    one.high.x + (one.width() * PAIR_GAP.0).max(PAIR_GAP.1) / 2.0
}

fn closing(piece: &Piece, canvas: Canvas<'_>) -> Layers {
    figure::closing(piece).map(|closing| closing.layers(canvas)).unwrap_or_default()
}

/// Most shadows that strands throw on one another: each is drawn as large as the picture, and where there
/// are more strands, several that follow one another share one.
const MOST_SHADOWS: usize = 4;

/// Strands where they are seen: the longest first, so that shorter
/// ones lie over longer ones, unless they are twisted or cross; and on them the bars that they share.
pub fn strung(strands: &Entries<Option<Hung>, Strand>, shade: Shade, canvas: Canvas<'_>) -> Vec<Mark> {
    let design = canvas.design();
    let hung: Entries<_, Strand> = strands.iter().map(Option::as_ref).collect();
    let bars = figure::bars(&hung, canvas);
    let bars = (!bars.is_empty()).then(|| shade.touching(bars));
    if figure::twined::are_twined(&hung, design) {
        return std::iter::once(twined(&hung, shade, canvas)).chain(bars).collect();
    }
    let figure = |index: Index<Strand>| {
        let hung = (*hung.get(index)?)?;
        let sketch = Sketch::new(&design.strands[index], hung, canvas);
        Some(sketch.named(sketch.strand()))
    };
    let figures: Vec<_> = figure::longest_first(design).into_iter().filter_map(figure).collect();
    let several = figures.len().div_ceil(MOST_SHADOWS).max(1);
    let mut marks: Vec<_> = figures.chunks(several).map(|some| shade.touching(some.to_vec())).collect();
    marks.extend(bars);
    marks
}

/// Twisted or crossing strands, the nearer of which throw shadows on the farther.
fn twined(hung: &Entries<Option<&Hung>, Strand>, shade: Shade, canvas: Canvas<'_>) -> Mark {
    let layers = figure::twined::layers(hung, canvas, MOST_SHADOWS);
    Mark::figure(
        english::figure(&Alternative::twined(canvas.design())),
        layers.into_iter().map(|layer| shade.touching(layer)).collect(),
    )
}
