//! Findings that are strung among beads.

use std::f64::consts::PI;

use super::Stencils;
use crate::design::{Bit, Finding, Index};
use crate::geometry::Point;
use crate::paint::mark::Mark;

impl Stencils<'_> {
    /// A strung finding with its centre at a point; one that is turned round is drawn from its far end. A cap
    /// reaches over its bead by as much as it is longer than the cord that it takes.
    pub fn strung(&self, index: Index<Finding>, bit: &Bit, centre: Point, angle: f64, scale: f64) -> Mark {
        let way = if bit.turned { angle + PI } else { angle };
        let back = if bit.turned { bit.after } else { bit.before };
        let over = self.cap_length(index).map_or(0.0, |length| (length - bit.length()).max(0.0));
        self.whole(index, centre - Point::towards(way) * ((back + over) * scale), way, scale)
    }
}
