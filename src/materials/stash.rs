//! What a maker has in hand already: a YAML file of ids and amounts.
//!
//! ```yaml
//! reed: 120      # counted things: a whole number
//! wire: 3 m      # cords and chains: the length of the longest single piece
//! ```
//!
//! Ids are those of patterns, and a count may be 0. A length is one piece: two ends of half the length
//! would not do. One stash serves many patterns: what this one does not use is passed over, with advice
//! where its id is so near to one that is used that it may be a slip.

use std::collections::BTreeMap;

use super::{Amount, Article, need};
use crate::design::Model;
use crate::pattern::node::{self, Node, Tree, Value};
use crate::remark::said::stash::Stash as Said;
use crate::remark::{Remark, has_errors, near};
use crate::source::{At, Source};
use crate::units::Length;

/// What is in hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stash {
    amounts: BTreeMap<Article, Amount>,
}

impl Stash {
    /// How many of an article are in hand.
    #[must_use]
    pub fn count(&self, article: Article) -> u64 {
        match self.amounts.get(&article) {
            Some(Amount::Count(count)) => *count,
            _ => 0,
        }
    }

    /// The length of a cord or chain in hand.
    #[must_use]
    pub fn length(&self, article: Article) -> Option<Length> {
        match self.amounts.get(&article) {
            Some(Amount::Length(length)) => Some(*length),
            _ => None,
        }
    }

    /// Puts an amount of an article in hand, in place of what was there.
    #[must_use]
    pub fn with(mut self, article: Article, amount: Amount) -> Self {
        self.amounts.insert(article, amount);
        self
    }

    /// Reads a stash file for a design: without errors among the remarks, each with its place in the
    /// file, there is a stash.
    #[must_use]
    pub fn read(source: &Source, design: &Model) -> (Option<Self>, Vec<Remark>) {
        let Tree { root, mut remarks, .. } = node::parse(source);
        let entries = root.map_or_else(|| Ok(Vec::new()), entries).map_err(|remark| remarks.push(remark));
        let mut stash = Self::default();
        for (id, node) in entries.unwrap_or_default() {
            let Some(article) = Article::all(design).find(|article| article.id(design) == id.value) else {
                remarks.extend(passed_over(design, &id));
                continue;
            };
            match amount(design, article, &id, &node) {
                Ok(amount) => stash = stash.with(article, amount),
                Err(remark) => remarks.push(remark),
            }
        }
        (Some(stash).filter(|_| !has_errors(&remarks)), remarks)
    }
}

fn entries(node: Node) -> Result<Vec<(At<String>, Node)>, Remark> {
    match node.value {
        Value::Map(entries) => Ok(entries),
        Value::Empty => Ok(Vec::new()),
        other => Err(Remark::new(Said::NotIds { found: other.what() }).at(node.place)),
    }
}

fn amount(design: &Model, article: Article, id: &At<String>, node: &Node) -> Result<Amount, Remark> {
    let by_length = need::by_length(design, article);
    let amount = match &node.value {
        Value::Scalar(text) if by_length => length(&id.value, text),
        Value::Scalar(text) => count(&id.value, text),
        other => Err(Said::NotAnAmount { id: id.value.clone(), found: other.what(), by_length }),
    };
    amount.map_err(|said| Remark::new(said).at(node.place))
}

/// Advice about an id that the pattern does not use, where it may be a slip for one that it does.
fn passed_over(design: &Model, id: &At<String>) -> Option<Remark> {
    let meant = near(&id.value, Article::all(design).map(|article| article.id(design)))?;
    Some(Remark::new(Said::Unused { id: id.value.clone(), meant }).at(id.place))
}

fn length(id: &str, text: &str) -> Result<Amount, Said> {
    let bad = |error| Said::BadLength { id: id.to_owned(), text: text.to_owned(), error };
    Length::parse(text).map(Amount::Length).map_err(bad)
}

fn count(id: &str, text: &str) -> Result<Amount, Said> {
    let bad = |_| Said::BadCount { id: id.to_owned(), text: text.to_owned() };
    text.trim().parse::<u32>().map(|count| Amount::Count(u64::from(count))).map_err(bad)
}
