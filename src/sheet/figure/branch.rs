//! Branches: what hangs from a place on a strand, along a way in space. Lengths in mm on paper.

use std::f64::consts::PI;

use crate::art::Deal;
use crate::design::{Bead, Bit, Cord, Dangle, Design, Finding, Index, What};
use crate::geometry::{Extent, Point, Point3};
use crate::paint::mark::Mark;
use crate::pattern::{CordKind, Drilled, FindingKind};
use crate::units::Length;

use super::Canvas;

/// Branches, at points of the page.
impl Canvas<'_> {
    /// The ring by which a branch hangs.
    fn jump_ring(&self, dangle: &Dangle) -> Option<Index<Finding>> {
        dangle.on.filter(|on| self.design().findings[*on].kind() == FindingKind::JumpRing)
    }

    /// The ring or the pin by which a branch hangs from a point on the cord along a way, a unit vector, as what it goes through
    /// lies over it.
    pub fn hanger(&self, (dangle, cord): (&Dangle, Index<Cord>), from: Point, down: Point3) -> Option<Mark> {
        let (on, scale) = (dangle.on?, self.scale());
        match self.design().findings[on].kind() {
            FindingKind::JumpRing => Some(self.stencils.finding(on, from, way(down), scale)),
            _ => {
                let (foot, reach) = self.pinned(dangle, cord, from, down)?;
                Some(self.stencils.pin(on, foot, way(down) - PI, scale, reach))
            }
        }
    }

    /// Where the foot is of the pin that a branch hangs on, and how far its loop reaches up from there in mm as it is seen: round
    /// the cord, or into the link that it hangs in.
    fn pinned(&self, dangle: &Dangle, cord: Index<Cord>, from: Point, down: Point3) -> Option<(Point, f64)> {
        let (pin, cord) = (self.design().findings[dangle.on?].pin()?, &self.design().cords[cord]);
        let round = if cord.kind == CordKind::Chain { Length::ZERO } else { pin.wire + cord.diameter * 0.5 };
        let drop = dangle.drop * down.front().length();
        Some((from + Point::towards(way(down)) * (drop * self.scale()), drop + round.value()))
    }

    /// A branch from a point on the cord along a way, a unit vector; a ring or a pin's loop goes through that, so that half of it
    /// lies before it. A bead that is drilled across its tip hides the wire in it.
    pub fn branch(&self, (dangle, deal): (&Dangle, Deal), cord: Index<Cord>, from: Point, down: Point3) -> Vec<Mark> {
        let (angle, scale) = (way(down), self.scale());
        let pinned = self.pinned(dangle, cord, from, down);
        let hanger = |on: Index<Finding>| match (self.design().findings[on].kind(), pinned) {
            (FindingKind::JumpRing, _) => self.stencils.front_half(on, from, angle, scale),
            (_, Some((foot, reach))) => self.stencils.pin_loop(on, foot, angle - PI, scale, reach),
            _ => self.stencils.whole(on, from, angle, scale),
        };
        let (hanger, hung) = (dangle.on.map(hanger), self.branched((dangle, deal), from, down));
        if self.is_in_a_ring(dangle) {
            return hung.into_iter().chain(hanger).collect();
        }
        hanger.into_iter().chain(hung).collect()
    }

    /// Whether what hangs on a branch is held by a ring that is seen to go through it.
    fn is_in_a_ring(&self, dangle: &Dangle) -> bool {
        let is_tip = |bead: Index<Bead>| self.design().beads[bead].drilled == Drilled::Tip;
        self.jump_ring(dangle).is_some() && !dangle.bits.first().and_then(|bit| bit.what.bead()).is_some_and(is_tip)
    }

    /// What is strung on a branch in a place, from a point along a way, a unit vector.
    pub fn branched(&self, (dangle, deal): (&Dangle, Deal), from: Point, along: Point3) -> Vec<Mark> {
        let (way, seen) = (way(along), along.front().length());
        let strung = |((below, bit), level): ((usize, &Bit), f64)| {
            let at = from + Point::towards(way) * (level * seen * self.scale());
            let deal = Some(deal.hanging(below));
            match bit.what {
                What::Bead(bead) => Some(self.stencils.bead_aslant(bead, deal, at, (way, along.z), self.scale())),
                What::Finding(index) => Some(self.stencils.strung(index, bit, at, way, self.scale())),
                What::Gap | What::Knot | What::Dangle(_) => None,
            }
        };
        dangle.bits.iter().enumerate().zip(dangle.levels(self.design())).filter_map(strung).collect()
    }
}

/// The angle on the page of a way in space.
fn way(along: Point3) -> f64 {
    0.0 - along.front().angle()
}

/// The box that a branch takes which hangs along a way, a unit vector, from anywhere in a box.
pub fn branch_box(branch: &Dangle, at: Extent, down: Point3, design: &Design) -> Extent {
    let hanger = branch.on.map_or(0.0, |on| hanger_width(&design.findings[on]));
    let wide = branch.bits.iter().map(|bit| design.breadth_of(bit).value()).fold(hanger, f64::max);
    let foot = (down * branch.drop).front();
    let below = Extent { low: at.low + foot, high: at.high + foot };
    at.and(below.grown(wide / 2.0))
}

/// How wide what a branch hangs on is drawn, with its edges: a pin's loop, a ring, a bail.
fn hanger_width(hanger: &Finding) -> f64 {
    const EDGES: f64 = 0.4;
    let round = || hanger.inside().unwrap_or_default() + hanger.wire().map_or(Length::ZERO, |wire| *wire * 2.0);
    let drawn = hanger.pin().map_or_else(round, |pin| *pin.eye());
    drawn.max(hanger.outside().unwrap_or_default()).value() + EDGES
}
