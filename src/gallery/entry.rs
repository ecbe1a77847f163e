//! What the pages say of one pattern.

use serde::{Deserialize, Serialize};

use crate::design::{Design, Strand};
use crate::materials::render::words::in_currency;
use crate::materials::{Order, materials};
use crate::picture::{self, Proportion};
use crate::piece::Piece;
use crate::sheet::fact::{self, Fact};
use crate::sheet::{self, english};
use crate::units::UnitStyle;

/// One pattern in the gallery.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Exhibit {
    /// Its folder's name: the pattern file's without its ending.
    pub folder: String,
    /// Its title.
    pub title: String,
    /// The word for its kind.
    pub kind: String,
    /// What it is, in a sentence.
    pub summary: String,
    /// Who designed it.
    pub designer: String,
    /// Its kind, length and weight, as its card says them.
    pub short: [String; 3],
    /// Short facts, each with its name.
    pub facts: Vec<(String, String)>,
    /// Beads: name, and how many.
    pub beads: Vec<(String, String)>,
    /// Strands: name, finished and beaded length.
    pub strands: Vec<[String; 3]>,
    /// Suggested price for a wearer, where one is wanted and the pattern has it.
    pub price: Option<String>,
    /// The pattern's own colours, then its colourways.
    pub shots: Vec<Shot>,
}

/// One colourway's files and words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Shot {
    /// The colourway's name; none for the pattern's own colours.
    pub name: Option<String>,
    /// End of its files' names: nothing, or a number.
    pub suffix: String,
    /// The picture's width to its height.
    pub proportion: Proportion,
    /// What the picture shows, in words.
    pub alternative: String,
}

impl Shot {
    /// The picture's file.
    #[must_use]
    pub fn picture(&self) -> String {
        format!("picture{}.png", self.suffix)
    }

    /// The small picture's file.
    #[must_use]
    pub fn thumbnail(&self) -> String {
        format!("small{}.png", self.suffix)
    }

    /// The sheet's file.
    #[must_use]
    pub fn sheet(&self) -> String {
        format!("sheet{}.pdf", self.suffix)
    }
}

impl Exhibit {
    /// The files beside its page.
    pub fn files(&self) -> impl Iterator<Item = String> {
        self.shots.iter().flat_map(|shot| [shot.picture(), shot.thumbnail(), shot.sheet()])
    }

    /// What is said of a piece, which is given in its own colours and then in every colourway.
    #[must_use]
    pub fn new(folder: &str, pieces: &[Piece], proportion: Proportion, prices: bool) -> Option<Self> {
        let piece = pieces.first()?;
        let (heading, telling) = (&piece.design.heading, &piece.telling);
        let said = |fact: &Fact| (english::named(fact).to_owned(), english::fact(fact, telling.units));
        let weight = english::fact(&fact::weight(&piece.design), telling.units);
        let short = [english::kind(heading.kind).to_owned(), sheet::finished(piece, telling.units), weight];
        Some(Self {
            folder: folder.to_owned(),
            title: heading.title.clone(),
            kind: heading.kind.word().to_owned(),
            summary: heading.summary.clone().unwrap_or_default(),
            designer: heading.designer.clone().unwrap_or_default(),
            facts: sheet::facts(piece).iter().map(said).collect(),
            short,
            beads: beads(&piece.design),
            strands: piece.design.strands.iter().map(|row| strand(row, telling.units)).collect(),
            price: prices.then(|| price(piece)).flatten(),
            shots: pieces.iter().enumerate().map(|(at, piece)| shot(at, piece, proportion)).collect(),
        })
    }
}

fn beads(design: &Design) -> Vec<(String, String)> {
    let counted = design.beads.iter().zip(design.counts());
    let all = |count: u32| (u64::from(count) * u64::from(design.copies)).to_string();
    counted.map(|(bead, count)| (bead.name.clone(), all(count))).collect()
}

fn strand(strand: &Strand, units: UnitStyle) -> [String; 3] {
    [strand.name.clone(), units.ruler(strand.finished), units.ruler(strand.beaded())]
}

/// The suggested price for a wearer, with its currency.
fn price(piece: &Piece) -> Option<String> {
    let retail = materials(&piece.design, &Order::default()).suggestion?.retail;
    Some(format!("{retail}{}", in_currency(piece.telling.currency.as_ref())))
}

fn shot(at: usize, piece: &Piece, proportion: Proportion) -> Shot {
    let suffix = if at == 0 { String::new() } else { format!("-{at}") };
    let name = piece.design.heading.colourway.clone();
    Shot { name, suffix, proportion, alternative: picture::alternative(piece) }
}
