//! How grave remarks are.

use serde::Serialize;

/// How grave a remark is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// The piece cannot be made as written; nothing is produced.
    Error,
    /// The piece can be made but something is likely wrong.
    Warning,
    /// Worth knowing.
    Advice,
}

impl Level {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
            Self::Advice => "advice",
        }
    }
}
