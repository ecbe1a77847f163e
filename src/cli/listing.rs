//! `festoon listing`: the words for a shop's page.

use clap::{Args, ValueEnum};

use festoon::english::commas;
use festoon::listing::{self, Listing};

use super::{Failure, Units, VariantOptions, input, output, report};

/// Arguments of `listing`.
#[derive(Args)]
pub struct Options {
    /// The pattern file; - is standard input
    pattern: String,
    /// How the words are printed
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    #[command(flatten)]
    units: Units,
    #[command(flatten)]
    variant: VariantOptions,
}

#[derive(Clone, Copy, ValueEnum)]
enum Format {
    Text,
    Markdown,
    Json,
}

/// Prints the words, and beside them names what the pattern leaves unsaid.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let (piece, _, _) = input::load(&options.pattern, &options.variant, None, messages)?;
    let listing = Listing::new(&options.units.of(piece));
    if !listing.undeclared.is_empty() {
        report::news(&format!("no `material` is written, and none is claimed, of: {}", commas(&listing.undeclared)));
    }
    match options.format {
        Format::Text => output::say(&listing::text(&listing)),
        Format::Markdown => output::print(listing::markdown(&listing).as_bytes()),
        Format::Json => output::print(listing::json(&listing).as_bytes()),
    }
}
