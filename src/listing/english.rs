//! What a listing says, in English.

use super::{Constituent, Listing};
use crate::pattern::Kind;
use crate::units::{Length, UnitStyle};

/// The headings of a listing, in order.
pub const HEADINGS: [&str; 8] = [
    "What is in it",
    "Lengths, laid",
    "Lengths, worn",
    "Materials, as the maker declares them",
    "Sizes",
    "Colourways",
    "Care",
    "The picture in words",
];

/// What it is, and the pattern's own sentence.
pub fn opening(listing: &Listing) -> String {
    let mut is = listing.is.clone();
    if let Some(first) = is.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    let by = listing.designer.iter().map(|designer| format!(" Designed by {designer}."));
    let summary = listing.summary.iter().map(|summary| format!(" {summary}"));
    std::iter::once(format!("{is}.")).chain(summary).chain(by).collect()
}

/// How many of something are in it, and its sizes.
pub fn content(content: &Constituent) -> String {
    let count = content.count.map(|count| format!("{count} × ")).unwrap_or_default();
    format!("{count}{} ({})", content.name, content.is)
}

/// A strand's length is called so.
pub fn strand(name: &str, is_twisted: bool) -> String {
    format!("strand {name}{}", if is_twisted { ", before twisting" } else { "" })
}

/// For whose limb a closed piece of a kind is made.
pub const fn made_for(kind: Kind) -> Option<&'static str> {
    match kind {
        Kind::Bracelet => Some("made for a wrist of"),
        Kind::Anklet => Some("made for an ankle of"),
        Kind::Necklace => Some("made for a neck, at its base, of"),
        Kind::Earrings | Kind::Strap => None,
    }
}

/// The girth inside a ring is called so.
pub const INSIDE: &str = "measures inside";

/// How far a strand, named where there are several, hangs is called so; below a neck that was told, or one of a girth.
pub fn hangs(told: bool, girth: Length, strand: Option<&str>, units: UnitStyle) -> String {
    let neck = if told { "that neck".to_owned() } else { format!("a neck of {} at its base", units.ruler(girth)) };
    let which = strand.map(|name| format!(", strand {name}")).unwrap_or_default();
    format!("hangs below the front of {neck}{which}")
}

/// What a size without a name is called.
pub const AS_WRITTEN: &str = "as written";

/// For whose girth a size is.
pub fn whose(girth: Length, units: UnitStyle) -> String {
    format!(", for {}", units.ruler(girth))
}
