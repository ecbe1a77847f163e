//! How close neighbouring strands come, outline to outline.
//!
//! Every link outside the first and last 25 mm of its strand is taken as a convex outline in
//! the drape's plane: a bead by its profile at so many places along the hole that a round outline
//! lies less than 0.02 mm outside it, all else as a box as wide as its cord or finding. Outlines
//! within 0.05 mm of one another touch, as they are not known better. Between outlines that are apart the
//! distance is that of the nearest corner and side; outlines that overlap count by the least push that parts
//! them, as a negative distance (separating axis theorem). A link that touches counts with its whole length.
//!
//! What is strung nearer to the ends is compared by itself, but for what a cone covers.
//!
//! A bead that several strands run through is taken as its cord, so that it does not touch itself.
//!
//! Error: two outlines are less than 0.04 mm nearer than said. Branches are left out: they hang in
//! front of the strand below.

use std::f64::consts::PI;

use super::chain::{Chain, Content, pieces};
use super::contact::{Press, covered, hardest};
use super::{Clearance, Hung};
use crate::design::{Bead, Design, Entries, Index, Strand, What};
use crate::geometry::{Point, path::sides};
use crate::pattern::Shape;

/// Arc at each end, in mm, that is not compared: strands that share an end meet there.
pub(super) const ENDS: f64 = 25.0;
/// How far, in mm, a round outline may stand out from its polygon.
const FINE: f64 = 0.02;
/// Outlines nearer than this, in mm, touch.
pub(super) const TOUCHES: f64 = 0.05;

/// A link's convex outline.
struct Hull {
    centre: Point,
    /// No corner is farther from the centre.
    reach: f64,
    corners: Vec<Point>,
    length: f64,
}

/// The outlines of a strand.
#[derive(Default)]
struct Outlines {
    /// Away from its ends.
    amid: Vec<Hull>,
    /// What is strung near them.
    at_ends: Vec<Hull>,
}

/// A distance and where it is.
#[derive(Clone, Copy)]
struct Near {
    distance: f64,
    at: Point,
}

/// The clearance between each strand and the next; none where both are too short to compare.
#[must_use]
pub fn clearances(design: &Design, chains: &[Chain], hung: &[Hung], presses: &[Press]) -> Vec<Clearance> {
    let strands = design.strands.iter().zip(chains).zip(hung);
    let outlined = strands.map(|((strand, chain), hung)| outlines(design, strand, chain, hung));
    let outlines: Entries<_, Strand> = outlined.collect();
    let pairs = outlines.indices().zip(outlines.indices().skip(1));
    pairs.filter_map(|(inner, outer)| compare([inner, outer], &outlines[inner], &outlines[outer], presses)).collect()
}

/// The clearance between two strands, of which chains and drapes are given, each as it hangs alone.
#[must_use]
pub fn clearance(design: &Design, between: [Index<Strand>; 2], chains: &[Chain], hung: &[Hung]) -> Option<Clearance> {
    let strands = between.iter().zip(chains).zip(hung);
    let mut outlines = strands.map(|((&at, chain), hung)| outlines(design, &design.strands[at], chain, hung));
    compare(between, &outlines.next()?, &outlines.next()?, &[])
}

fn compare(between: [Index<Strand>; 2], inner: &Outlines, outer: &Outlines, presses: &[Press]) -> Option<Clearance> {
    let nearest: Vec<(f64, Option<Near>)> = compared(&inner.amid, &outer.amid);
    let length: f64 = nearest.iter().map(|(length, _)| length).sum();
    let least = least(&nearest)?;
    let touches = |near: &Option<Near>| near.is_some_and(|near| near.distance <= TOUCHES);
    let touching = nearest.iter().filter(|(_, near)| touches(near)).fold(0.0, |sum, (length, _)| sum + length);
    let hardest = hardest(presses, between, ENDS);
    let at_ends = at_ends(inner, outer);
    Some(Clearance { between, least: least.distance, at: least.at, touching: touching / length, hardest, at_ends })
}

/// How near two strands come where either is near its ends, in mm.
fn at_ends(inner: &Outlines, outer: &Outlines) -> Option<f64> {
    let pairs = [(&inner.at_ends, &outer.at_ends), (&inner.at_ends, &outer.amid), (&inner.amid, &outer.at_ends)];
    let nearest = pairs.iter().filter_map(|(inner, outer)| least(&compared(inner, outer)));
    nearest.map(|near| near.distance).min_by(f64::total_cmp)
}

/// The nearest of all.
fn least(nearest: &[(f64, Option<Near>)]) -> Option<Near> {
    nearest.iter().filter_map(|(_, near)| *near).min_by(|a, b| a.distance.total_cmp(&b.distance))
}

/// Each inner outline's length and its nearest place to the outer strand; nothing where that is
/// sure to be neither touching nor the least.
fn compared(inner: &[Hull], outer: &[Hull]) -> Vec<(f64, Option<Near>)> {
    let mut least = f64::INFINITY;
    let nearest = |link: &Hull| {
        let near = nearest_of(link, outer, least.max(TOUCHES));
        least = near.map_or(least, |near| least.min(near.distance));
        (link.length, near)
    };
    inner.iter().map(nearest).collect()
}

/// The nearest of a strand's outlines, of those that may come within a distance. The circles round
/// two outlines tell how near they come at most.
fn nearest_of(link: &Hull, outer: &[Hull], within: f64) -> Option<Near> {
    let reach = |other: &Hull| link.reach + other.reach;
    let is_near = |other: &&Hull| {
        let (apart, most) = (link.centre - other.centre, within + reach(other));
        apart.dot(apart) <= most * most
    };
    let bound = |other: &Hull| link.centre.distance(other.centre) - reach(other);
    let mut bounds: Vec<_> = outer.iter().filter(is_near).map(|other| (bound(other), other)).collect();
    bounds.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut nearest: Option<Near> = None;
    for (bound, other) in bounds {
        if nearest.is_some_and(|near| near.distance < bound) {
            break;
        }
        let near = separation(link, other);
        nearest = Some(nearest.filter(|nearest| nearest.distance <= near.distance).unwrap_or(near));
    }
    nearest
}

/// The outlines of a strand's links.
fn outlines(design: &Design, strand: &Strand, chain: &Chain, hung: &Hung) -> Outlines {
    let (length, covered) = (strand.finished.value(), covered(design));
    let mut outlines = Outlines::default();
    for (at, (link, joints)) in chain.links.iter().zip(hung.joints.windows(2)).enumerate() {
        let depth = joints[0].station.min(length - joints[1].station);
        let of = if depth >= ENDS { &mut outlines.amid } else { &mut outlines.at_ends };
        if link.length > 0.0 && (depth >= ENDS || depth >= covered && chain.pieces[at].is_strung(strand)) {
            let along = (joints[1].at - joints[0].at) * (1.0 / link.length);
            let form = form(design, strand, chain, at);
            of.push(shape(joints[0].at + along * form.middle, along, link.length, &form.widths));
        }
    }
    outlines
}

/// What a link looks like from the side.
pub(super) struct Silhouette {
    /// How far its middle lies from its start.
    pub middle: f64,
    /// Half widths at places along it from its middle.
    pub widths: Vec<(f64, f64)>,
    /// Whether it is a ball, which the widths only come near.
    pub is_ball: bool,
    /// How far its link goes on before it, and beyond it.
    pub beyond: [f64; 2],
}

impl Silhouette {
    fn boxed(length: f64, width: f64) -> Self {
        let half = 0.5 * length;
        Self { middle: half, widths: vec![(-half, 0.5 * width), (half, 0.5 * width)], is_ball: false, beyond: [0.0; 2] }
    }

    fn bead(bead: &Bead, before: f64, beyond: [f64; 2]) -> Self {
        Self { middle: beyond[0] + before, widths: profile(bead), is_ball: bead.is_ball(), beyond }
    }

    /// How far it reaches to either side, in mm.
    pub fn reach(&self) -> f64 {
        self.widths.iter().map(|(_, width)| *width).fold(0.0, f64::max)
    }
}

/// The form of a chain's link.
pub(super) fn form(design: &Design, strand: &Strand, chain: &Chain, at: usize) -> Silhouette {
    let (cord, length) = (strand.cord_width(design).value(), chain.links[at].length);
    let Content::Bit(train, index) = chain.pieces[at] else { return Silhouette::boxed(length, cord) };
    let bit = &strand.trains[train].bits[index];
    match bit.what {
        What::Bead(_) if design.shared_bit(bit, strand).is_some() => Silhouette::boxed(length, cord),
        What::Bead(bead) => Silhouette::bead(&design.beads[bead], bit.before, chain.parted.beyond[at]),
        What::Knot => Silhouette::boxed(length, strand.knot_width(design).value()),
        What::Finding(finding) => {
            let across = design.findings[finding].across_or(cord);
            Silhouette::boxed(length, cord.max(across))
        }
        What::Gap | What::Dangle(_) => Silhouette::boxed(length, cord),
    }
}

/// A bead's half widths at places along its hole from its centre. The places crowd towards round
/// ends as the corners of a regular polygon do; one is where a bead is widest.
fn profile(bead: &Bead) -> Vec<(f64, f64)> {
    let half = 0.5 * bead.along.value();
    let round = half.max(0.5 * bead.across.value());
    let quarter = pieces(0.25 * PI, libm::acos((1.0 - FINE / round).max(0.0))).max(2);
    let share = |cut: usize| libm::sin(0.5 * PI * cut as f64 / quarter as f64);
    // A drop is a cone, which is straight, and half a ball as long as half the bead at the most.
    let ball = if bead.shape == Shape::Drop { half.min(0.5 * bead.across.value()) } else { half };
    let widest = half - ball;
    let first = (0..quarter).rev().map(|cut| -half * share(cut + 1)).filter(|_| widest == 0.0);
    let tip = (widest > 0.0).then_some(-half);
    let places = tip.into_iter().chain(first).chain((0..=quarter).map(|cut| widest + ball * share(cut)));
    places.map(|place| (place, bead.half_width(place))).collect()
}

/// An outline from half widths at places along it.
fn shape(centre: Point, along: Point, length: f64, profile: &[(f64, f64)]) -> Hull {
    let aside = along.left();
    let upper = profile.iter().rev().map(|&(x, width)| centre + along * x + aside * width);
    let lower = profile.iter().map(|&(x, width)| centre + along * x - aside * width);
    let corners: Vec<Point> = lower.chain(upper).collect();
    let reach = corners.iter().map(|corner| corner.distance(centre)).fold(0.0, f64::max);
    Hull { centre, reach, corners, length }
}

/// The distance of two convex outlines, negative by the least push that parts them.
fn separation(one: &Hull, other: &Hull) -> Near {
    let mut push = parted(one, other);
    if push <= 0.0 {
        push = push.max(parted(other, one));
    }
    if push <= 0.0 {
        return Near { distance: push, at: one.centre.between(other.centre, 0.5) };
    }
    let (near, far) = (nearest(one, other), nearest(other, one));
    if near.distance < far.distance { near } else { far }
}

/// The widest gap between two outlines across any side of the first, which runs anticlockwise; or
/// the first that parts them, as then only that matters.
fn parted(one: &Hull, other: &Hull) -> f64 {
    let mut widest = f64::NEG_INFINITY;
    for (from, to) in sides(&one.corners) {
        let side = to - from;
        let length = side.length();
        let outward = Point::new(side.y, -side.x) * (1.0 / length);
        let beyond = |corner: &Point| (corner.x - from.x) * outward.x + (corner.y - from.y) * outward.y;
        if length > 0.0 {
            widest = widest.max(other.corners.iter().map(beyond).fold(f64::INFINITY, f64::min));
        }
        if widest > 0.0 {
            break;
        }
    }
    widest
}

/// The nearest that any corner of the first comes to any side of the second. Squares of distances
/// are compared: this is the innermost loop of the whole drape.
fn nearest(one: &Hull, other: &Hull) -> Near {
    let (mut least, mut at) = (f64::INFINITY, one.centre);
    for (from, to) in sides(&other.corners) {
        let side = to - from;
        let square = side.dot(side);
        let per_square = if square > 0.0 { 1.0 / square } else { 0.0 };
        for &corner in &one.corners {
            let ahead = (corner - from).dot(side);
            let foot = from + side * (ahead * per_square).clamp(0.0, 1.0);
            let gap = corner - foot;
            let square = gap.dot(gap);
            if square < least {
                (least, at) = (square, corner.between(foot, 0.5));
            }
        }
    }
    Near { distance: least.sqrt(), at }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;

    const ALONG: Point = Point::new(1.0, 0.0);

    fn boxed(centre: Point, along: Point, length: f64, width: f64) -> Hull {
        shape(centre, along, length, &[(-0.5 * length, 0.5 * width), (0.5 * length, 0.5 * width)])
    }

    #[test]
    fn boxes_apart_are_as_far_as_their_nearest_corners() {
        let one = boxed(Point::ORIGIN, ALONG, 4.0, 2.0);
        let side = separation(&one, &boxed(Point::new(1.0, 5.0), ALONG, 4.0, 2.0));
        assert!((side.distance - 3.0).abs() < 1e-12 && (side.at.y - 2.5).abs() < 1e-12);
        let corner = separation(&one, &boxed(Point::new(7.0, 6.0), ALONG, 4.0, 2.0));
        assert!((corner.distance - 5.0).abs() < 1e-12);
    }

    #[test]
    fn boxes_that_overlap_are_parted_by_the_least_push() {
        let one = boxed(Point::ORIGIN, ALONG, 4.0, 2.0);
        let other = boxed(Point::new(1.0, 1.5), ALONG, 4.0, 2.0);
        assert!((separation(&one, &other).distance + 0.5).abs() < 1e-12);
        assert!((separation(&other, &one).distance + 0.5).abs() < 1e-12);
    }

    #[test]
    fn a_turned_box_touches_with_its_corner() {
        let other = boxed(Point::new(0.0, 1.0 + f64::sqrt(2.0)), Point::towards(0.25 * PI), 2.0, 2.0);
        assert!(separation(&boxed(Point::ORIGIN, ALONG, 4.0, 2.0), &other).distance.abs() < 1e-12);
    }

    fn bead(shape: Shape, across: f64, along: f64) -> Bead {
        let text = format!(
            "festoon: 1\ntitle: t\nkind: necklace\n\
             beads: {{ a: {{ name: a, shape: {shape}, size: {across} x {along} mm, hole: 1 mm, mass: 1 g, colour: '#000000' }} }}\n\
             cords: {{ c: {{ name: c, kind: wire, diameter: 0.4 mm, colour: '#000000' }} }}\n\
             strands: [{{ name: s, cord: c, ends: knot, beads: [a] }}]\n"
        );
        let (pattern, remarks) = crate::pattern::read(&crate::source::Source::new("t", text));
        let (design, more) = crate::design::resolve(
            &pattern.unwrap_or_else(|| panic!("{remarks:?}")),
            &crate::design::Choice::default(),
        );
        design.unwrap_or_else(|| panic!("{more:?}")).beads[nth(0)].clone()
    }

    #[test]
    fn profiles_follow_every_outline() {
        let sizes = [(2.0, 2.0), (10.0, 4.0), (6.0, 20.0), (24.0, 30.0), (40.0, 40.0)];
        for (shape, (across, along)) in Shape::ALL.iter().flat_map(|shape| sizes.map(|size| (*shape, size))) {
            if matches!(shape, Shape::Seed) {
                continue;
            }
            let bead = bead(shape, across, along);
            for pair in profile(&bead).windows(2) {
                let (from, to) = (Point::new(pair[0].0, pair[0].1), Point::new(pair[1].0, pair[1].1));
                let side = to - from;
                for share in (0..=20).map(|step| f64::from(step) / 20.0) {
                    let place = from.x + side.x * share;
                    let out = side.x * (bead.half_width(place) - from.y) - side.y * (place - from.x);
                    assert!(out.abs() / side.length() < 1.001 * FINE, "{shape} {across} x {along} at {place}");
                }
            }
        }
    }
}
