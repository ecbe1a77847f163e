//! The pattern as written: every value with its place.

mod words;

pub use words::{CordKind, FindingKind, Finish, Kind, Settle, Shape, Skill, SoldBy};
