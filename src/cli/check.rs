//! `festoon check`: remarks only, about the pattern and all its sizes and colourways.

use clap::Args;

use festoon::remark::{Level, has_errors};

use super::swap::{self, Swap};
use super::{Failure, VariantOptions, input, report};

/// Arguments of `check`.
#[derive(Args)]
pub struct Options {
    /// Pattern files; - is standard input
    #[arg(required = true, value_name = "PATTERN")]
    patterns: Vec<String>,
    /// Let warnings fail too
    #[arg(long)]
    strict: bool,
    /// Show what changes when one bead stands in for another
    #[arg(long, value_name = "OLD=NEW", value_parser = Swap::parse)]
    swap: Option<Swap>,
    #[command(flatten)]
    variant: VariantOptions,
}

/// Checks every pattern before it tells whether all were sound.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let mut worst = Ok(());
    for path in &options.patterns {
        match one(path, options, messages) {
            Ok(()) => {}
            Err(Failure::Trouble(message)) => {
                report::trouble(&message);
                worst = Err(Failure::Trouble("not every pattern could be read".to_owned()));
            }
            Err(Failure::Pattern) => worst = worst.and(Err(Failure::Pattern)),
        }
    }
    worst
}

fn one(path: &str, options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let choice = options.variant.choice();
    let source = input::pattern(path, &options.variant.shelves, messages)?;
    if let Some(swap) = &options.swap {
        return swap::run(&source, &choice, swap, messages);
    }
    let remarks = festoon::remarks(&source, &choice);
    report::remarks(&remarks, &source, messages);
    let warned = remarks.iter().any(|remark| remark.level() == Level::Warning);
    if has_errors(&remarks) || options.strict && warned { Err(Failure::Pattern) } else { Ok(()) }
}
