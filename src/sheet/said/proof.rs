//! What is said of the lanes and strips of a proof.

use crate::steps::posts::MeasuredBetween;
use crate::units::Length;

/// What is laid in a lane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LaneName<'a> {
    /// A strand.
    Strand {
        /// Its name.
        name: &'a str,
        /// Its finished length.
        finished: Length,
        /// Between what that is measured.
        between: MeasuredBetween,
        /// Whether some of its beads slide.
        slides: bool,
    },
    /// A side of the closure, so long at its longest.
    Side(SideOf, Length),
}

/// Which side of a closure it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SideOf {
    /// The only one.
    Only,
    /// That of the strands' first ends.
    First,
    /// That of their last ends.
    Last,
}

/// How a strip joins others: those beside it by their numbers, those above and below it by their pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Join {
    /// The strip before it ends at a line.
    Before(usize),
    /// It is cut at a line and laid on the strip after it.
    After(usize),
    /// What is on the page before ends at a line.
    Above(usize),
    /// It is cut at a line and laid on the page after.
    Below(usize),
}
