//! Closing a pin: its wire is bent, cut and rolled into a plain loop.
//!
//! A loop in which something is to hang is left a little open until that hangs there, so that
//! nothing is closed only to be opened again (common practice, no source).

use super::prepare::FLYING;
use super::{Drawing, Step};
use crate::units::{Length, UnitStyle};

/// Wire left for a plain loop: common practice, no source.
const LOOP_WIRE: Length = Length::mm(10.0);

/// The steps that close a pin, named with its article, above what it holds.
pub fn close(units: UnitStyle, pin: &str, above: &str, open: bool) -> [Step; 3] {
    let bend = format!("Bend the wire of {pin} to a right angle where it leaves the {above}.");
    let cut = format!("Cut the wire of {pin} {} from the bend. {FLYING}", units.ruler(LOOP_WIRE));
    [Step::new("Bend the pin", bend), Step::new("Cut the pin", cut), turn(pin, open)]
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
