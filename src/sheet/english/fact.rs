//! Facts in English.

use crate::design::{Design, Stated};
use crate::drape::{hung_length, piece_length, ring};
use crate::english::times;
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::sheet::fact::{self, Fact, LengthAlong, Limb};
use crate::units::{Mass, UnitStyle};

/// A fact's name and the fact.
#[must_use]
pub fn fact(fact: &Fact, units: UnitStyle) -> (&'static str, String) {
    match fact {
        Fact::Kind(kind) => ("kind", self::kind(*kind).to_owned()),
        Fact::Length(along, lengths) => (self::along(*along), units.range(*lengths)),
        Fact::Limb(limb, girth) => (self::limb(*limb), units.ruler(*girth)),
        Fact::InsideGirth(girths) => ("inside girth", units.range(*girths)),
        Fact::Wraps(wraps) => ("goes round", times(*wraps)),
        Fact::Twist(turns) => ("twisted", times(*turns)),
        Fact::Weight(mass) => ("weight", weight(*mass)),
        Fact::Skill(skill) => ("skill", skill.to_string()),
        Fact::Time(time, dries) => ("time", time.clone() + if *dries { ", glue to dry besides" } else { "" }),
    }
}

/// A weight to the gram; about so much where a mass is assumed that goes into it.
fn weight(mass: Stated<Mass>) -> String {
    format!("{}{:.0} g", if mass.is_assumed() { "about " } else { "" }, mass.value().max(1.0))
}

/// What a piece's length is called.
#[must_use]
pub const fn along(along: LengthAlong) -> &'static str {
    match along {
        LengthAlong::Down => "top to lowest point",
        LengthAlong::EndToEnd { several: false } => "end to end",
        LengthAlong::EndToEnd { several: true } => "end to end, shortest strand",
        LengthAlong::OnWire => "on the wire, loop to loop",
        LengthAlong::AllRound => "closed, all its turns",
        LengthAlong::Round { several: false } => "closed, once round",
        LengthAlong::Round { several: true } => "closed, shortest strand",
    }
}

/// What the length of what a design makes is called.
#[must_use]
pub fn length_fact(design: &Design) -> &'static str {
    along(fact::along(design))
}

/// How many times what a design makes goes round, where that is more than once, and what that is called.
#[must_use]
pub fn wraps(design: &Design, units: UnitStyle) -> Option<(&'static str, String)> {
    fact::wraps(design).map(|wraps| fact(&wraps, units))
}

/// What a design is made to go round, and how far round that is.
#[must_use]
pub fn worn_round(design: &Design, units: UnitStyle) -> Option<(&'static str, String)> {
    fact::worn_round(design).map(|round| fact(&round, units))
}

/// What the name is called that the trade has for a length.
pub const CALLED: &str = "trade name of its length";

/// What the trade calls the length of a grown wearer's necklace, and what that name is called.
#[must_use]
pub fn called(design: &Design) -> Option<(&'static str, String)> {
    fact::trade_length(design).map(|(name, ..)| (CALLED, name.to_owned()))
}

/// The girth inside what a design makes, closed to a ring, and what that is called.
#[must_use]
pub fn inside(design: &Design, units: UnitStyle) -> Option<(&'static str, String)> {
    Some(fact(&Fact::InsideGirth(ring::inside(design)?), units))
}

/// How many times the strands of what a design makes are twisted, where they are, and what that is called.
#[must_use]
pub fn twist(design: &Design, units: UnitStyle) -> Option<(&'static str, String)> {
    fact::twist(design).map(|twist| fact(&twist, units))
}

const fn limb(limb: Limb) -> &'static str {
    match limb {
        Limb::NeckBase => "for a neck base of",
        Limb::Wrist => "for a wrist of",
        Limb::Ankle => "for an ankle of",
    }
}

/// A kind of piece, with how many are made.
#[must_use]
pub const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Earrings => "earrings, a pair",
        other => other.word(),
    }
}

/// How printed lengths are rounded, where some of them add up to others.
#[must_use]
pub fn rounding(units: UnitStyle) -> String {
    let nearest = match units {
        UnitStyle::In => "1⁄16 in",
        UnitStyle::Mm => "millimetre",
        UnitStyle::Both => "1⁄16 in and millimetre",
    };
    format!(
        "Every length is rounded by itself, to the nearest {nearest}, short ones finer and long ones coarser: sums may \
         differ a little."
    )
}

/// A piece's length, and its range where an extender gives one.
#[must_use]
pub fn finished(piece: &Piece, units: UnitStyle) -> String {
    units.range(piece_length(&piece.design, &piece.drape))
}

/// The length of what a design makes, and its range where an extender gives one.
#[must_use]
pub fn length(design: &Design, units: UnitStyle) -> String {
    units.range(hung_length(design))
}
