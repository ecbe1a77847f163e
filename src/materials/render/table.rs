//! The table that a maker reads: what to buy, how to cut it, what it costs.

use std::slice;

use unicode_width::UnicodeWidthStr;

use super::words::{
    amount, estimates, factor, in_currency, is_nothing, left, left_over, long, lots, needed, pieces, said, share,
    spare, uncut, verdict,
};
use crate::english::{assumed, commas, count, list};
use crate::materials::{Bagged, Cutting, Kit, Line, Materials, Packed, Spool, Suggestion};
use crate::units::{Length, Money, Telling, UnitStyle};

/// Spaces between two columns.
const GUTTER: &str = "  ";
const HEAD: [&str; 7] = ["", "need", "spare", "in hand", "buy", "left over", "cost"];

/// The materials as lines of text: a table, the cutting plans, and the price where there is one.
///
/// `in hand` is all of the stash's, `left over` all that is left of it and of what is bought; `cost` is
/// what is bought, and the lines below tell what the pieces use.
#[must_use]
pub fn table(materials: &Materials, telling: &Telling) -> String {
    let (units, currency) = (telling.units, in_currency(telling.currency.as_ref()));
    let mut rows = vec![HEAD.map(str::to_owned)];
    rows.extend(materials.lines.iter().map(|line| row(materials, line, units)));
    let mut lines = aligned(&rows);
    lines.push(String::new());
    lines.extend(totals(materials, &currency));
    lines.extend(estimates(materials));
    lines.extend(sellers(materials, units, &currency));
    for cutting in &materials.cuttings {
        lines.push(String::new());
        lines.extend(plan(materials, cutting, units));
    }
    for kit in &materials.kits {
        lines.push(String::new());
        lines.extend(self::kit(kit, units, &currency));
    }
    if let Some(price) = &materials.suggestion {
        lines.push(String::new());
        lines.extend(suggestion(price));
    }
    lines.iter().map(|line| format!("{}\n", line.trim_end())).collect()
}

fn row(materials: &Materials, line: &Line, units: UnitStyle) -> [String; 7] {
    let some = |some| if is_nothing(some) { String::new() } else { amount(some, units) };
    let [buy, left_over, cost] = match (&line.buy, &line.within) {
        (Some(buy), _) => [lots(line, buy, units), left_over(materials, line, buy, units), said(buy.bought)],
        (None, Some(within)) => [format!("in {}", within.name), left(within), String::new()],
        (None, None) => ["not priced".to_owned(), String::new(), String::new()],
    };
    [list(&line.names), needed(materials, line, units), spare(line, units), some(line.in_hand), buy, left_over, cost]
}

/// The rows as lines, the first column to the left and the others to the right.
fn aligned(rows: &[[String; 7]]) -> Vec<String> {
    let width = |column: usize| rows.iter().map(|row| row[column].width()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..HEAD.len()).map(width).collect();
    let cell = |(column, (cell, width)): (usize, (&String, &usize))| {
        let space = " ".repeat(width - cell.width());
        if column == 0 { format!("{cell}{space}") } else { format!("{space}{cell}") }
    };
    rows.iter().map(|row| row.iter().zip(&widths).enumerate().map(cell).collect::<Vec<_>>().join(GUTTER)).collect()
}

fn totals(materials: &Materials, currency: &str) -> Vec<String> {
    let pieces =
        if materials.makers == 1 { "the piece".to_owned() } else { count(u64::from(materials.makers), "piece") };
    let (bought, used) = (materials.bought(), materials.used());
    if materials.lines.iter().all(|line| is_nothing(line.from_stash)) {
        return vec![format!("bought for {pieces}: {bought}{currency}"), format!("used of it: {used}{currency}")];
    }
    let buys = materials.lines.iter().filter_map(|line| line.buy.as_ref()).any(|buy| buy.lots > 0);
    let bought = if buys { format!("{bought}{currency}") } else { "nothing".to_owned() };
    vec![
        format!("to buy for {pieces}, beside what is in hand: {bought}"),
        format!("used, with what is in hand at its price: {used}{currency}"),
    ]
}

/// What to buy of whom, where the pattern says so of anything.
fn sellers(materials: &Materials, units: UnitStyle, currency: &str) -> Vec<String> {
    let bought: Vec<_> =
        materials.lines.iter().filter_map(|line| Some((line, line.buy.as_ref().filter(|buy| buy.lots > 0)?))).collect();
    let mut whose: Vec<_> = bought.iter().map(|(line, _)| line.from.as_ref()).collect();
    whose.sort_by_key(|from| (from.is_none(), *from));
    whose.dedup();
    if whose.iter().all(Option::is_none) {
        return Vec::new();
    }
    let told = |from: Option<&String>| {
        let of = || bought.iter().filter(|(line, _)| line.from.as_ref() == from);
        let sum: Money = of().filter_map(|(_, buy)| buy.bought).sum();
        let name = from.map_or("elsewhere", String::as_str);
        let head = format!("from {name}: {sum}{currency}");
        let lines = of()
            .map(|(line, buy)| format!("  {} · {}  {}", list(&line.names), lots(line, buy, units), said(buy.bought)));
        [String::new(), head].into_iter().chain(lines).collect::<Vec<_>>()
    };
    whose.into_iter().flat_map(told).collect()
}

/// What goes into a bag, and what that costs.
fn kit(kit: &Kit, units: UnitStyle, currency: &str) -> Vec<String> {
    let bags = kit.bags;
    let head = format!("pack {}: {}", count(u64::from(bags), "bag"), kit.name());
    let mut lines = vec![head];
    lines.extend(kit.packed.iter().map(|packed| format!("  {}", in_bag(packed, units))));
    let unpriced = if kit.unpriced.is_empty() { String::new() } else { format!(", without {}", commas(&kit.unpriced)) };
    lines.push(format!("  one bag costs {}{currency}{unpriced}", kit.contents));
    if let Some(factors) = kit.factors {
        let [shop, maker] = factors.map(|one| format!("{} = {}", factor(one, "that"), kit.contents.times(*one)));
        lines.push(format!("  for a shop {shop}, for a maker {maker}; packing is not counted"));
    }
    lines
}

/// `24 + 2 spare  tide blue cube`.
fn in_bag(packed: &Packed, units: UnitStyle) -> String {
    let name = list(&packed.names);
    match &packed.held {
        Bagged::Counted(count, 0) => format!("{count} {name}"),
        Bagged::Counted(count, spare) => format!("{count} + {spare} spare {name}"),
        Bagged::Cut(all) => format!("{name}: {}", pieces(all, units)),
    }
}

fn plan(materials: &Materials, cutting: &Cutting, units: UnitStyle) -> Vec<String> {
    let line = materials.lines.iter().find(|line| line.article == cutting.article);
    let name = line.map(|line| list(&line.names)).unwrap_or_default();
    let verdict = verdict(cutting).map(|words| format!(" from {words}")).unwrap_or_default();
    let mut lines = vec![format!("cut {name}{verdict}")];
    lines.extend(cutting.spools.iter().enumerate().map(|(at, spool)| spool_line(at, spool, units)));
    if !cutting.unplaced.is_empty() {
        let why = if cutting.lot.is_some() { "longer than any length on sale: " } else { "cut to: " };
        lines.push(format!("  {why}{}", pieces(&cutting.unplaced, units)));
    }
    lines.extend(miscut(materials, cutting));
    lines
}

/// What is said where several makers cut and no piece more would be left.
fn miscut(materials: &Materials, cutting: &Cutting) -> Option<String> {
    let used = || cutting.spools.iter().filter(|spool| !spool.pieces.is_empty());
    let shortest = used().flat_map(|spool| &spool.pieces).map(|piece| piece.length).reduce(Length::min)?;
    let none_left = cutting.bought() > 0 && used().all(|spool| spool.left < shortest);
    (materials.makers > 1 && none_left)
        .then(|| "  what is left is shorter than any piece: buy one more in case somebody cuts amiss".to_owned())
}

fn spool_line(at: usize, spool: &Spool, units: UnitStyle) -> String {
    let origin = if spool.in_stash { "in hand" } else { "bought" };
    let left = uncut(slice::from_ref(spool), units);
    format!("  {}. {origin}, {}: {}; {left} left", at + 1, long(spool.length, units), pieces(&spool.pieces, units))
}

fn suggestion(price: &Suggestion) -> Vec<String> {
    let [shop, wearer] = price.factors.map(|one| factor(one, "cost"));
    let mut lines = vec![
        "a suggested price for one piece".to_owned(),
        format!(
            "  materials {} + labour {} + overhead {}{} = cost {}",
            price.materials,
            price.labour,
            *price.overhead,
            share(price).map_or_else(|| assumed(price.overhead.is_assumed()).to_owned(), |words| format!(" ({words})")),
            price.cost
        ),
        format!("  for a shop {shop} = {}, for a wearer {wearer} = {}", price.wholesale, price.retail),
    ];
    if !price.unpriced.is_empty() {
        lines.push(format!("  without what has no price in the pattern: {}", commas(&price.unpriced)));
    }
    lines
}
