//! The extender of a piece that is drawn closed: its first link held by the clasp, and the rest of it loose.

use crate::design::{Design, Part};
use crate::drape::{Hung, Joint, Seat};
use crate::geometry::{Point, path};
use crate::paint::mark::Mark;
use crate::pattern::FindingKind;
use crate::units::Length;

use super::Canvas;
use super::side::{ClosureWay, Layers, lies_before, linked, side};

/// Half of the turn, in radians, that a loose chain takes on its way, by eye.
const BEND: f64 = 0.5;
/// Points along it.
const STEPS: u32 = 24;

/// The chain at the outer end of a side of the closure, where it is an extender.
pub fn extender<'p>(parts: &'p [Part], design: &Design) -> Option<&'p Part> {
    let last = parts.last().filter(|part| part.reach > part.least)?;
    design.findings[last.finding].chain().map(|_| last)
}

/// A side hooked up as short as it goes.
pub fn hooked(parts: &[Part]) -> Vec<Part> {
    parts.iter().map(|part| Part { reach: part.least, ..part.clone() }).collect()
}

/// How far in mm an extender's first link lies in the clasp that holds it, where there is one.
pub fn overlap(design: &Design) -> Option<f64> {
    let sides = [design.closure.left(), design.closure.right()];
    let chain = sides.into_iter().find_map(|parts| extender(parts, design))?;
    Some(design.findings[chain.finding].chain()?.pitch().value())
}

/// The strands' ends of a closed piece, drawn so much nearer to one another as an extender's first link lies in the clasp
/// that holds it: parts of a closure are as long as they are from outside to outside.
pub struct DrawnIn {
    middle: Point,
    /// Along the gap between the ends, and half of it.
    along: Point,
    half: f64,
    /// How far the piece reaches from there.
    depth: f64,
    by: f64,
}

impl DrawnIn {
    /// Of a piece whose closure takes a way, and whose strands lie there; nothing where its ends stay.
    pub fn of<'h>(design: &Design, closing: &[Point], strands: impl Iterator<Item = &'h Hung>) -> Option<Self> {
        let [last, .., first] = closing else { return None };
        let by = overlap(design)?;
        let (middle, gap) = (last.between(*first, 0.5), *first - *last);
        let along = Point::towards(gap.angle());
        let depths = strands.flat_map(|hung| &hung.joints).map(|joint| (joint.at - middle).dot(along.left()).abs());
        let depth = depths.fold(f64::MIN_POSITIVE, f64::max);
        Some(Self { middle, along, half: f64::max(0.5 * gap.length(), f64::MIN_POSITIVE), depth, by })
    }

    /// Where a place comes to lie: the farther from the gap the nearer to where it was.
    pub fn at(&self, place: Point) -> Point {
        let off = place - self.middle;
        let side = (off.dot(self.along) / self.half).clamp(-1.0, 1.0);
        let near = 1.0 - (off.dot(self.along.left()).abs() / self.depth).min(1.0);
        place - self.along * (0.5 * self.by * side * near)
    }

    /// A strand, its beads turned as they were.
    pub fn strand(&self, hung: &Hung) -> Hung {
        Hung {
            ends: hung.ends.map(|end| self.at(end)),
            joints: hung.joints.iter().map(|joint| Joint { at: self.at(joint.at), ..*joint }).collect(),
            seats: hung.seats.iter().map(|seat| Seat { centre: self.at(seat.centre), ..*seat }).collect(),
            ..hung.clone()
        }
    }
}

/// Both sides of a closure, the first end's and the last end's, each with the way that it takes outward, the parts that lie
/// along that, and where what is loose of an extender goes at first.
pub fn joined(ways: [ClosureWay; 2], drawn: [Vec<Part>; 2], out: [Point; 2], canvas: Canvas<'_>) -> Layers {
    let design = canvas.design();
    let all = [design.closure.left(), design.closure.right()];
    let order = if is_held(all[0], design) { [0, 1] } else { [1, 0] };
    let mut layers = Layers::default();
    for at in order {
        let layer = if lies_before(all[at], design) { &mut layers.before } else { &mut layers.behind };
        layer.extend(loose(&ways[at].line, all[at], out[at], canvas));
        layer.extend(side(&ways[at], &drawn[at], Some(at), canvas));
    }
    let links = order.map(|at| linked(&ways[at], &drawn[at], at, canvas));
    layers.before.extend(links.into_iter().flatten());
    layers
}

/// Whether a side ends in what the other holds, which is drawn over it: in an extender or a ring.
fn is_held(parts: &[Part], design: &Design) -> bool {
    let is_ring = parts.last().is_some_and(|part| {
        let finding = &design.findings[part.finding];
        finding.ring().is_some() || finding.kind() == FindingKind::ToggleRing
    });
    is_ring || extender(parts, design).is_some()
}

/// What of an extender hangs loose from where a way has come with the least of a side, first towards `out`.
fn loose(way: &[Point], parts: &[Part], out: Point, canvas: Canvas<'_>) -> Option<Mark> {
    let design = canvas.design();
    let part = extender(parts, design)?;
    let chain = design.findings[part.finding].chain()?;
    let from = parts.iter().map(|part| part.least).sum::<Length>() - *chain.wire * 2.0;
    let at = path::along(way, from.value())?;
    let back = path::along(way, (from.value() - 1.0).max(0.0)).unwrap_or(at) - at;
    let bent = if out.left().dot(back) < 0.0 { -BEND } else { BEND };
    let [all, held] = [part.reach, part.least].map(|length| chain.links(length).unwrap_or_default());
    #[expect(clippy::cast_precision_loss, reason = "a count of links")]
    let length = (chain.pitch() * all.saturating_sub(held) as f64 + *chain.wire * 2.0).value();
    let line: Vec<_> = (0..=STEPS).map(|step| canvas.page(at + arc(out, bent, length, step))).collect();
    Some(canvas.stencils.chain(part.finding, &line, canvas.scale()))
}

/// A point of an arc of a length that turns by twice an angle, from the direction `out`.
fn arc(out: Point, bent: f64, length: f64, step: u32) -> Point {
    let share = f64::from(step) / f64::from(STEPS);
    let radius = 0.5 * length / bent;
    let (sin, cos) = libm::sincos(2.0 * bent * share);
    out * (radius * sin) + out.left() * (radius * (1.0 - cos))
}
