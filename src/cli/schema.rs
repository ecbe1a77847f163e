//! `festoon schema`: the JSON Schema of the pattern language.

use super::{Failure, output};

/// Prints the schema, for editors and validators.
pub fn run() -> Result<(), Failure> {
    let schema = festoon::pattern::schema();
    output::print(format!("{schema:#}\n").as_bytes())
}
