//! Drawn pages: what comes out of `export` and `art`, checked by the properties that it must have.
//! The contact sheets are also written to `target/pictures/`, to look at.

#![expect(clippy::unwrap_used, reason = "a failed test is what a panic is for")]

mod art;
mod contact;
mod files;
mod layout;
mod samples;
mod widths;
