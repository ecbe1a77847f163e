//! Words that several remarks share.

/// What was meant, as a question; where nothing is near, what `otherwise` says.
pub fn meant_or(meant: Option<&str>, otherwise: impl FnOnce() -> String) -> String {
    meant.map_or_else(otherwise, |meant| format!("did you mean `{meant}`?"))
}
