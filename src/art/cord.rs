//! Bare cord and knots.

use std::f64::consts::FRAC_PI_2;

use super::chain::places;
use super::light::{Ink, toned};
use super::wire::wire;
use crate::design::Cord;
use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark, Rgb, Segment, Stroke};
use crate::paint::outline::{curve, ellipse, line, mapped, polyline, rounded_rect};
use crate::pattern::CordKind;

/// A cord of a colour along a path, so many mm thick.
#[must_use]
pub fn marks(cord: &Cord, own: Rgb, path: &[Point], thick: f64, ink: Ink) -> Vec<Mark> {
    let (outline, colour) = (polyline(path), ink.tone(own));
    match cord.kind {
        CordKind::Chain => chain(path, thick, cord, |outline, wire| self::wire(outline, wire, own, ink)),
        CordKind::Wire | CordKind::MemoryWire => wire(&outline, thick, own, ink),
        _ if ink == Ink::Outline => wire(&outline, thick, own, ink),
        CordKind::Thread | CordKind::Silk => plied(&outline, thick, colour),
        CordKind::Leather => layered(&outline, thick, [(colour, -0.5, 1.0), (colour, 0.0, 0.75), (colour, 0.14, 0.35)]),
        CordKind::Elastic => layered(&outline, thick, [(colour, -0.5, 1.0), (colour, 0.3, 0.75), (colour, 0.7, 0.3)]),
    }
}

/// A path beside another: so many mm to its right as it goes down the page's x and y.
pub fn beside(path: &[Point], aside: f64) -> Vec<Point> {
    if aside == 0.0 {
        return path.to_vec();
    }
    let moved = |at: usize| {
        let (before, after) = (path[at.saturating_sub(1)], path[(at + 1).min(path.len() - 1)]);
        path[at] + Point::towards((after - before).angle() + FRAC_PI_2) * aside
    };
    // Every index is that of a point of the path.
    (0..path.len()).map(moved).collect()
}

fn stroked(outline: &[Segment], colour: Rgb, width: f64, dashes: Vec<f64>) -> Mark {
    let round = !dashes.is_empty();
    let stroke = Stroke { dashes, round, ..Stroke::new(colour, width) };
    Mark::Shape { outline: outline.to_vec(), fill: None, stroke: Some(stroke) }
}

/// Lines on top of each other, each with its tone and its share of the thickness.
fn layered<const N: usize>(outline: &[Segment], thick: f64, layers: [(Rgb, f64, f64); N]) -> Vec<Mark> {
    let layer = |(colour, tone, share)| stroked(outline, toned(colour, tone), thick * share, Vec::new());
    layers.into_iter().map(layer).collect()
}

/// No shine along it but the twist across it.
fn plied(outline: &[Segment], thick: f64, colour: Rgb) -> Vec<Mark> {
    let mut marks = layered(outline, thick, [(colour, -0.5, 1.0), (colour, 0.0, 0.7)]);
    marks.push(stroked(outline, toned(colour, 0.3), thick * 0.6, vec![thick * 0.4, thick * 1.1]));
    marks
}

/// Wire of a chain's links, as a share of the chain's diameter.
const WIRE: f64 = 0.27;
/// By how much a link lengthens a chain of which the pattern does not say it, as a share of its diameter.
const LINK: f64 = 1.2;

/// Chain: links on their face and on edge by turns, each by its inside on from the last.
fn chain(path: &[Point], thick: f64, cord: &Cord, drawn: impl Fn(&[Segment], f64) -> Vec<Mark>) -> Vec<Mark> {
    let inside = cord.link.map_or(thick * LINK, |link| link.value() * thick / cord.diameter.value());
    let wire = WIRE * thick;
    let ring =
        |along: f64, across: f64| rounded_rect(Point::new(-wire / 2.0, -across / 2.0), along, across, across / 2.0);
    let face = ring(inside + wire, (thick - wire).min(inside + wire));
    let edge = line(Point::new(-wire / 2.0, 0.0), Point::new(inside + wire / 2.0, 0.0));
    let (mut faces, mut edges) = (Vec::new(), Vec::new());
    for (number, (at, angle)) in places(path, inside).into_iter().enumerate() {
        let (along, aside) = (Point::towards(angle), Point::towards(angle).left());
        let put = |outline| mapped(outline, |point: Point| at + along * point.x + aside * point.y);
        if number % 2 == 0 { faces.extend(put(&face)) } else { edges.extend(put(&edge)) }
    }
    [drawn(&edges, wire), drawn(&faces, wire)].concat()
}

/// A knot about its middle, so many mm along the cord and across it.
#[must_use]
pub fn knot(colour: Rgb, [length, across]: [f64; 2], ink: Ink) -> Vec<Mark> {
    let (half, wide, edge) = (length / 2.0, across / 2.0, length.min(across) * 0.08);
    let base = ink.tone(colour);
    let dark = if ink == Ink::Outline { Rgb::BLACK } else { toned(base, -0.5) };
    let ball = ellipse(Point::ORIGIN, half - edge / 2.0, wide - edge / 2.0);
    let turn = |x: f64| {
        let at = |x: f64, y: f64| Point::new(x * half, y * wide);
        curve(&[at(x - 0.3, -0.78), at(x + 0.05, -0.3), at(x + 0.05, 0.3), at(x + 0.3, 0.78)])
    };
    let stroke = Some(Stroke { round: true, ..Stroke::new(dark, edge) });
    let turns = [turn(-0.3), turn(0.25)].concat();
    vec![
        Mark::Shape { outline: ball, fill: Some(Fill::Flat(base, 1.0)), stroke: stroke.clone() },
        Mark::Shape { outline: turns, fill: None, stroke },
    ]
}
