//! Remarks about whether one thing fits in or on another.

use crate::remark::Code;

/// What is said about whether one thing fits in or on another.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Fit {}

impl Fit {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
