//! Remarks about who wears a piece, and who reads of it.

use crate::remark::Code;

/// What is said about who wears a piece, and who reads of it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Wearing {}

impl Wearing {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
