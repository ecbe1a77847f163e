//! The findings and beads, one below another at actual size. Lengths in mm on paper.

use crate::art::Stencils;
use crate::materials::Article;
use crate::paint::layout::flow::Flow;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::sheet::english::{self, spec};
use crate::sheet::said::Subheading;
use crate::sheet::{Sheet, face, legend};

use super::GAP;

/// Most of a page's width that a drawing takes, so that words have room beside it.
const WIDEST: f64 = 0.6;
/// Room in mm for the heading above a drawing and the rule below it.
const AROUND: f64 = 12.0;
/// Width of the words in the place of a drawing that has no room.
const WORDS: f64 = 30.0;

/// Pours the findings and beads at actual size into pages with a room.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, room: Rect, stencils: &Stencils<'_>) {
    if !sheet.piece.design.findings.is_empty() {
        flow.heading(face::heading(Subheading::Findings));
        flow.table(findings(sheet, room, stencils).set(room.width));
        flow.gap(GAP);
    }
    flow.heading(face::heading(Subheading::Beads));
    flow.table(beads(sheet, room, stencils).set(room.width));
}

/// One row a finding: its drawing, its name and what to ask for.
fn findings(sheet: &Sheet<'_>, room: Rect, stencils: &Stencils<'_>) -> Table {
    let design = &sheet.piece.design;
    let mut table = Table::new(vec![Column::new("", Align::Middle), Column::wrapping("")]);
    for (index, finding) in design.findings.entries() {
        let drawing = fitting(legend::finding(index, finding.kind(), stencils), room);
        let words = Cell::Double(finding.name.clone(), spec::of(design, Article::Finding(index), sheet.units()));
        table.push(vec![Cell::Drawing(drawing), words]);
    }
    table
}

/// One row a bead: its letter, its drawing, its name and what to ask for.
fn beads(sheet: &Sheet<'_>, room: Rect, stencils: &Stencils<'_>) -> Table {
    let (letter, drawing) = (Column::new("", Align::Left), Column::new("", Align::Middle));
    let mut table = Table::new(vec![letter, drawing, Column::wrapping("")]);
    for (index, bead) in sheet.piece.design.beads.entries() {
        let drawing = fitting(legend::drawing(index, bead, 1.0, stencils), room);
        let words = Cell::Double(bead.name.clone(), spec::size(bead));
        table.push(vec![Cell::strong(&bead.letter), Cell::Drawing(drawing), words]);
    }
    table
}

/// A drawing, or words in its place where it has no room.
fn fitting(drawing: Block, room: Rect) -> Block {
    let fits = drawing.width <= room.width * WIDEST && drawing.height <= room.height - AROUND;
    if fits { drawing } else { Type::TINY.paragraph(english::TOO_LARGE, WORDS) }
}
