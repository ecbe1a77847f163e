//! Remarks about bars and what holds several strands.

use crate::remark::Code;

/// What is said about bars and what holds several strands.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Bar {}

impl Bar {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
