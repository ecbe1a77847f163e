//! The printed sheet.

pub mod font;
pub mod mark;
pub mod metrics;
pub mod outline;
