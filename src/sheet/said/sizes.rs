//! What is compared between the sizes of a graded pattern.

use crate::sheet::fact::{Fact, LengthAlong};
use crate::steps::posts::Keeps;

/// What a row of the table of sizes tells of each.
#[derive(Clone, Debug, PartialEq)]
pub enum Compared<'a> {
    /// What such a fact is.
    Fact(&'a Fact),
    /// What the trade calls its length.
    Called,
    /// The length of the piece.
    Whole(LengthAlong),
    /// How often strands are twisted.
    Turned,
    /// By how much they draw in.
    DrawnIn,
    /// How far they reach from tip to tip of the cones over their ends.
    TipToTip,
    /// The length of twisted strands.
    Twisted,
    /// A length of strands, by their title.
    Length(&'a str, LengthOf),
    /// The bare cord between groups of strands, by their title.
    BetweenGroups(&'a str),
    /// How many knots are tied among the beads of strands, by their title.
    Knots(&'a str),
    /// How much cord those knots take up, by the strands' title.
    InKnots(&'a str),
    /// Where something stays on strands, by their title: its name, and what it is.
    Post(&'a str, &'a str, Keeps),
    /// A cord in all, by name.
    Cord(&'a str),
    /// How many of a bead, by letter and name.
    Bead(&'a str, &'a str),
}

/// What of a strand is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthOf {
    /// All of it.
    Finished,
    /// All of it with the cord that its bend takes up.
    Pulled,
    /// Its beads.
    Beads,
    /// Its bare cord.
    Bare,
    /// What is cut for it.
    Cut,
}
