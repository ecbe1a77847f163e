//! Drawn pages: what comes out of `export` and `art`, checked by the properties that it must have.
//! The contact sheets are also written to `target/pictures/`, to look at.

#![allow(clippy::unwrap_used, reason = "a helper that cannot go on fails its test")]

mod art;
#[path = "../support/beside.rs"]
mod beside;
#[allow(dead_code, reason = "what these tests do not look at")]
#[path = "../support/boxes.rs"]
mod boxes;
mod contact;
mod files;
mod ink;
mod reference;
mod samples;
#[path = "../support/shelved.rs"]
mod shelved;
mod steps;
mod told;
mod widths;
