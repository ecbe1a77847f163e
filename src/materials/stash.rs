//! What a maker has in hand already: a YAML file of ids and amounts.
//!
//! ```yaml
//! reed: 120      # counted things: a whole number
//! wire: 3 m      # cords and chains: the length of the longest single piece
//! ```
//!
//! Ids are those of the pattern, and a count may be 0. A length is one piece: two ends of half the
//! length would not do. An unknown id is an error, as in the pattern.

use std::collections::BTreeMap;

use super::{Amount, Article, need};
use crate::design::Design;
use crate::pattern::node::{self, Node, Tree, Value};
use crate::remark::{Code, Remark, suggest};
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

    /// Reads a stash file for a design.
    ///
    /// # Errors
    /// All that is wrong with the file, each with its place in it.
    pub fn read(source: &Source, design: &Design) -> Result<Self, Vec<Remark>> {
        let Tree { root, mut remarks, .. } = node::parse(source);
        let mut stash = Self::default();
        let entries = root.map_or_else(|| Ok(Vec::new()), entries);
        for (id, node) in entries.map_err(|remark| vec![remark])? {
            match amount(design, &id, &node) {
                Ok((article, amount)) => stash = stash.with(article, amount),
                Err(remark) => remarks.push(remark),
            }
        }
        if remarks.is_empty() { Ok(stash) } else { Err(remarks) }
    }
}

fn entries(node: Node) -> Result<Vec<(At<String>, Node)>, Remark> {
    match node.value {
        Value::Map(entries) => Ok(entries),
        Value::Empty => Ok(Vec::new()),
        other => Err(Remark::new(Code::WrongKind, format!("the stash is {} and not ids with amounts", other.what()))
            .at(node.place)
            .help("write one a line, like `reed: 120` or `wire: 3 m`")),
    }
}

fn amount(design: &Design, id: &At<String>, node: &Node) -> Result<(Article, Amount), Remark> {
    let known = |article: &Article| article.id(design) == id.value;
    let article = Article::all(design).find(known).ok_or_else(|| unknown(design, id))?;
    let by_length = need::by_length(design, article);
    let amount = match &node.value {
        Value::Scalar(text) if by_length => length(&id.value, text),
        Value::Scalar(text) => count(&id.value, text),
        other => {
            Err(Remark::new(Code::WrongKind, format!("the amount of `{}` in the stash is {}", id.value, other.what()))
                .help(if by_length { "write a length, like `wire: 3 m`" } else { "write a count, like `reed: 120`" }))
        }
    };
    amount.map(|amount| (article, amount)).map_err(|remark| remark.at(node.place))
}

fn unknown(design: &Design, id: &At<String>) -> Remark {
    let ids: Vec<_> = Article::all(design).map(|article| article.id(design)).collect();
    let help = suggest(&id.value, ids.iter().copied(), || format!("it uses {}", ids.join(", ")));
    let headline = format!("the stash has `{}`, which this pattern does not use", id.value);
    Remark::new(Code::UnknownId, headline).at(id.place).help(help)
}

fn length(id: &str, text: &str) -> Result<Amount, Remark> {
    Length::parse(text).map(Amount::Length).map_err(|error| {
        Remark::new(Code::BadQuantity, format!("the length of `{id}` in the stash, `{text}`, {}", error.reason))
            .help(error.help)
    })
}

fn count(id: &str, text: &str) -> Result<Amount, Remark> {
    text.trim().parse::<u32>().map(|count| Amount::Count(u64::from(count))).map_err(|_| {
        Remark::new(Code::BadQuantity, format!("the count of `{id}` in the stash, `{text}`, is not a whole number"))
            .help(format!("write how many there are, like `{id}: 120`"))
    })
}
