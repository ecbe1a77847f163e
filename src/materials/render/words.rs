//! How amounts, lots and cutting plans are said, in every table and on the sheet.

use crate::design::Stated;
use crate::english::{assumed, commas, count};
use crate::materials::{Amount, BoughtWith, Buy, Cut, Cutting, Line, Materials, SoldAs, Suggestion};
use crate::units::{INCH, Length, Money, UnitStyle, enough, grouped, sixteenths};

/// What happens more seldom than that is not told of as a chance: an assumption.
const SELDOM: f64 = 1e-4;
/// From here on a length is told in metres or feet, as it is sold.
const LONG: Length = Length::mm(1000.0);
/// From here on lengths to buy are told with whole inches, below it with sixteenths.
const COARSE: Length = Length::mm(10.0 * 12.0 * INCH);

/// A count, or a length as one buys it.
#[must_use]
pub fn amount(amount: Amount, units: UnitStyle) -> String {
    match amount {
        Amount::Count(count) => grouped(count),
        Amount::Length(length) => long(length, units),
    }
}

/// What is needed of an article: a count, or a length that is never told shorter than it is, as what is cut.
#[must_use]
pub fn needed(line: &Line, units: UnitStyle) -> String {
    match line.need {
        Amount::Count(count) => grouped(count),
        Amount::Length(length) => cut(length, units),
    }
}

/// How many spare there are, where any are bought: beads of a graduated strand are not, but left over.
#[must_use]
pub fn spare(line: &Line, units: UnitStyle) -> String {
    let bought = !is_nothing(line.spare) && line.within.as_ref().is_none_or(|within| within.wanting.is_some());
    if bought { amount(line.spare, units) } else { String::new() }
}

/// Whether an amount is nothing.
#[must_use]
pub fn is_nothing(amount: Amount) -> bool {
    matches!(amount, Amount::Count(0) | Amount::Length(Length::ZERO))
}

/// A length as one buys it: from a metre on in metres, or in feet and inches.
#[must_use]
pub fn long(length: Length, units: UnitStyle) -> String {
    if length < LONG {
        return units.ruler(length);
    }
    let step = if length < COARSE { 1 } else { 16 };
    let sixteenths = (length.value() / INCH * 16.0 / step as f64).round() as i64 * step;
    told(sixteenths, length.value().round(), units)
}

/// A length in feet, by its sixteenths of an inch, and in metres, by its millimetres.
fn told(sixteenths: i64, millimetres: f64, units: UnitStyle) -> String {
    units.told([feet(sixteenths), format!("{} m", millimetres / 1000.0)])
}

/// A piece to cut, never told shorter than it is: as a ruler shows it, from ten feet on in feet or metres.
#[must_use]
pub fn cut(length: Length, units: UnitStyle) -> String {
    if length < COARSE {
        return units.cut(length);
    }
    told(enough(length, INCH / 16.0), enough(length, 1.0) as f64, units)
}

/// Sixteenths of an inch in a foot.
const FOOT: i64 = 192;

/// `5 ft 9 11⁄16 in`, `32 ft 10 in`, `27 ft`.
fn feet(parts: i64) -> String {
    let (feet, rest) = (parts / FOOT, parts % FOOT);
    if rest == 0 { format!("{feet} ft") } else { format!("{feet} ft {} in", sixteenths(rest)) }
}

/// What to buy on a line: `2 packs of 48`, `1 spool of 10 m`, `1 bag of 10 g (about 347)`, `3 pieces`; `nothing`
/// where all is in hand, and `none is long enough` where no length on sale holds a piece.
#[must_use]
pub fn lots(line: &Line, buy: &Buy, units: UnitStyle) -> String {
    match buy.lots {
        0 if is_nothing(line.from_stash) => "none is long enough".to_owned(),
        0 => "nothing".to_owned(),
        _ => some_lots(buy, units),
    }
}

/// The word for a lot, which is also how it is told to programs.
#[must_use]
pub const fn sold_as(unit: SoldAs) -> &'static str {
    match unit {
        SoldAs::Strand => "strand",
        SoldAs::Hank => "hank",
        SoldAs::Pack => "pack",
        SoldAs::Set => "set",
        SoldAs::Piece => "piece",
        SoldAs::Bag => "bag",
        SoldAs::Coil => "coil",
        SoldAs::Spool => "spool",
        SoldAs::Length => "length",
    }
}

fn some_lots(buy: &Buy, units: UnitStyle) -> String {
    let words = count(buy.lots, sold_as(buy.unit));
    match (buy.lot, buy.mass) {
        (Amount::Count(1), None) => words,
        (lot, None) => format!("{words} of {}", amount(lot, units)),
        (lot, Some(mass)) => format!("{words} of {} g (about {})", mass.value(), amount(lot, units)),
    }
}

/// What is left of a bead that is bought with others: `12`, or of a mix `about 12`.
#[must_use]
pub fn left(within: &BoughtWith) -> String {
    format!("{}{}", if within.wanting.is_some() { "about " } else { "" }, within.left_over)
}

/// By which rules beads are bought that are bought with others, where any are.
pub fn estimates(materials: &Materials) -> impl Iterator<Item = String> {
    let within = || materials.lines.iter().filter_map(|line| line.within.as_ref());
    let chances: Vec<f64> = within().filter_map(|within| within.wanting).collect();
    let mix = format!("What a mix holds varies by chance: what you buy {}.", odds(chances.iter().sum()));
    let strand = "No strand of graduated beads is bought for spare ones alone: they are among what is left over.";
    let is_graduated = within().any(|within| within.wanting.is_none()) && materials.kits.is_empty();
    [(!chances.is_empty()).then_some(mix), is_graduated.then(|| strand.to_owned())].into_iter().flatten()
}

/// `runs short of a kind about once in 700 times`: a probability to a digit, where it is one to reckon with.
fn odds(chance: f64) -> String {
    if chance < SELDOM {
        return "will do".to_owned();
    }
    let unit = libm::pow(10.0, libm::log10(1.0 / chance).floor());
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "it is ten thousand or a little more")]
    let times = ((1.0 / chance / unit).round() * unit) as u64;
    format!("runs short of a kind about once in {} times", grouped(times))
}

/// A cost; nothing at all where the pattern gives no price.
#[must_use]
pub fn said(cost: Option<Money>) -> String {
    cost.map(|cost| cost.to_string()).unwrap_or_default()
}

/// `15 % of materials and labour`, where overhead is told as a share.
#[must_use]
pub fn share(price: &Suggestion) -> Option<String> {
    price.percent.map(|percent| format!("{percent} % of materials and labour"))
}

/// `2.5 × cost`, by which a price comes about.
#[must_use]
pub fn factor(factor: Stated<f64>, of: &str) -> String {
    format!("{} × {of}{}", *factor, assumed(factor.is_assumed()))
}

/// How many lengths a plan takes and how near that is to the least, or that what is in hand will do;
/// nothing where none is on sale, or none holds a piece.
#[must_use]
pub fn verdict(cutting: &Cutting) -> Option<String> {
    cutting.lot?;
    if cutting.bought() == 0 {
        let is_cut = cutting.spools.iter().any(|spool| !spool.pieces.is_empty());
        return is_cut.then(|| "the length in hand".to_owned());
    }
    let lengths = count(cutting.bought(), "length");
    let in_hand = cutting.spools.iter().any(|spool| spool.in_stash && !spool.pieces.is_empty());
    let lengths = if in_hand { format!("what is in hand and {lengths} more") } else { lengths };
    Some(match cutting.beyond_least() {
        0 if cutting.bought() == 1 => lengths,
        0 => format!("{lengths}: fewer will not do"),
        more => format!("{lengths}: at most {more} more than the fewest that will do"),
    })
}

/// Pieces as a list, equal ones in a row told once: `inner 17 in, 3 × outer 20 in`.
#[must_use]
pub fn pieces(pieces: &[Cut], units: UnitStyle) -> String {
    if pieces.is_empty() {
        return "nothing cut".to_owned();
    }
    let said = runs(pieces).map(|(count, piece)| {
        let times = if count > 1 { format!("{count} × ") } else { String::new() };
        format!("{times}{} {}", cut_for(piece), cut(piece.length, units))
    });
    commas(said)
}

/// What a piece is cut for: `inner`, among several designs `Tideline inner`.
#[must_use]
pub fn cut_for(piece: &Cut) -> String {
    let name = piece.name().map_or("knots to try", String::as_str);
    piece.of.as_ref().map_or_else(|| name.to_owned(), |batch| format!("{batch} {name}"))
}

/// The currency behind a space, where the pattern says it.
#[must_use]
pub fn in_currency(currency: Option<&String>) -> String {
    currency.map(|name| format!(" {name}")).unwrap_or_default()
}

/// Equal pieces in a row told once, with how many there are.
pub fn runs(pieces: &[Cut]) -> impl Iterator<Item = (usize, &Cut)> {
    pieces.chunk_by(|a, b| a == b).filter_map(|same| Some((same.len(), same.first()?)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A foot is 304.8 mm and an inch 25.4 mm (NIST Handbook 44, appendix C).
    #[test]
    fn long_lengths_are_told_in_feet_and_inches() {
        let told = |mm: f64| long(Length::mm(mm), UnitStyle::In);
        assert_eq!(told(999.0), "39 5⁄16 in");
        assert_eq!(told(1770.0), "5 ft 9 11⁄16 in");
        assert_eq!(told(304.8 * 6.0 - 0.7), "6 ft");
        assert_eq!(told(10_000.0), "32 ft 10 in");
        assert_eq!(told(8230.0), "27 ft");
        assert_eq!(long(Length::mm(1770.0), UnitStyle::Both), "5 ft 9 11⁄16 in (1.77 m)");
        assert_eq!(long(Length::mm(1770.0), UnitStyle::Mm), "1.77 m");
    }
}
