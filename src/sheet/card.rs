//! The card: what a class keeps beside the board. Beads, word charts, rows, measures, materials and tools; no steps.
//! Lengths in mm on paper.

use crate::art::Stencils;
use crate::design::{Index, Strand};
use crate::materials::Materials;

use super::said::{SectionKind, Subheading};
use super::{Sheet, buying, english, face, facts, figure, legend, needs, page, stringing};
use crate::paint::layout::flow::Flow;
use crate::paint::layout::{Block, column};

/// Room between two parts.
const APART: f64 = 5.0;
/// Room between a strand's words and the lines of its row.
const ROWS_APART: f64 = 2.0;

/// Pours the card: one page, but for a piece of many strands. Rows are drawn where the page has room for all of
/// them.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials, stencils: &Stencils<'_>) {
    flow.begin(english::section(&SectionKind::Card));
    let width = flow.width();
    let mut opening = vec![facts::head(sheet.piece, width), facts::list(sheet.piece, width)];
    opening.extend(lists(sheet, width, stencils));
    let needs = face::titled(Subheading::Needs, needs::short(sheet.piece, materials, width));
    let alike = sheet.piece.design.alike();
    let told: Vec<_> = alike.iter().map(|strands| stringing::told(sheet, strands, width)).collect();
    let taken: f64 = opening.iter().chain(&told).chain([&needs]).map(|block| block.height + APART).sum();
    let rows = rows(sheet, &alike, width, sheet.room().height - taken, stencils);
    for block in opening {
        flow.add(block);
        flow.gap(APART);
    }
    for (told, row) in told.into_iter().zip(rows) {
        flow.add(Block::stack([told, row], ROWS_APART));
        flow.gap(APART);
    }
    flow.add(needs);
}

/// The rows of strands, one for those that are alike; empty where there is no room for all of them.
fn rows(sheet: &Sheet<'_>, alike: &[Vec<Index<Strand>>], width: f64, room: f64, stencils: &Stencils<'_>) -> Vec<Block> {
    let row = |strands: &Vec<Index<Strand>>| {
        Block::stack(figure::row(sheet.piece, strands[0], width, stencils).lines, ROWS_APART)
    };
    let rows: Vec<_> = alike.iter().map(row).collect();
    let taken: f64 = rows.iter().map(|row| row.height + ROWS_APART).sum();
    if taken <= room { rows } else { vec![Block::default(); alike.len()] }
}

/// Beads and tools: side by side where there is room.
fn lists(sheet: &Sheet<'_>, width: f64, stencils: &Stencils<'_>) -> Vec<Block> {
    let columns = if width >= page::TWO_COLUMNS { 2 } else { 1 };
    let column = column(width, columns, page::COLUMNS_APART);
    let beads = face::titled(Subheading::Legend, legend::table(sheet.piece, stencils).set(column).block());
    let both = [Block { width: column, ..beads }, buying::tools(sheet, column, false)];
    if columns > 1 { vec![Block::row(both, page::COLUMNS_APART)] } else { both.into() }
}
