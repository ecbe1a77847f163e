//! Listings: the words for a shop's page, as text, Markdown and JSON.
//!
//! A listing says what the pattern says, and what follows from it by counting and measuring. Of what the pattern
//! does not say it claims nothing: what a thing is made of, for whom a length is, how to care for it.

mod english;
mod render;

use serde::Serialize;

use crate::design::{Design, Size};
use crate::materials::{Amount, Article, Order, materials};
use crate::pattern::Kind;
use crate::picture;
use crate::piece::Piece;
use crate::sheet;
use crate::units::{Length, UnitStyle};

pub use render::{json, markdown, text};

/// The words for a shop's page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Listing {
    /// What the piece is called.
    pub title: String,
    /// What it is: `a necklace of 3 strands`.
    pub is: String,
    /// The pattern's sentence about it.
    pub summary: Option<String>,
    /// Who designed it.
    pub designer: Option<String>,
    /// What is in it.
    pub contents: Vec<Constituent>,
    /// Lengths as it lies, each with its name.
    pub laid: Vec<NamedFact>,
    /// Lengths as it is worn, where the pattern says by whom.
    pub worn: Vec<NamedFact>,
    /// What the maker says that things are made of, each once.
    pub materials: Vec<String>,
    /// What the pattern does not say the material of, by name: nothing is claimed of it.
    pub undeclared: Vec<String>,
    /// The sizes that it is made in; empty where there is but one.
    pub sizes: Vec<NamedFact>,
    /// The colourways that it is made in, beside its own.
    pub colourways: Vec<String>,
    /// How to look after it, where the pattern says.
    pub care: Option<String>,
    /// What a picture of it shows, in words.
    pub alt: String,
}

/// Something that is in a piece.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Constituent {
    /// How many; nothing of what is cut from a length.
    pub count: Option<u64>,
    /// What it is called.
    pub name: String,
    /// Its sizes, and what it is made of where the pattern says.
    pub is: String,
}

/// A fact with its name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct NamedFact {
    /// What it is of.
    pub name: String,
    /// What it is.
    pub value: String,
}

impl NamedFact {
    fn new(name: impl Into<String>, value: impl Into<String>) -> Self {
        Self { name: name.into(), value: value.into() }
    }
}

impl Listing {
    /// What a piece's pattern says of it.
    #[must_use]
    pub fn new(piece: &Piece) -> Self {
        let design = &piece.design;
        let heading = &design.heading;
        let (materials, undeclared) = declared(design);
        Self {
            title: heading.whole_title(),
            is: picture::subject(design),
            summary: heading.summary.clone(),
            designer: heading.designer.clone(),
            contents: contents(piece),
            laid: laid(piece),
            worn: worn(piece),
            materials,
            undeclared,
            sizes: piece.sizes.iter().filter_map(|one| size(one, piece.telling.units)).collect(),
            colourways: piece.colourways.iter().filter_map(|way| way.name.clone()).collect(),
            care: heading.care.clone(),
            alt: picture::alternative(piece),
        }
    }
}

/// Beads, cords and findings in the order of the materials, without spare.
fn contents(piece: &Piece) -> Vec<Constituent> {
    let design = &piece.design;
    let order = Order { spare: 0.0, ..Order::default() };
    let is_in_it = |line: &crate::materials::Line| !matches!(line.article, Article::Assorted(_));
    let lines = materials(design, &order).lines.into_iter().filter(is_in_it);
    let content = |line: crate::materials::Line| Constituent {
        count: if let Amount::Count(count) = line.need { Some(count) } else { None },
        is: sheet::asked_for(design, line.article, piece.telling.units),
        name: line.name,
    };
    lines.map(content).collect()
}

/// What beads and findings are said to be made of, and the names of those of which nothing is said. A cord's kind
/// is what it is.
fn declared(design: &Design) -> (Vec<String>, Vec<String>) {
    let material = |article: Article| match article {
        Article::Bead(at) => design.beads[at].material.clone(),
        Article::Cord(at) => Some(design.cords[at].name.clone()),
        Article::Finding(at) => design.findings[at].made_of(design),
        Article::Assorted(_) => None,
    };
    let (mut materials, mut undeclared) = (Vec::new(), Vec::new());
    for article in Article::all(design).filter(|article| !matches!(article, Article::Assorted(_))) {
        let (list, word) = match material(article) {
            Some(material) => (&mut materials, material),
            None => (&mut undeclared, article.name(design).to_owned()),
        };
        if !list.contains(&word) {
            list.push(word);
        }
    }
    (materials, undeclared)
}

/// How long it lies, and each strand of several.
fn laid(piece: &Piece) -> Vec<NamedFact> {
    let design = &piece.design;
    let units = piece.telling.units;
    let mut laid = vec![NamedFact::new(sheet::length_fact(design), sheet::finished(piece, units))];
    laid.extend(sheet::twist(design, units).map(|(name, times)| NamedFact::new(name, times)));
    if design.strands.len() > 1 {
        let strand = |strand: &crate::design::Strand| {
            NamedFact::new(english::strand(&strand.name, design.twist.is_some()), units.ruler(strand.finished))
        };
        laid.extend(design.strands.iter().map(strand));
    }
    laid
}

/// Of whom it fits and how far it hangs, where the pattern says who wears it.
fn worn(piece: &Piece) -> Vec<NamedFact> {
    let design = &piece.design;
    if !design.wear.is_told() {
        return Vec::new();
    }
    let units = piece.telling.units;
    let ruler = |mm: f64| units.ruler(Length::mm(mm));
    let is_open = design.heading.kind == Kind::Necklace && design.closure.open().is_some();
    let limb = english::made_for(design.heading.kind).filter(|_| !is_open);
    let mut worn: Vec<_> =
        limb.map(|limb| NamedFact::new(limb, ruler(design.wear.girth.value()))).into_iter().collect();
    worn.extend(sheet::wraps(design, units).map(|(name, times)| NamedFact::new(name, times)));
    if let Some(ring) = piece.drape.ring() {
        worn.push(NamedFact::new(english::INSIDE, ruler(ring.inside_girth)));
    }
    let drops = piece.drape.worn.iter().flat_map(|worn| worn.drops.iter().zip(&design.strands));
    let drops = drops.take(if design.twist.is_some() { 1 } else { design.strands.len() });
    let several = design.strands.len() > 1 && design.twist.is_none();
    let drop = |(drop, strand): (&f64, &crate::design::Strand)| {
        let which = several.then_some(strand.name.as_str());
        NamedFact::new(english::hangs(limb.is_some(), design.wear.girth, which, units), ruler(*drop))
    };
    worn.extend(drops.map(drop));
    worn
}

/// One of its sizes, with its length and whom the pattern says that it is for.
fn size(size: &Size, units: UnitStyle) -> Option<NamedFact> {
    let design = size.design.as_ref()?;
    let whose = if design.wear.is_told() { english::whose(design.wear.girth, units) } else { String::new() };
    let name = size.name.clone().unwrap_or_else(|| english::AS_WRITTEN.to_owned());
    Some(NamedFact::new(name, sheet::length_of(design, units) + &whose))
}
