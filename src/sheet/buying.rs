//! Buying and cutting: materials, cutting list, tools, sizes and, when asked for, prices.

use crate::geometry::Point;
use crate::materials::render::words::{estimates, in_currency, share};
use crate::materials::{Materials, Suggestion};
use crate::steps;

use super::{Sheet, cutting, face, needs, page, sizes};
use crate::paint::layout::flow::Flow;
use crate::paint::layout::table::{Align, Cell, Column, SetTable, Table};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};

/// Room above a heading.
const BEFORE: f64 = 4.0;
/// Room between the table of sizes and what stands beside it.
const ASIDE: f64 = 8.0;
/// Least width, and most height, of what stands there.
const LEAST_ASIDE: f64 = 52.0;
const MOST_ASIDE: f64 = 100.0;
/// Room between two tools.
const TOOLS_APART: f64 = 7.0;
/// Room that a box to tick takes before its words, and the gap in it.
const TICK: f64 = 4.6;
const TICK_GAP: f64 = 2.0;

/// What the section shows.
const DESCRIPTION: &str = "What to buy, with spares and what is left over, how to cut cords and chains, and the tools.";

/// Pours what the maker has to buy, to cut and, where the face does not say it, to lay ready.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials, has_tools: bool) {
    page::begin(flow, "Buying and cutting", DESCRIPTION.to_owned());
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

fn section(flow: &mut Flow, title: &str) {
    flow.gap(BEFORE);
    flow.heading(face::heading(title));
}

fn note(flow: &mut Flow, words: &str) {
    let note = Type::TINY.paragraph(words, flow.width());
    flow.add(Block::stack([Block::gap(1.0), note], 0.0));
}

fn needed(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials) {
    let pair = if sheet.piece.design.copies > 1 { " All counts are for the pair." } else { "" };
    let spare = materials.spare * 100.0;
    let words = format!("Spare: {spare:.0} % of each bead, at least one. Left over counts the spare ones.{pair}");
    flow.heading(Type::TINY.paragraph(&words, flow.width()));
    flow.table(needs::table(sheet.piece, materials, sheet.style.prices).snug(flow.width()));
    for rule in estimates(materials) {
        note(flow, &rule);
    }
    for other in needs::other_sizes(sheet.piece, materials) {
        note(flow, &other);
    }
    if sheet.style.prices {
        let currency = in_currency(materials.currency.as_ref());
        let (bought, used) = (materials.bought(), materials.used());
        note(flow, &format!("Bought in all: {bought}{currency}. The piece uses {used}{currency} of it."));
    }
}

/// The cutting plans.
fn cuts(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials) {
    let plans: Vec<_> = materials.cuttings.iter().filter(|cutting| cutting.pieces().next().is_some()).collect();
    if !plans.is_empty() {
        section(flow, "Cutting");
        cutting::pour(flow, &sheet.piece.design, &plans);
    }
}

/// The tools under their heading, each with a box to tick: one a line, or as many side by side as have room.
pub fn tools(sheet: &Sheet<'_>, width: f64, one_a_line: bool) -> Block {
    let tool = |tool: &String| Block::row([tick(), Type::BODY.paragraph(tool, width - TICK)], TICK_GAP);
    let tools = steps::english::tools(&sheet.piece.design);
    let tools = tools.iter().map(tool);
    let rows = if one_a_line { tools.collect() } else { Block::rows(tools, TOOLS_APART, width) };
    Block::stack([face::heading("Tools"), Block::stack(rows, 0.8)], 0.0)
}

/// A box to tick, in the middle of a line of text.
pub fn tick() -> Block {
    const SIDE: f64 = 2.4;
    let top = (Type::BODY.line_height() - SIDE) / 2.0;
    let square = outline::rect(Point::new(0.1, top), SIDE, SIDE);
    let mark = Mark::Shape { outline: square, fill: None, stroke: Some(Stroke::new(style::ACCENT, 0.25)) };
    Block::new(SIDE + 0.2, top + SIDE, vec![mark])
}

fn graded(flow: &mut Flow, sheet: &Sheet<'_>) {
    let (all, design) = (&sheet.piece.sizes, &sheet.piece.design);
    let mut tables: Vec<_> = sizes::tables(all, design).iter().map(|table| table.snug(flow.width())).collect();
    if tables.is_empty() {
        return;
    }
    section(flow, "Sizes");
    let notes: Vec<_> = sizes::same(all, design).into_iter().chain(sizes::datum(all, design)).collect();
    let aside = flow.width() - tables.iter().map(SetTable::width).fold(0.0, f64::max) - ASIDE;
    let beside =
        (aside >= LEAST_ASIDE && tables.len() == 1).then(|| Block::stack(sizes::recipes(all, design, aside), 0.0));
    if let Some(recipes) = beside.filter(|recipes| recipes.height < MOST_ASIDE) {
        let table = Block::stack(tables.drain(..).map(SetTable::block), 0.0);
        flow.add(Block::row([table, recipes], ASIDE));
        notes.iter().for_each(|words| note(flow, words));
        return;
    }
    for table in tables {
        flow.table(table);
        flow.gap(BEFORE / 2.0);
    }
    notes.iter().for_each(|words| note(flow, words));
    flow.columns(sizes::recipes(all, design, column(flow.width(), 2, ASIDE)), ASIDE);
}

fn price(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials) {
    let Some(price) = &materials.suggestion else { return };
    section(flow, "A suggested price");
    flow.table(sum(price, &in_currency(materials.currency.as_ref())).set(flow.width().min(90.0)));
    let unpriced = if price.unpriced.is_empty() {
        String::new()
    } else {
        format!(" Without what has no price in the pattern: {}.", price.unpriced.join(", "))
    };
    let what = if sheet.piece.design.copies > 1 { "the pair" } else { "one piece" };
    note(flow, &format!("A suggestion from the maker's own figures, for {what}, and not a valuation.{unpriced}"));
}

fn sum(price: &Suggestion, currency: &str) -> Table {
    let mut table = Table::new(vec![Column::wrapping(""), Column::new("", Align::Right)]);
    let overhead = share(price).map_or_else(|| "overhead".to_owned(), |share| format!("overhead, {share}"));
    let [shop, wearer] = price.factors;
    let rows = [
        ("materials used".to_owned(), price.materials),
        ("labour".to_owned(), price.labour),
        (overhead, price.overhead),
        ("cost".to_owned(), price.cost),
        (format!("for a shop, {shop} × cost"), price.wholesale),
        (format!("for a wearer, {wearer} × cost"), price.retail),
    ];
    for (name, money) in rows {
        table.push(vec![Cell::text(name), Cell::strong(format!("{money}{currency}"))]);
    }
    table
}
