//! festoon turns a bead jewellery pattern, written in YAML, into a measured drape and a printable
//! sheet drawn to scale.
//!
//! Data walks one way, and each stage has one type and one module:
//!
//! [`source`] text → [`pattern`] as written → [`design`] resolved → [`drape`] hung →
//! [`sheet`] pages of marks → [`export`] SVG, PNG, PDF.

pub mod art;
pub mod design;
pub mod drape;
pub mod export;
pub mod gallery;
pub mod geometry;
pub mod materials;
pub mod measure;
pub mod paint;
pub mod pattern;
pub mod picture;
pub mod remark;
pub mod rules;
pub mod sheet;
pub mod source;
pub mod steps;
pub mod trade;
pub mod units;

use design::{Choice, Design, Size};
use drape::Drape;
use pattern::Pattern;
use remark::Remark;
use source::Source;

/// A piece, resolved and hung: all that sheets, pictures and tables are made from.
#[derive(Clone, Debug)]
pub struct Piece {
    /// What it is made of.
    pub design: Design,
    /// How it hangs.
    pub drape: Drape,
    /// All sizes of a graded pattern, this one among them; empty where there is but one.
    pub sizes: Vec<Size>,
}

/// Reads, resolves, hangs and checks a pattern. Without errors among the remarks there is a piece.
/// Every strand hangs from two points `span` mm apart, or as far as the neck is broad.
#[must_use]
pub fn piece(source: &Source, choice: &Choice, span: Option<f64>) -> (Option<Piece>, Vec<Remark>) {
    let (pattern, mut remarks) = pattern::read(source);
    let Some(pattern) = pattern else { return (None, remarks) };
    let (made, more) = made(&pattern, choice, span);
    remarks.extend(more);
    let piece = made.map(|(design, drape)| Piece { design, drape, sizes: design::sizes(&pattern, choice) });
    (piece, remarks)
}

/// Resolves, hangs and checks a pattern that was read.
#[must_use]
pub fn made(pattern: &Pattern, choice: &Choice, span: Option<f64>) -> (Option<(Design, Drape)>, Vec<Remark>) {
    let (design, mut remarks) = design::resolve(pattern, choice);
    let Some(design) = design else { return (None, remarks) };
    let (drape, more) = hung(&design, span);
    remarks.extend(more);
    (drape.map(|drape| (design, drape)), remarks)
}

/// Hangs and checks a design.
#[must_use]
pub fn hung(design: &Design, span: Option<f64>) -> (Option<Drape>, Vec<Remark>) {
    match drape::hang(design, span) {
        Ok(drape) => {
            let remarks = rules::check(design, &drape);
            (Some(drape), remarks)
        }
        Err(fault) => (None, vec![fault.remark(design)]),
    }
}
