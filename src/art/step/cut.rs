//! Cutting: cord along a ruler, wire off its coil, cord straight across; and pieces marked.

use std::f64::consts::{PI, TAU};

use super::held::{RULER, ruler};
use crate::art::pen::{PLAIN, arrow, at, cord, cutters, filled, ghost, line, tail, wire, wire_over};
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb};
use crate::paint::outline::{circle, curve, polyline, rect, rounded_rect};

/// A cord along a ruler, cut at its length.
pub fn measured() -> Vec<Mark> {
    let (from, to) = (0.9, 16.9);
    let mut marks = cord(&polyline(&[at(from, 9.2), at(24.0, 9.2)]), PLAIN);
    marks.push(line(polyline(&[at(from, 8.7), at(from, 9.7)])));
    marks.extend([from, to].map(|x| ghost(polyline(&[at(x, 10.2), at(x, RULER)]))));
    marks.extend(cutters(at(to, 8.6), 0.0));
    marks.extend(ruler());
    marks
}

/// Wire cut off its coil, whose turns are counted.
pub fn coil() -> Vec<Mark> {
    let mut marks = turns();
    marks.extend(cutters(round_coil(3.0) + at(-0.4, 0.3), PI / 2.0));
    marks
}

/// A finished coil, whose turns are counted from one loop on.
pub fn counted() -> Vec<Mark> {
    let ends = [round_coil(0.0) + at(1.2, -0.6), round_coil(3.0) + at(1.2, 0.6)];
    turns().into_iter().chain(ends.into_iter().flat_map(|middle| wire_over(&circle(middle, 1.2)))).collect()
}

/// The turns of a coil, each with its number at the left.
fn turns() -> Vec<Mark> {
    const PIECES: u32 = 24;
    let half = |from: f64| {
        let place = |step: u32| round_coil(from + 0.5 * f64::from(step) / f64::from(PIECES));
        polyline(&(0..=PIECES).map(place).collect::<Vec<_>>())
    };
    let turns = [0.0, 1.0, 2.0];
    let mut marks: Vec<Mark> = turns.iter().flat_map(|turn| wire(&half(turn + 0.5))).collect();
    marks.extend(turns.iter().flat_map(|turn| wire_over(&half(*turn))));
    let number = |(turn, count): (&f64, &str)| {
        Type::SMALL_STRONG.mark(count, at(1.6, round_coil(turn + 0.5).y + 1.0), Anchor::Middle)
    };
    marks.extend(turns.iter().zip(["1", "2", "3"]).map(number));
    marks
}

/// Where a coil is after so many turns.
fn round_coil(turns: f64) -> Point {
    at(11.2 + 6.6 * libm::cos(TAU * turns), 3.4 + 3.6 * turns + 2.2 * libm::sin(TAU * turns))
}

/// A thick cord cut straight across.
pub fn square() -> Vec<Mark> {
    let (end, top, broad) = (14.6, 8.4, 3.6);
    let mut marks = vec![filled(rect(at(0.2, top), end - 0.2, broad), PLAIN)];
    marks
        .extend([3.0, 6.6, 10.2].map(|x| line(curve(&[at(x, top), at(x + 1.2, top + 1.8), at(x + 2.0, top + broad)]))));
    marks.push(ghost(polyline(&[at(end, top), at(22.4, top), at(20.4, top + broad), at(end, top + broad)])));
    marks.push(ghost(polyline(&[at(end, top + broad), at(end, 16.6)])));
    marks.extend(cutters(at(end, top - 0.4), 0.0));
    marks.extend(arrow(&[at(18.2, 16.6), at(15.2, 16.6)]));
    marks
}

/// A piece of tape with a name, folded round a cord's end.
pub fn tagged() -> Vec<Mark> {
    let mut marks = tail(&polyline(&[at(0.0, 9.0), at(16.0, 9.0)]), PLAIN);
    marks.push(filled(rounded_rect(at(9.4, 5.8), 13.6, 6.4, 0.5), Rgb::WHITE));
    marks.push(line(polyline(&[at(10.6, 5.8), at(10.6, 12.2)])));
    let written =
        [at(12.4, 9.6), at(13.4, 7.6), at(14.2, 10.2), at(15.6, 8.0), at(16.8, 10.0), at(18.2, 8.2), at(20.6, 9.4)];
    marks.push(line(curve(&written)));
    marks.extend(arrow(&[at(20.6, 15.4), at(16.4, 16.6), at(11.4, 15.0)]));
    marks
}
