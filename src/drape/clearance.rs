//! How close neighbouring strands come, outline to outline.
//!
//! Every link outside the first and last `ENDS` mm of its strand is taken as a convex outline in
//! the drape's plane: a bead by its profile at `CUTS` + 1 places on either side, all else as a
//! box as wide as its cord or finding. Between outlines that are apart the distance is that of the
//! nearest corner and side; outlines that overlap count by the least push that parts them, as a
//! negative distance (separating axis theorem).
//!
//! Error: the cuts crowd towards a bead's ends, so that a round outline of radius r is a regular
//! polygon that lies at most r (1 - cos(pi / 2 CUTS)) inside it: two such are less than 0.05 mm
//! too far apart up to r = 20 mm. Branches are left out: they hang in front of the strand below.

use std::f64::consts::PI;

use super::chain::{Chain, Piece};
use super::{Clearance, Hung};
use crate::design::{Design, Strand, What};
use crate::geometry::Point;

/// Arc at each end, in mm, that is not compared: strands that share an end meet there.
const ENDS: f64 = 25.0;
/// Places, less one, along the hole at which a bead's profile is read.
const CUTS: u32 = 32;
/// A knot's width as a multiple of its cord's. An assumption.
const KNOT: f64 = 3.0;

/// A link's convex outline.
struct Outline {
    centre: Point,
    /// No corner is farther from the centre.
    reach: f64,
    corners: Vec<Point>,
    length: f64,
}

/// A distance and where it is.
#[derive(Clone, Copy)]
struct Near {
    distance: f64,
    at: Point,
}

/// The clearance between each strand and the next; none where both are too short to compare.
#[must_use]
pub fn clearances(design: &Design, chains: &[Chain], hung: &[Hung]) -> Vec<Clearance> {
    let strands = design.strands.iter().zip(chains).zip(hung);
    let outlines: Vec<_> = strands.map(|((strand, chain), hung)| outlines(design, strand, chain, hung)).collect();
    let pairs = outlines.windows(2).enumerate();
    pairs.filter_map(|(inner, pair)| compare([inner, inner + 1], &pair[0], &pair[1])).collect()
}

fn compare(between: [usize; 2], inner: &[Outline], outer: &[Outline]) -> Option<Clearance> {
    let nearest: Vec<(f64, Option<Near>)> = compared(inner, outer);
    let length: f64 = nearest.iter().map(|(length, _)| length).sum();
    let least = nearest.iter().filter_map(|(_, near)| *near).min_by(|a, b| a.distance.total_cmp(&b.distance))?;
    let touches = |near: &Option<Near>| near.is_some_and(|near| near.distance <= 0.0);
    let touching: f64 = nearest.iter().filter(|(_, near)| touches(near)).map(|(length, _)| length).sum();
    Some(Clearance { between, least: least.distance, at: least.at, touching: touching / length })
}

/// Each inner outline's length and its nearest place to the outer strand; nothing where that is
/// sure to be neither touching nor the least.
fn compared(inner: &[Outline], outer: &[Outline]) -> Vec<(f64, Option<Near>)> {
    let mut least = f64::INFINITY;
    let nearest = |link: &Outline| {
        let mut near: Option<Near> = None;
        for other in outer {
            let bound = link.centre.distance(other.centre) - link.reach - other.reach;
            if bound <= near.map_or(least, |near| near.distance).max(0.0) {
                let found = separation(link, other);
                near = Some(near.filter(|near| near.distance <= found.distance).unwrap_or(found));
            }
        }
        least = near.map_or(least, |near| least.min(near.distance));
        (link.length, near)
    };
    inner.iter().map(nearest).collect()
}

/// The outlines of a strand's links away from its ends.
fn outlines(design: &Design, strand: &Strand, chain: &Chain, hung: &Hung) -> Vec<Outline> {
    let length = strand.finished.value();
    let joints = hung.joints.windows(2);
    let links = chain.links.iter().zip(&chain.pieces).zip(joints);
    links
        .filter(|((link, _), joints)| {
            link.length > 0.0 && joints[0].station >= ENDS && joints[1].station <= length - ENDS
        })
        .map(|((link, piece), joints)| {
            let along = (joints[1].at - joints[0].at) * (1.0 / link.length);
            let start = joints[0].at;
            outline(design, strand, *piece, start, along, link.length)
        })
        .collect()
}

fn outline(design: &Design, strand: &Strand, piece: Piece, start: Point, along: Point, length: f64) -> Outline {
    let cord = design.cords[strand.cord].diameter.value();
    let middle = start + along * (0.5 * length);
    let boxed = |width: f64| shape(middle, along, length, &[(-0.5 * length, 0.5 * width), (0.5 * length, 0.5 * width)]);
    let Piece::Bit(train, index) = piece else { return boxed(cord) };
    let bit = &strand.trains[train].bits[index];
    match bit.what {
        What::Bead(bead) => {
            let bead = &design.beads[bead];
            let half = 0.5 * bead.along.value();
            let cut = |cut| -half * libm::cos(PI * f64::from(cut) / f64::from(CUTS));
            let profile: Vec<_> = (0..=CUTS).map(cut).map(|along| (along, bead.half_width(along))).collect();
            shape(start + along * bit.before, along, length, &profile)
        }
        What::Knot => boxed(KNOT * cord),
        What::Finding(finding) => boxed(cord.max(design.findings[finding].outside.value())),
        What::Gap | What::Dangle(_) => boxed(cord),
    }
}

/// An outline from half widths at places along it.
fn shape(centre: Point, along: Point, length: f64, profile: &[(f64, f64)]) -> Outline {
    let aside = Point::new(-along.y, along.x);
    let upper = profile.iter().rev().map(|&(x, width)| centre + along * x + aside * width);
    let lower = profile.iter().map(|&(x, width)| centre + along * x - aside * width);
    let corners: Vec<Point> = lower.chain(upper).collect();
    let reach = corners.iter().map(|corner| corner.distance(centre)).fold(0.0, f64::max);
    Outline { centre, reach, corners, length }
}

/// The distance of two convex outlines, negative by the least push that parts them.
fn separation(one: &Outline, other: &Outline) -> Near {
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
fn parted(one: &Outline, other: &Outline) -> f64 {
    let mut widest = f64::NEG_INFINITY;
    for (from, to) in sides(one) {
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
fn nearest(one: &Outline, other: &Outline) -> Near {
    let (mut least, mut at) = (f64::INFINITY, one.centre);
    for (from, to) in sides(other) {
        let side = to - from;
        let square = side.x * side.x + side.y * side.y;
        let per_square = if square > 0.0 { 1.0 / square } else { 0.0 };
        for &corner in &one.corners {
            let ahead = (corner.x - from.x) * side.x + (corner.y - from.y) * side.y;
            let foot = from + side * (ahead * per_square).clamp(0.0, 1.0);
            let gap = corner - foot;
            let square = gap.x * gap.x + gap.y * gap.y;
            if square < least {
                (least, at) = (square, corner.between(foot, 0.5));
            }
        }
    }
    Near { distance: least.sqrt(), at }
}

fn sides(outline: &Outline) -> impl Iterator<Item = (Point, Point)> {
    let corners = &outline.corners;
    corners.iter().copied().zip(corners.iter().copied().cycle().skip(1))
}
