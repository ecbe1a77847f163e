//! What is printed in drawings, beside what is drawn.

use crate::design::Phrase;
use crate::units::Length;

/// A length of bare cord in a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BareCord {
    /// Along which beads slide, so that it is not fixed.
    About(Length),
    /// Of chain: links in which nothing hangs.
    Links(u64),
    /// Any other.
    Fixed(Length),
}

/// Repeats that are left out of a row.
pub struct LeftOut {
    /// How many.
    pub times: usize,
    /// What is repeated.
    pub list: Vec<Phrase>,
    /// Whether it is strung backwards.
    pub backwards: bool,
    /// How many beads they have, branches included.
    pub beads: usize,
    /// Length of cord that they take.
    pub length: Length,
}

/// How far down something hangs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HangsDown {
    /// A strand itself.
    Strand(Length),
    /// A strand with its dangles.
    Dangles(Length),
    /// A strand with what hangs where its ends meet.
    Meeting(Length),
}
