//! Colourways, in English.

use crate::palette::Colourway;

/// A colourway's name, and whether it is this sheet's.
pub fn colourway(way: &Colourway) -> String {
    let name = way.name.as_deref().unwrap_or("base colours");
    if way.chosen { format!("{name}, this sheet") } else { name.to_owned() }
}
