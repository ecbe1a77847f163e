//! `festoon materials`: what to buy, cut and pay.

use clap::{Args, ValueEnum};

use festoon::materials::{self, MOST_MAKERS, Order, Stash, render};
use festoon::source::Source;

use super::{Failure, Variant, input, output, report};

/// Arguments of `materials`.
#[derive(Args)]
pub struct Options {
    /// The pattern file; - is standard input
    pattern: String,
    /// How many makers are supplied, each making one piece
    #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=i64::from(MOST_MAKERS)))]
    makers: u32,
    /// Share of the beads to buy beyond the count
    #[arg(long, default_value = "5%", value_parser = share)]
    spare: f64,
    /// A file of what is in hand: ids with counts or lengths
    #[arg(long, value_name = "FILE")]
    stash: Option<String>,
    /// How the list is printed
    #[arg(long, value_enum, default_value = "table")]
    format: Format,
    #[command(flatten)]
    variant: Variant,
}

#[derive(Clone, Copy, ValueEnum)]
enum Format {
    Table,
    Csv,
    Json,
}

fn share(text: &str) -> Result<f64, String> {
    let percent = text.trim().strip_suffix('%').and_then(|number| number.trim().parse::<f64>().ok());
    percent
        .filter(|percent| (0.0..=100.0).contains(percent))
        .map(|percent| percent / 100.0)
        .ok_or_else(|| "write a share from 0% to 100%, like 5%".to_owned())
}

/// Prints the list.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    if options.pattern == "-" && options.stash.as_deref() == Some("-") {
        return Err(Failure::trouble("standard input is either the pattern or the stash: name a file for one of them"));
    }
    let (piece, _, _) = input::load(&options.pattern, &options.variant, None, messages)?;
    let stash = match &options.stash {
        Some(path) => read_stash(&input::source(path, messages)?, &piece.design, messages)?,
        None => Stash::default(),
    };
    let order = Order { makers: options.makers, spare: options.spare, stash };
    let list = materials::materials(&piece.design, &order);
    match options.format {
        Format::Table => output::say(&render::table(&list, piece.design.heading.units)),
        Format::Csv => output::print(render::csv(&list).as_bytes()),
        Format::Json => output::print(render::json(&list).as_bytes()),
    }
}

fn read_stash(
    source: &Source,
    design: &festoon::design::Design,
    messages: &report::Messages,
) -> Result<Stash, Failure> {
    let (stash, remarks) = Stash::read(source, design);
    report::remarks(&remarks, source, messages);
    stash.ok_or(Failure::Pattern)
}
