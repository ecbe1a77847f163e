//! Closing a pin: its wire is bent, cut and rolled into a plain loop.
//!
//! A loop in which something is to hang is left a little open until that hangs there, so that
//! nothing is closed only to be opened again (common practice, no source).

use super::task::{Above, Pins, Task};
use super::{Below, Drawing, Step};

/// The steps that close pins above what they hold.
pub fn close<'d>(pins: Pins, above: Above, open: bool) -> [Step<'d>; 3] {
    let below = match above {
        Above::Beads => Below::Beads,
        Above::Eye => Below::Eye,
        Above::Cover(_) => Below::Cover,
    };
    [
        Step::new(Task::BendPin(pins.clone(), above)).drawing(Drawing::BentPin(below)),
        Step::new(Task::CutPin(pins.clone())).drawing(Drawing::CutPin(below)),
        Step::new(Task::TurnLoop { pins, open }).drawing(Drawing::PlainLoop(open)),
    ]
}
