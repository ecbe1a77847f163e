//! The last steps: measure the piece, and make the second of a pair.

use super::Step;
use crate::design::Design;
use crate::pattern::Kind;
use crate::units::Length;

/// Measure, and make the second one.
pub fn finish(design: &Design) -> Vec<Step> {
    let mut steps = vec![measure(design)];
    if design.copies > 1 {
        let text = "Make the second earring in the same way, from the first step on.";
        steps.push(Step::new("Make the other one", text).check("Held side by side the two are equally long."));
    }
    steps
}

fn measure(design: &Design) -> Step {
    let (least, most) = design.piece_length();
    let units = design.heading.units;
    let which = if design.strands.len() > 1 { " along the shortest strand" } else { "" };
    let text = match design.heading.kind {
        Kind::Earrings => "Hang the earring up and look at it from the front.".to_owned(),
        _ if parts(design) == 0 => "Lay the piece round a tube or your wrist and turn it once.".to_owned(),
        _ => format!("Close the piece, lay it out and measure once round{which}, closure and all."),
    };
    let check = match design.heading.kind {
        Kind::Earrings => "Everything hangs straight.".to_owned(),
        _ if most - least > Length::mm(1.0) => format!(
            "It measures {} to {}, from the shortest closing to the longest.",
            units.ruler(least),
            units.ruler(most)
        ),
        _ => format!("It measures {} once round.", units.ruler(most)),
    };
    Step::new("Check the piece", text).check(check)
}

fn parts(design: &Design) -> usize {
    design.closure.left.len() + design.closure.right.len()
}
