//! festoon turns a bead jewellery pattern, written in YAML, into a measured drape and a printable
//! sheet drawn to scale.
//!
//! Data walks one way, and each stage has one type and one module:
//!
//! [`source`] text → [`pattern`] as written → [`design`] resolved → [`drape`] hung →
//! [`sheet`] pages of marks → [`export`] SVG, PNG, PDF.
//!
//! ```
//! use festoon::export::{self, About, Effort};
//! use festoon::palette::Palette;
//! use festoon::source::Source;
//! use festoon::{design, drape, pattern, rules, sheet};
//!
//! let source = Source::new("anklet.yaml", r##"
//! festoon: 1
//! title: Sand Anklet
//! kind: anklet
//! beads:
//!   sand: { name: sand seed, shape: seed, size: 8/0, colour: "#d8bf95", finish: matte }
//! cords:
//!   thread: { name: nylon thread, kind: thread, diameter: 0.2 mm, strength: 45 N }
//! strands:
//!   - name: band
//!     cord: thread
//!     length: 240 mm
//!     beads: [{ repeat: fill, of: [sand] }]
//! "##);
//!
//! // As written: `remarks` tell what is wrong, each with its place, and there is no pattern then.
//! let (pattern, remarks) = pattern::read(&source);
//! let pattern = pattern.ok_or_else(|| format!("{remarks:?}"))?;
//! // Resolved: every bead at its place on its strand.
//! let (design, remarks) = design::resolve(&pattern, &design::Choice::default());
//! let design = design.ok_or_else(|| format!("{remarks:?}"))?;
//! assert_eq!(design.strands.as_slice()[0].name, "band");
//! // Hung: a point and an angle for every bead, in mm.
//! let drape = drape::hang(&design, None).map_err(|fault| format!("{:?}", fault.remark(&design)))?;
//! for remark in rules::check(&design, &drape, &pattern.telling(), &Palette::of(&pattern, &design)) {
//!     println!("{}: {}", remark.level().word(), remark.headline());
//! }
//! // Drawn, and written as bytes: 96 dots to the inch, and every page in one PDF.
//! let piece = festoon::Piece::of(&pattern, design, drape);
//! let pages = festoon::pages(&piece, &sheet::Style::default());
//! let picture = export::png(&pages[0], 96.0, Effort::Preview)?;
//! let file = export::pdf(&pages, &About { title: "Sand Anklet".into(), ..About::default() })?;
//! assert!(picture.starts_with(b"\x89PNG") && file.starts_with(b"%PDF"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! [`piece()`] does the first three steps in one call. Lengths are millimetres, masses grams, forces
//! newtons, angles radians unless a name says otherwise.
//!
//! A struct that others are answered with, as are a design's parts, a drape, materials, steps and measures, is
//! `#[non_exhaustive]`, so that it may grow: they read it, and make their own by its constructors. What they ask with
//! ([`design::Choice`], [`materials::Order`], [`sheet::Style`]) they write in full, over its default. An enum may grow
//! unseen only where who reads it may pass over a case that he does not know, as with remarks: who draws, counts or tells
//! a case must learn of a new one from the compiler.
//!
//! Features, both on by default: `cli` builds the program `festoon`, which draws pages side by side; `parallel`
//! hangs strands, draws and packs pictures on all processors, with the same result as on one.

pub mod art;
pub mod assist;
pub mod bench;
pub mod design;
pub mod drape;
pub mod english;
pub mod export;
pub mod gallery;
pub mod geometry;
pub mod listing;
mod many;
pub mod materials;
pub mod measure;
pub mod paint;
pub mod palette;
pub mod pattern;
pub mod picture;
pub mod piece;
pub mod remark;
pub mod rules;
pub mod sheet;
pub mod source;
pub mod steps;
pub mod trade;
pub mod units;

use design::{Attempt, Choice, Design};
use drape::Drape;
use palette::Palette;
use pattern::{Draft, Holes, Pattern};
pub use piece::Piece;
use remark::{Edition, Level, Remark, has_errors};
use source::Source;

/// The pages of a piece's sheet, in millimetres, its picture on the first.
#[must_use]
pub fn pages(piece: &Piece, style: &sheet::Style) -> Vec<paint::mark::Page> {
    sheet::pages(piece, style, &picture::Portrait::of(piece))
}

/// Reads, resolves, hangs and checks a pattern. Without errors among the remarks there is a piece.
/// Every strand hangs from two points `span` mm apart, or as far as the neck is broad.
#[must_use]
pub fn piece(source: &Source, choice: &Choice, span: Option<f64>) -> (Option<Piece>, Vec<Remark>) {
    let Draft { pattern, mut remarks, holes } = pattern::draft(source);
    let Some(pattern) = pattern else { return (None, remarks) };
    let (made, more) = made(&pattern, &holes, choice, span);
    remarks.extend(more);
    let sound = !has_errors(&remarks);
    let idle = if sound && pattern.variants().is_empty() { pattern.idle_allows(&remarks) } else { Vec::new() };
    let remarks = [pattern.unsilenced(remarks), idle].concat();
    let piece = |(design, drape)| {
        let colourways = palette::colourways(&pattern, &design);
        Piece { sizes: design::sizes(&pattern, choice), colourways, ..Piece::of(&pattern, design, drape) }
    };
    (made.map(piece), remarks)
}

/// Everything there is to say about a shelf, or about a pattern in its sizes and colourways: of the one that is chosen, or
/// where none is, of all, each remark that only arises in one of them with its name.
#[must_use]
pub fn remarks(source: &Source, choice: &Choice) -> Vec<Remark> {
    if pattern::is_shelf(source) {
        return of_shelf(source);
    }
    let Draft { pattern, mut remarks, holes } = pattern::draft(source);
    let Some(pattern) = pattern else { return remarks };
    remarks.extend(made(&pattern, &holes, choice, None).1);
    if *choice != Choice::default() {
        return pattern.unsilenced(remarks);
    }
    let more = of_variants(&pattern, &holes, &remarks);
    remarks.extend(more);
    let idle = if has_errors(&remarks) { Vec::new() } else { pattern.idle_allows(&remarks) };
    [pattern.unsilenced(remarks), idle].concat()
}

/// What is wrong with a shelf by itself.
fn of_shelf(source: &Source) -> Vec<Remark> {
    let (shelf, remarks) = pattern::read_shelf(source);
    let more = shelf.iter().flat_map(design::check_shelf);
    remarks.into_iter().chain(more).collect()
}

/// What only arises in one of the pattern's sizes or colourways, said with its name.
fn of_variants(pattern: &Pattern, holes: &Holes, said: &[Remark]) -> Vec<Remark> {
    let variant = |edition: Edition| {
        let all = made(pattern, holes, &edition.clone().into(), None).1;
        let new = all.into_iter().filter(|remark| !said.contains(remark));
        new.map(move |remark| Remark { variant: Some(edition.clone()), ..remark }).collect::<Vec<_>>()
    };
    pattern.variants().into_iter().flat_map(variant).collect()
}

/// Resolves, hangs and checks as much of a pattern as its holes leave; its `allow:` silences nothing of that
/// yet. What has errors is not hung for itself, but for what else is wrong with it: those errors alone are
/// told that hold whatever the rest will be.
fn made(
    pattern: &Pattern,
    holes: &Holes,
    choice: &Choice,
    span: Option<f64>,
) -> (Option<(Design, Drape)>, Vec<Remark>) {
    let Attempt { design, whole, mut remarks } = design::attempt(pattern, holes, choice);
    let sound = !holes.any() && !has_errors(&remarks);
    let (drape, mut more) = match &design {
        Some(design) if whole || !design.strands.is_empty() => hung(pattern, design, span),
        _ => (None, Vec::new()),
    };
    if !sound {
        let told = |remark: &Remark| remarks.iter().any(|other| other.code() == remark.code());
        more.retain(|remark| remark.level() == Level::Error && (whole || remark.code().is_local()) && !told(remark));
    }
    if holes.any() {
        remarks.retain(|remark| remark.level() == Level::Error);
    }
    remarks.extend(more);
    (design.filter(|_| sound).zip(drape), remark::once(remarks))
}

/// Hangs and checks a design that a pattern was resolved to.
#[must_use]
pub fn hung(pattern: &Pattern, design: &Design, span: Option<f64>) -> (Option<Drape>, Vec<Remark>) {
    match drape::hang(design, span) {
        Ok(drape) => {
            let remarks = rules::check(design, &drape, &pattern.telling(), &Palette::of(pattern, design));
            (Some(drape), remarks)
        }
        Err(fault) => (None, vec![fault.remark(design)]),
    }
}
