//! Drawn pages: what comes out of `export` and `art`, checked by the properties that it must have.
//! The contact sheets are also written to `target/pictures/`, to look at.

mod art;
mod contact;
mod files;
mod samples;
mod widths;
