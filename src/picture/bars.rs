//! Spacer bars: one for all the strands that run through it, lying across them.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::art::Stencils;
use crate::design::{Bit, Design, What};
use crate::drape::{Hung, Seat};
use crate::geometry::Point;
use crate::pattern::FindingKind;
use crate::sheet::figure::Frame;
use crate::sheet::mark::Mark;

/// A bar that several strands share.
pub struct Bar<'a> {
    finding: usize,
    /// How many bars of its kind its strands pass before it.
    number: usize,
    bit: &'a Bit,
    /// Where each strand runs through it, the innermost first.
    seats: Vec<Seat>,
}

/// Takes the bars that strands share out of them; strands are those of the design in its order.
pub fn taken_from<'a>(design: &'a Design, strands: &mut [Option<Hung>]) -> Vec<Bar<'a>> {
    let mut bars: Vec<Bar<'a>> = Vec::new();
    for (strand, hung) in design.strands.iter().zip(strands.iter().flatten()) {
        let mut passed = vec![0; design.findings.len()];
        for seat in &hung.seats {
            let bit = &strand.trains[seat.train].bits[seat.bit];
            let Some(finding) = spacer(bit, design) else { continue };
            let number = passed[finding];
            passed[finding] += 1;
            match bars.iter_mut().find(|bar| bar.finding == finding && bar.number == number) {
                Some(bar) => bar.seats.push(*seat),
                None => bars.push(Bar { finding, number, bit, seats: vec![*seat] }),
            }
        }
    }
    bars.retain(|bar| bar.seats.len() > 1);
    for hung in strands.iter_mut().flatten() {
        hung.seats.retain(|seat| !bars.iter().any(|bar| bar.seats.contains(seat)));
    }
    bars
}

/// The spacer bar that a bit is.
fn spacer(bit: &Bit, design: &Design) -> Option<usize> {
    match bit.what {
        What::Finding(index) if design.findings[index].kind == FindingKind::SpacerBar => Some(index),
        _ => None,
    }
}

impl Bar<'_> {
    /// The bar in the middle of its strands, across the line on which they pass it.
    pub fn mark(&self, frame: &Frame, stencils: &mut Stencils<'_>) -> Option<Mark> {
        let (first, last) = self.seats.first().zip(self.seats.last())?;
        let along = (last.centre - first.centre).angle() + FRAC_PI_2;
        let is_against = libm::cos(along - first.angle) < 0.0;
        let turn = -(if is_against { along + PI } else { along });
        let centre = frame.page(first.centre.between(last.centre, 0.5));
        let start = centre - Point::towards(turn) * (self.bit.before * frame.scale);
        Some(stencils.finding(self.finding, start, turn, frame.scale))
    }
}
