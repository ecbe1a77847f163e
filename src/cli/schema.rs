//! `festoon schema`: the JSON Schemas of the pattern language and of shelves.

use clap::{Args, ValueEnum};

use festoon::pattern;

use super::{Failure, output};

/// Arguments of `schema`.
#[derive(Args)]
pub struct Options {
    /// Of what
    #[arg(value_enum, default_value = "pattern")]
    of: SchemaOf,
}

#[derive(Clone, Copy, ValueEnum)]
enum SchemaOf {
    Pattern,
    Shelf,
}

/// Prints the schema, for editors and validators.
pub fn run(options: &Options) -> Result<(), Failure> {
    let schema = match options.of {
        SchemaOf::Pattern => pattern::schema(),
        SchemaOf::Shelf => pattern::shelf_schema(),
    };
    output::print(format!("{schema:#}\n").as_bytes())
}
