//! The last steps: measure the piece, and make the second of a pair.

use super::prepare::cord_word;
use super::{Step, words};
use crate::design::{Design, Strand, What};
use crate::drape::{self, Hung, Seat};
use crate::pattern::{FindingKind, Kind, Settle};
use crate::units::Length;

/// Measure, and make the second one, after as many steps as are done.
pub fn finish(design: &Design, done: usize) -> Vec<Step> {
    let mut steps = vec![measure(design)];
    steps.extend(try_loops(design));
    if design.copies > 1 {
        let text = format!("Make the second earring in the same way: do {} again.", words::steps(1, done + 1));
        steps.push(Step::new("Make the other one", text).check("Held side by side the two are equally long."));
    }
    steps
}

fn measure(design: &Design) -> Step {
    let (text, check) = match design.heading.kind {
        Kind::Earrings => ("Hang the earring up and look at it from the front.".to_owned(), hangs(design)),
        _ if parts(design) == 0 => (
            "Stretch the piece gently two or three times and let it rest.".to_owned(),
            format!("{}{}.", holding(design), packed(design)),
        ),
        Kind::Strap => ("Lay the piece straight and measure from end to end.".to_owned(), length(design)),
        _ => (format!("Close the piece and measure once round{}, closure and all.", along(design)), length(design)),
    };
    Step::new("Check the piece", text).check(check)
}

/// What holds the ends of a piece without a closure.
fn holding(design: &Design) -> String {
    match super::ends::closings(design).as_slice() {
        ["knot"] => "The knot holds".to_owned(),
        closings => format!("What closes the ends holds ({})", words::list(closings)),
    }
}

/// What is seen of beads that are packed end to end.
fn packed(design: &Design) -> String {
    if design.strands.iter().all(|strand| strand.settle == Settle::Fill) {
        format!(", and no bare {} shows between the beads", cord_word(design))
    } else {
        String::new()
    }
}

/// Loops that grip the arms of spectacles are tried on a pair.
fn try_loops(design: &Design) -> Option<Step> {
    let findings = design.closure.parts().map(|part| &design.findings[part.finding]);
    let name = &findings.into_iter().find(|finding| finding.kind() == FindingKind::SpectacleLoop)?.name;
    let text = format!("Slide one {name} onto each arm of a pair of spectacles, and lift them by the strap.");
    Some(Step::new(format!("Try each {name}"), text).check("Both grip by themselves, and come off when you pull."))
}

const fn along(design: &Design) -> &'static str {
    if design.strands.len() > 1 { " along the shortest strand" } else { "" }
}

/// How far an earring hangs down, as its drape finds it.
fn hangs(design: &Design) -> String {
    let straight = "Everything hangs straight";
    match depth(design) {
        Some(depth) => format!(
            "{straight}. From where it hangs in the ear wire's ring to the lowest point it measures about {}.",
            design.heading.units.ruler(depth)
        ),
        None => format!("{straight}."),
    }
}

/// From where the strands hang down to the lowest point of any bead or branch.
fn depth(design: &Design) -> Option<Length> {
    let drape = drape::hang(design, None).ok()?;
    let strands = design.strands.iter().zip(&drape.strands);
    let lows = strands.flat_map(|(strand, hung)| hung.seats.iter().map(|seat| below(design, strand, hung, seat)));
    let ends = drape.strands.iter().map(|hung| hung.drop);
    lows.chain(ends).reduce(f64::max).map(Length::mm)
}

/// How far below its strand's higher end something strung reaches.
fn below(design: &Design, strand: &Strand, hung: &Hung, seat: &Seat) -> f64 {
    let bit = &strand.trains[seat.train].bits[seat.bit];
    let reach = match &bit.what {
        What::Dangle(dangle) => dangle.drop,
        What::Bead(at) if design.closure.loops() => design.beads[*at].across.value() / 2.0,
        _ => bit.after,
    };
    hung.ends[0].y.max(hung.ends[1].y) - seat.centre.y + reach
}

/// How long the piece is, closed as short and as long as it goes.
fn length(design: &Design) -> String {
    let (least, most) = design.piece_length();
    let units = design.heading.units;
    if most - least > Length::mm(1.0) {
        format!(
            "It measures {} to {}, from the shortest closing to the longest.",
            units.ruler(least),
            units.ruler(most)
        )
    } else {
        format!("It measures {}.", units.ruler(most))
    }
}

fn parts(design: &Design) -> usize {
    design.closure.parts().count()
}
