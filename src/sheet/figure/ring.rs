//! A bracelet or anklet closed: its beads round the circle that they make.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::Piece;
use crate::art::Stencils;
use crate::design::What;
use crate::geometry::Point;
use crate::sheet::mark::Mark;

use super::{Extent, Frame};

/// The closed ring about the frame's origin, the middle of the first strand at the foot.
pub fn ring(piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Option<Vec<Mark>> {
    let radius = piece.drape.ring.as_ref()?.radius;
    let (strand, hung) = piece.design.strands.first().zip(piece.drape.strands.first())?;
    let middle = strand.finished.value() / 2.0;
    let round = |station: f64| -FRAC_PI_2 + turn(station - middle, radius);
    let on = |angle: f64| frame.page(Point::towards(angle) * radius);
    let cord: Vec<_> = (0..=120).map(|step| on(round(strand.finished.value() * f64::from(step) / 120.0))).collect();
    let mut marks = vec![stencils.cord(strand.cord, &cord, frame.scale)];
    for seat in &hung.seats {
        let bit = &strand.trains[seat.train].bits[seat.bit];
        let angle = round(seat.station);
        match bit.what {
            What::Bead(bead) => marks.push(stencils.bead(bead, on(angle), -angle - FRAC_PI_2, frame.scale)),
            What::Finding(index) => {
                let start = on(round(seat.station - bit.before));
                marks.push(stencils.finding(index, start, -angle - FRAC_PI_2, frame.scale));
            }
            What::Knot => {
                marks.push(stencils.knot(strand.cord, on(angle), -angle - FRAC_PI_2, frame.scale, bit.length()))
            }
            What::Gap | What::Dangle(_) => {}
        }
    }
    Some(vec![Mark::Group { label: "the piece closed".to_owned(), marks }])
}

/// Angle that a length of the row takes up on the ring. A chord of length p takes 2 asin(p / 2R);
/// over many beads that is the length over the radius but for terms of the third order.
fn turn(length: f64, radius: f64) -> f64 {
    (length / radius).clamp(-PI, PI)
}

/// The box round the ring.
pub fn ring_extent(piece: &Piece) -> Option<Extent> {
    let radius = piece.drape.ring.as_ref()?.radius;
    let widest = piece.design.beads.iter().map(|bead| bead.across.value() / 2.0).fold(3.0, f64::max);
    Extent::of([Point::ORIGIN]).map(|extent| extent.grown(radius + widest))
}
