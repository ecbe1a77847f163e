//! Remarks about what festoon itself got wrong.

use crate::remark::Code;

/// What festoon itself got wrong: a pattern was resolved to what no design may be.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Own {
    BeadSize { id: String },
    CordSize { id: String },
    FindingSize { id: String },
    UnknownOf { id: String },
    Pack { id: String },
    NoCopies,
    Body,
    Turns,
    Price,
    Number { strand: String },
    Unknown { strand: String },
    UnknownPart,
    PartLength,
    Overfull { strand: String },
    Overlap { strand: String },
    Idle { id: String },
}

impl Own {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        Code::OwnFault
    }
}
