//! A leaf that draws and knows nothing of beads: marks, outlines, type and its widths, layout.
//!
//! All that draws stands on it: `art`, `sheet`, `picture`, `gallery` and `export`.

mod advances;
pub mod font;
pub mod fraction;
pub mod layout;
mod lines;
pub mod mark;
pub mod metrics;
pub mod outline;
pub mod style;
