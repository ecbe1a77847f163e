//! `festoon new`: a commented pattern, or shelf, to start from.

use clap::Args;

use festoon::english::commas;
use festoon::pattern::Kind;
use festoon::remark::suggest;

use super::{Failure, output};

/// Arguments of `new`.
#[derive(Args)]
pub struct Options {
    /// The kind of piece: necklace, bracelet, anklet, earrings or strap; or shelf
    #[arg(value_name = "KIND", default_value = "necklace", value_parser = word)]
    start: Start,
}

/// What is begun.
#[derive(Clone, Copy)]
enum Start {
    Piece(Kind),
    Shelf,
}

impl Start {
    const fn word(self) -> &'static str {
        match self {
            Self::Piece(kind) => kind.word(),
            Self::Shelf => "shelf",
        }
    }
}

fn word(word: &str) -> Result<Start, String> {
    let all = || Kind::ALL.iter().copied().map(Start::Piece).chain([Start::Shelf]);
    let words = || all().map(Start::word);
    let found = all().find(|start| start.word() == word);
    found.ok_or_else(|| suggest(word, words(), || format!("one of {}", commas(words()))))
}

/// Prints the pattern or shelf.
pub fn run(options: &Options) -> Result<(), Failure> {
    let text = match options.start {
        Start::Piece(kind) => start(kind),
        Start::Shelf => include_str!("new/shelf.yaml"),
    };
    output::print(text.as_bytes())
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
