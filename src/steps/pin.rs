//! Closing a pin: its wire is bent, cut and rolled into a plain loop.
//!
//! A loop in which something is to hang is left a little open until that hangs there, so that
//! nothing is closed only to be opened again (common practice, no source).

use super::task::{Above, Pins, Task};
use super::{Drawing, Step};

/// The steps that close pins above what they hold.
pub fn close<'d>(pins: Pins, above: Above, open: bool) -> [Step<'d>; 3] {
    [
        Step::new(Task::BendPin(pins.clone(), above)),
        Step::new(Task::CutPin(pins.clone())),
        Step::new(Task::TurnLoop { pins, open }).drawing(Drawing::PlainLoop),
    ]
}
