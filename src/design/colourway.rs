//! The colourways of a pattern, for showing them beside one another.

use crate::paint::mark::Rgb;
use crate::pattern::{Pattern, Recolour};

use super::{Choice, Design};

/// One of the colourways that a pattern is made in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Colourway {
    /// Its name; the colours that the beads are written with have none.
    pub name: Option<String>,
    /// Whether it is the one that was asked for.
    pub chosen: bool,
    /// The colours of the design's beads, in their order.
    pub colours: Vec<Rgb>,
    /// What those of them that it names anew are called in it, by their letters.
    pub names: Vec<(String, String)>,
}

/// Every colourway, the beads' own colours first; nothing where the pattern names no other.
#[must_use]
pub fn colourways(pattern: &Pattern, design: &Design, choice: &Choice) -> Vec<Colourway> {
    let named = pattern.colourways.iter().flat_map(|ways| ways.ids());
    let all: Vec<_> = std::iter::once(None).chain(named.map(Some)).collect();
    let way = |name: Option<&str>| Colourway {
        name: name.map(str::to_owned),
        chosen: name == choice.colourway.as_deref(),
        colours: design.beads.iter().filter_map(|bead| colour(pattern, &bead.id, name)).collect(),
        names: design
            .beads
            .iter()
            .filter_map(|bead| Some((bead.letter.clone(), recoloured(pattern, &bead.id, name)?.name.clone()?)))
            .collect(),
    };
    if all.len() > 1 { all.into_iter().map(way).collect() } else { Vec::new() }
}

/// What a colourway says of a bead.
fn recoloured<'a>(pattern: &'a Pattern, id: &str, way: Option<&str>) -> Option<&'a Recolour> {
    pattern.colourways.as_ref()?.get(way?)?.get(id)
}

/// A bead's colour in a colourway, or its own.
fn colour(pattern: &Pattern, id: &str, way: Option<&str>) -> Option<Rgb> {
    let other = recoloured(pattern, id, way).map(|recolour| recolour.colour.0);
    other.or_else(|| Some(pattern.beads.get(id)?.colour.0))
}
