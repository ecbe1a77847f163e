//! What hangs: a clasp in an opened ring, a link in a pin's loop, a charm on a chain.

use std::f64::consts::{FRAC_PI_2, PI};

use super::own::{Props, clipped};
use super::pin::{below_loop, foot, lying, on_foot};
use crate::art::pen::{arrow, at, metal, wire, wire_over};
use crate::design::{Bead, Finding, Index, What};
use crate::geometry::{Extent, Point};
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{arc, curve, ellipse, polyline, rounded_rect};

/// A link's half length and half breadth where it lies flat, to its wire's middle.
const LINK: (f64, f64) = (2.5, 1.7);
/// From one link that lies flat to the next, with one on edge between.
const PITCH: f64 = 6.6;

/// A ring opened like a door, what hangs in it by its eye, or by its outer end what is nearer the strands; of a chain its end.
pub fn clasp(own: Props<'_>) -> Vec<Mark> {
    let ring = lying(at(6.4, 8.6), 5.6, 0.1, 1.7);
    let mut marks = wire(&polyline(&ring));
    marks.extend(in_ring(at(10.8, 8.4), own));
    marks.extend(wire_over(&polyline(&ring[48..54])));
    marks.extend(arrow(&[at(4.8, 14.4), at(4.8, 17.6)]));
    marks.extend(arrow(&[at(8.0, 9.4), at(8.0, 6.4)]));
    vec![clipped(marks)]
}

/// What hangs in a ring, from its wire to the right.
fn in_ring(from: Point, own: Props<'_>) -> Vec<Mark> {
    const ROOM: [f64; 2] = [13.0, 10.0];
    let design = own.stencils.design();
    let is_hung = |at: &&Index<Finding>| !design.findings[**at].is_open_ring();
    let is_first = own.cast.findings.first().filter(is_hung).is_some();
    match own.cast.findings.iter().find(is_hung).filter(|at| design.findings[**at].chain().is_none()) {
        Some(hung) if is_first => vec![own.finding(*hung, from, 0.0, ROOM).0],
        Some(hung) => {
            let (along, scale) = (design.findings[*hung].along().value(), own.finding(*hung, from, 0.0, ROOM).1);
            vec![own.stencils.finding(*hung, from + at(along * scale, 0.0), PI, scale)]
        }
        None => links(from + at(LINK.0 - 0.5, 0.0)),
    }
}

/// The end of a chain, from the middle of its last link to the right.
fn links(end: Point) -> Vec<Mark> {
    let mut marks: Vec<_> = [0.0, 1.0].iter().flat_map(|link| wire_over(&flat(end.x + link * PITCH, end.y))).collect();
    marks.extend([0.5, 1.5].map(|link| metal(on_edge(end.x + link * PITCH, end.y))));
    marks
}

/// The end link of a chain in the loop of a pin, which is rolled shut.
pub fn in_loop(own: Props<'_>) -> Vec<Mark> {
    let (centre, radius) = (at(6.4, 6.4), 2.7);
    let hoop = |from: f64, to: f64| arc(centre, (radius, radius), from, to);
    let stem = polyline(&[centre + at(0.0, 4.2), centre + at(0.0, radius)]);
    let mut marks = wire(&[stem, hoop(FRAC_PI_2, -1.2 * PI).split_off(1)].concat());
    marks.push(below_loop(centre + at(0.0, 4.0), own));
    let first = centre.x + radius + LINK.0 - 1.1;
    match own.cast.findings.first().filter(|at| own.stencils.design().findings[**at].chain().is_none()) {
        Some(hung) => marks.push(own.finding(*hung, centre + at(radius - 1.2, 0.0), 0.0, [15.0, 10.0]).0),
        None => marks.extend(links(at(first, centre.y))),
    }
    marks.extend(wire_over(&hoop(0.06 * PI, 0.3 * PI)));
    marks.extend(arrow(&[at(1.2, 2.8), at(0.8, 6.4), at(2.2, 9.4)]));
    vec![clipped(marks)]
}

/// A ring in a link of a chain, and what hangs in the ring.
pub fn charm(own: Props<'_>) -> Vec<Mark> {
    let middle = 12.0;
    let ring = at(middle, 7.2);
    let round = |from: f64, to: f64| arc(ring, (2.5, 2.5), from, to);
    let mut marks = chain(middle, 3.2);
    let hung = held(own, ring + at(0.0, 2.5));
    marks.extend(hung.clone());
    marks.extend(wire_over(&round(0.12 * PI, 1.94 * PI)));
    marks.extend(wire_over(&arc(at(middle, 3.2), LINK, 0.5 * PI, 0.72 * PI)));
    // It lies over the ring on one side of where it goes round it.
    let over = ring + at(0.0, 1.2);
    let within = Extent { low: over, high: over + at(4.0, 3.0) };
    marks.extend(hung.map(|hung| Mark::Clipped { within, marks: vec![hung] }));
    marks.extend(arrow(&[at(18.6, 11.4), at(17.4, 10.0), at(15.6, 8.6)]));
    vec![clipped(marks)]
}

/// The uppermost of what hangs in a ring, about the lowest place of its wire.
fn held(own: Props<'_>, wire: Point) -> Option<Mark> {
    let bit = own.bits(0).last()?;
    match bit.what {
        What::Finding(at) => Some(own.finding(at, wire - Point::new(0.0, 0.9), FRAC_PI_2, [9.0, 12.0]).0),
        What::Bead(bead) => Some(drop(own, bead, wire, [8.2, 9.0])),
        What::Knot | What::Gap | What::Dangle(_) => None,
    }
}

/// A bead that hangs with its hole at a place.
fn drop(own: Props<'_>, bead: Index<Bead>, hole: Point, room: [f64; 2]) -> Mark {
    let sizes = &own.stencils.design().beads[bead];
    let above = (sizes.above_hole() + *sizes.hole * 0.5).value();
    let scale = own.common(&[bead], room);
    own.stencils.bead(bead, hole + at(0.0, (0.5 * sizes.along.value() - above) * scale), FRAC_PI_2, scale)
}

/// A pin with beads, its loop in a link of a chain, about to be rolled shut.
pub fn dangle(own: Props<'_>) -> Vec<Mark> {
    let (middle, level) = (12.0, 3.2);
    let (centre, radius) = (at(middle, 6.8), 2.3);
    let hoop = |from: f64, to: f64| arc(centre, (radius, radius), from, to);
    let strung = on_foot(own, [7.0, 6.0]);
    let low = centre.y + radius + 0.4 + strung.length();
    let mut marks = chain(middle, level);
    marks.extend(wire(&polyline(&[at(middle, low), centre + at(0.0, radius)])));
    marks.extend(wire_over(&hoop(0.5 * PI, 2.2 * PI)));
    marks.extend(wire_over(&arc(at(middle, level), LINK, 0.5 * PI, 0.72 * PI)));
    marks.extend(strung.from(at(middle, low), -FRAC_PI_2));
    marks.extend(foot(at(middle, low), own));
    marks.extend(arrow(&[at(18.2, 6.6), at(17.2, 8.8), at(14.8, 9.8)]));
    vec![clipped(marks)]
}

/// A bail whose prongs go into the hole of a bead from both sides.
pub fn bail(own: Props<'_>) -> Vec<Mark> {
    let hole = at(12.0, 9.0);
    let prong = |side: f64| [(1.0, 0.0), (3.4, 0.0), (3.6, -1.6), (2.0, -5.4)].map(|(x, y)| hole + at(side * x, y));
    let way: Vec<_> =
        prong(-1.0).into_iter().chain([hole - at(0.0, 7.8)]).chain(prong(1.0).into_iter().rev()).collect();
    let hung = own.bits(0).last().and_then(|bit| bit.what.bead());
    let mut marks: Vec<_> = hung.map(|bead| drop(own, bead, hole, [10.4, 6.0])).into_iter().collect();
    marks.extend(wire_over(&curve(&way)));
    marks.extend(arrow(&[at(1.6, 9.0), at(4.4, 9.0), at(7.2, 9.0)]));
    marks.extend(arrow(&[at(22.4, 9.0), at(19.6, 9.0), at(16.8, 9.0)]));
    vec![clipped(marks)]
}

/// Three links that lie flat, about a middle, and those on edge between them.
fn chain(middle: f64, level: f64) -> Vec<Mark> {
    let mut marks: Vec<Mark> =
        [-1.0, 0.0, 1.0].iter().flat_map(|link| wire(&flat(middle + link * PITCH, level))).collect();
    marks.extend([-1.5, -0.5, 0.5, 1.5].map(|link| metal(on_edge(middle + link * PITCH, level))));
    marks
}

/// A link that lies flat.
fn flat(x: f64, y: f64) -> Vec<Segment> {
    ellipse(at(x, y), LINK.0, LINK.1)
}

/// A link seen on its edge.
fn on_edge(x: f64, y: f64) -> Vec<Segment> {
    rounded_rect(at(x - 1.7, y - 0.3), 3.4, 0.6, 0.3)
}
