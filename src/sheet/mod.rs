//! The printed sheet.

pub mod flow;
pub mod font;
pub mod layout;
pub mod mark;
pub mod metrics;
pub mod outline;
pub mod style;
pub mod table;
