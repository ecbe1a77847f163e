//! The picture of the finished piece on a sheet's cover. The room `picture` makes it, and the sheet knows no more
//! of it than this.

use crate::geometry::Extent;
use crate::paint::mark::Mark;

use super::figure::Canvas;

/// A picture of a piece, in mm of the piece, without ground.
pub trait Illustration {
    /// The box round it.
    fn extent(&self) -> Extent;

    /// Whether it shows the piece as it hangs, which the drape does too.
    fn hangs(&self) -> bool;

    /// What it shows, in words, for those who cannot see it.
    fn alternative(&self) -> String;

    /// What is drawn, in the page's ink.
    fn marks(&self, canvas: Canvas<'_>) -> Vec<Mark>;
}
