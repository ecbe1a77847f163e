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

use serde_yaml::Spanned;

use super::{Amount, Article, need};
use crate::design::Design;
use crate::remark::{Code, Remark};
use crate::source::{Place, Source};
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
        let written = written(source).map_err(|remark| vec![remark])?;
        let (mut stash, mut remarks) = (Self::default(), Vec::new());
        for (id, text) in written {
            let place = place(source, &text);
            match amount(design, &id, &text.value) {
                Ok((article, amount)) => stash = stash.with(article, amount),
                Err(remark) => remarks.push(remark.at(place)),
            }
        }
        if remarks.is_empty() { Ok(stash) } else { Err(remarks) }
    }
}

fn written(source: &Source) -> Result<BTreeMap<String, Spanned<String>>, Remark> {
    let blank = |line: &str| line.trim().is_empty() || line.trim_start().starts_with('#');
    if source.text().lines().all(blank) {
        return Ok(BTreeMap::new());
    }
    serde_yaml::from_str(source.text()).map_err(|error| {
        let remark = Remark::new(Code::Yaml, "the stash is not a list of ids and amounts");
        let remark = remark.help("write one a line, like `reed: 120` or `wire: 3 m`");
        match error.location() {
            Some(at) => remark.at(source.place_at(number(at.line()), number(at.column()))),
            None => remark,
        }
    })
}

fn place<T>(source: &Source, spanned: &Spanned<T>) -> Place {
    let at = spanned.referenced;
    source.place_at(number(at.line()), number(at.column()))
}

fn number(value: u64) -> usize {
    usize::try_from(value).unwrap_or(usize::MAX)
}

fn amount(design: &Design, id: &str, text: &str) -> Result<(Article, Amount), Remark> {
    let known = |article: &Article| article.id(design) == id;
    let article = Article::all(design).find(known).ok_or_else(|| unknown(design, id))?;
    let amount = if need::by_length(design, article) { length(id, text)? } else { count(id, text)? };
    Ok((article, amount))
}

fn unknown(design: &Design, id: &str) -> Remark {
    let ids: Vec<_> = Article::all(design).map(|article| article.id(design)).collect();
    Remark::new(Code::UnknownId, format!("the stash has `{id}`, which this pattern does not use"))
        .help(format!("it uses {}", ids.join(", ")))
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
