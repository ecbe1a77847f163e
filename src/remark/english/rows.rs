//! What is said about rows that are worked out, in English.

use crate::english::commas;
use crate::remark::said::rows::{MixKind, Rows};

use super::words::meant_or;

/// What was found.
pub fn headline(said: &Rows) -> String {
    match said {
        Rows::NoGrades => "a graduated row of no beads".to_owned(),
        Rows::GradesTooLong { least } => format!("a row of these sizes takes at least {:.0} mm", least.value().ceil()),
        Rows::FadeToItself { id } => format!("a fade from {id} to {id} is no fade"),
        Rows::FadeOfOne { id } => format!("a fade of one bead is {id} alone"),
        Rows::NoMix => "a mix `of` no beads".to_owned(),
        Rows::NoneOf { beads, id } => format!("of {beads} beads none would be {id}"),
        Rows::NotInMix { id, .. } => format!("`{id}` is not in this mix"),
        Rows::TooLargePart { part, all, apart, kind: MixKind { id, .. } } => {
            format!("{part} of {all} parts are {id}, and of a long row only 1 bead in {apart} can stand apart")
        }
        Rows::TooManyOf { beads, count, most, kind: MixKind { id, .. } } => {
            format!("of {beads} beads {count} are {id}, and only {most} can stand apart")
        }
        Rows::NoOrder => "no order keeps these beads so far apart".to_owned(),
    }
}

/// What to change.
pub fn help(said: &Rows) -> String {
    let plain = match said {
        Rows::GradesTooLong { least } => {
            return format!("write `length: {:.0} mm` or more, or fewer sizes", least.value().ceil());
        }
        Rows::NotInMix { known, meant, .. } => {
            return meant_or(meant.as_deref(), || format!("the mix holds {}", commas(known)));
        }
        Rows::TooLargePart { kind, .. } | Rows::TooManyOf { kind, .. } => return less_of(kind),
        Rows::NoGrades => "write its beads from an end to the middle, like `graduate: [small, large]`",
        Rows::FadeToItself { .. } => "name two beads",
        Rows::FadeOfOne { .. } => "write at least 2",
        Rows::NoMix => "name its beads with their parts, like `of: { mist: 3, reed: 1 }`",
        Rows::NoneOf { .. } => "string more, or give it more parts",
        Rows::NoOrder => "write a smaller `apart:`",
    };
    plain.to_owned()
}

/// What to do where there is too much of a kind to keep it apart.
fn less_of(MixKind { id, others }: &MixKind) -> String {
    let others: Vec<_> = others.iter().map(|id| format!("{id}: 1")).collect();
    let each = format!(", or `apart: {{ {} }}` to keep only those apart", commas(&others));
    format!("write `apart: 0`{}, or give {id} fewer parts", if others.is_empty() { "" } else { &each })
}
