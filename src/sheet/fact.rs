//! The short facts of a piece, as data; their words are in [`super::english`].

use crate::design::{Design, Stated};
use crate::drape::{piece_length, ring};
use crate::pattern::{Kind, Skill};
use crate::piece::Piece;
use crate::steps::tools::glues;
use crate::trade::lengths::{NecklaceName, length_name};
use crate::units::{Length, Mass};

/// A short fact.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// What sort of piece it is.
    Kind(Kind),
    /// How long it is, and at the longest where an extender gives a range.
    Length(LengthAlong, [Length; 2]),
    /// The girth of the limb that it is made for.
    Limb(Limb, Length),
    /// The girth that a ring goes round, and at the longest.
    InsideGirth([Length; 2]),
    /// How many times it goes round.
    Wraps(f64),
    /// How many times its strands are twisted.
    Twist(f64),
    /// What all copies weigh, assumed where a mass is that goes into it.
    Weight(Stated<Mass>),
    /// How much practice the maker should have.
    Skill(Skill),
    /// How long the work takes, in the designer's words, and whether glue is to dry besides.
    Time(String, bool),
}

/// How many times a piece goes round, where that is more than once.
pub fn wraps(design: &Design) -> Option<Fact> {
    let turns = design.turns();
    (turns > 1.0).then_some(Fact::Wraps(turns))
}

/// How many times its strands are twisted, where they are.
pub fn twist(design: &Design) -> Option<Fact> {
    design.twist.as_ref().map(|twist| Fact::Twist(twist.turns))
}

/// Along what a piece's length is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthAlong {
    /// From an earring's top to its lowest point.
    Down,
    /// From end to end, of strands alike or of the shortest of several.
    EndToEnd {
        /// Whether there are several lengths.
        several: bool,
    },
    /// All of a coil, along its wire.
    OnWire,
    /// All the way round when it is closed, of a strand that goes round more than once.
    AllRound,
    /// Once round when it is closed, along strands alike or the shortest of several.
    Round {
        /// Whether there are several lengths.
        several: bool,
    },
}

/// What a piece is worn round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limb {
    /// The base of the neck.
    NeckBase,
    /// The wrist.
    Wrist,
    /// The ankle.
    Ankle,
}

/// Short facts: kind, length, girth, weight, skill, time.
#[must_use]
pub fn facts(piece: &Piece) -> Vec<Fact> {
    let design = &piece.design;
    let heading = &design.heading;
    let ring = piece.drape.ring().map(|ring| [ring.inside_girth, ring.longest_girth].map(Length::mm));
    let facts = [
        Some(Fact::Kind(heading.kind)),
        Some(length(piece)),
        worn_round(design),
        wraps(design),
        twist(design),
        ring.map(Fact::InsideGirth),
        Some(weight(design)),
        heading.skill.map(Fact::Skill),
        heading.time.clone().map(|time| Fact::Time(time, glues(design))),
    ];
    facts.into_iter().flatten().collect()
}

/// How long a piece is.
pub fn length(piece: &Piece) -> Fact {
    Fact::Length(along(&piece.design), piece_length(&piece.design, &piece.drape))
}

/// The girth inside what a design makes, closed to a ring.
pub fn inside(design: &Design) -> Option<Fact> {
    ring::inside(design).map(Fact::InsideGirth)
}

/// What a piece is made to go round, and how far round that is.
pub fn worn_round(design: &Design) -> Option<Fact> {
    let limb = limb(design.heading.kind).filter(|_| !design.wear.is_guessed());
    limb.map(|limb| Fact::Limb(limb, design.wear.girth))
}

/// What the trade calls a closed necklace of its length on a grown neck, with the lengths that the name stands for.
pub fn trade_length(design: &Design) -> Option<(NecklaceName, Length, Option<Length>)> {
    let named = design.heading.kind == Kind::Necklace && design.closure.open().is_none() && !design.wear.child;
    length_name(design.piece_length().0).filter(|_| named)
}

/// What all copies of a piece weigh.
pub fn weight(design: &Design) -> Fact {
    Fact::Weight(design.told_mass().map(|one| one * f64::from(design.copies)))
}

/// Along what a design's length is measured.
pub fn along(design: &Design) -> LengthAlong {
    let several = design.has_shortest();
    match design.heading.kind {
        Kind::Earrings => LengthAlong::Down,
        Kind::Strap => LengthAlong::EndToEnd { several },
        _ if design.closure.open().is_some() => LengthAlong::EndToEnd { several },
        _ if design.sprung().is_some() => LengthAlong::OnWire,
        _ if design.wraps > 1.0 => LengthAlong::AllRound,
        Kind::Necklace | Kind::Bracelet | Kind::Anklet => LengthAlong::Round { several },
    }
}

/// The limb that a piece is made for.
pub const fn limb(kind: Kind) -> Option<Limb> {
    match kind {
        Kind::Necklace => Some(Limb::NeckBase),
        Kind::Bracelet => Some(Limb::Wrist),
        Kind::Anklet => Some(Limb::Ankle),
        Kind::Earrings | Kind::Strap => None,
    }
}
