//! A necklace on its neck.
//!
//! The neck's base is an ellipse. The closure lies at its nape; it and the cords beside it follow
//! the back half. What is left hangs in the plane of the chest from the ellipse's two sides: on a
//! smooth slope the shape is that of a strand hung upright, and the view from the front only
//! foreshortens it. The front half of the ellipse, lying in that plane, is in its way: the strand
//! follows it as far as it would otherwise cut into it, equally far on both sides, and leaves it
//! along its tangent; there it is hung by [`mod@super::hang`]. The closure is hooked as short as it goes,
//! or, where that is too short to go round the neck, as much longer as an extender must be let out.
//! Strands that bars hold apart lie one below another at the nape, each with as much behind, and come
//! forward side by side: each has a front ellipse whose half axes are longer by as much as it is held
//! aside.
//!
//! Breadth to depth and the chest's slope are the design's, assumed where the pattern does not say.
//! Lengths are mm, angles radians.

use std::f64::consts::FRAC_PI_2;

use super::chain::{Chain, pieces};
use super::hang::{self, Hanging, Link, Unhung};
use super::{Worn, ellipse};
use crate::design::{Design, Wear};
use crate::geometry::Point;

/// Halvings in the search for the place where the strand leaves the neck: far below a bead's size.
const HALVINGS: u32 = 30;
/// Chords in which a part of the ellipse is measured and drawn: 0.002 mm off on a neck.
const CHORDS: u32 = 180;
/// Length of the pieces, in mm, in which closure that reaches round to the front is hung.
const PIECE: f64 = 1.0;

/// Distance between the neck's sides: the span from which a necklace hangs on the sheet.
#[must_use]
pub fn span(wear: &Wear) -> f64 {
    2.0 * half_axes(wear).0
}

/// Half of the neck's breadth and of its depth.
fn half_axes(wear: &Wear) -> (f64, f64) {
    ellipse::half_axes(wear.girth.value(), *wear.build.breadth_to_depth)
}

/// The front of the neck's base, seen square to the chest.
struct Front {
    a: f64,
    b: f64,
}

/// The necklace on the neck; `chains` are the design's strands in its order.
///
/// A strand that does not reach round the neck has no line and no drop.
///
/// # Errors
/// The index of a strand that could not be hung, and why.
pub fn wear(design: &Design, chains: &[Chain]) -> Result<Worn, (usize, Unhung)> {
    let (a, b) = half_axes(&design.wear);
    let tilt = *design.wear.build.chest_tilt;
    let closure = closure(design);
    let behind = 0.25 * design.wear.girth.value() - 0.5 * closure;
    let (breadth, depth) = (2.0 * a, 2.0 * b);
    let mut worn = Worn { breadth, depth, tilt, closure, behind, lines: Vec::new(), drops: Vec::new() };
    for (index, (strand, chain)) in design.strands.iter().zip(chains).enumerate() {
        let front = Front { a: a + strand.aside.value(), b: b + strand.aside.value() };
        let line = front.line(chain, behind).map_err(|why| (index, why))?;
        let lowest = line.iter().map(|p| -p.y).fold(0.0, f64::max);
        worn.drops.push((lowest - b).max(0.0) * libm::cos(tilt));
        worn.lines.push(line.into_iter().map(|p| Point::new(p.x, p.y * libm::cos(tilt))).collect());
    }
    Ok(worn)
}

/// What the closure adds when it is hooked as short as the shortest strand goes round the neck.
fn closure(design: &Design) -> f64 {
    let (least, most) = design.closure_length();
    let shortest = design.strands.iter().map(|strand| strand.finished.value()).fold(f64::INFINITY, f64::min);
    (design.wear.girth.value() - shortest).max(least.value()).min(most.value())
}

impl Front {
    /// A strand's line in the chest's plane when so much at each end lies behind the neck.
    fn line(&self, chain: &Chain, behind: f64) -> Result<Vec<Point>, Unhung> {
        if chain.length() - 2.0 * behind < 2.0 * self.arc(FRAC_PI_2) {
            return Ok(Vec::new());
        }
        let (mut cuts, mut clears) = (0.0, FRAC_PI_2);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (cuts + clears);
            // A piece too stiff for the small gap low on the neck stands off from it.
            let is_clear = self.hang(chain, behind, middle).map_or(true, |hanging| self.is_clear(&hanging, middle));
            if is_clear {
                clears = middle;
            } else {
                cuts = middle;
            }
        }
        match self.hang(chain, behind, clears) {
            Ok(hanging) => Ok(self.joined(&hanging.joints, clears)),
            // Nothing is left to hang, or too little to bend.
            Err(Unhung::TooShort(_) | Unhung::TooStiff(_) | Unhung::Slack) => Ok(self.joined(&[], FRAC_PI_2)),
            Err(why) => Err(why),
        }
    }

    /// Hangs what is left when the strand follows the neck down to an angle on both sides.
    fn hang(&self, chain: &Chain, behind: f64, angle: f64) -> Result<Hanging, Unhung> {
        let used = behind + self.arc(angle);
        hang::solve(&between(chain, used, chain.length() - used), Point::new(-2.0 * self.at(angle).x, 0.0))
    }

    /// The left side's point at an angle down from the side.
    fn at(&self, angle: f64) -> Point {
        let (sin, cos) = libm::sincos(angle);
        Point::new(-self.a * cos, -self.b * sin)
    }

    /// Length from the side down to an angle.
    fn arc(&self, angle: f64) -> f64 {
        let points = self.points(angle);
        points.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
    }

    /// Whether a strand hung at an angle leaves the neck at both sides, or along its tangent.
    fn is_clear(&self, hanging: &Hanging, angle: f64) -> bool {
        let (sin, cos) = libm::sincos(angle);
        let tangent = Point::new(self.a * sin, -self.b * cos);
        let leaves = |x: f64, y: f64| tangent.x * y - tangent.y * x <= 0.0;
        let ends = hanging.directions.first().zip(hanging.directions.last());
        ends.is_none_or(|(first, last)| leaves(first.x, first.y) && leaves(last.x, -last.y))
    }

    /// The neck's outline from the left side down to an angle.
    fn points(&self, angle: f64) -> Vec<Point> {
        (0..=CHORDS).map(|step| self.at(angle * f64::from(step) / f64::from(CHORDS))).collect()
    }

    /// Down the neck's left side to an angle, along a hanging chain, and up the right side.
    fn joined(&self, joints: &[Point], angle: f64) -> Vec<Point> {
        let left = self.points(angle);
        let right: Vec<Point> = left.iter().rev().map(|p| Point::new(-p.x, p.y)).collect();
        let start = self.at(angle);
        let hung = joints.iter().map(|&joint| start + joint);
        left.iter().copied().chain(hung).chain(right).collect()
    }
}

/// The part of a chain between two stations. A link that is cut keeps its share of the weight, in
/// its middle. Before the first station and past the last there is closure, which is hung as if
/// it weighed as much as the chain does on average.
fn between(chain: &Chain, from: f64, to: f64) -> Vec<Link> {
    let length = chain.length();
    let weight: f64 = chain.links.iter().map(|link| link.weight).sum();
    let mut links = plain(-from, weight / length);
    let mut start = 0.0;
    for link in &chain.links {
        let end = start + link.length;
        let kept = end.min(to) - start.max(from);
        if kept >= link.length {
            links.push(*link);
        } else if kept > 0.0 {
            links.push(Link { length: kept, weight: link.weight * kept / link.length, centre: 0.5 });
        }
        start = end;
    }
    links.extend(plain(to - length, weight / length));
    links
}

/// Even pieces of so much per mm; none where the length is not positive.
fn plain(length: f64, weight: f64) -> Vec<Link> {
    let count = pieces(length, PIECE);
    let piece = length / count as f64;
    vec![Link { length: piece, weight: piece * weight, centre: 0.5 }; count]
}
