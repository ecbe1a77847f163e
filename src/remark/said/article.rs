//! Remarks about beads, cords and findings by themselves.

use crate::remark::Code;

/// What is said about beads, cords and findings by themselves.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Article {}

impl Article {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
