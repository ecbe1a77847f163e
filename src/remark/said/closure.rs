//! Remarks about what closes a piece, as it is written.

use crate::remark::Code;

/// What is said about what closes a piece, as it is written.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Closure {}

impl Closure {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
