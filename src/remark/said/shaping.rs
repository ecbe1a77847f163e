//! Remarks about the shapes of beads and findings.

use crate::remark::Code;

/// What is said about the shapes of beads and findings.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Shaping {}

impl Shaping {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
