//! Tassels: threads that fall from a bound head below a loop.

use super::{EDGE, FINE_EDGE, FindingDrawing};
use crate::design::Tassel;
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{circle, ellipse, line, rounded_rect};

/// Threads that are drawn, fewer than hang.
const DRAWN: u32 = 9;
/// How much of its loop is seen above the head, over half the loop's thickness.
const LOOP_SHOWN: f64 = 1.6;

fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// A tassel: its loop, head, binding and threads.
pub fn tassel(drawing: &FindingDrawing, tassel: &Tassel) -> Vec<Mark> {
    let (length, half) = (tassel.length.value(), tassel.breadth.value() / 2.0 - EDGE / 2.0);
    let (head, hanger) = (tassel.head().value(), tassel.hanger().value());
    let ring = hanger / LOOP_SHOWN;
    let (centre, neck) = (at(hanger + head, 0.0), hanger + tassel.neck().value());
    let mut marks = drawing.wire(&circle(at(ring, 0.0), ring * 0.85), ring * 0.3);
    marks.push(drawing.solid(skirt(neck, length - EDGE / 2.0, head * 0.7, half), drawing.flat(0.05), EDGE));
    marks
        .extend((1..DRAWN).map(|number| drawing.line(thread(number, neck, length - 0.2, head * 0.7, half), FINE_EDGE)));
    marks.push(drawing.solid(ellipse(centre, head, head), drawing.ball(centre, head), EDGE));
    let band = rounded_rect(at(neck - head * 0.25, -head * 0.78), head * 0.5, head * 1.56, head * 0.1);
    marks.push(drawing.solid(band, drawing.flat(-0.25), EDGE));
    marks
}

/// What all threads fill: narrow at the neck, and nearly straight below.
fn skirt(neck: f64, foot: f64, narrow: f64, half: f64) -> Vec<Segment> {
    let shoulder = neck + (foot - neck) * 0.3;
    vec![
        Segment::Move(at(neck, -narrow)),
        Segment::Curve(at(shoulder, -half * 0.9), at(shoulder, -half), at(foot, -half)),
        Segment::Line(at(foot, half)),
        Segment::Curve(at(shoulder, half), at(shoulder, half * 0.9), at(neck, narrow)),
        Segment::Close,
    ]
}

fn thread(number: u32, neck: f64, foot: f64, narrow: f64, half: f64) -> Vec<Segment> {
    let across = 2.0 * f64::from(number) / f64::from(DRAWN) - 1.0;
    line(at(neck, across * narrow), at(foot, across * half))
}
