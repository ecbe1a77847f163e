//! To come.

pub mod packs;
