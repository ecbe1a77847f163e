//! How amounts, lots and cutting plans are said, in every table and on the sheet.

use crate::design::Stated;
use crate::english::{assumed, commas, count};
use crate::materials::{Amount, BoughtWith, Buy, Cut, Cutting, Line, Materials, SoldAs, Spool, Suggestion};
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

/// What is needed of an article: a count, or the length of all that is cut of it.
#[must_use]
pub fn needed(materials: &Materials, line: &Line, units: UnitStyle) -> String {
    let cutting = materials.cutting(line.article);
    cutting.map_or_else(|| amount(line.need, units), |cutting| cut_in_all(lengths(cutting.pieces()), units))
}

/// What is left over of an article that is bought: a count, or what is left of its spools.
#[must_use]
pub fn left_over(materials: &Materials, line: &Line, buy: &Buy, units: UnitStyle) -> String {
    let cutting = materials.cutting(line.article);
    cutting.map_or_else(|| amount(buy.left_over, units), |cutting| uncut(&cutting.spools, units))
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
    let step = inch_step(length);
    let sixteenths = (length.value() / SIXTEENTH / step as f64).round() as i64 * step;
    in_feet(sixteenths, length.value().round(), units)
}

/// In steps of how many sixteenths of an inch a length to buy is told.
fn inch_step(length: Length) -> i64 {
    if length < COARSE { 1 } else { 16 }
}

/// What there is at least of a length: in each unit the last step that it reaches.
fn at_least(length: Length, units: UnitStyle) -> String {
    let reached = |step: f64| -enough(-length, step);
    let (step, mm) = (inch_step(length), reached(1.0) as f64);
    let parts = reached(SIXTEENTH * step as f64) * step;
    if length < LONG { in_inches(parts, mm, units) } else { in_feet(parts, mm, units) }
}

/// A length in inches, by its sixteenths, and in millimetres.
fn in_inches(sixteenths: i64, millimetres: f64, units: UnitStyle) -> String {
    units.told([format!("{} in", self::sixteenths(sixteenths)), format!("{millimetres} mm")])
}

/// A length in feet, by its sixteenths of an inch, and in metres, by its millimetres.
fn in_feet(sixteenths: i64, millimetres: f64, units: UnitStyle) -> String {
    units.told([feet(sixteenths), format!("{} m", millimetres / 1000.0)])
}

/// A piece to cut, never told shorter than it is: the next sixteenth of an inch, the next millimetre; from ten feet on in
/// feet or metres.
#[must_use]
pub fn cut(length: Length, units: UnitStyle) -> String {
    cut_in_all([length], units)
}

/// Pieces to cut in all: in each unit the sum of them as they are told.
#[must_use]
pub fn cut_in_all(pieces: impl IntoIterator<Item = Length>, units: UnitStyle) -> String {
    let add = |[parts, mm]: [i64; 2], piece| [parts + enough(piece, SIXTEENTH), mm + enough(piece, 1.0)];
    let [parts, mm] = pieces.into_iter().fold([0, 0], add);
    let mm = mm as f64;
    if mm < COARSE.value() { in_inches(parts, mm, units) } else { in_feet(parts, mm, units) }
}

/// What is left of spools, less what their pieces are told longer than they are: one length, of which each unit tells what
/// there is at least.
#[must_use]
pub fn uncut(spools: &[Spool], units: UnitStyle) -> String {
    let step = if units == UnitStyle::In { SIXTEENTH } else { 1.0 };
    let more = |piece: Length| Length::mm(enough(piece, step) as f64 * step) - piece;
    let left: Length = spools.iter().map(|spool| spool.left).sum();
    let told_longer = lengths(spools.iter().flat_map(|spool| &spool.pieces)).map(more).sum::<Length>();
    at_least(Length::ZERO.max(left - told_longer), units)
}

fn lengths<'c>(pieces: impl Iterator<Item = &'c Cut>) -> impl Iterator<Item = Length> {
    pieces.map(|piece| piece.length)
}

/// A sixteenth of an inch in mm.
const SIXTEENTH: f64 = INCH / 16.0;

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
    use crate::materials::CutFor;

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

    #[test]
    fn what_is_cut_is_never_told_shorter_than_it_is() {
        let told = |mm: f64| cut(Length::mm(mm), UnitStyle::Both);
        assert_eq!([119.3, 740.4].map(told), ["4 ¾ in (120 mm)", "29 3⁄16 in (741 mm)"]);
        let exact = Length::inches(13.5) + Length::inches(2.0) * 2.0;
        assert_eq!(cut(exact, UnitStyle::Both), "17 ½ in (445 mm)");
        assert_eq!(cut(Length::mm(3100.2), UnitStyle::Both), "10 ft 2 1⁄16 in (3.101 m)");
    }

    /// 280.2 mm is 176.5 sixteenths of an inch: 3 x 281 are 843, and 3 x 177 are 33 inches and 3 sixteenths.
    #[test]
    fn what_is_cut_in_all_is_the_sum_of_its_pieces() {
        let piece = Cut { of: None, what: CutFor::Trial, length: Length::mm(280.2) };
        assert_eq!(cut(piece.length, UnitStyle::Both), "11 1⁄16 in (281 mm)");
        assert_eq!(cut_in_all([piece.length; 3], UnitStyle::Both), "33 3⁄16 in (843 mm)");
        let left = Length::mm(900.0) - piece.length * 3.0;
        let spool = Spool { length: Length::mm(900.0), in_stash: false, pieces: vec![piece; 3], left };
        assert_eq!(uncut(&[spool], UnitStyle::Mm), "57 mm");
    }

    /// 948 mm are 37.32 inches, 37 and five sixteenths at least; 7583 mm are 24 feet and 10.5 inches.
    #[test]
    fn what_is_left_is_one_length_in_both_units() {
        let told = |mm: f64| {
            let piece = Cut { of: None, what: CutFor::Trial, length: Length::mm(51.2) };
            let (length, left) = (Length::mm(mm + 52.0), Length::mm(mm + 0.8));
            uncut(&[Spool { length, in_stash: false, pieces: vec![piece], left }], UnitStyle::Both)
        };
        assert_eq!([948.0, 7583.0].map(told), ["37 5⁄16 in (948 mm)", "24 ft 10 in (7.583 m)"]);
        assert_eq!([0.0, 697.9].map(told), ["0 in (0 mm)", "27 7⁄16 in (697 mm)"]);
    }
}
