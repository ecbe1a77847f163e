//! Bars that hold strands apart and clasps in whose loops they end, centred on the strand side, lying across it.

use super::loops::Hoop;
use super::{EDGE, FINE_EDGE, FindingDrawing, SEAM, or};
use crate::design::{Bar, Bores};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{circle, ellipse, line, rounded_rect};

/// Where a bar's holes lie across the piece.
fn holes(bar: &Bar) -> Vec<f64> {
    Bores { count: bar.holes, apart: bar.spacing }.across()
}

fn half_breadth(bar: &Bar) -> f64 {
    let reach = holes(bar).last().copied().unwrap_or_default();
    reach + bar.spacing.value() * 0.4
}

/// A bar with holes, which the strands run through.
pub fn spacer(drawing: &FindingDrawing, bar: &Bar) -> Vec<Mark> {
    let length = bar.length.value();
    let half = half_breadth(bar);
    let body = rounded_rect(Point::new(EDGE / 2.0, -half), length - EDGE, half * 2.0, length * 0.45);
    let hole = |y: f64| ellipse(Point::new(length / 2.0, y), length * 0.42, length * 0.2);
    let seats = holes(bar).into_iter().flat_map(hole).collect();
    vec![drawing.solid(body, drawing.along(0.0, length), EDGE), drawing.solid(seats, drawing.flat(-0.5), EDGE / 2.0)]
}

/// A loop for each strand.
pub fn eyes(bar: &Bar) -> Vec<Hoop> {
    let length = bar.length.value();
    let (thick, radius) = (or(bar.wire, length * 0.11), length * 0.13);
    let eye = |y| Hoop { centre: Point::new(radius + thick / 2.0, y), radius, thick };
    holes(bar).into_iter().map(eye).collect()
}

/// Their marks' outline, the thickness of their wire and where they end.
fn comb(bar: &Bar) -> (Vec<Segment>, f64, f64) {
    let eyes = eyes(bar);
    let (thick, end) = eyes.first().map_or((0.0, 0.0), |eye| (eye.thick, eye.centre.x + eye.radius));
    (eyes.iter().flat_map(|eye| circle(eye.centre, eye.radius)).collect(), thick, end)
}

/// Half of a box clasp: a flat plate that meets the other half's, with a sunk field.
pub fn box_half(drawing: &FindingDrawing, bar: &Bar) -> Vec<Mark> {
    let (length, half) = (bar.length.value(), half_breadth(bar));
    let (loops, thick, from) = comb(bar);
    let depth = length - from - EDGE / 2.0;
    let plate = rounded_rect(Point::new(from, -half), depth, half * 2.0, depth * 0.15);
    let rim = depth * 0.16;
    let field = rounded_rect(Point::new(from + rim, rim - half), depth - 2.0 * rim, 2.0 * (half - rim), depth * 0.1);
    let mut marks = drawing.wire(&loops, thick);
    marks.push(drawing.solid(plate, drawing.along(from, length), EDGE));
    marks.push(drawing.solid(field, drawing.flat(0.15), FINE_EDGE));
    marks
}

/// Half of a slide clasp: a tube as thick as it is, of which as much as does not lengthen the piece lies in the other's, with a
/// stop at either end.
pub fn slide_half(drawing: &FindingDrawing, bar: &Bar) -> Vec<Mark> {
    let half = half_breadth(bar);
    let (loops, thick, from) = comb(bar);
    let depth = or(bar.outside, bar.length.value() - from) - EDGE / 2.0;
    let to = from + depth;
    let tube = rounded_rect(Point::new(from, -half), depth, half * 2.0, depth * 0.12);
    let ring = |y: f64| drawing.line(line(Point::new(from, y), Point::new(to, y)), SEAM);
    let mut marks = drawing.wire(&loops, thick);
    marks.push(drawing.solid(tube, drawing.along(from, to), EDGE));
    marks.extend([half * 0.9, -half * 0.9].map(ring));
    marks
}

/// A bar with a loop for each strand on one side and one loop outward.
pub fn end(drawing: &FindingDrawing, bar: &Bar) -> Vec<Mark> {
    let length = bar.length.value();
    let half = half_breadth(bar);
    let (mut loops, thick, from) = comb(bar);
    let outer = length * 0.17;
    loops.extend(circle(Point::new(length - thick / 2.0 - outer, 0.0), outer));
    let to = length - thick / 2.0 - 2.0 * outer;
    let body = rounded_rect(Point::new(from, -half), (to - from).max(0.5), half * 2.0, (to - from) * 0.5);
    let mut marks = drawing.wire(&loops, thick);
    marks.push(drawing.solid(body, drawing.along(from, to), EDGE));
    marks
}
