//! Kits: what one bag holds for one maker, with its own spare, and what that costs.

use super::cutting::{Cut, lot_length};
use super::lots::lot_count;
use super::pool::Batch;
use super::{Article, Order, need};
use crate::design::{Assorted, Model, Stated};
use crate::english::commas;
use crate::units::{Length, Money};

/// Bags that hold the same.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Kit {
    /// The piece's title.
    pub title: String,
    /// Its size and colourway, where it has one.
    pub variant: String,
    /// How many bags.
    pub bags: u32,
    /// What is in each: beads, cords, findings.
    pub packed: Vec<Packed>,
    /// What it costs, at each article's share of its lot.
    pub contents: Money,
    /// Factors by which the contents are multiplied for a shop and for a maker, where the pattern has a price.
    pub factors: Option<[Stated<f64>; 2]>,
    /// Ids of what has no price.
    pub unpriced: Vec<String>,
}

/// One article in a bag.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Packed {
    /// The word for its kind.
    pub kind: &'static str,
    /// Its id.
    pub id: String,
    /// Its name, and the names of what comes with it.
    pub names: Vec<String>,
    /// How much of it.
    pub held: Bagged,
}

/// How much of an article is in a bag.
#[derive(Clone, Debug, PartialEq)]
pub enum Bagged {
    /// So many, and so many spare.
    Counted(u64, u64),
    /// Pieces, each cut to its length.
    Cut(Vec<Cut>),
}

impl Kit {
    /// The bags of a batch.
    #[must_use]
    pub fn new(batch: &Batch<'_>, order: &Order) -> Self {
        let (design, heading) = (batch.design, &batch.design.heading);
        let packed = packed(design, order);
        let costs: Vec<_> = packed.iter().map(|(article, packed)| (cost(design, *article, packed), packed)).collect();
        Self {
            title: heading.title.clone(),
            variant: heading.variant(),
            bags: batch.pieces,
            contents: costs.iter().filter_map(|(cost, _)| *cost).sum(),
            unpriced: costs.iter().filter(|(cost, _)| cost.is_none()).map(|(_, packed)| packed.id.clone()).collect(),
            factors: design.price.as_ref().map(|price| [price.wholesale, price.retail]),
            packed: packed.into_iter().map(|(_, packed)| packed).collect(),
        }
    }

    /// Title and variant: `Tideline, small`.
    #[must_use]
    pub fn name(&self) -> String {
        commas([&self.title, &self.variant].into_iter().filter(|part| !part.is_empty()))
    }
}

fn packed(design: &Model, order: &Order) -> Vec<(Article, Packed)> {
    let counts = need::bought(design);
    let copies = u64::from(design.copies);
    let held = |article| match counts.get(&article) {
        Some(count) => Bagged::Counted(count * copies, order.spare_of(article, count * copies)),
        None => Bagged::Cut((0..copies).flat_map(|_| need::pieces(design, article)).collect()),
    };
    let is_bought = |article: &Article| counts.contains_key(article) || need::by_length(design, *article);
    let pack = |article: Article| {
        let (id, names) = (article.id(design).to_owned(), article.names(design));
        (article, Packed { kind: article.kind(), id, names, held: held(article) })
    };
    Article::all(design).filter(is_bought).map(pack).collect()
}

/// With what a bead is bought, where that is with others.
fn assorted(design: &Model, article: Article) -> Option<&Assorted> {
    design.assorted.iter().find(|one| one.beads > 0 && one.used().any(|(_, bead)| Article::Bead(bead) == article))
}

/// The share of a lot's price that a bag holds; nothing where the pattern gives none, or no lot holds it.
fn cost(design: &Model, article: Article, packed: &Packed) -> Option<Money> {
    if let (Some(assorted), Bagged::Counted(count, spare)) = (assorted(design, article), &packed.held) {
        return Some(assorted.price?.share((count + spare) as f64, assorted.beads as f64));
    }
    let price = article.sold(design)?.price?;
    match &packed.held {
        Bagged::Counted(count, spare) => {
            let (_, holds) = lot_count(design, article).filter(|(_, holds)| *holds > 0)?;
            Some(price.share((count + spare) as f64, holds as f64))
        }
        Bagged::Cut(pieces) => {
            let length: Length = pieces.iter().map(|piece| piece.length).sum();
            Some(price.share(length.value(), lot_length(design, article)?.value()))
        }
    }
}
