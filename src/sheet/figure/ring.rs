//! A bracelet or anklet closed: its beads and its closure round the circle that they make.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Design, Part};
use crate::drape::{Hung, Joint, Ring, Seat};
use crate::geometry::{Extent, Point};
use crate::paint::mark::Mark;

use super::Frame;
use super::closure::side;
use super::strands::Sketch;

/// Points along the cord's arc.
const STEPS: u32 = 120;

/// The closed ring about the frame's origin, the middle of its strand at the foot.
pub fn ring(piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Option<Vec<Mark>> {
    let ring = piece.drape.ring.as_ref()?;
    let (strand, hung) = piece.design.strands.get(ring.strand).zip(piece.drape.strands.get(ring.strand))?;
    let step = ring.last_end() / f64::from(STEPS);
    let cord: Vec<_> = (0..=STEPS).map(|at| frame.page(ring.at(step * f64::from(at)))).collect();
    let mut marks = vec![stencils.strand_cord(strand, &cord, frame.scale)];
    let (design, hung) = (&piece.design, &round(ring, hung));
    marks.extend(Sketch { design, strand, hung, frame, stencils }.strung());
    marks.extend(closing(ring, &piece.design, frame, stencils));
    Some(vec![Mark::figure("the piece closed", marks)])
}

/// A strand's seats put round the ring, with a joint at each and at both ends.
fn round(ring: &Ring, hung: &Hung) -> Hung {
    let seat =
        |(seat, &turn): (&Seat, &f64)| Seat { centre: ring.at(turn), angle: ring.angle(turn) + FRAC_PI_2, ..*seat };
    let seats: Vec<_> = hung.seats.iter().zip(&ring.turns).map(seat).collect();
    let last = hung.joints.last().map_or(0.0, |joint| joint.station);
    let ends = [Joint { station: 0.0, at: ring.at(0.0) }, Joint { station: last, at: ring.at(ring.last_end()) }];
    let seated = seats.iter().map(|seat| Joint { station: seat.station, at: seat.centre });
    let joints = [ends[0]].into_iter().chain(seated).chain([ends[1]]).collect();
    Hung { ends: ends.map(|end| end.at), seats, joints, ..hung.clone() }
}

/// Both sides of the closure, hooked up as short as it goes, along the joints in the gap.
fn closing(ring: &Ring, design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let outward: Vec<_> = ring.closing.iter().map(|turn| ring.at(*turn)).collect();
    let inward: Vec<_> = outward.iter().rev().copied().collect();
    let mut marks = side(&outward, &shortest(&design.closure.right), design, frame, stencils);
    marks.extend(side(&inward, &shortest(&design.closure.left), design, frame, stencils));
    marks
}

fn shortest(parts: &[Part]) -> Vec<Part> {
    parts.iter().map(|part| Part { reach: part.least, ..part.clone() }).collect()
}

impl Ring {
    /// How far round the strand's last end lies.
    fn last_end(&self) -> f64 {
        self.closing.first().copied().unwrap_or(2.0 * PI)
    }

    /// Direction from the ring's centre to what lies so far round.
    fn angle(&self, turn: f64) -> f64 {
        turn - self.last_end() / 2.0 - FRAC_PI_2
    }

    /// What lies so far round, from the ring's centre.
    fn at(&self, turn: f64) -> Point {
        Point::towards(self.angle(turn)) * self.radius
    }
}

/// The box round the ring.
pub fn ring_extent(piece: &Piece) -> Option<Extent> {
    let radius = piece.drape.ring.as_ref()?.radius;
    let widest = piece.design.beads.iter().map(|bead| bead.across.value() / 2.0).fold(3.0, f64::max);
    Extent::of([Point::ORIGIN]).map(|extent| extent.grown(radius + widest))
}
