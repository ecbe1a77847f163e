//! Buying and cutting: materials, cutting list, tools, sizes and, when asked for, prices. Lengths in mm on paper.

use crate::geometry::Point;
use crate::materials::render::words::{estimates, in_currency};
use crate::materials::{Materials, Suggestion};
use crate::steps;

use super::said::{SectionKind, Subheading};
use super::{Sheet, cutting, english, face, needs, page, sizes};
use crate::paint::layout::flow::Flow;
use crate::paint::layout::table::{Align, Cell, Column, SetTable, Table};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};

/// Room above a heading.
const BEFORE: f64 = 4.0;
/// Least width, and most height, of what stands there.
const LEAST_ASIDE: f64 = 52.0;
const MOST_ASIDE: f64 = 100.0;
/// Room in mm between two tools side by side, and between two lines of them.
const TOOLS_APART: f64 = 7.0;
const TOOL_LINES_APART: f64 = 0.8;
/// Room in mm above a note.
const ABOVE_NOTE: f64 = 1.0;
/// Widest table of the price, in mm.
const PRICE_WIDTH: f64 = 90.0;
/// Room that a box to tick takes before its words, and the gap in it.
const TICK: f64 = 4.6;
const TICK_GAP: f64 = 2.0;

/// Pours what the maker has to buy, to cut and, where the face does not say it, to lay ready.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials, has_tools: bool) {
    page::begin(flow, &SectionKind::Buying);
    needed(flow, sheet, materials);
    cuts(flow, sheet, materials);
    if !has_tools {
        flow.gap(BEFORE);
        flow.add(tools(sheet, flow.width(), false));
    }
    graded(flow, sheet);
    if sheet.style.prices {
        price(flow, sheet, materials);
    }
}

fn section(flow: &mut Flow, title: Subheading<'_>) {
    flow.gap(BEFORE);
    flow.heading(face::heading(title));
}

fn note(flow: &mut Flow, words: &str) {
    let note = Type::TINY.paragraph(words, flow.width());
    flow.add(Block::stack([Block::gap(ABOVE_NOTE), note], 0.0));
}

fn needed(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials) {
    let words = english::spare(materials, sheet.piece.design.copies, sheet.units());
    flow.heading(Type::TINY.paragraph(&words, flow.width()));
    flow.table(needs::table(sheet.piece, materials, sheet.style.prices).set(flow.width()));
    for rule in estimates(materials) {
        note(flow, &rule);
    }
    for other in needs::other_sizes(sheet.piece, materials) {
        note(flow, &other);
    }
    if sheet.style.prices {
        note(flow, &english::costs(materials, sheet.currency()));
    }
}

/// The cutting plans.
fn cuts(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials) {
    let plans: Vec<_> = materials.cuttings.iter().filter(|cutting| cutting.pieces().next().is_some()).collect();
    if !plans.is_empty() {
        section(flow, Subheading::Cutting);
        cutting::pour(flow, sheet.piece, &plans);
    }
}

/// The tools under their heading, each with a box to tick: one a line, or as many side by side as have room.
pub fn tools(sheet: &Sheet<'_>, width: f64, one_a_line: bool) -> Block {
    let tool = |tool: &String| Block::row([tick(), Type::BODY.paragraph(tool, width - TICK)], TICK_GAP);
    let tools = steps::english::tools(&sheet.piece.design, sheet.units());
    let tools = tools.iter().map(tool);
    let rows = if one_a_line { tools.collect() } else { Block::rows(tools, TOOLS_APART, width) };
    Block::stack([face::heading(Subheading::Tools), Block::stack(rows, TOOL_LINES_APART)], 0.0)
}

/// A box to tick, in the middle of a line of text.
pub fn tick() -> Block {
    const SIDE: f64 = 2.4;
    const INSET: f64 = 0.1;
    let top = (Type::BODY.line_height() - SIDE) / 2.0;
    let square = outline::rect(Point::new(INSET, top), SIDE, SIDE);
    let mark = Mark::Shape { outline: square, fill: None, stroke: Some(Stroke::new(style::ACCENT, style::BOLD)) };
    Block::new(SIDE + 2.0 * INSET, top + SIDE, vec![mark])
}

/// The sizes of a graded pattern: a table with what to string for the others beside it, or below it where they have no room.
fn graded(flow: &mut Flow, sheet: &Sheet<'_>) {
    let (all, design, units) = (&sheet.piece.sizes, &sheet.piece.design, sheet.piece.telling.units);
    let tables: Vec<_> = sizes::tables(all, design, units).iter().map(|table| table.snug(flow.width())).collect();
    if tables.is_empty() {
        return;
    }
    section(flow, Subheading::Sizes);
    let notes = sizes::notes(all, design, units);
    let recipes = |width: f64| sizes::recipes(all, design, units, width);
    match beside(&tables, flow.width(), recipes) {
        Some(block) => {
            flow.add(block);
            notes.iter().for_each(|words| note(flow, words));
        }
        None => below(flow, tables, &notes, recipes),
    }
}

/// An only table with recipes of a width beside it, where those have room there.
fn beside(tables: &[SetTable], width: f64, recipes: impl Fn(f64) -> Vec<Block>) -> Option<Block> {
    let [table] = tables else { return None };
    let aside = Some(width - table.width() - page::COLUMNS_APART).filter(|aside| *aside >= LEAST_ASIDE)?;
    let recipes = Some(Block::stack(recipes(aside), 0.0)).filter(|recipes| recipes.height < MOST_ASIDE)?;
    Some(Block::row([table.clone().block(), recipes], page::COLUMNS_APART))
}

/// Tables, what is said of them, and recipes of a width below them.
fn below(flow: &mut Flow, tables: Vec<SetTable>, notes: &[String], recipes: impl Fn(f64) -> Vec<Block>) {
    for table in tables {
        flow.table(table);
        flow.gap(BEFORE / 2.0);
    }
    notes.iter().for_each(|words| note(flow, words));
    flow.gap(BEFORE / 2.0);
    flow.columns(recipes(column(flow.width(), 2, page::COLUMNS_APART)), page::COLUMNS_APART);
}

fn price(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials) {
    let Some(price) = &materials.suggestion else { return };
    section(flow, Subheading::Price);
    flow.table(sum(price, &in_currency(sheet.currency())).set(flow.width().min(PRICE_WIDTH)));
    note(flow, &english::suggestion(price, sheet.piece.design.copies));
}

fn sum(price: &Suggestion, currency: &str) -> Table {
    let mut table = Table::new(vec![Column::wrapping(""), Column::new("", Align::Right)]);
    let sums = [price.materials, price.labour, *price.overhead, price.cost, price.wholesale, price.retail];
    for (name, money) in english::price_parts(price).into_iter().zip(sums) {
        table.push(vec![Cell::text(name), Cell::strong(format!("{money}{currency}"))]);
    }
    table
}
