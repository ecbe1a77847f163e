//! What is said of a piece on the neck.

use crate::design::{Cord, Design, Index, Stated, Strand};
use crate::trade::lengths::NecklaceName;
use crate::units::Length;

/// What is said below the piece on the neck.
pub enum OnNeck<'a> {
    /// Of a piece whose ends hang free: how they lie is the wearer's choice, and nothing holds them.
    Free,
    /// Of a piece that is shown there.
    Shown(Neck<'a>),
}

/// What a figure of a piece on the neck shows and assumes.
pub struct Neck<'a> {
    /// Whose it is.
    pub design: &'a Design,
    /// How far each strand hangs below the front of the neck, if it does.
    pub drops: Vec<(Index<Strand>, Option<Length>)>,
    /// Whether something hangs lower than the strands themselves.
    pub has_branches: bool,
    /// Whether it is shorter than the neck's base is round.
    pub is_short: bool,
    /// What the trade calls its length, with the least that is called so, and the most.
    pub trade: Option<(NecklaceName, Length, Option<Length>)>,
    /// How its ends are drawn.
    pub ends: EndsInFront<'a>,
    /// Whether it has flat beads.
    pub has_flat: bool,
    /// How its closure is drawn.
    pub hooked: Hooked,
    /// Whether it lies as it does by a stiffness that its pattern does not say.
    pub assumes_wire: bool,
    /// The cords that it is taken to have no stiffness of, where its pattern does not say so.
    pub limp: Vec<&'a Cord>,
}

/// What becomes of a piece's ends in front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EndsInFront<'a> {
    /// Nothing: they are joined.
    Joined,
    /// They meet in something.
    Meet,
    /// The last goes through a ring, and hangs so far down from there, what it ends in counted.
    Through(Stated<Length>, Option<&'a str>),
}

/// How a closure is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hooked {
    /// In its only way.
    AsItIs,
    /// As short as it goes.
    Shortest,
    /// With so much of its extender let out.
    LetOut(Length),
}
