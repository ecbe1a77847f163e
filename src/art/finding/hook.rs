//! Findings that hold fast: the trigger clasp and the ear wire.

use std::f64::consts::FRAC_PI_2;

use super::loops::Hoop;
use super::{EDGE, FINE_EDGE, FindingDrawing, SEAM, or};
use crate::design::{Dimensions, Hanger};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{arc, circle, ellipse, line};

/// A trigger clasp: the ring that it hangs by, then a claw that a sprung lever closes.
pub fn clasp(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let breadth = or(body.outside, length * 0.5);
    let at = |x: f64, y: f64| Point::new(x * length, y * breadth);
    let mut marks = clasp_eye(body).whole(drawing);
    marks.push(drawing.solid(lever(&at), drawing.flat(-0.15), EDGE));
    marks.push(drawing.solid(jaw(&at), drawing.turned(breadth / 2.0), SEAM));
    marks.push(drawing.solid(ellipse(at(0.44, 0.43), length * 0.05, length * 0.04), drawing.flat(0.3), EDGE));
    marks.push(drawing.solid(circle(at(0.3, 0.06), length * 0.03), drawing.flat(-0.35), 0.06));
    marks
}

/// The ring that it hangs by.
pub fn clasp_eye(body: &Dimensions) -> Hoop {
    let (outside, thick) = (body.length.value() * 0.095, body.length.value() * 0.055);
    Hoop { centre: Point::new(outside, 0.0), radius: outside - thick / 2.0, thick }
}

/// The claw, in shares of a clasp's length and breadth from its ring on.
fn jaw(at: &dyn Fn(f64, f64) -> Point) -> Vec<Segment> {
    [claw(at), mouth(at)].concat()
}

/// The lever that closes it.
fn lever(at: &dyn Fn(f64, f64) -> Point) -> Vec<Segment> {
    vec![
        Segment::Move(at(0.36, 0.42)),
        Segment::Curve(at(0.52, 0.5), at(0.72, 0.5), at(0.86, 0.3)),
        Segment::Line(at(0.82, 0.17)),
        Segment::Curve(at(0.7, 0.32), at(0.55, 0.32), at(0.42, 0.22)),
        Segment::Close,
    ]
}

/// The claw's outer line, from the hinge over the back to the point.
fn claw(at: &dyn Fn(f64, f64) -> Point) -> Vec<Segment> {
    vec![
        Segment::Move(at(0.19, 0.0)),
        Segment::Curve(at(0.2, -0.32), at(0.4, -0.49), at(0.62, -0.49)),
        Segment::Curve(at(0.86, -0.49), at(0.99, -0.26), at(0.99, -0.02)),
        Segment::Curve(at(0.99, 0.14), at(0.95, 0.26), at(0.88, 0.33)),
    ]
}

/// Back along the inside of the claw to the hinge.
fn mouth(at: &dyn Fn(f64, f64) -> Point) -> Vec<Segment> {
    vec![
        Segment::Line(at(0.81, 0.2)),
        Segment::Curve(at(0.87, 0.12), at(0.88, -0.02), at(0.86, -0.1)),
        Segment::Curve(at(0.83, -0.26), at(0.62, -0.3), at(0.52, -0.14)),
        Segment::Curve(at(0.44, 0.0), at(0.48, 0.16), at(0.42, 0.3)),
        Segment::Curve(at(0.36, 0.44), at(0.18, 0.3), at(0.19, 0.0)),
        Segment::Close,
    ]
}

/// A fish-hook ear wire: the loop that the earring hangs from, a small bead, the bend, and the tail.
pub fn ear_wire(drawing: &FindingDrawing, hanger: &Hanger) -> Vec<Mark> {
    let length = hanger.length.value();
    let thick = hanger.wire.value();
    let (eye, radius) = (wire_eye(hanger).radius, length * 0.22);
    let ring = circle(wire_eye(hanger).centre, eye);
    let middle = Point::new(length - thick / 2.0 - radius, radius);
    let shank = line(Point::new(2.0 * eye + thick / 2.0, 0.0), Point::new(middle.x, 0.0));
    let bend = arc(middle, (radius, radius), -FRAC_PI_2, FRAC_PI_2);
    let low = radius * 2.0;
    let tail = Segment::Curve(
        Point::new(length * 0.55, low),
        Point::new(length * 0.3, low * 0.98),
        Point::new(length * 0.12, low * 1.16),
    );
    // The bend goes on from the shank, without a move of its own.
    let path = [ring, shank, bend.into_iter().skip(1).collect(), vec![tail]].concat();
    let mut marks = drawing.wire(&path, thick);
    let bead = Point::new(2.0 * eye + thick + eye * 0.5, 0.0);
    marks.push(drawing.solid(circle(bead, eye * 0.75), drawing.ball(bead, eye * 0.75), FINE_EDGE));
    marks
}

/// The loop of an ear wire.
pub fn wire_eye(hanger: &Hanger) -> Hoop {
    let (radius, thick) = (hanger.length.value() * 0.07, hanger.wire.value());
    Hoop { centre: Point::new(radius + thick / 2.0, 0.0), radius, thick }
}
