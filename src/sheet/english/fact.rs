//! Facts in English.

use crate::design::{Design, Stated};
use crate::drape::{hung_length, piece_length};
use crate::english::times;
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::sheet::fact::{Fact, LengthAlong, Limb};
use crate::units::{Mass, UnitStyle};

/// What a fact is called.
#[must_use]
pub const fn named(fact: &Fact) -> &'static str {
    match fact {
        Fact::Kind(_) => "kind",
        Fact::Length(along, _) => self::along(*along),
        Fact::Limb(limb, _) => self::limb(*limb),
        Fact::InsideGirth(_) => "inside girth",
        Fact::Wraps(_) => "goes round",
        Fact::Twist(_) => "twisted",
        Fact::Weight(_) => "weight",
        Fact::Skill(_) => "skill",
        Fact::Time(..) => "time",
    }
}

/// The fact below its name.
#[must_use]
pub fn fact(fact: &Fact, units: UnitStyle) -> String {
    match fact {
        Fact::Kind(kind) => self::kind(*kind).to_owned(),
        Fact::Limb(_, girth) => units.ruler(*girth),
        Fact::Length(_, range) | Fact::InsideGirth(range) => units.range(*range),
        Fact::Wraps(turns) | Fact::Twist(turns) => times(*turns),
        Fact::Weight(mass) => weight(*mass),
        Fact::Skill(skill) => skill.to_string(),
        Fact::Time(time, dries) => time.clone() + if *dries { ", glue to dry besides" } else { "" },
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

/// What the name is called that the trade has for a length.
pub const CALLED: &str = "trade name of its length";

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
    let step = match units {
        UnitStyle::In => "1⁄16 in",
        UnitStyle::Mm => "millimetre",
        UnitStyle::Both => "1⁄16 in and millimetre",
    };
    format!(
        "Every length is rounded by itself, cuts up to the next {step}, others to the nearest: sums may differ a little."
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
