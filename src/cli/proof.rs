//! `festoon proof`: the strands and findings at actual size.

use clap::Args;

use festoon::sheet::{self, Style};

use super::{Failure, pages, report};

/// Arguments of `proof`.
#[derive(Args)]
pub struct Options {
    #[command(flatten)]
    drawing: pages::Printout,
}

/// Draws the proof and writes it in every format that is asked for.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let read = options.drawing.load(messages)?;
    let style = Style { paper: options.drawing.paper, ink: options.drawing.ink, prices: false };
    let pages =
        sheet::proof(&read.0, &style).map_err(|error| Failure::trouble(format!("{error}; {}", error.help())))?;
    options.drawing.write(&read, &pages, "-proof")
}
