//! `festoon measure`: lengths, drops, weights and tension.

use clap::Args;

use festoon::measure::Measures;
use festoon::units::Length;

use super::{Failure, VariantOptions, input, output, report};

/// Arguments of `measure`.
#[derive(Args)]
pub struct Options {
    /// The pattern file; - is standard input
    pattern: String,
    /// Print the whole resolved design as JSON
    #[arg(long)]
    json: bool,
    /// Hang every strand from two points this far apart
    #[arg(long, value_name = "LENGTH", value_parser = super::length)]
    span: Option<Length>,
    #[command(flatten)]
    variant: VariantOptions,
}

/// Prints a table or JSON.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let span = options.span.map(Length::value);
    let (piece, remarks, source) = input::load(&options.pattern, &options.variant, span, messages)?;
    let measures = Measures::new(&piece, &remarks, &source);
    if options.json {
        output::print(measures.json().as_bytes())
    } else {
        output::say(&measures.table(piece.telling.units))
    }
}
