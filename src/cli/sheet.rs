//! `festoon sheet`: the printable sheet.

use clap::Args;

use festoon::Piece;
use festoon::paint::mark::Page;
use festoon::sheet::{self, Style};

use super::{Failure, pages, report};

/// Arguments of `sheet`.
#[derive(Args)]
pub struct Options {
    /// Print what the materials cost and what the piece might be sold for
    #[arg(long)]
    with_prices: bool,
    /// Draw pages of half the paper's size, two on a side, to print on both sides (turned over the short
    /// edge), fold and staple
    #[arg(long)]
    booklet: bool,
    /// Draw a card for a class alone: charts, beads, materials and tools, and rows where there is room for them
    #[arg(long, conflicts_with_all = ["booklet", "with_prices"])]
    card: bool,
    #[command(flatten)]
    drawing: pages::Printout,
}

/// Draws the sheet and writes it in every format that is asked for.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let read = options.drawing.load(messages)?;
    let piece = &read.0;
    let (pages, holds) = match (options.booklet, options.card) {
        (true, _) => (booklet(options, piece)?, "-booklet"),
        (_, true) => (sheet::card(piece, &style(options)), "-card"),
        _ => (festoon::pages(piece, &style(options)), ""),
    };
    options.drawing.write(&read, &pages, holds)
}

fn style(options: &Options) -> Style {
    Style { paper: options.drawing.paper, ink: options.drawing.ink, prices: options.with_prices }
}

fn booklet(options: &Options, piece: &Piece) -> Result<Vec<Page>, Failure> {
    let paper = options.drawing.paper;
    let Some(half) = paper.half() else {
        let word = paper.word();
        return Err(Failure::trouble(format!("half of {word} is no paper: fold a3, a4, tabloid or letter")));
    };
    let pages = festoon::pages(piece, &Style { paper: half, ..style(options) });
    Ok(sheet::booklet(pages, paper))
}
