//! The design: a pattern resolved into beads, lengths and findings.

mod model;

pub use model::*;
