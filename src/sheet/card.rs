//! The card: what a class keeps beside the board. Beads, word charts, measures, materials and tools; no
//! figures, no steps.

use crate::art::Stencils;
use crate::materials::Materials;

use super::{Sheet, buying, face, facts, legend, needs, stringing};
use crate::paint::layout::flow::{Flow, Section};
use crate::paint::layout::{Block, column};

/// Room between two parts.
const APART: f64 = 5.0;
/// Room between two columns.
const COLUMNS_APART: f64 = 8.0;
/// Narrowest room in which the tools stand beside the beads.
const TWO_COLUMNS: f64 = 160.0;

/// Pours the card: one page, but for a piece of many strands.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials, stencils: &mut Stencils<'_>) {
    let description = "What to string on each strand, the beads, what one piece takes, and the tools.".to_owned();
    flow.begin(Section { name: "Card", description });
    flow.add(facts::head(sheet.piece, flow.width()));
    flow.gap(1.8);
    flow.add(facts::list(sheet.piece, flow.width()));
    for block in lists(sheet, flow.width(), stencils) {
        flow.gap(APART);
        flow.add(block);
    }
    for alike in sheet.piece.design.alike() {
        flow.gap(APART);
        flow.add(stringing::told(sheet, &alike, flow.width()));
    }
    flow.gap(APART);
    let needs = needs::short(sheet.piece, materials, flow.width());
    flow.add(face::titled(face::NEEDS, needs));
}

/// Beads and tools: side by side where there is room.
fn lists(sheet: &Sheet<'_>, width: f64, stencils: &mut Stencils<'_>) -> Vec<Block> {
    let columns = if width >= TWO_COLUMNS { 2 } else { 1 };
    let column = column(width, columns, COLUMNS_APART);
    let beads = face::titled(face::BEADS, legend::table(sheet.piece, stencils).set(column).block());
    let both = [Block { width: column, ..beads }, buying::tools(sheet, column)];
    if columns > 1 { vec![Block::row(both, COLUMNS_APART)] } else { both.into() }
}
