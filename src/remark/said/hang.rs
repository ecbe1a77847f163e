//! Remarks about how strands hang and lie.

use crate::remark::Code;

/// What is said about how strands hang and lie.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Hang {}

impl Hang {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
