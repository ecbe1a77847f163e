//! Fasteners other than the trigger clasp: spring rings, hooks, toggles and barrel halves, each with the
//! small ring that it hangs by.

use std::f64::consts::{FRAC_PI_2, PI};

use super::loops::Hoop;
use super::{EDGE, FINE_EDGE, FindingDrawing, SEAM, or};
use crate::design::Dimensions;
use crate::geometry::Point;
use crate::paint::mark::Mark;
use crate::paint::outline::{arc, circle, curve, line, rounded_rect};
use crate::trade::usual;

/// The small ring at the strand's side, of a radius to its wire's middle.
fn eye(radius: f64, thick: f64) -> Hoop {
    Hoop { centre: Point::new(radius + thick / 2.0, 0.0), radius, thick }
}

/// That of a spring ring.
pub fn spring_eye(body: &Dimensions) -> Hoop {
    let length = body.length.value();
    eye(length * 0.09, length * 0.05)
}

/// That of a hook, as wide inside as is stated.
pub fn hook_eye(body: &Dimensions) -> Hoop {
    let length = body.length.value();
    let thick = or(body.wire, length * usual::HOOK_WIRE);
    eye(body.inside.map_or(length * 0.09, |inside| (inside.value() + thick) / 2.0), thick)
}

/// That of a toggle's ring.
pub fn toggle_eye(body: &Dimensions) -> Hoop {
    let length = body.length.value();
    eye(length * 0.07, length * 0.05)
}

/// That of a toggle's bar.
pub fn bar_eye(body: &Dimensions) -> Hoop {
    let length = body.length.value();
    eye(length * 0.2, length * 0.1)
}

/// That of half a barrel.
pub fn barrel_eye(body: &Dimensions) -> Hoop {
    let length = body.length.value();
    eye(length * 0.11, length * 0.06)
}

/// A hollow ring whose sprung bolt slides round in it, drawn back by a nib.
pub fn spring_ring(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let thick = length * usual::SPRING_TUBE;
    let radius = (length * 0.8 - thick) / 2.0;
    let centre = Point::new(length - thick / 2.0 - radius, 0.0);
    let nib = centre + Point::towards(-0.55 * PI) * (radius + thick * 0.45);
    let slit = Point::towards(-0.3 * PI);
    let mut marks = spring_eye(body).whole(drawing);
    marks.push(drawing.solid(circle(nib, thick * 0.55), drawing.ball(nib, thick * 0.55), FINE_EDGE));
    marks.extend(drawing.wire(&circle(centre, radius), thick));
    marks
        .push(drawing.line(line(centre + slit * (radius - thick / 2.0), centre + slit * (radius + thick / 2.0)), SEAM));
    marks
}

/// A wire bent back on itself.
pub fn hook(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let thick = or(body.wire, length * usual::HOOK_WIRE);
    let (eye, bend) = (hook_eye(body), length * 0.13);
    let top = -bend;
    let from = Point::new(eye.centre.x + eye.radius, 0.0);
    let turn = Point::new(length - thick / 2.0 - bend, 0.0);
    let shank = [from, Point::new(length * 0.35, top), Point::new(turn.x, top)];
    let mut path = curve(&shank);
    path.extend(arc(turn, (bend, bend), -FRAC_PI_2, FRAC_PI_2).into_iter().skip(1));
    let back =
        [Point::new(turn.x, bend), Point::new(length * 0.5, bend * 0.75), Point::new(length * 0.42, bend * 1.35)];
    path.extend(curve(&back).into_iter().skip(1));
    let mut marks = eye.whole(drawing);
    marks.extend(drawing.wire(&path, thick));
    marks
}

/// The ring that a toggle's bar goes through.
pub fn toggle_ring(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let mut marks = toggle_eye(body).whole(drawing);
    marks.extend(toggle_hoop(body).whole(drawing));
    marks
}

/// Its ring without the eye.
pub fn toggle_hoop(body: &Dimensions) -> Hoop {
    let length = body.length.value();
    let thick = or(body.wire, length * usual::TOGGLE_WIRE);
    let radius = (length * 0.84 - thick) / 2.0;
    Hoop { centre: Point::new(length - thick / 2.0 - radius, 0.0), radius, thick }
}

/// How far beyond what it adds to the piece a toggle's bar lies, in thicknesses of its rod: within its ring, the rim of which
/// is taken to be as thick, its shank against that; by eye.
const WITHIN_RING: f64 = 1.25;

/// A toggle's bar, across the end of its shank, which reaches as far into the ring as the bar lies across that.
pub fn toggle_bar(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let (half, thick) = (or(body.outside, length * 3.6) / 2.0, or(body.wire, length * usual::TOGGLE_ROD));
    let (eye, end) = (bar_eye(body), length + WITHIN_RING * thick);
    let shank = line(Point::new(2.0 * eye.radius, 0.0), Point::new(end, 0.0));
    let (rod, knob) = (thick * 0.8, thick * 0.5);
    let bar = rounded_rect(Point::new(end - rod / 2.0, -half), rod, half * 2.0, rod * 0.5);
    let mut marks = eye.whole(drawing);
    marks.extend(drawing.wire(&shank, thick * 0.5));
    marks.push(drawing.solid(bar, drawing.along(end - thick / 2.0, end + thick / 2.0), EDGE));
    let ball = |y: f64| drawing.solid(circle(Point::new(end, y), knob), drawing.flat(0.2), FINE_EDGE);
    marks.extend([ball(knob - half), ball(half - knob)]);
    marks
}

/// Half of a barrel whose halves screw, snap or hold together by magnets.
pub fn barrel(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let half = or(body.outside, length * usual::BARREL_BREADTH) / 2.0;
    let eye = barrel_eye(body);
    let from = 2.0 * eye.radius + eye.thick;
    let barrel = rounded_rect(Point::new(from, -half), length - from, half * 2.0, half * 0.35);
    let groove = |x: f64| drawing.line(line(Point::new(x, -half * 0.96), Point::new(x, half * 0.96)), EDGE);
    let mut marks = eye.whole(drawing);
    marks.push(drawing.solid(barrel, drawing.turned(half), EDGE));
    marks.extend([groove(length * 0.82), groove(length * 0.9)]);
    marks
}
