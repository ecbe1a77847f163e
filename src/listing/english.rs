//! What a listing says, in English.

use super::{Constituent, ListedFact, Listing, NamedFact};
use crate::english::capital;
use crate::sheet::english as sheet;
use crate::sheet::fact::Limb;
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
    let by = listing.designer.iter().map(|designer| format!(" Designed by {designer}."));
    let summary = listing.summary.iter().map(|summary| format!(" {summary}"));
    std::iter::once(format!("{}.", capital(&listing.is))).chain(summary).chain(by).collect()
}

/// How many of something are in it, and its sizes.
pub fn content(content: &Constituent) -> String {
    let count = content.count.map(|count| format!("{count} × ")).unwrap_or_default();
    format!("{count}{} ({})", content.name, content.is)
}

/// A fact with its name.
pub fn told(fact: &ListedFact<'_>, units: UnitStyle) -> NamedFact {
    let (name, value) = match fact {
        ListedFact::Fact(fact) => (sheet::named(fact).to_owned(), sheet::fact(fact, units)),
        ListedFact::Strand(strand, is_twisted) => {
            (self::strand(&strand.name, *is_twisted), units.ruler(strand.finished))
        }
        ListedFact::MadeFor(limb, girth) => (made_for(*limb).to_owned(), units.ruler(*girth)),
        ListedFact::Inside(girth) => ("measures inside".to_owned(), units.ruler(*girth)),
        ListedFact::Hangs { drop, neck, strand } => (hangs(*neck, *strand, units), units.ruler(*drop)),
        ListedFact::Size(name, lengths, girth) => {
            (name.unwrap_or("as written").to_owned(), units.range(*lengths) + &whose(*girth, units))
        }
    };
    NamedFact { name, value }
}

/// A strand's length is called so.
fn strand(name: &str, is_twisted: bool) -> String {
    format!("strand {name}{}", if is_twisted { ", before twisting" } else { "" })
}

/// For whose limb a closed piece is made.
const fn made_for(limb: Limb) -> &'static str {
    match limb {
        Limb::Wrist => "made for a wrist of",
        Limb::Ankle => "made for an ankle of",
        Limb::NeckBase => "made for a neck, at its base, of",
    }
}

/// How far a strand, named where there are several, hangs is called so; below a neck that was told, or one of a girth.
fn hangs(girth: Option<Length>, strand: Option<&str>, units: UnitStyle) -> String {
    let neck = girth.map(|girth| format!("a neck of {} at its base", units.ruler(girth)));
    let which = strand.map(|name| format!(", strand {name}")).unwrap_or_default();
    format!("hangs below the front of {}{which}", neck.as_deref().unwrap_or("that neck"))
}

/// For whose girth a size is.
fn whose(girth: Option<Length>, units: UnitStyle) -> String {
    girth.map(|girth| format!(", for {}", units.ruler(girth))).unwrap_or_default()
}
