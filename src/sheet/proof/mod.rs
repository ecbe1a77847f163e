//! The proof: strands and closure laid straight at actual size, tiled over pages, then findings and
//! beads; two squares on every page tell whether the printer kept the size.
//!
//! Strands lie below one another, each in a [`lane`]. Where they are longer than the page, all lanes
//! are cut at the same places ([`tile`]): on both pages whatever the cut goes through is drawn whole,
//! so that the pages join whichever lies on top. Lanes that the page has no height for go on on the
//! next row of pages.

mod check;
mod lane;
mod map;
mod tile;

use crate::art::Stencils;
use crate::geometry::Point;
use crate::materials::Article;
use crate::pattern::FindingKind;

use map::Map;
use tile::Tiling;

use super::layout::flow::Flow;
use super::layout::table::{Align, Cell, Column, Table};
use super::layout::{Block, Rect};
use super::mark::Mark;
use super::page::Body;
use super::{Sheet, face, legend, spec};

/// Room between the squares and what is below them, and between lanes.
const GAP: f64 = 5.0;
/// Longest piece of chain in mm that is drawn among the findings.
const CHAIN: f64 = 40.0;

/// Draws the proof's pages.
pub fn proof(sheet: &Sheet<'_>, stencils: &mut Stencils<'_>) -> Vec<Body> {
    let room = sheet.room();
    let below = room.below(check::height(room.width) + GAP);
    let lanes = lane::lanes(sheet.piece, stencils);
    let tiling = Tiling::new(&lanes, below);
    let map = Map::new(&tiling);
    let mut marks: Vec<Vec<Mark>> =
        tiling.pages().map(|page| tiling.draw(page, &lanes, sheet.piece, stencils)).collect();
    marks.extend(lists(sheet, below, stencils));
    let body = |(index, mut marks): (usize, Vec<Mark>)| {
        marks.extend(check::marks(sheet, room, &map, index));
        Body {
            name: "Proof".to_owned(),
            description: describe(index, &tiling),
            marks,
            scale: "actual size (1 : 1)".to_owned(),
        }
    };
    marks.into_iter().enumerate().map(body).collect()
}

fn describe(index: usize, tiling: &Tiling) -> String {
    let what = if index < tiling.pages().len() { "Strands laid straight" } else { "Findings and beads" };
    format!("{what} at actual size, with squares of 50 mm and 2 in to measure.")
}

/// Pages of the findings and beads at actual size.
fn lists(sheet: &Sheet<'_>, room: Rect, stencils: &mut Stencils<'_>) -> Vec<Vec<Mark>> {
    let mut flow = Flow::new(room);
    let findings = findings(sheet, stencils);
    if !sheet.piece.design.findings.is_empty() {
        flow.heading(face::heading("Findings"));
        flow.table(findings.set(room.width));
        flow.gap(GAP);
    }
    flow.heading(face::heading("Beads"));
    flow.table(legend::table(sheet.piece, stencils).set(room.width));
    flow.into_pages().into_iter().map(|page| page.marks).collect()
}

/// One row a finding: its drawing, its name and what to ask for.
fn findings(sheet: &Sheet<'_>, stencils: &mut Stencils<'_>) -> Table {
    let design = &sheet.piece.design;
    let mut table = Table::new(vec![Column::new("", Align::Middle), Column::wrapping("")]);
    for (index, finding) in design.findings.iter().enumerate() {
        let drawing = drawing(index, finding.kind, stencils);
        let words = Cell::Double(finding.name.clone(), spec::of(design, Article::Finding(index)));
        table.push(vec![Cell::Drawing(drawing), words]);
    }
    table
}

/// A finding at actual size; of a chain, a piece.
fn drawing(index: usize, kind: FindingKind, stencils: &mut Stencils<'_>) -> Block {
    let mark = match kind {
        FindingKind::Chain => stencils.chain(index, &[Point::ORIGIN, Point::new(CHAIN, 0.0)], 1.0),
        _ => stencils.finding(index, Point::ORIGIN, 0.0, 1.0),
    };
    let [low, high] = stencils.bounds(&mark).unwrap_or_default();
    let size = high - low;
    Block::new(size.x, size.y, Block::new(size.x, size.y, vec![mark]).at(Point::ORIGIN - low))
}
