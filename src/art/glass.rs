//! What shows through clear and frosted beads: their hole, and the cord in it, which is drawn below
//! them. A band of the bead over the hole is drawn thin.

use super::bead::area;
use super::shape::{self, Extents};
use crate::design::Bead;
use crate::geometry::{Point, path};
use crate::paint::mark::{ColourStop, Fill, Mark, Segment};
use crate::paint::outline::{line, polygon};
use crate::pattern::Drilled;

/// Widest hole that shows, as a share of the bead's size across it: wider ones leave no wall.
const WIDEST: f64 = 0.8;

/// The band of a hole: what lies between two places along a direction across it.
#[derive(Clone, Copy, Debug)]
pub struct Window {
    across: Point,
    from: f64,
    to: f64,
}

impl Window {
    /// The hole of a bead: along x, or across the tip of one that hangs by it. One through the front is seen from its end,
    /// and several are not shown.
    pub fn of(bead: &Bead, size: Extents) -> Option<Self> {
        let (across, middle, room) = match bead.drilled {
            Drilled::Tip => (Point::new(1.0, 0.0), shape::tip_hole(size), size.along),
            Drilled::Front => return None,
            Drilled::Lengthwise if bead.bores.is_some() => return None,
            Drilled::Lengthwise => (Point::new(0.0, 1.0), 0.0, size.across),
        };
        let window = Self { across, from: middle - size.hole, to: middle + size.hole };
        (size.hole < room * WIDEST).then_some(window)
    }

    /// The part of an area before the hole.
    pub fn part(&self, area: &[Point]) -> Vec<Point> {
        path::beyond(&path::beyond(area, self.across, self.from), self.across * -1.0, -self.to)
    }

    /// The parts of an area on either side of the hole.
    pub fn beside(&self, area: &[Point]) -> [Vec<Point>; 2] {
        [path::beyond(area, self.across * -1.0, -self.from), path::beyond(area, self.across, self.to)]
    }

    /// The part of an area before the hole, filled as the area is but thin.
    pub fn pane(&self, area: &[Point], fill: Fill, veil: f64) -> Mark {
        self::area(polygon(&self.part(area)), thin(fill, veil), None)
    }

    /// The lines where the hole's wall is seen edge on.
    pub fn walls(&self, area: &[Point]) -> Vec<Segment> {
        let wall = |at: f64| {
            let on_it = |point: &&Point| (point.x * self.across.x + point.y * self.across.y - at).abs() < 1e-9;
            let part = self.part(area);
            let ends: Vec<Point> = part.iter().filter(on_it).copied().collect();
            let far =
                |start: Point| ends.iter().copied().max_by(|a, b| a.distance(start).total_cmp(&b.distance(start)));
            let start = ends.first().copied().and_then(far);
            start.and_then(far).zip(start).map_or_else(Vec::new, |(from, to)| line(from, to))
        };
        [self.from, self.to].into_iter().flat_map(wall).collect()
    }
}

/// A fill at a share of its opacity.
fn thin(fill: Fill, share: f64) -> Fill {
    let stops = |stops: Vec<ColourStop>| {
        stops.into_iter().map(|stop| ColourStop { opacity: stop.opacity * share, ..stop }).collect()
    };
    match fill {
        Fill::Flat(colour, opacity) => Fill::Flat(colour, opacity * share),
        Fill::Linear(from, to, colours) => Fill::Linear(from, to, stops(colours)),
        Fill::Radial(centre, radius, colours) => Fill::Radial(centre, radius, stops(colours)),
    }
}
