//! Findings bent from wire into loops: pins, rings, links, guards and bails.

use std::f64::consts::PI;

use super::{EDGE, FindingDrawing, or};
use crate::design::{ChainLinks, Dimensions, Foot, Hanger, JumpRing, Pin};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment, Stroke};
use crate::paint::outline::{arc, circle, ellipse, line, rounded_rect};
use crate::trade::usual;

fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// Radius of the middle line of a pin's eye, and the thickness of its wire.
fn eye(pin: &Pin) -> (f64, f64) {
    let (outside, thick) = (pin.eye().value(), pin.wire.value());
    ((outside - thick).max(thick) / 2.0, thick)
}

/// A pin before it is cut.
pub fn pin(drawing: &FindingDrawing, pin: &Pin) -> Vec<Mark> {
    match pin.foot {
        Foot::Eye => eye_pin(drawing, pin),
        Foot::Head => head_pin(drawing, pin),
    }
}

/// A pin: its eye, then the wire.
fn eye_pin(drawing: &FindingDrawing, pin: &Pin) -> Vec<Mark> {
    let (eye, thick) = eye(pin);
    let centre = at(eye + thick / 2.0, 0.0);
    let ring = arc(centre, (eye, eye), 0.05, 2.0 * PI);
    let wire = line(centre + at(eye, 0.0), at(pin.length.value().max(centre.x * 2.5) - thick / 2.0, 0.0));
    drawing.wire(&[ring, wire].concat(), thick)
}

/// A pin: its flat head, then the wire.
fn head_pin(drawing: &FindingDrawing, pin: &Pin) -> Vec<Mark> {
    let thick = pin.wire.value();
    let wire = line(at(thick * 0.6, 0.0), at(pin.length.value() - thick / 2.0, 0.0));
    let mut marks = drawing.wire(&wire, thick);
    marks.push(head(drawing, pin));
    marks
}

fn head(drawing: &FindingDrawing, pin: &Pin) -> Mark {
    let thick = pin.wire.value();
    let (breadth, depth) = (or(pin.outside, thick * 2.6), thick * 0.6);
    let plate = rounded_rect(at(EDGE / 2.0, -breadth / 2.0), depth, breadth, depth * 0.4);
    drawing.solid(plate, drawing.turned(breadth / 2.0), EDGE)
}

/// A pin cut and closed: its eye or head, the wire, and the loop at its end.
pub fn closed_pin(drawing: &FindingDrawing, pin: &Pin, reach: f64) -> Vec<Mark> {
    let (eye, thick) = eye(pin);
    let from = if pin.foot == Foot::Head { 0.0 } else { 2.0 * eye + thick / 2.0 };
    let end = circle(at(reach - thick / 2.0 - eye, 0.0), eye);
    let wire = line(at(from, 0.0), at((reach - thick / 2.0 - 2.0 * eye).max(from), 0.0));
    let start = if from > 0.0 { circle(at(eye + thick / 2.0, 0.0), eye) } else { Vec::new() };
    let mut marks = drawing.wire(&[start, wire, end].concat(), thick);
    if from == 0.0 {
        marks.push(head(drawing, pin));
    }
    marks
}

/// The half of a closed pin's loop that lies before the cord that goes through it.
pub fn pin_loop(drawing: &FindingDrawing, pin: &Pin, reach: f64) -> Vec<Mark> {
    let (radius, thick) = eye(pin);
    Hoop { centre: at(reach - thick / 2.0 - radius, 0.0), radius, thick }.part(drawing, [0.0, 0.8 * PI])
}

/// Angle by which a ring lies over what goes through it beyond its half, by eye.
const OVER: f64 = 0.4;

/// A round of wire: its middle, the radius of its middle line, and its thickness, in mm.
#[derive(Clone, Copy)]
pub struct Hoop {
    pub centre: Point,
    pub radius: f64,
    pub thick: f64,
}

impl Hoop {
    /// The hoop of a ring of wire.
    pub fn of_ring(ring: &JumpRing) -> Self {
        let thick = ring.wire.value();
        let outside = or(ring.outside, ring.inside.value() + 2.0 * thick);
        Self { centre: at(outside / 2.0, 0.0), radius: (outside - thick) / 2.0, thick }
    }

    /// All of it.
    pub fn whole(self, drawing: &FindingDrawing) -> Vec<Mark> {
        drawing.wire(&circle(self.centre, self.radius), self.thick)
    }

    /// A quarter of it beside the strand and a little more, to the right of x as one looks along that on the page: there it
    /// lies before what goes through it; its ends are cut square.
    pub fn quarter(self, drawing: &FindingDrawing) -> Vec<Mark> {
        /// By how much each lighter line of the wire is longer, in radians: it hides the ends of those below it.
        const LONGER: f64 = 0.05;
        let lines = |longer: f64| {
            let quarter = arc(self.centre, (self.radius, self.radius), PI / 2.0 - OVER - longer, PI + longer);
            drawing.wire(&quarter, self.thick)
        };
        let line = |at: usize, number: f64| lines(LONGER * number).into_iter().nth(at).map(square);
        (0..lines(0.0).len()).filter_map(|at| line(at, at as f64)).collect()
    }

    /// Its half to the right of x, as one looks along that on the page, that lies before what it goes through at both ends;
    /// its ends are cut square, so that it lies on the whole unseen.
    pub fn front(self, drawing: &FindingDrawing) -> Vec<Mark> {
        self.part(drawing, [0.0, PI])
    }

    /// What of it is between two angles; its ends are cut square, so that it lies on the whole unseen.
    pub fn part(self, drawing: &FindingDrawing, [from, to]: [f64; 2]) -> Vec<Mark> {
        let part = arc(self.centre, (self.radius, self.radius), from, to);
        drawing.wire(&part, self.thick).into_iter().map(square).collect()
    }
}

/// A line with its ends cut square.
fn square(mark: Mark) -> Mark {
    let Mark::Shape { outline, fill, stroke } = mark else { return mark };
    Mark::Shape { outline, fill, stroke: stroke.map(|stroke| Stroke { round: false, ..stroke }) }
}

/// A ring of wire with its slit to the right, unless it is soldered shut.
pub fn jump_ring(drawing: &FindingDrawing, ring: &JumpRing) -> Vec<Mark> {
    let hoop = Hoop::of_ring(ring);
    hoop.whole(drawing).into_iter().chain(slit(drawing, ring, hoop)).collect()
}

/// Its half that lies before what it goes through, see [`Hoop::front`].
pub fn front_ring(drawing: &FindingDrawing, ring: &JumpRing) -> Vec<Mark> {
    let hoop = Hoop::of_ring(ring);
    hoop.front(drawing).into_iter().chain(slit(drawing, ring, hoop)).collect()
}

/// The slit at which a ring opens.
fn slit(drawing: &FindingDrawing, ring: &JumpRing, Hoop { centre, radius, thick }: Hoop) -> Option<Mark> {
    let out = Point::towards(0.25 * PI);
    let [inner, outer] = [-0.4, 0.4].map(|share| centre + out * (radius + share * thick));
    (!ring.closed).then(|| drawing.line(line(inner, outer), thick * 0.2))
}

/// A link's length, half the breadth of its middle line and the thickness of its wire, in mm.
#[must_use]
pub fn link_size(chain: &ChainLinks) -> (f64, f64, f64) {
    let length = chain.link.value();
    let thick = chain.wire.value().min(length * 0.3);
    (length, length * 0.34 - thick / 2.0, thick)
}

/// A link of cable chain seen on its face.
pub fn link(drawing: &FindingDrawing, chain: &ChainLinks) -> Vec<Mark> {
    let (length, half, thick) = link_size(chain);
    let ring = rounded_rect(at(thick / 2.0, -half), length - thick, half * 2.0, half);
    drawing.wire(&ring, thick)
}

/// A link of cable chain seen on its edge.
pub fn link_on_edge(drawing: &FindingDrawing, chain: &ChainLinks) -> Vec<Mark> {
    let (length, _, thick) = link_size(chain);
    drawing.wire(&line(at(thick / 2.0, 0.0), at(length - thick / 2.0, 0.0)), thick)
}

/// A horseshoe of tube, its legs to the strand.
pub fn guard(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let thick = or(body.wire, length * usual::GUARD_TUBE);
    let half = (or(body.outside, length * 0.95) - thick) / 2.0;
    let bend = length - thick / 2.0 - half;
    let start = line(at(thick / 2.0, -half * 0.8), at(bend, -half));
    let arch = arc(at(bend, 0.0), (half, half), -PI / 2.0, PI / 2.0);
    let end = Segment::Line(at(thick / 2.0, half * 0.8));
    let outline = [start, arch[1..].to_vec(), vec![end]].concat();
    let mut marks = drawing.wire(&outline, thick);
    let mouths =
        [-1.0, 1.0].map(|side| ellipse(at(thick * 0.35, side * half * 0.8), thick * 0.14, thick * 0.3)).concat();
    marks.push(drawing.solid(mouths, drawing.flat(-0.6), EDGE / 2.0));
    marks
}

/// A folded loop: round where the cord runs through, pinched where the pendant hangs.
pub fn bail(drawing: &FindingDrawing, hanger: &Hanger) -> Vec<Mark> {
    let length = hanger.length.value();
    let half = or(hanger.outside, length * 0.5) / 2.0 - EDGE / 2.0;
    let body = |share: f64| {
        let (start, tip) =
            (EDGE / 2.0 + length * 0.22 * (1.0 - share), length * (1.0 - 0.22 * (1.0 - share)) - EDGE / 2.0);
        let along = |t: f64| start + (tip - start) * t;
        let half = half * share;
        vec![
            Segment::Move(at(start, 0.0)),
            Segment::Curve(at(start, -half * 1.3), at(along(0.4), -half * 1.1), at(along(0.86), -half * 0.28)),
            Segment::Curve(at(along(0.94), -half * 0.1), at(tip, -half * 0.14), at(tip, 0.0)),
            Segment::Curve(at(tip, half * 0.14), at(along(0.94), half * 0.1), at(along(0.86), half * 0.28)),
            Segment::Curve(at(along(0.4), half * 1.1), at(start, half * 1.3), at(start, 0.0)),
            Segment::Close,
        ]
    };
    let outline = [body(1.0), body(0.6)].concat();
    vec![drawing.solid(outline, drawing.turned(half), EDGE)]
}
