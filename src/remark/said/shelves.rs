//! Remarks about what is kept on a shelf, and what names mean.

use crate::remark::Code;

/// What is said about what is kept on a shelf, and what names mean.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Shelves {}

impl Shelves {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
