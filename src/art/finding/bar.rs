//! Bars that hold strands apart, centred on the strand side, lying across it.

use super::{Drawing, or};
use crate::design::Bar;
use crate::geometry::Point;
use crate::paint::mark::Mark;
use crate::paint::outline::{circle, ellipse, rounded_rect};

/// Where a bar's holes lie across the piece.
fn holes(bar: &Bar) -> Vec<f64> {
    let middle = f64::from(bar.holes - 1) / 2.0;
    (0..bar.holes).map(|hole| (f64::from(hole) - middle) * bar.spacing.value()).collect()
}

fn half_breadth(bar: &Bar) -> f64 {
    let reach = holes(bar).last().copied().unwrap_or_default();
    reach + bar.spacing.value() * 0.4
}

/// A bar with holes, which the strands run through.
pub fn spacer(drawing: &Drawing, bar: &Bar) -> Vec<Mark> {
    let length = bar.length.value();
    let half = half_breadth(bar);
    let body = rounded_rect(Point::new(0.05, -half), length - 0.1, half * 2.0, length * 0.45);
    let hole = |y: f64| ellipse(Point::new(length / 2.0, y), length * 0.42, length * 0.2);
    let seats = holes(bar).into_iter().flat_map(hole).collect();
    vec![drawing.solid(body, drawing.along(0.0, length), 0.1), drawing.solid(seats, drawing.flat(-0.5), 0.05)]
}

/// A bar with a loop for each strand on one side and one loop outward.
pub fn end(drawing: &Drawing, bar: &Bar) -> Vec<Mark> {
    let length = bar.length.value();
    let half = half_breadth(bar);
    let thick = or(bar.wire, length * 0.11);
    let eye = length * 0.13;
    let ring = |x: f64, y: f64, r: f64| circle(Point::new(x, y), r);
    let inner = eye + thick / 2.0;
    let mut loops: Vec<_> = holes(bar).into_iter().flat_map(|y| ring(inner, y, eye)).collect();
    let outer = length * 0.17;
    loops.extend(ring(length - thick / 2.0 - outer, 0.0, outer));
    let (from, to) = (inner + eye, length - thick / 2.0 - 2.0 * outer);
    let body = rounded_rect(Point::new(from, -half), (to - from).max(0.5), half * 2.0, (to - from) * 0.5);
    let mut marks = drawing.wire(&loops, thick);
    marks.push(drawing.solid(body, drawing.along(from, to), 0.1));
    marks
}
