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
pub mod geometry;
pub mod materials;
pub mod pattern;
pub mod remark;
pub mod rules;
pub mod sheet;
pub mod source;
pub mod steps;
pub mod trade;
pub mod units;
