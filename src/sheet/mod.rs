//! The printed sheet.

pub mod mark;
