//! What to measure of a strand, and what of its row is not drawn as it is, in English.

use crate::design::{Bead, Design};
use crate::english::{assumed, capital, commas};
use crate::sheet::said::{Bare, Change, ChangePlace, NotAsItIs, Others, Tolerances, WhenOff};
use crate::steps::english::chart;
use crate::units::{Length, UnitStyle};

/// Bare lengths in mm that differ by less are told as equal: half of what a ruler shows.
const SAME: f64 = 0.5;

/// What is said of a length on memory wire.
pub const CURVED: &str = "That is along the wire as it is curved, where beads touch on the inner side alone: so the row is drawn with small gaps.";

/// What to do where the length differs by more.
pub fn tolerances(design: &Design, tolerances: &Tolerances<'_>, units: UnitStyle) -> String {
    let Tolerances { beads, remedy, every_strand, cord } = tolerances;
    let each = format!("each may be off{}", by(beads, units));
    let until = |change| changed(design, change, *every_strand, units);
    let remedy = match remedy {
        WhenOff::Knots(change) => {
            format!("Measure early, while the next knots can still be tied tighter or looser; then {}", until(change))
        }
        WhenOff::Counts(change) => capital(&until(change)),
        WhenOff::BareCord => {
            format!(
                "Keep the counts and the strand's length: what the beads take more or less comes off the bare {}.",
                cord.word()
            )
        }
    };
    format!("If it differs by more, measure your beads: {each}. {remedy}")
}

/// By how much beads may be off: ` by 0.2 mm`, or `, A by 0.1 mm, B by 0.2 mm`; of all alike assumed is said once.
fn by(beads: &[&Bead], units: UnitStyle) -> String {
    let Some(first) = beads.first().map(|bead| bead.tolerance) else { return String::new() };
    let alike = beads.iter().all(|bead| bead.tolerance.is_assumed() == first.is_assumed());
    let own = |bead: &Bead| assumed(!alike && bead.tolerance.is_assumed());
    let of_all = assumed(alike && first.is_assumed());
    if beads.iter().all(|bead| bead.tolerance == first) {
        return format!(" by {}{of_all}", units.gauge(*first));
    }
    let each = beads.iter().map(|bead| format!(", {} by {}{}", bead.letter, units.gauge(*bead.tolerance), own(bead)));
    each.collect::<String>() + of_all
}

/// `add or leave out A at the last end until it comes nearest.`, or `add or leave out whole repeats of 2A 1C before the last
/// 2A, alike in every strand, until it comes nearest.`
fn changed(design: &Design, change: &Change, every_strand: bool, units: UnitStyle) -> String {
    let row = |phrases| chart::row(design, phrases, units).to_string();
    let (what, place) = match change {
        Change::Beads(bead, place) => (design.beads[*bead].letter.clone(), place),
        Change::Repeats(list, place) => (format!("whole repeats of {}", row(list)), place),
        Change::Any(place) => ("beads".to_owned(), place),
        Change::InOrder => ("beads, in the order of the repeat,".to_owned(), &ChangePlace::LastEnd),
    };
    let (place, sides) = match place {
        ChangePlace::LastEnd => ("at the last end".to_owned(), None),
        ChangePlace::Before(after) => (format!("before the last {}", row(after)), None),
        ChangePlace::BothEnds => ("at both ends".to_owned(), Some("as many at the one as at the other")),
        ChangePlace::BothSides => ("on both sides".to_owned(), Some("as many on the one as on the other")),
    };
    let asides: Vec<_> = sides.into_iter().chain(every_strand.then_some("alike in every strand")).collect();
    let asides = if asides.is_empty() { String::new() } else { format!(", {},", commas(asides)) };
    format!("add or leave out {what} {place}{asides} until it comes nearest.")
}

/// Bare cord, or chain, in all, and at the ends.
pub fn bare(bare: &Bare, cord: &str, units: UnitStyle) -> String {
    match bare {
        Bare::NoneInTheRound => format!("No bare {cord} is left in the round."),
        Bare::None => format!("No bare {cord} is left."),
        Bare::Lacks(lacks) => format!(
            "No bare {cord} is left, and where it bends its beads want {} more: there their flat ends lock, and it hangs \
             stiffer than drawn.",
            units.ruler(*lacks)
        ),
        Bare::Folded(shown) => format!(
            "No bare {cord} is left along the row; where the loop folds its beads part, and about {} of it shows there.",
            units.ruler(*shown)
        ),
        Bare::Some { all, ends, slides, others } => {
            format!("Bare {cord}: in all {}, {}.", units.fine(*all), parts(*all, *ends, *slides, *others, units))
        }
    }
}

/// Where bare cord lies: so much in mm at each end, the rest between others.
fn parts(all: Length, ends: [f64; 2], slides: bool, others: Others, units: UnitStyle) -> String {
    // What does not slide is told as over the row.
    let (about, told): (_, Print) = if slides { ("about ", UnitStyle::ruler) } else { ("", UnitStyle::fine) };
    let has_rest = all.value() - ends.iter().sum::<f64>() > SAME;
    let between = match others {
        _ if !has_rest => "",
        Others::Beads => ", the rest between the beads",
        Others::Dangles => ", the rest between the dangles",
    };
    let ends = alike(ends);
    let add_up = has_rest || adds_up(units, told, ends, all.value());
    let rounding = if add_up { "" } else { " (each rounded by itself)" };
    let said = ends.map(|length| format!("{about}{}", told(units, Length::mm(length))));
    at_ends(said, ends[0] == ends[1]) + between + rounding
}

/// How a length is printed.
type Print = fn(UnitStyle, Length) -> String;

/// Two lengths in mm, those that are told as equal in their middle.
fn alike([first, last]: [f64; 2]) -> [f64; 2] {
    if (first - last).abs() < SAME { [first.midpoint(last); 2] } else { [first, last] }
}

fn at_ends([first, last]: [String; 2], are_alike: bool) -> String {
    if are_alike { format!("{first} at each end") } else { format!("{first} at the first end, {last} at the last") }
}

/// Whether parts in mm, printed in a way, add up to a whole as they are printed.
fn adds_up(units: UnitStyle, told: Print, parts: [f64; 2], whole: f64) -> bool {
    // What is printed as nothing is none.
    let printed = |words: &str| Length::parse(words).map_or(0.0, Length::value);
    let part = |style: UnitStyle, mm| printed(&told(style, Length::mm(mm)));
    let whole = |style: UnitStyle| printed(&style.fine(Length::mm(whole)));
    let differ = |style: UnitStyle| parts.map(|mm| part(style, mm)).iter().sum::<f64>() - whole(style);
    let styles = if units == UnitStyle::Both { vec![UnitStyle::In, UnitStyle::Mm] } else { vec![units] };
    styles.into_iter().all(|style| differ(style).abs() < 1e-6)
}

/// What of a row is not drawn as it is.
pub const fn not_as_it_is(what: NotAsItIs) -> &'static str {
    match what {
        NotAsItIs::Elided => {
            "Repeats left out of the drawing are told where they stand; ruler and counts go on past them."
        }
        NotAsItIs::Reduced => "What is too large for the page is drawn smaller, and the ruler stops there.",
        NotAsItIs::Unlettered => "Runs too short for their letter have a bracket alone: read them in the words above.",
        NotAsItIs::Slides => "Some of the beads slide: the ruler shows where they rest when the piece hangs.",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_add_up_as_they_are_printed() {
        // 12.5 and 166.5 mm are printed as 13 and 167, and their sum as 179.
        let adds_up = |units, parts, whole| adds_up(units, UnitStyle::ruler, parts, whole);
        assert!(!adds_up(UnitStyle::Mm, [12.5, 166.5], 179.0));
        assert!(adds_up(UnitStyle::Mm, [12.0, 167.0], 179.0) && adds_up(UnitStyle::Mm, [0.1, 20.0], 20.0));
        // 3/32 in twice is 3/16 in; 12.7 mm twice is an inch, but 13 and 13 are not 25.
        assert!(adds_up(UnitStyle::In, [12.7, 12.7], 25.4) && !adds_up(UnitStyle::Both, [12.7, 12.7], 25.4));
    }
}
