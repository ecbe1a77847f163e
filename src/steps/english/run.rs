//! What a word chart is made of: beads by their letters, and words.

use std::fmt;

use crate::english::before;

/// One part of a word chart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ChartRun {
    /// So many of the bead of a letter: `5A`.
    Beads(u32, String),
    /// What is no bead of the row, said aside in round brackets.
    Aside(WordChart),
    /// Anything else.
    Words(String),
}

/// A word chart, or a part of one, from its first end. It prints as its text.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WordChart(Vec<ChartRun>);

impl WordChart {
    /// So many of the bead of a letter.
    pub fn beads(count: u32, letter: &str) -> Self {
        Self(vec![ChartRun::Beads(count, letter.to_owned())])
    }

    /// Parts with something between each two.
    pub fn join(parts: impl IntoIterator<Item = Self>, between: &str) -> Self {
        let mut parts = parts.into_iter();
        let first = parts.next().unwrap_or_default();
        parts.fold(first, |all, part| all.and(between).and(part))
    }

    /// Parts as a list: `1B and 1 silk tassel`.
    pub fn list(parts: impl ExactSizeIterator<Item = Self>) -> Self {
        let count = parts.len();
        parts.enumerate().fold(Self::default(), |all, (at, part)| all.and(before(at, count)).and(part))
    }

    /// It in round brackets, which lines keep together where they are short.
    pub fn aside(self) -> Self {
        Self(vec![ChartRun::Aside(self)])
    }

    /// It in square brackets.
    pub fn bracketed(self) -> Self {
        Self::from("[").and(self).and("]")
    }

    /// It with something behind.
    pub fn and(mut self, behind: impl Into<Self>) -> Self {
        self.0.extend(behind.into().0);
        self
    }

    /// Its parts in order.
    #[must_use]
    pub fn runs(&self) -> &[ChartRun] {
        &self.0
    }
}

impl From<&str> for WordChart {
    fn from(words: &str) -> Self {
        words.to_owned().into()
    }
}

impl From<String> for WordChart {
    fn from(words: String) -> Self {
        Self(vec![ChartRun::Words(words)])
    }
}

impl fmt::Display for ChartRun {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Beads(count, letter) => write!(f, "{count}{letter}"),
            Self::Aside(said) => write!(f, "({said})"),
            Self::Words(words) => f.write_str(words),
        }
    }
}

impl fmt::Display for WordChart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|run| run.fmt(f))
    }
}
