//! What is said about what names mean, in English.

use crate::english::{commas, plural};
use crate::remark::said::naming::{Naming, Thing};

use super::words::meant_or;

/// What was found.
pub fn headline(said: &Naming) -> String {
    match said {
        Naming::Unknown { thing, id, .. } => format!("the pattern defines no {} `{id}`", word(*thing)),
        Naming::RunTogether { entry } => format!("the pattern defines no bead `{entry}`"),
        Naming::BareKnot => "the pattern defines no bead `knot`".to_owned(),
        Naming::NotA { thing, id, is } => format!("`{id}` is a {}, and a {} belongs here", word(*is), word(*thing)),
        Naming::NoVariant { thing, name, .. } => format!("the pattern has no {} `{name}`", word(*thing)),
        Naming::Twice { thing, name } => format!("two {} are called {name}", plural(2, word(*thing))),
        Naming::Unused { thing, id } => format!("the {} `{id}` is not used", word(*thing)),
    }
}

/// What to change.
pub fn help(said: &Naming) -> String {
    match said {
        Naming::Unknown { thing, known, meant, .. } => meant_or(meant.as_deref(), || defined(*thing, known)),
        Naming::RunTogether { .. } => {
            "write a comma between two beads, and before a bead how many: `20 reed, 3 mist`".to_owned()
        }
        Naming::BareKnot => "write a knot with the cord that it takes up: `{ knot: 2 mm }`".to_owned(),
        Naming::NotA { thing, .. } => format!("write the id of a {}", word(*thing)),
        Naming::NoVariant { thing, known, meant, .. } => meant_or(meant.as_deref(), || variants(*thing, known)),
        Naming::Twice { thing, .. } => format!("give each {} its own name", word(*thing)),
        Naming::Unused { .. } => "string it, or take it out of the pattern".to_owned(),
    }
}

const fn word(thing: Thing) -> &'static str {
    match thing {
        Thing::Bead => "bead",
        Thing::Cord => "cord",
        Thing::Finding => "finding",
        Thing::Assortment => "assortment",
        Thing::Strand => "strand",
        Thing::Size => "size",
        Thing::Colourway => "colourway",
    }
}

fn defined(thing: Thing, known: &[String]) -> String {
    match known {
        [] => format!("the pattern defines no {} at all: write it first", word(thing)),
        known => format!("the pattern defines: {}", commas(known)),
    }
}

fn variants(thing: Thing, known: &[String]) -> String {
    match known {
        [] => format!("the pattern has no {}", plural(0, word(thing))),
        known => format!("the pattern's {} are: {}", plural(2, word(thing)), commas(known)),
    }
}
