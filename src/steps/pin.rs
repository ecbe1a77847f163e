//! Closing a pin: its wire is bent, cut and rolled into a plain loop.
//!
//! A loop in which something is to hang is left a little open until that hangs there, so that
//! nothing is closed only to be opened again (common practice, no source).

use super::prepare::FLYING;
use super::words::list;
use super::{Drawing, Step};
use crate::design::Finding;
use crate::units::UnitStyle;

/// The steps that close pins of some sorts, named with their article, above what they hold.
pub fn close(units: UnitStyle, sorts: &[&Finding], pin: &str, above: &str, open: bool) -> [Step; 3] {
    let bend = format!("Bend the wire of {pin} to a right angle where it leaves the {above}.");
    let cut = format!("Cut the wire of {pin} {} from the bend. {FLYING}", leaves(units, sorts));
    [Step::new("Bend the pin", bend), Step::new("Cut the pin", cut), turn(pin, open)]
}

/// The wire that a loop takes: `8 mm`, or of several sorts `8 mm (head pin) and 9 mm (eye pin)`.
fn leaves(units: UnitStyle, sorts: &[&Finding]) -> String {
    let each = sorts.iter().filter_map(|finding| Some((units.ruler(finding.pin()?.loop_wire()), &finding.name)));
    let each: Vec<_> = each.collect();
    match each.as_slice() {
        [(first, _), rest @ ..] if rest.iter().all(|(other, _)| other == first) => first.clone(),
        each => list(&each.iter().map(|(wire, name)| format!("{wire} ({name})")).collect::<Vec<_>>()),
    }
}

fn turn(pin: &str, open: bool) -> Step {
    let text = format!(
        "Grip the tip of the wire of {pin} with round-nose pliers, and roll it back towards the bend into a plain loop."
    );
    let step = if open {
        Step::new("Turn a loop", format!("{text} Stop while it is still a little open."))
            .check("The loop is round, and its gap lets a link or ring in.")
    } else {
        Step::new("Turn a loop", text).check("The loop is round and shut tight: no gap shows.")
    };
    step.drawing(Drawing::PlainLoop)
}
