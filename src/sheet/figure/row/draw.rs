//! The marks of a line: cord, ends, beads, findings, knots and branches.

use std::f64::consts::PI;

use crate::art::Stencils;
use crate::design::{Dangle, Design, End, What};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};
use crate::pattern::CordKind;
use crate::sheet::figure::ends;
use crate::sheet::figure::strands::{branch, strung_finding};
use crate::trade::usual::KNOT_WIDTH;

use super::line::{Line, Placed};
use super::size::{self, TAIL};
use super::span::Thing;

/// How far the cord runs on beyond a line that does not end with the strand.
const STUB: f64 = 3.5;
/// Half of the room between the two strokes of a cut, beyond half of the cord.
const CUT: f64 = 0.9;
/// Least size of a knot that ends a cord, so that it is seen.
const LEAST_KNOT: f64 = 0.8;

/// Half of the length in which cut cord is not drawn; its round ends stand out beyond its line.
fn half_cut(line: &Line<'_, '_>) -> f64 {
    CUT + line.strand.cord_width(line.design).value() / 2.0
}

/// The line's marks with the cord at a height, beads below what covers them.
pub fn row(line: &Line<'_, '_>, placed: &[Placed<'_, '_>], cord: f64, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let mut marks = self::cord(line, placed, cord, stencils);
    let (beads, others): (Vec<&Placed<'_, '_>>, Vec<&Placed<'_, '_>>) =
        placed.iter().partition(|one| one.span.bead().is_some());
    for one in beads.into_iter().chain(others) {
        match one.span.thing {
            Thing::End(side) => marks.extend(end(line, one, side, cord, stencils)),
            Thing::Bit(_) => marks.extend(bit(line, one, cord, stencils)),
            Thing::Bare { .. } if one.span.is_broken() => {
                marks.push(cut(Point::new(one.centre(), cord), half_cut(line)))
            }
            Thing::Bare { .. } => {}
        }
    }
    marks
}

/// The cord, in pieces between its cuts.
fn cord(line: &Line<'_, '_>, placed: &[Placed<'_, '_>], y: f64, stencils: &Stencils<'_>) -> Vec<Mark> {
    let bare = |side: usize| line.strand.ends[side].findings.is_empty();
    let from = placed.first().map_or(0.0, |one| match one.span.thing {
        Thing::End(side) => {
            if bare(side) {
                one.x
            } else {
                one.end()
            }
        }
        Thing::Bit(_) | Thing::Bare { .. } => one.x - STUB,
    });
    let to = placed.last().map_or(0.0, |one| match one.span.thing {
        Thing::End(side) => {
            if bare(side) {
                one.end()
            } else {
                one.x
            }
        }
        Thing::Bit(_) | Thing::Bare { .. } => one.end() + STUB,
    });
    let half = half_cut(line);
    let is_cut = |one: &&Placed<'_, '_>| one.span.is_broken() && matches!(one.span.thing, Thing::Bare { .. });
    let cuts = placed.iter().filter(is_cut).flat_map(|one| [one.centre() - half, one.centre() + half]);
    let edges: Vec<f64> = std::iter::once(from).chain(cuts).chain([to]).collect();
    let piece =
        |pair: &[f64]| stencils.strand_cord(line.strand, &[Point::new(pair[0], y), Point::new(pair[1], y)], 1.0);
    edges.chunks_exact(2).map(piece).collect()
}

/// Two strokes across cord that is drawn shorter than it is.
fn cut(at: Point, half: f64) -> Mark {
    let tall = half + 0.9;
    let stroke = |x: f64| outline::line(at + Point::new(x - tall / 3.0, tall), at + Point::new(x + tall / 3.0, -tall));
    let outline = [stroke(-CUT), stroke(CUT)].concat();
    Mark::Shape { outline, fill: None, stroke: Some(Stroke::new(style::INK, 0.25)) }
}

fn bit(line: &Line<'_, '_>, one: &Placed<'_, '_>, y: f64, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let Thing::Bit(bit) = one.span.thing else { return Vec::new() };
    let (at, scale) = (Point::new(one.centre(), y), one.span.scale);
    match &bit.what {
        What::Bead(bead) => vec![stencils.bead(*bead, at, 0.0, scale)],
        What::Knot => vec![stencils.knot(line.strand.cord, line.strand.legs, at, 0.0, scale, bit.length())],
        What::Finding(index) => {
            let below = size::below(bit, line.strand, line.design) * scale;
            vec![strung_finding(*index, bit, at + Point::new(0.0, below), 0.0, scale, stencils)]
        }
        What::Dangle(dangle) => hung(dangle, one, at, line.design, stencils),
        What::Gap => Vec::new(),
    }
}

/// A branch, with a thin line down to it where it is drawn below the beads.
fn hung(dangle: &Dangle, one: &Placed<'_, '_>, at: Point, design: &Design, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let top = at + Point::new(0.0, one.span.hang);
    let stroke = Some(Stroke::new(style::QUIET, 0.2));
    let line = Mark::Shape { outline: outline::line(at, top), fill: None, stroke };
    let branch = branch(dangle, top, design, one.span.scale, stencils);
    (one.span.hang > 0.0).then_some(line).into_iter().chain(branch).collect()
}

/// An end with its loop and findings, or its knot and tail.
fn end(line: &Line<'_, '_>, one: &Placed<'_, '_>, side: usize, y: f64, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let end = &line.strand.ends[side];
    // Distances from the loop inward, and the way outward.
    let (outer, inward) = if side == 0 { (one.x, 1.0) } else { (one.end(), -1.0) };
    let on = |distance: f64| Point::new(outer + inward * distance * one.span.scale, y);
    if end.findings.is_empty() && end.bight.value() == 0.0 {
        return knot(line, on(TAIL), inward, stencils).into_iter().collect();
    }
    let mut marks: Vec<_> =
        bight(end, &on).map(|path| stencils.cord(line.strand.cord, &path, 1.0)).into_iter().collect();
    let outward = if side == 0 { PI } else { 0.0 };
    for closed in ends::closed(end, line.design) {
        let angle = if closed.outward { outward } else { outward + PI };
        marks.push(stencils.finding(closed.finding, on(closed.depth), angle, one.span.scale));
    }
    marks
}

/// The line of the loop beyond a crimp.
fn bight(end: &End, on: &dyn Fn(f64) -> Point) -> Option<Vec<Point>> {
    let half = end.bight.value() / 2.0;
    let (centre, across) = (on(half), (on(half) - on(0.0)).length());
    let outline = outline::ellipse(centre, across, across * 0.6);
    (half > 0.0).then(|| outline::flattened(&outline))
}

/// The knot that ends a cord, at the foot of its tail; chain ends with its last link.
fn knot(line: &Line<'_, '_>, root: Point, inward: f64, stencils: &mut Stencils<'_>) -> Option<Mark> {
    let cord = &line.design.cords[line.strand.cord];
    let size = (line.strand.cord_width(line.design) * KNOT_WIDTH).value().clamp(LEAST_KNOT, TAIL);
    let at = root - Point::new(inward * size / 2.0, 0.0);
    (cord.kind != CordKind::Chain).then(|| stencils.knot(line.strand.cord, line.strand.legs, at, 0.0, 1.0, size))
}
