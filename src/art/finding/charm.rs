//! Charms: a flat shape below a loop of its own.

use std::f64::consts::{PI, TAU};

use super::{EDGE, FindingDrawing, SEAM};
use crate::design::Charm;
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{circle, ellipse, line, polygon, rounded_rect};
use crate::pattern::Outline;

/// Length of a charm's loop over that of the charm, and the least and the most of it in mm: by eye.
const LOOP: (f64, f64, f64) = (0.2, 1.6, 3.0);
/// Thickness of the loop's wire over its outside diameter: by eye.
const LOOP_WIRE: f64 = 0.24;
/// Radius of a five-pointed star's inner corners over that of its points: cos 72° / cos 36°.
const INNER: f64 = 0.381_966;

fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// A charm: its loop, then the shape.
pub fn charm(drawing: &FindingDrawing, charm: &Charm) -> Vec<Mark> {
    let (share, least, most) = LOOP;
    let (length, half) = (charm.length.value(), charm.breadth.value() / 2.0 - EDGE / 2.0);
    let outside = (length * share).clamp(least, most).min(length * 0.4);
    let thick = outside * LOOP_WIRE;
    let top = outside - thick;
    let (outline, rib) = plate(charm.outline, top, length - EDGE / 2.0, half);
    let mut marks = drawing.wire(&circle(at(outside / 2.0, 0.0), (outside - thick) / 2.0), thick);
    marks.push(drawing.solid(outline, drawing.plate([top, length], half), EDGE));
    marks.extend(rib.map(|rib| drawing.line(rib, SEAM)));
    marks
}

/// The outline of the plate from its top to its foot, and a rib on it.
fn plate(outline: Outline, top: f64, foot: f64, half: f64) -> (Vec<Segment>, Option<Vec<Segment>>) {
    let (long, middle) = (foot - top, f64::midpoint(top, foot));
    match outline {
        Outline::Disc => (ellipse(at(middle, 0.0), long / 2.0, half), None),
        Outline::Bar => (rounded_rect(at(top, -half), long, half * 2.0, half.min(long / 2.0) * 0.35), None),
        Outline::Star => (polygon(&star(top, foot, half)), None),
        Outline::Leaf => (leaf(top, foot, half), Some(line(at(top + long * 0.08, 0.0), at(foot - long * 0.1, 0.0)))),
        Outline::Heart => (heart(top, foot, half), None),
    }
}

/// Ten corners, of which one points to the loop.
fn star(top: f64, foot: f64, half: f64) -> Vec<Point> {
    let corner = |number: u32| {
        let radius = if number.is_multiple_of(2) { 1.0 } else { INNER };
        Point::towards(PI + f64::from(number) * TAU / 10.0) * radius
    };
    let corners: Vec<_> = (0..10).map(corner).collect();
    let span = |side: fn(&Point) -> f64| corners.iter().map(side).fold(0.0, f64::max);
    let (far, wide) = (span(|corner| corner.x), span(|corner| corner.y));
    let placed = |corner: &Point| at(top + (corner.x + 1.0) / (far + 1.0) * (foot - top), corner.y / wide * half);
    corners.iter().map(placed).collect()
}

/// Two curves that meet in points.
fn leaf(top: f64, foot: f64, half: f64) -> Vec<Segment> {
    // A curve whose two controls stand at a height reaches 3/4 of the way there.
    let (reach, along) = (half / 0.75, |share: f64| top + (foot - top) * share);
    vec![
        Segment::Move(at(top, 0.0)),
        Segment::Curve(at(along(0.22), -reach), at(along(0.62), -reach), at(foot, 0.0)),
        Segment::Curve(at(along(0.62), reach), at(along(0.22), reach), at(top, 0.0)),
        Segment::Close,
    ]
}

/// Two lobes beside the loop, and a point.
fn heart(top: f64, foot: f64, half: f64) -> Vec<Segment> {
    let along = |share: f64| top + (foot - top) * share;
    let notch = at(along(0.12), 0.0);
    let side = |way: f64| {
        let (lobe, flank) = (at(along(-0.18), way * half * 0.9), at(along(0.04), way * half * 1.28));
        (lobe, flank, at(along(0.4), way * half * 0.98), at(along(0.72), way * half * 0.5))
    };
    let [(lobe, flank, waist, hip), (other_lobe, other_flank, other_waist, other_hip)] = [side(-1.0), side(1.0)];
    vec![
        Segment::Move(notch),
        Segment::Curve(lobe, flank, waist),
        Segment::Curve(at(along(0.56), -half * 0.82), hip, at(foot, 0.0)),
        Segment::Curve(other_hip, at(along(0.56), half * 0.82), other_waist),
        Segment::Curve(other_flank, other_lobe, notch),
        Segment::Close,
    ]
}
