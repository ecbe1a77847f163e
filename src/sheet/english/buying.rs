//! What to buy, what it costs and what it might be sold for, in English.

use crate::english::{assumed, commas};
use crate::materials::render::words::{factor, in_currency, share, sold_as};
use crate::materials::{Materials, SoldAs, Suggestion};
use crate::units::UnitStyle;

/// The columns of the list of what to buy.
pub const NEEDS_TABLE: [&str; 6] = ["material", "you need", "spare", "buy", "left over", "cost"];

/// What is said of beads that are bought with others, in a strand or bag.
pub fn bought_in(unit: SoldAs) -> String {
    format!("in the {}", sold_as(unit))
}

/// So many of what is bought as one thing of several parts.
pub fn sets(number: &str) -> String {
    format!("{number} {}", if number == "1" { "set" } else { "sets" })
}

/// How spare beads are counted, and in what sizes are that are sold by millimetres whatever the sheet's units.
pub fn spare(materials: &Materials, copies: u32, units: UnitStyle) -> String {
    let pair = if copies > 1 { " All counts are for the pair." } else { "" };
    let spare = materials.spare * 100.0;
    let sizes = if units == UnitStyle::Mm { "" } else { " Beads and findings have the sizes they are sold by, in mm." };
    format!("Spare: {spare:.0} % of each bead, at least one. Left over counts the spare ones.{pair}{sizes}")
}

/// What all that is bought costs.
pub fn costs(materials: &Materials, currency: Option<&String>) -> String {
    let currency = in_currency(currency);
    let (bought, used) = (materials.bought(), materials.used());
    format!("Bought in all: {bought}{currency}. The piece uses {used}{currency} of it.")
}

/// What a suggested price is worth.
pub fn suggestion(price: &Suggestion, copies: u32) -> String {
    let what = if copies > 1 { "the pair" } else { "one piece" };
    let unpriced = match price.unpriced.as_slice() {
        [] => String::new(),
        unpriced => format!(" Without what has no price in the pattern: {}.", commas(unpriced)),
    };
    format!("A suggestion from the maker's own figures, for {what}, and not a valuation.{unpriced}")
}

/// What a suggested price is made up of, in order: materials, labour, overhead, cost, then for a shop and for a wearer.
pub fn price_parts(price: &Suggestion) -> [String; 6] {
    let overhead = share(price).map_or_else(
        || format!("overhead{}", assumed(price.overhead.is_assumed())),
        |share| format!("overhead, {share}"),
    );
    let [shop, wearer] = price.factors.map(|one| factor(one, "cost"));
    let [materials, labour, cost] = ["materials used", "labour", "cost"].map(str::to_owned);
    let [shop, wearer] = [format!("for a shop, {shop}"), format!("for a wearer, {wearer}")];
    [materials, labour, overhead, cost, shop, wearer]
}
