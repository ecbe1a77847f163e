//! How the strands hang: whether they go round the neck, leave one another room, and look meant.

use crate::design::{Bit, Design, Strand};
use crate::drape::{self, Clearance, Drape, Unrest};
use crate::pattern::{Kind, Settle};
use crate::remark::{Code, Remark};
use crate::units::Length;

use super::strung;

/// Share of the compared length along which neighbours may touch: an assumption.
const TOUCHING: f64 = 0.5;
/// How deep in mm strands may lie in one another: what their outlines are not known better than.
const INTO: f64 = 0.05;
/// Lengths in mm by which a strand is tried longer.
const STEPS: [f64; 12] = [5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 150.0];
/// Share of a strand whose beads do not slide that may be left over as bare cord: an assumption.
const LEFT_OVER: f64 = 0.4;

/// Remarks about how strands hang.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let strands = || design.strands.iter();
    let short = strands().filter_map(|strand| too_short(strand, design));
    // Strands that came to no rest may have room.
    let settled = drape.clearances.iter().filter(|_| drape.unrest.is_none());
    let crowds = settled.filter_map(|clearance| crowded(clearance, design));
    let bare = strands().filter_map(left_over);
    let uneven = strands().filter_map(|strand| uneven_ends(strand, design));
    let unsettled = drape.unrest.iter().filter_map(|unrest| unsettled(unrest, design));
    short.chain(crowds).chain(unsettled).chain(bare).chain(uneven).collect()
}

/// A necklace closed at its longest must go round the neck, if only as a choker above its base.
fn too_short(strand: &Strand, design: &Design) -> Option<Remark> {
    let (_, closure) = design.closure_length();
    let (longest, girth) = (strand.finished + closure, design.wear.narrowest);
    (design.heading.kind == Kind::Necklace && !design.wear.guessed && longest < girth).then(|| {
        let headline = format!(
            "strand {} is {} long when closed; the neck above its base measures about {} round (base {}: {})",
            strand.name,
            longest.tenths(),
            girth.tenths(),
            design.wear.girth.tenths(),
            design.wear.source
        );
        let help = format!("make the strand at least {} longer, or add an extender", (girth - longest).tenths());
        Remark::new(Code::TooShort, headline).at(strand.length_place).help(help)
    })
}

fn crowded(clearance: &Clearance, design: &Design) -> Option<Remark> {
    let [inner, outer] = clearance.between.map(|index| &design.strands[index]);
    crowds(clearance).then(|| {
        let (one, other, share) = (&inner.name, &outer.name, clearance.touching * 100.0);
        let into = -clearance.least;
        let headline = if into > INTO {
            format!("strands {one} and {other} have no room beside one another: {into:.1} mm too little, and touch along {share:.0} % of their length")
        } else if share > 99.5 {
            format!("strands {one} and {other} touch all along")
        } else {
            let (across, below) = (clearance.at.x, -clearance.at.y);
            format!(
                "strands {one} and {other} touch along {share:.0} % of their length, closest {across:.0} mm across and {below:.0} mm below the left end"
            )
        };
        Remark::new(Code::StrandsCrowd, headline).at(outer.length_place).help(more_room(clearance, design))
    })
}

/// Whether two strands touch along more than half without pushing one another aside.
fn crowds(clearance: &Clearance) -> bool {
    clearance.touching > TOUCHING && clearance.hardest <= 0.0
}

/// What gives two strands room: wider bars where bars hold them, or else a longer one of them.
fn more_room(clearance: &Clearance, design: &Design) -> String {
    let [inner, outer] = clearance.between.map(|index| &design.strands[index]);
    let apart = outer.aside - inner.aside;
    if apart > Length::ZERO {
        let needed = apart - Length::mm(clearance.least);
        return format!("hold them apart with bars whose holes are {} apart or more", needed.tenths());
    }
    let [one, other] = clearance.between;
    let longer = if inner.finished > outer.finished { one } else { other };
    let bar = "hold their ends apart with an end bar";
    let by = STEPS.into_iter().find(|by| has_room(clearance.between, longer, *by, design));
    by.map_or_else(
        || bar.to_owned(),
        |by| format!("make strand {} {by:.0} mm longer or more, or {bar}", design.strands[longer].name),
    )
}

/// Whether two strands have room when one of them is so much longer.
fn has_room(between: [usize; 2], longer: usize, by: f64, design: &Design) -> bool {
    let other = design.lengthened(longer, Length::mm(by));
    let clearance = other.and_then(|other| drape::clearance_of(&other, between));
    clearance.is_some_and(|clearance| !crowds(&clearance))
}

/// Strands that push on one another and came to no rest.
fn unsettled(unrest: &Unrest, design: &Design) -> Option<Remark> {
    let place = design.strands.first()?.length_place;
    let headline = if unrest.rounds == 0 {
        "the strands touch, but have too many parts together to be laid side by side; each is drawn as it hangs alone"
            .to_owned()
    } else {
        format!(
            "the strands push one another about and came to no rest in {} rounds: {:.2} mm of overlap and {:.4} N out of balance are left",
            unrest.rounds, unrest.overlap, unrest.imbalance
        )
    };
    let help = "take where strands touch as a sketch; ends held apart, or lengths that differ more, give them room";
    Some(Remark::new(Code::StrandsUnsettled, headline).at(place).help(help))
}

/// Cord beyond the last train of a strand whose beads stay where they are.
fn left_over(strand: &Strand) -> Option<Remark> {
    let strung: f64 = strand.bits().map(Bit::length).sum();
    let ends: Length = strand.ends.iter().map(|end| end.takes).sum();
    let bare = strand.finished.value() - ends.value() - strung;
    let share = bare / strand.finished.value();
    (strand.settle == Settle::Fixed && share > LEFT_OVER).then(|| {
        let headline =
            format!("strand {} leaves {bare:.0} mm of bare cord, {:.0} % of its length", strand.name, share * 100.0);
        let help = "add beads or spaces, shorten the strand, or let the beads slide with `settle: slide`";
        Remark::new(Code::BareCord, headline).at(strand.length_place).help(help)
    })
}

fn uneven_ends(strand: &Strand, design: &Design) -> Option<Remark> {
    let round = matches!(design.heading.kind, Kind::Necklace | Kind::Strap);
    let (first, last) = (strung(strand).next()?, strung(strand).last()?);
    (round && first != last).then(|| {
        let [first, last] = [first, last].map(|index| &design.beads[index].name);
        let headline = format!("strand {} begins with {first} and ends with {last}", strand.name);
        let help = format!("if both ends should match, add {first} after the last repeat");
        Remark::new(Code::UnevenEnds, headline).at(strand.place).help(help)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;
    use crate::rules::sample;

    #[test]
    fn strands_may_touch_along_half() {
        let (design, mut drape) = (sample::necklace(), sample::drape());
        let mut crowd = |touching| {
            drape.clearances =
                vec![Clearance { between: [0, 0], least: -2.0, at: Point::new(80.0, -40.0), touching, hardest: 0.0 }];
            check(&design, &drape)
        };
        assert_eq!(crowd(0.5), []);
        assert_eq!(sample::codes(&crowd(0.51)), [Code::StrandsCrowd]);
    }

    #[test]
    fn a_necklace_goes_round_its_neck() {
        let (mut design, drape) = (sample::necklace(), sample::drape());
        design.wear.narrowest = design.strands[0].finished;
        assert_eq!(check(&design, &drape), []);
        design.wear.narrowest = design.strands[0].finished + Length::mm(1.0);
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::TooShort]);
    }
}
