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
    let (design, resolved) = design::resolve(&pattern, choice);
    remarks.extend(resolved);
    let Some(design) = design else { return (None, remarks) };
    match drape::hang(&design, span) {
        Ok(drape) => {
            remarks.extend(rules::check(&design, &drape));
            let sizes = design::sizes(&pattern, choice);
            (Some(Piece { design, drape, sizes }), remarks)
        }
        Err(fault) => {
            remarks.push(fault.remark(&design));
            (None, remarks)
        }
    }
}
