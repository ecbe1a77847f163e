//! Remarks about whether a piece closes and stays closed.

use crate::remark::Code;

/// What is said about whether a piece closes and stays closed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Closing {}

impl Closing {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
