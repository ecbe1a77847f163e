//! Stringing: the word chart of each strand, and the length to check it against.

use super::words::{list, strand};
use super::{Step, chart};
use crate::design::{Design, Phrase, Rest, Strand, Train, What};
use crate::materials::need;
use crate::pattern::Settle;
use crate::units::{Length, UnitStyle};

/// A ruler is read to about a millimetre, however alike the beads are.
const LEAST_SPREAD: Length = Length::mm(1.0);

/// String and measure each strand.
pub fn strands(design: &Design) -> Vec<Step> {
    design.strands.iter().flat_map(|strand| of_strand(design, strand)).collect()
}

fn of_strand(design: &Design, strand: &Strand) -> Vec<Step> {
    if beads(strand) == 0 {
        return Vec::new();
    }
    let mut steps = vec![string(design, strand), measure(design, strand)];
    steps.extend(space(design, strand));
    steps
}

fn beads(strand: &Strand) -> u64 {
    need::strand_beads(strand).values().sum()
}

fn string(design: &Design, strand: &Strand) -> Step {
    let knots = if has_silent_knots(strand) { " Tie a knot close against each bead before the next." } else { "" };
    let counts = need::strand_beads(strand);
    let each: Vec<_> = counts.iter().map(|(at, count)| format!("{count}{}", design.beads[*at].letter)).collect();
    let total = super::words::count(beads(strand), "bead");
    Step::new(format!("String {}", title(design, strand)), format!("String {}.{knots}", chart::text(design, strand)))
        .check(format!("{total}: {}.", list(&each)))
}

fn title(design: &Design, strand: &Strand) -> String {
    if design.strands.len() == 1 { "the beads".to_owned() } else { super::words::strand(design, strand) }
}

/// Whether knots are strung that the chart does not say, because they come between all beads.
fn has_silent_knots(strand: &Strand) -> bool {
    let mut bits = strand.trains.iter().flat_map(|train| &train.bits);
    bits.any(|bit| bit.what == What::Knot) && !says_knot(&strand.chart)
}

fn says_knot(phrases: &[Phrase]) -> bool {
    phrases.iter().any(|phrase| match phrase {
        Phrase::Knot => true,
        Phrase::Times(_, list) | Phrase::Dangle(_, list) => says_knot(list),
        Phrase::Mirror(side, middle) => says_knot(side) || says_knot(middle),
        _ => false,
    })
}

fn measure(design: &Design, strand: &Strand) -> Step {
    let units = design.heading.units;
    let spread = spread(design, strand);
    let text =
        format!("Push the beads of {} together and lay them straight along a ruler.", self::strand(design, strand));
    Step::new("Measure", text).check(format!(
        "They measure {}, give or take {}.",
        units.ruler(beaded(strand)),
        units.ruler(if spread > LEAST_SPREAD { spread } else { LEAST_SPREAD })
    ))
}

/// Length of all that is strung, pushed together, without bare cord.
pub fn beaded(strand: &Strand) -> Length {
    let bits = strand.trains.iter().flat_map(|train| &train.bits);
    Length::mm(bits.filter(|bit| bit.what != What::Gap).map(crate::design::Bit::length).sum())
}

/// Likely spread of the beaded length: tolerances add in squares, since beads vary one by one.
fn spread(design: &Design, strand: &Strand) -> Length {
    let bits = strand.trains.iter().flat_map(|train| &train.bits);
    let square = |bit: &crate::design::Bit| match bit.what {
        What::Bead(at) => design.beads[at].tolerance.value() * design.beads[at].tolerance.value(),
        _ => 0.0,
    };
    Length::mm(bits.map(square).sum::<f64>().sqrt())
}

/// Set groups that do not slide where they belong.
fn space(design: &Design, strand: &Strand) -> Option<Step> {
    let units = design.heading.units;
    let starts: Vec<_> = strand.trains.iter().filter_map(|train| Some((start(train)?, train))).collect();
    let first = starts.first()?.0;
    let text = match strand.settle {
        Settle::Spread => "Space the groups evenly along the cord.",
        Settle::Fixed => "Set the beads in their places along the cord, with the bare cord that the chart says.",
        Settle::Slide | Settle::Fill => return None,
    };
    let gap = starts.windows(2).map(|pair| pair[1].0 - pair[0].0 - pair[0].1.length()).next();
    let between = match (strand.settle, gap) {
        (Settle::Spread, Some(gap)) => format!(", and {} of bare cord lies between groups", bare(units, gap)),
        _ => String::new(),
    };
    let from = bare(units, first);
    Some(Step::new("Space", text).check(format!("The first group starts {from} from the first end's loop{between}.")))
}

const fn start(train: &Train) -> Option<f64> {
    match train.rest {
        Rest::At(station) => Some(station),
        Rest::Free(..) => None,
    }
}

fn bare(units: UnitStyle, mm: f64) -> String {
    units.ruler(Length::mm(mm))
}
