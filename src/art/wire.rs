//! Wires: lines with the light along them.

use super::light::{Ink, metal_toned};
use crate::paint::mark::{Mark, Rgb, Segment, Stroke};

/// Edge of a wire in outline, in mm, unless the wire is too thin for it.
const EDGE: f64 = 0.12;

/// A round wire along an outline, as wide as it is thick.
#[must_use]
pub fn wire(outline: &[Segment], thick: f64, colour: Rgb, ink: Ink) -> Vec<Mark> {
    let line = |colour: Rgb, share: f64| {
        let stroke = Stroke { round: true, ..Stroke::new(colour, thick * share) };
        Mark::Shape { outline: outline.to_vec(), fill: None, stroke: Some(stroke) }
    };
    if ink == Ink::Outline {
        let inside = (1.0 - 2.0 * EDGE / thick).max(0.5);
        return vec![line(Rgb::BLACK, 1.0), line(Rgb::WHITE, inside)];
    }
    let colour = ink.tone(colour);
    vec![line(metal_toned(colour, -0.6), 1.0), line(colour, 0.7), line(metal_toned(colour, 0.6), 0.26)]
}
