//! `festoon check`: remarks only.

use clap::Args;

use festoon::remark::Level;

use super::{Failure, Variant, input, report};

/// Arguments of `check`.
#[derive(Args)]
pub struct Options {
    /// Pattern files; - is standard input
    #[arg(required = true, value_name = "PATTERN")]
    patterns: Vec<String>,
    /// Let warnings fail too
    #[arg(long)]
    strict: bool,
    #[command(flatten)]
    variant: Variant,
}

/// Checks every pattern before it tells whether all were sound.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let mut worst = Ok(());
    for path in &options.patterns {
        match input::load(path, &options.variant.choice(), None, messages) {
            Ok((_, remarks, _)) if options.strict && remarks.iter().any(|remark| remark.level() == Level::Warning) => {
                worst = worst.and(Err(Failure::Pattern));
            }
            Ok(_) => {}
            Err(Failure::Trouble(message)) => {
                report::trouble(&message);
                worst = Err(Failure::Trouble("not every pattern could be read".to_owned()));
            }
            Err(Failure::Pattern) => worst = worst.and(Err(Failure::Pattern)),
        }
    }
    worst
}
