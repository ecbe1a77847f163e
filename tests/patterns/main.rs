//! The shipped patterns and the patterns that `festoon new` prints: their numbers, what is true of
//! each of them, what they show together, and the schema that they follow.

#![allow(clippy::unwrap_used, reason = "a test that cannot read its files fails")]

#[path = "../support/beside.rs"]
mod beside;
mod contact;
mod coverage;
mod properties;
mod reference;
mod schema;
#[path = "../support/shelved.rs"]
mod shelved;
mod shipped;
mod sizes;
