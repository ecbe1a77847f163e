//! Pins, cones and rings: covering, turning a loop, opening a ring, making a dangle.

use std::f64::consts::{PI, TAU};

use super::pen::{EDGE, PLAIN, arrow, at, bead, cord, filled, ghost, line, metal, wire, wire_over};
use crate::geometry::Point;
use crate::sheet::mark::{Mark, Step, Stroke};
use crate::sheet::outline::{arc, circle, curve, polygon, polyline, rounded_rect};
use crate::sheet::style;

/// A cone on its way down a pin's wire, over the loops on the eye.
pub fn cone() -> Vec<Mark> {
    let eye = at(5.6, 9.5);
    let mut marks = Vec::new();
    for (from, tip) in [(6.0, 8.8), (9.5, 9.5), (13.0, 10.2)] {
        let path = curve(&[at(0.0, from), at(2.6, from * 0.5 + 4.75), at(5.4, tip)]);
        marks.extend(cord(&path, PLAIN));
    }
    marks.extend(wire(&[circle(eye, 1.9), polyline(&[at(7.5, 9.5), at(24.0, 9.5)])].concat()));
    marks.push(ghost(cone_outline(2.6)));
    marks.push(metal(cone_outline(12.2)));
    marks
        .push(line([polyline(&[at(12.2, 8.2), at(20.4, 9.25)]), polyline(&[at(12.2, 10.8), at(20.4, 9.75)])].concat()));
    marks.extend(arrow(&[at(19.5, 4.0), at(16.0, 3.4), at(12.0, 3.4)]));
    marks
}

/// A cone's outline with its wide end at a place along the wire.
fn cone_outline(x: f64) -> Vec<Step> {
    vec![
        Step::Move(at(x, 5.6)),
        Step::Curve(at(x + 3.0, 6.2), at(x + 5.0, 8.2), at(x + 8.2, 8.7)),
        Step::Line(at(x + 8.2, 10.3)),
        Step::Curve(at(x + 5.0, 10.8), at(x + 3.0, 12.8), at(x, 13.4)),
        Step::Close,
    ]
}

/// A wire bent where it leaves a cone, and rolled back.
pub fn plain_loop() -> Vec<Mark> {
    let (bend, radius) = (at(7.0, 11.0), 2.0);
    let mut marks = vec![metal(polygon(&[at(6.1, 13.0), at(7.9, 13.0), at(9.8, 18.0), at(4.2, 18.0)]))];
    marks.extend(wire(&polyline(&[at(7.0, 13.0), bend])));
    marks.extend(wire(&arc(bend - at(0.0, radius), (radius, radius), PI / 2.0, -1.42 * PI)));
    let bent = rounded_rect(bend + at(0.9, -0.475), TAU * radius - 1.0, 0.95, 0.1);
    marks.push(ghost(bent));
    marks.extend(arrow(&[at(19.4, 9.0), at(18.0, 5.4), at(14.4, 3.9), at(10.6, 6.0)]));
    marks
}

/// A ring opened sideways; beside it one pulled apart, struck out.
pub fn open_link() -> Vec<Mark> {
    let sprung = sprung(at(6.6, 9.6), 4.4);
    let (back, front) = sprung.split_at(sprung.len() / 2);
    let mut marks = wire(&polyline(front));
    marks.extend(wire_over(&polyline(&[back, &front[..1]].concat())));
    marks.extend(arrow(&[at(3.6, 3.0), at(1.2, 5.2)]));
    marks.extend(arrow(&[at(10.0, 3.6), at(12.4, 1.4)]));
    let wrong = at(19.0, 10.0);
    marks.extend(wire(&arc(wrong, (4.0, 3.6), -0.28 * PI, 1.28 * PI)));
    let cross = [polyline(&[at(15.2, 5.0), at(22.8, 15.0)]), polyline(&[at(22.8, 5.0), at(15.2, 15.0)])].concat();
    marks.push(Mark::Shape { outline: cross, fill: None, stroke: Some(Stroke::new(style::ACCENT, EDGE * 1.6)) });
    marks
}

/// A ring whose ends stand apart before and behind its plane, seen at a slant: nearer is lower left.
fn sprung(centre: Point, radius: f64) -> Vec<Point> {
    const PIECES: u32 = 60;
    const SLANT: Point = at(-1.7, 1.5);
    let place = |step: u32| {
        let share = f64::from(step) / f64::from(PIECES);
        let angle = -PI / 2.0 + 0.06 + (TAU - 0.12) * share;
        centre + Point::towards(angle) * radius + SLANT * (1.0 - 2.0 * share)
    };
    (0..=PIECES).map(place).collect()
}

/// Beads on a pin with its wire bent; then the loop closed on a cord.
pub fn dangle() -> Vec<Mark> {
    let mut marks = wire(&polyline(&[at(4.0, 16.6), at(4.0, 5.2), at(12.0, 5.2)]));
    marks.extend(strung(4.0));
    let radius = 1.6;
    marks.extend(wire(&polyline(&[at(18.4, 16.6), at(18.4, 5.2)])));
    let hoop = arc(at(18.4, 5.2 - radius), (radius, radius), PI / 2.0, -1.42 * PI);
    marks.extend(wire(&hoop));
    marks.extend(cord(&polyline(&[at(12.8, 3.4), at(24.0, 3.4)]), PLAIN));
    marks.extend(wire_over(&arc(at(18.4, 5.2 - radius), (radius, radius), -0.35 * PI, 0.4 * PI)));
    marks.extend(strung(18.4));
    marks.extend(arrow(&[at(9.4, 11.0), at(13.2, 11.0)]));
    marks
}

/// Two beads above the head of a pin.
fn strung(x: f64) -> Vec<Mark> {
    vec![
        bead(at(x, 8.6), 2.7),
        bead(at(x, 13.6), 2.2),
        filled(rounded_rect(at(x - 1.2, 16.0), 2.4, 0.9, 0.3), style::RULE),
    ]
}
