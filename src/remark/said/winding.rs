//! Remarks about torsades, coils and wraps.

use crate::remark::Code;

/// What is said about torsades, coils and wraps.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Winding {}

impl Winding {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match *self {}
    }
}
