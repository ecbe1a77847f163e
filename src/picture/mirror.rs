//! The other of a pair: the same turned left to right, under the same light.

use std::f64::consts::PI;

use crate::art::{Look, Stencils};
use crate::drape::{Hung, Joint, Seat};
use crate::geometry::Point;
use crate::paint::mark::Mark;

/// A hanging strand mirrored in an upright line.
pub fn strand(hung: &Hung, axis: f64) -> Hung {
    let across = |at: Point| Point::new(2.0 * axis - at.x, at.y);
    Hung {
        ends: hung.ends.map(across),
        joints: hung.joints.iter().map(|joint| Joint { at: across(joint.at), ..*joint }).collect(),
        seats: hung
            .seats
            .iter()
            .map(|seat| Seat { centre: across(seat.centre), angle: PI - seat.angle, ..*seat })
            .collect(),
        ..hung.clone()
    }
}

/// Findings that stand upright, as stamps of their mirror images.
pub fn upright(mark: Mark, stencils: &Stencils<'_>) -> Mark {
    match mark {
        Mark::Stamp { symbol, at, angle, scale, .. } => {
            let Some(Look::Finding { finding, .. }) = stencils.look(symbol) else { return mark };
            stencils.mirrored_finding(finding, at, angle, scale)
        }
        held => held.map_inner(|marks| marks.into_iter().map(|mark| upright(mark, stencils)).collect()),
    }
}
