//! Colourways, in English.

use crate::english::commas;
use crate::palette::Colourway;

/// A colourway's name, and whether it is this sheet's.
pub fn colourway(way: &Colourway) -> String {
    let name = way.name.as_deref().unwrap_or("base colours");
    if way.chosen { format!("{name}, this sheet") } else { name.to_owned() }
}

/// What a colourway calls beads, each behind its letter; nothing where it gives them no names.
pub fn names(way: &Colourway) -> String {
    commas(way.names.iter().map(|(letter, name)| format!("{letter}\u{a0}{name}")))
}
