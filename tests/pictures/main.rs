//! Drawn pages: what comes out of `export` and `art`, checked by the properties that it must have.

mod files;
mod widths;
