//! Remarks about strands, their lengths and their lists.

use crate::remark::Code;

/// What is said about strands, their lengths and their lists.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Strand {}

impl Strand {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
