//! `festoon new`: a commented pattern to start from.

use clap::Args;

use festoon::pattern::Kind;
use festoon::remark::suggest;

use super::{Failure, output};

/// Arguments of `new`.
#[derive(Args)]
pub struct Options {
    /// The kind of piece: necklace, bracelet, anklet, earrings or strap
    #[arg(default_value = "necklace", value_parser = kind)]
    kind: Kind,
}

fn kind(word: &str) -> Result<Kind, String> {
    let words = || Kind::ALL.iter().map(|kind| kind.word());
    let found = Kind::ALL.iter().copied().find(|kind| kind.word() == word);
    found.ok_or_else(|| suggest(word, words(), || format!("one of {}", words().collect::<Vec<_>>().join(", "))))
}

/// Prints the pattern.
pub fn run(options: &Options) -> Result<(), Failure> {
    output::print(start(options.kind).as_bytes())
}

/// The text of a kind.
pub const fn start(kind: Kind) -> &'static str {
    match kind {
        Kind::Necklace => include_str!("new/necklace.yaml"),
        Kind::Bracelet => include_str!("new/bracelet.yaml"),
        Kind::Anklet => include_str!("new/anklet.yaml"),
        Kind::Earrings => include_str!("new/earrings.yaml"),
        Kind::Strap => include_str!("new/strap.yaml"),
    }
}
