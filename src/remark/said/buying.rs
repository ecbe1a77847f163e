//! Remarks about packs, prices and lots.

use crate::remark::Code;

/// What is said about packs, prices and lots.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Buying {}

impl Buying {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
