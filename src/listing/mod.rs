//! Listings: the words for a shop's page, as text, Markdown and JSON.
//!
//! A listing says what the pattern says, and what follows from it by counting and measuring. Of what the pattern
//! does not say it claims nothing: what a thing is made of, for whom a length is, how to care for it.

mod english;
mod render;

use serde::Serialize;

use crate::design::{Design, Size, Strand};
use crate::drape::hung_length;
use crate::english::list;
use crate::materials::{Amount, Article, Order, materials};
use crate::pattern::Kind;
use crate::picture;
use crate::piece::Piece;
use crate::sheet;
use crate::sheet::fact::{self, Fact, Limb};
use crate::units::Length;

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

/// What is told of a piece's lengths.
enum ListedFact<'a> {
    /// What its sheet tells too.
    Fact(Fact),
    /// How long a strand is, and whether it is twisted after that is measured.
    Strand(&'a Strand, bool),
    /// For whom it is made.
    MadeFor(Limb, Length),
    /// The girth inside it.
    Inside(Length),
    /// How far it hangs below the front of a neck: that of whom it is made for, or of one of a girth.
    Hangs {
        /// How far.
        drop: Length,
        /// The girth, where it is made for nobody.
        neck: Option<Length>,
        /// Which strand does, where there are several.
        strand: Option<&'a str>,
    },
    /// How long a size is, and for what girth where that is told.
    Size(Option<&'a str>, [Length; 2], Option<Length>),
}

impl Listing {
    /// What a piece's pattern says of it.
    #[must_use]
    pub fn new(piece: &Piece) -> Self {
        let design = &piece.design;
        let heading = &design.heading;
        let (materials, undeclared) = declared(design);
        let told = |facts: Vec<ListedFact<'_>>| {
            facts.iter().map(|fact| english::told(fact, piece.telling.units)).collect::<Vec<_>>()
        };
        Self {
            title: heading.whole_title(),
            is: picture::subject(design),
            summary: heading.summary.clone(),
            designer: heading.designer.clone(),
            contents: contents(piece),
            laid: told(laid(piece)),
            worn: told(worn(piece)),
            materials,
            undeclared,
            sizes: told(piece.sizes.iter().filter_map(size).collect()),
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
        name: list(&line.names),
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
fn laid(piece: &Piece) -> Vec<ListedFact<'_>> {
    let design = &piece.design;
    let facts = std::iter::once(fact::length(piece)).chain(fact::twist(design)).map(ListedFact::Fact);
    let strands = design.strands.iter().filter(|_| design.strands.len() > 1);
    facts.chain(strands.map(|strand| ListedFact::Strand(strand, design.twist.is_some()))).collect()
}

/// Of whom it fits and how far it hangs, where the pattern says who wears it.
fn worn(piece: &Piece) -> Vec<ListedFact<'_>> {
    let design = &piece.design;
    if !design.wear.is_told() {
        return Vec::new();
    }
    let (kind, girth) = (design.heading.kind, design.wear.girth);
    let is_open = kind == Kind::Necklace && design.closure.open().is_some();
    let limb = fact::limb(kind).filter(|_| !is_open);
    let inside = piece.drape.ring().map(|ring| ListedFact::Inside(Length::mm(ring.inside_girth)));
    let drops = piece.drape.worn.iter().flat_map(|worn| worn.drops.iter().zip(&design.strands));
    let drops = drops.take(if design.twist.is_some() { 1 } else { design.strands.len() });
    let several = design.strands.len() > 1 && design.twist.is_none();
    let drops = drops.map(|(drop, strand)| ListedFact::Hangs {
        drop: Length::mm(*drop),
        neck: limb.is_none().then_some(girth),
        strand: several.then_some(strand.name.as_str()),
    });
    let fits = limb.map(|limb| ListedFact::MadeFor(limb, girth)).into_iter();
    fits.chain(fact::wraps(design).map(ListedFact::Fact)).chain(inside).chain(drops).collect()
}

/// One of its sizes, with its length and whom the pattern says that it is for.
fn size(size: &Size) -> Option<ListedFact<'_>> {
    let design = size.design.as_ref()?;
    let girth = design.wear.is_told().then_some(design.wear.girth);
    Some(ListedFact::Size(size.name.as_deref(), hung_length(design), girth))
}
