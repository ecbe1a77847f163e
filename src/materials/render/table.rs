//! The table that a maker reads: what to buy, how to cut it, what it costs.

use crate::materials::{Amount, Buy, Cutting, Line, Materials, Spool, Suggestion};
use crate::units::{Length, UnitStyle};

/// Spaces between two columns.
const GUTTER: &str = "  ";
/// From here on a length is told in metres or feet, as it is sold.
const LONG: Length = Length::mm(1000.0);
/// One foot in millimetres.
const FOOT: f64 = 304.8;
const HEAD: [&str; 7] = ["", "need", "spare", "in hand", "buy", "left over", "cost"];

/// The materials as lines of text: a table, the cutting plans, and the price where there is one.
///
/// `cost` is what is bought; the last lines tell what of it the pieces use.
#[must_use]
pub fn table(materials: &Materials, units: UnitStyle) -> String {
    let mut rows = vec![HEAD.map(str::to_owned)];
    rows.extend(materials.lines.iter().map(|line| row(line, units)));
    let mut lines = aligned(&rows);
    lines.push(String::new());
    lines.extend(totals(materials));
    for cutting in &materials.cuttings {
        lines.push(String::new());
        lines.extend(plan(materials, cutting, units));
    }
    if let Some(price) = &materials.suggestion {
        lines.push(String::new());
        lines.extend(suggestion(price));
    }
    lines.iter().map(|line| format!("{}\n", line.trim_end())).collect()
}

fn row(line: &Line, units: UnitStyle) -> [String; 7] {
    let some = |amount| if nothing(amount) { String::new() } else { text(amount, units) };
    let [buy, left_over, cost] = match &line.buy {
        Some(buy) => [lots(buy, units), text(buy.left_over, units), buy.bought.to_string()],
        None => ["not priced".to_owned(), String::new(), String::new()],
    };
    [line.name.clone(), text(line.need, units), some(line.spare), some(line.from_stash), buy, left_over, cost]
}

/// `2 packs of 48`, `1 spool of 9.2 m`, `3 pieces`.
fn lots(buy: &Buy, units: UnitStyle) -> String {
    let ending = if buy.lots == 1 { "" } else { "s" };
    let words = format!("{} {}{ending}", buy.lots, buy.unit);
    if buy.lot == Amount::Count(1) { words } else { format!("{words} of {}", text(buy.lot, units)) }
}

fn nothing(amount: Amount) -> bool {
    matches!(amount, Amount::Count(0) | Amount::Length(Length::ZERO))
}

fn text(amount: Amount, units: UnitStyle) -> String {
    match amount {
        Amount::Count(count) => count.to_string(),
        Amount::Length(length) => long(length, units),
    }
}

/// A length as one buys it: from a metre on in metres or feet.
fn long(length: Length, units: UnitStyle) -> String {
    if length < LONG {
        return units.ruler(length);
    }
    let metres = format!("{} m", Length::mm(length.value() / 1000.0).hundredths().trim_end_matches(" mm"));
    let feet = format!("{:.1} ft", length.value() / FOOT);
    match units {
        UnitStyle::In => feet,
        UnitStyle::Mm => metres,
        UnitStyle::Both => format!("{feet} ({metres})"),
    }
}

/// The rows as lines, the first column to the left and the others to the right.
fn aligned(rows: &[[String; 7]]) -> Vec<String> {
    let width = |column: usize| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..HEAD.len()).map(width).collect();
    let cell = |(column, (cell, width)): (usize, (&String, &usize))| {
        if column == 0 { format!("{cell:<width$}") } else { format!("{cell:>width$}") }
    };
    rows.iter().map(|row| row.iter().zip(&widths).enumerate().map(cell).collect::<Vec<_>>().join(GUTTER)).collect()
}

fn totals(materials: &Materials) -> Vec<String> {
    let currency = materials.currency.as_ref().map(|name| format!(" {name}")).unwrap_or_default();
    let pieces = if materials.makers == 1 { "the piece".to_owned() } else { format!("{} pieces", materials.makers) };
    vec![
        format!("bought for {pieces}: {}{currency}", materials.bought()),
        format!("used of it: {}{currency}", materials.used()),
    ]
}

fn plan(materials: &Materials, cutting: &Cutting, units: UnitStyle) -> Vec<String> {
    let line = materials.lines.iter().find(|line| line.article == cutting.article);
    let name = line.map_or("", |line| line.name.as_str());
    let mut lines = vec![format!("cut {name}{}", verdict(cutting))];
    lines.extend(cutting.spools.iter().enumerate().map(|(at, spool)| spool_line(at, spool, units)));
    if !cutting.unplaced.is_empty() {
        let why = if cutting.lot.is_some() { "longer than any length on sale: " } else { "cut to: " };
        lines.push(format!("  {why}{}", pieces(&cutting.unplaced, units)));
    }
    lines
}

fn verdict(cutting: &Cutting) -> String {
    let lengths = |count: u64| if count == 1 { "1 length".to_owned() } else { format!("{count} lengths") };
    match (cutting.lot, cutting.beyond_least()) {
        (None, _) => String::new(),
        (_, 0) => format!(" from {}: no plan needs fewer", lengths(cutting.bought())),
        (_, more) => format!(" from {}: at most {more} more than any plan needs", lengths(cutting.bought())),
    }
}

fn spool_line(at: usize, spool: &Spool, units: UnitStyle) -> String {
    let origin = if spool.in_stash { "in hand" } else { "bought" };
    let left = long(spool.left, units);
    format!("  {}. {origin}, {}: {}; {left} left", at + 1, long(spool.length, units), pieces(&spool.pieces, units))
}

/// Pieces as a list, equal ones in a row told once: `inner 17 in, 3 × outer 20 in`.
fn pieces(pieces: &[crate::materials::Piece], units: UnitStyle) -> String {
    if pieces.is_empty() {
        return "nothing cut".to_owned();
    }
    let said = pieces.chunk_by(|a, b| a == b).filter_map(|same| {
        let piece = same.first()?;
        let times = if same.len() > 1 { format!("{} × ", same.len()) } else { String::new() };
        Some(format!("{times}{} {}", piece.label, units.ruler(piece.length)))
    });
    said.collect::<Vec<_>>().join(", ")
}

fn suggestion(price: &Suggestion) -> Vec<String> {
    let mut lines = vec![
        "a suggested price for one piece".to_owned(),
        format!(
            "  materials {} + labour {} + overhead {} = {}",
            price.materials, price.labour, price.overhead, price.cost
        ),
        format!("  for a shop {}, for a wearer {}", price.wholesale, price.retail),
    ];
    if !price.unpriced.is_empty() {
        lines.push(format!("  without what has no price in the pattern: {}", price.unpriced.join(", ")));
    }
    lines
}
