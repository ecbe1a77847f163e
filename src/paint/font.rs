//! The bundled type: Source Sans 3 in two weights, under the SIL Open Font License 1.1.
//!
//! No other font is ever used, so that a sheet looks the same on every machine.

use super::mark::Weight;

/// The family's name inside the font files.
pub const FAMILY: &str = "Source Sans 3";

/// The font file of a weight.
#[must_use]
pub const fn file(weight: Weight) -> &'static [u8] {
    match weight {
        Weight::Regular => include_bytes!("../../fonts/SourceSans3-Regular.ttf"),
        Weight::Semibold => include_bytes!("../../fonts/SourceSans3-Semibold.ttf"),
    }
}
