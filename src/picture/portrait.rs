//! The picture of a piece on the cover of its sheet: on white paper, without shadows.

use crate::geometry::Extent;
use crate::paint::mark::Mark;
use crate::piece::Piece;
use crate::sheet::Illustration;
use crate::sheet::figure::Canvas;

use super::subject::Subject;
use super::{Ground, alternative, shade};

/// A piece as a picture shows it, to be set into a page.
pub struct Portrait<'a> {
    subject: Subject<'a>,
}

impl<'a> Portrait<'a> {
    /// The portrait of a piece.
    #[must_use]
    pub fn of(piece: &'a Piece) -> Self {
        Self { subject: Subject::of(piece, Ground::Transparent, false) }
    }
}

impl Illustration for Portrait<'_> {
    fn extent(&self) -> Extent {
        self.subject.extent()
    }

    fn hangs(&self) -> bool {
        self.subject.hangs()
    }

    fn alternative(&self) -> String {
        alternative(self.subject.piece)
    }

    fn marks(&self, canvas: Canvas<'_>) -> Vec<Mark> {
        self.subject.marks(canvas).into_iter().map(shade::without).collect()
    }
}
