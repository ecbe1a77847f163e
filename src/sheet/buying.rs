//! Buying and cutting: materials, cutting list, tools, sizes and, when asked for, prices.

use crate::geometry::Point;
use crate::materials::render::words::{estimates, in_currency, share};
use crate::materials::{Materials, Suggestion};
use crate::steps;

use super::{Sheet, cutting, face, needs, page, sizes};
use crate::paint::layout::Block;
use crate::paint::layout::flow::Flow;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};

/// Room above a heading.
const BEFORE: f64 = 5.0;
/// Width of a column of tools.
const TOOL: f64 = 55.0;

/// What the section shows.
const DESCRIPTION: &str = "What to buy, with spares and what is left over, how to cut cords and chains, and the tools.";

/// Pours what the maker has to buy, to cut and, where the face does not say it, to lay ready.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, materials: &Materials, has_tools: bool) {
    page::begin(flow, "Buying and cutting", DESCRIPTION.to_owned());
    needed(flow, sheet, materials);
    cuts(flow, sheet, materials);
    if !has_tools {
        flow.gap(BEFORE);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few columns")]
        flow.add(tools(sheet, (flow.width() / TOOL).floor().max(1.0) as usize));
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
    flow.table(needs::table(sheet.piece, materials, sheet.style.prices).snug(flow.width()));
    let pair = if sheet.piece.design.copies > 1 { " All counts are for the pair." } else { "" };
    let spare = materials.spare * 100.0;
    note(flow, &format!("Spare: {spare:.0} % of each bead, at least one. Left over counts the spare ones.{pair}"));
    for rule in estimates(materials) {
        note(flow, rule);
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
    if plans.is_empty() {
        return;
    }
    section(flow, "Cutting");
    for (at, cutting) in plans.into_iter().enumerate() {
        cutting::pour(flow, &sheet.piece.design, cutting, at == 0);
        flow.gap(BEFORE / 2.0);
    }
}

/// The tools under their heading, in columns, each with a box to tick.
pub fn tools(sheet: &Sheet<'_>, columns: usize) -> Block {
    let tools = steps::english::tools(&sheet.piece.design);
    let rows = tools.chunks(columns).map(|row| {
        let cells = row.iter().map(|tool| {
            let words = Block::row([tick(), Type::BODY.paragraph(tool, TOOL - 8.0)], 2.0);
            Block { width: TOOL, ..words }
        });
        Block::row(cells, 0.0)
    });
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
    let tables = sizes::tables(&sheet.piece.sizes, &sheet.piece.design);
    if tables.is_empty() {
        return;
    }
    section(flow, "Sizes");
    for table in tables {
        flow.table(table.snug(flow.width()));
        flow.gap(BEFORE / 2.0);
    }
    if let Some(datum) = sizes::datum(&sheet.piece.sizes, &sheet.piece.design) {
        flow.add(Type::TINY.paragraph(&datum, flow.width()));
        flow.gap(BEFORE / 2.0);
    }
    for block in sizes::recipes(&sheet.piece.sizes, &sheet.piece.design, flow.width()) {
        flow.add(block);
    }
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
