//! `festoon sheet`: the printable sheet.

use clap::Args;

use festoon::sheet::{self, Style};

use super::{Failure, pages, report};

/// Arguments of `sheet`.
#[derive(Args)]
pub struct Options {
    /// Print what the materials cost and what the piece might be sold for
    #[arg(long)]
    with_prices: bool,
    #[command(flatten)]
    drawing: pages::Drawing,
}

/// Draws the sheet and writes it in every format that is asked for.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let piece = options.drawing.load(messages)?;
    let style = Style { paper: options.drawing.paper, ink: options.drawing.ink, prices: options.with_prices };
    options.drawing.write(&piece, &sheet::pages(&piece, &style), "")
}
