//! What stands beside the steps, in English.

/// At which step the same is drawn.
pub fn drawn_at(step: usize) -> String {
    format!("drawn at step {step}")
}
