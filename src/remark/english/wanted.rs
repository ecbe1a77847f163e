//! What may stand in a pattern, and what is meant in its place, in English.

use crate::remark::said::wanted::{Found, Wanted};

/// What stands there.
pub const fn found(found: Found) -> &'static str {
    match found {
        Found::Nothing => "nothing",
        Found::Value => "a single value",
        Found::List => "a list",
        Found::Group => "a group of keys",
        Found::SeveralKeys => "a group of several keys",
    }
}

/// What is meant, with its article.
pub const fn wanted(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::Text => "a text",
        Wanted::List => "a list",
        Wanted::Keys => "a group of keys",
        Wanted::Entries => "a group of named entries",
        Wanted::Code => "the code of a warning or advice",
        Wanted::Beads => "a bead such as `4 reed`",
        Wanted::FindingLength => "one finding and its length",
        Wanted::Length => "a length such as 17 1/2 in",
        Wanted::Change => "a change such as -1 in",
        Wanted::Mass => "a mass such as 0.29 g",
        Wanted::PerMetre => "a mass for each metre such as 0.6 g/m",
        Wanted::Force => "a force such as 60 N",
        Wanted::Price => "a price such as 4.20",
        Wanted::Overhead => "a sum such as 2.50, or a share such as 15 %",
        Wanted::Time => "a time such as 1.5 h",
        Wanted::Whole => "a whole number",
        Wanted::WholeOrNone => "a whole number, or 0",
        Wanted::Factor => "a number such as 2.5",
        Wanted::Ratio => "a ratio such as 1.2",
        Wanted::Turns => "a number of turns such as 3 or 3 1/2",
        Wanted::Angle => "an angle such as 20 deg",
        Wanted::Stiffness => "a stiffness such as 1.8 N mm²",
        Wanted::YesNo => "yes or no",
        Wanted::Colour => "a colour such as \"#5d7f5b\"",
        Wanted::BeadSize => "a size such as 6 mm",
        Wanted::Measurement => "a measurement such as 10 = 59 mm",
        Wanted::Within => "a length with its margin such as 12 in within 1/4 in",
        Wanted::Body => "a body such as woman 50",
        Wanted::UnitStyle => "in, mm or both",
        Wanted::Kind => "a kind of piece",
        Wanted::Skill => "a level of skill",
        Wanted::Shape => "a bead shape",
        Wanted::Drilled => "a way to drill",
        Wanted::Outline => "an outline",
        Wanted::Finish => "a bead finish",
        Wanted::CordKind => "a kind of cord",
        Wanted::FindingKind => "a kind of finding",
        Wanted::Settle => "a way to settle",
        Wanted::Open => "a way to wear an open necklace",
        Wanted::SoldBy => "a way to sell",
    }
}
