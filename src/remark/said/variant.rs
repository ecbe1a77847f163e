//! Remarks about sizes, colourways, and whom a piece is made for.

use crate::remark::Code;

/// What is said about sizes, colourways, and whom a piece is made for.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Variant {}

impl Variant {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
