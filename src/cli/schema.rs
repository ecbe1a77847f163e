//! `festoon schema`: the JSON Schemas of the pattern language and of shelves.

use clap::{Args, ValueEnum};

use festoon::pattern;

use super::{Failure, output};

/// Arguments of `schema`.
#[derive(Args)]
pub struct Options {
    /// Of what
    #[arg(value_enum, default_value = "pattern")]
    of: Of,
}

#[derive(Clone, Copy, ValueEnum)]
enum Of {
    Pattern,
    Shelf,
}

/// Prints the schema, for editors and validators.
pub fn run(options: &Options) -> Result<(), Failure> {
    let schema = match options.of {
        Of::Pattern => pattern::schema(),
        Of::Shelf => pattern::shelf_schema(),
    };
    output::print(format!("{schema:#}\n").as_bytes())
}
