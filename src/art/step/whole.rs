//! The finished piece: how it is measured and tried.

use std::f64::consts::{PI, TAU};

use super::held::{RULER, ruler, tick_length};
use super::pen::{PLAIN, arrow, at, bead, cord, filled, ghost, line, metal, wire, wire_over};
use super::{cut, hung};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Rgb, Stroke};
use crate::paint::outline::{arc, circle, curve, ellipse, mapped, polyline, rounded_rect};
use crate::paint::style;
use crate::steps::Inspection;

/// A finished piece as it is measured.
pub fn measured(how: Inspection) -> Vec<Mark> {
    match how {
        Inspection::Hung => earring(),
        Inspection::Pulled => pulled(),
        Inspection::Coiled => cut::counted(),
        Inspection::Straight => straight(),
        Inspection::Round => closed(false),
        Inspection::Inside => closed(true),
    }
}

/// An earring that hangs beside an upright ruler.
fn earring() -> Vec<Mark> {
    let (x, top, foot) = (8.4, 1.2, 17.0);
    let hook = [at(x + 3.4, 6.4), at(x + 3.4, 3.0), at(x + 1.4, top), at(x - 0.6, 2.8), at(x, 6.2)];
    let mut marks = wire(&curve(&hook));
    marks.extend(wire(&circle(at(x, 7.4), 1.2)));
    marks.extend(wire(&polyline(&[at(x, 8.6), at(x, foot - 0.4)])));
    marks.extend([(10.4, 1.5), (14.0, 2.2)].map(|(y, radius)| bead(at(x, y), radius)));
    marks.push(metal(rounded_rect(at(x - 1.1, 16.1), 2.2, 0.9, 0.3)));
    marks.extend([top - 0.4, foot].map(|y| ghost(polyline(&[at(x + 4.4, y), at(19.6, y)]))));
    marks.push(filled(rounded_rect(at(19.6, 0.2), 3.6, 17.4, 0.3), Rgb::WHITE));
    let tick = |step: u32| {
        let y = 0.8 + 1.62 * f64::from(step);
        line(polyline(&[at(19.6, y), at(19.6 + tick_length(step), y)]))
    };
    marks.extend((0..=10).map(tick));
    marks.extend([at(3.0, 6.0), at(3.0, 16.4)].windows(2).flat_map(arrow));
    marks
}

/// Beads round an oval, from one share of the way round to another.
fn oval(middle: Point, (across, down): (f64, f64), count: u32, gap: f64) -> Vec<Mark> {
    let place = |number: u32| {
        let share = gap + (1.0 - 2.0 * gap) * f64::from(number) / f64::from(count - 1);
        let turn = TAU * share - PI / 2.0;
        middle + at(across * libm::cos(turn), down * libm::sin(turn))
    };
    let cord = cord(&ellipse(middle, across, down), PLAIN);
    cord.into_iter().chain((0..count).map(|number| bead(place(number), 1.35))).collect()
}

/// A ring of beads without a closure, pulled from both sides.
fn pulled() -> Vec<Mark> {
    let mut marks = oval(at(12.0, 9.0), (7.0, 5.4), 14, 0.5 / 14.0);
    marks.extend(arrow(&[at(3.0, 9.0), at(0.2, 9.0)]));
    marks.extend(arrow(&[at(21.0, 9.0), at(23.8, 9.0)]));
    marks
}

/// A closed piece, and the way round it along which it is measured: inside it, or through its beads.
fn closed(inside: bool) -> Vec<Mark> {
    let (middle, across, down) = (at(12.0, 9.6), 9.4, 6.6);
    let top = middle - at(0.0, down);
    let mut marks = oval(middle, (across, down), 14, 0.1);
    marks.extend(wire_over(&circle(top - at(3.4, -0.5), 1.3)));
    marks.extend(hung::trigger(top + at(5.6, 0.7), PI).map(metal));
    let off = if inside { 2.6 } else { -1.9 };
    let place = |turn: f64| middle + at((across - off) * libm::cos(turn), (down - off) * libm::sin(turn));
    marks.extend(arrow(&(0..=24).map(|step| place(-1.2 + 5.4 * f64::from(step) / 24.0)).collect::<Vec<_>>()));
    marks
}

/// A piece laid straight along a ruler, from the ring at one end to the clasp at the other.
fn straight() -> Vec<Mark> {
    let level = 7.0;
    let mut marks = cord(&polyline(&[at(3.4, level), at(15.4, level)]), PLAIN);
    marks.extend(wire_over(&circle(at(2.0, level), 1.4)));
    marks.extend([5.2, 8.4, 11.6].map(|x| bead(at(x, level), 1.6)));
    marks.extend(hung::trigger(at(14.0, level), 0.0).map(metal));
    marks.extend([0.6, 22.8].map(|x| ghost(polyline(&[at(x, level + 1.8), at(x, RULER)]))));
    marks.extend(ruler());
    marks
}

/// The loop of a strap on the arm of a pair of spectacles.
pub fn on_arm() -> Vec<Mark> {
    let arm = [at(0.4, 5.6), at(8.0, 5.6), at(16.0, 5.8), at(20.4, 7.2), at(23.2, 11.6)];
    let grip = ellipse(at(12.0, 5.7), 1.3, 2.6);
    let mut marks = wire(&arc(at(12.0, 5.7), (1.3, 2.6), -PI / 2.0, PI / 2.0));
    let stroke = Some(Stroke::new(style::QUIET, 1.8));
    marks.push(Mark::Shape { outline: curve(&arm), fill: None, stroke });
    marks.extend(wire_over(&arc(at(12.0, 5.7), (1.3, 2.6), PI / 2.0, 1.5 * PI)));
    marks.push(ghost(mapped(&grip, |point| point + at(9.4, 2.6))));
    marks.extend(cord(&curve(&[at(12.0, 8.4), at(11.6, 11.0), at(9.4, 14.0), at(5.4, 16.6)]), PLAIN));
    marks.extend([at(11.4, 11.2), at(9.4, 14.0), at(6.4, 16.0)].map(|middle| bead(middle, 1.5)));
    marks.extend(arrow(&[at(20.4, 2.4), at(17.6, 1.6), at(14.4, 2.4)]));
    marks
}
