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
    let (text, check) = match design.heading.kind {
        Kind::Earrings => {
            ("Hang the earring up and look at it from the front.".to_owned(), "Everything hangs straight.".to_owned())
        }
        _ if parts(design) == 0 => (
            "Stretch the piece gently two or three times and let it rest.".to_owned(),
            "The knots hold, and no bare cord shows between the beads.".to_owned(),
        ),
        Kind::Strap => ("Lay the piece straight and measure from end to end.".to_owned(), length(design)),
        _ => (format!("Close the piece and measure once round{}, closure and all.", along(design)), length(design)),
    };
    Step::new("Check the piece", text).check(check)
}

const fn along(design: &Design) -> &'static str {
    if design.strands.len() > 1 { " along the shortest strand" } else { "" }
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
    design.closure.left.len() + design.closure.right.len()
}
