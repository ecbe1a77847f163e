//! Cutting: cord along a ruler, wire off its coil, cord straight across; and pieces marked.

use std::f64::consts::{PI, TAU};

use super::held::{RULER, ruler};
use super::own::Props;
use crate::art::pen::{PLAIN, arrow, at, cord, cutters, filled, ghost, line, tail, wire, wire_over};
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb, Segment};
use crate::paint::outline::{curve, polyline, rect, rounded_rect};
use crate::units::eighths;

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
pub fn coil(own: Props<'_>) -> Vec<Mark> {
    let coil = CountedTurns::of(own);
    [coil.marks(), cutters(coil.at(0.0) + at(-0.4, 0.3), PI / 2.0)].concat()
}

/// A finished coil with a loop rolled outward at both ends, whose turns are counted from one on.
pub fn counted(own: Props<'_>) -> Vec<Mark> {
    CountedTurns { rolled: 1.2, ..CountedTurns::of(own) }.marks()
}

/// The middle of a coil, and how far it reaches across.
const MIDDLE: f64 = 12.3;
const ACROSS: f64 = 5.7;
/// Most whole turns that are drawn.
const MOST: u32 = 3;

/// A coil that ends at its right, with the part of a turn first that is more than whole ones.
struct CountedTurns {
    /// How many whole turns it has, and of how many turns it is drawn.
    whole: u32,
    turns: f64,
    /// From one turn to the next.
    apart: f64,
    /// The radius of the loops at its ends, if it has any.
    rolled: f64,
}

impl CountedTurns {
    /// That of a piece.
    fn of(own: Props<'_>) -> Self {
        let eighths = libm::round(8.0 * if own.cast.turns > 0.0 { own.cast.turns } else { 3.0 }) / 8.0;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a coil has few turns")]
        let whole = eighths as u32;
        let turns = f64::from(whole.min(MOST)) + eighths - f64::from(whole);
        Self { whole, turns, apart: (10.8 / turns.max(1.0)).min(3.6), rolled: 0.0 }
    }

    /// Where it is so many turns before its end.
    fn at(&self, before: f64) -> Point {
        let (sine, cosine) = libm::sincos(TAU * before);
        at(MIDDLE + ACROSS * cosine, 3.4 + self.apart * (self.turns - before) - 2.2 * sine)
    }

    /// From one half of a turn before its end to the next, as far as it goes, with the loop at an end.
    fn half(&self, number: u32) -> Vec<Segment> {
        const PIECES: u32 = 24;
        let from = 0.5 * f64::from(number);
        let to = (from + 0.5).min(self.turns);
        let way = (0..=PIECES).map(|step| self.at(from + (to - from) * f64::from(step) / f64::from(PIECES)));
        let first = if number == 0 { self.rolled(0.0, -1.0) } else { Vec::new() };
        let last = if to >= self.turns { self.rolled(self.turns, 1.0) } else { Vec::new() };
        polyline(&first.into_iter().rev().chain(way).chain(last).collect::<Vec<_>>())
    }

    /// The loop at an end so many turns before its last, beyond which the wire would go on in a sense: from there outward round.
    fn rolled(&self, end: f64, sense: f64) -> Vec<Point> {
        const PIECES: u32 = 36;
        let (from, on) = (self.at(end), self.beyond(end, sense));
        let side = if on.y * (from.x - MIDDLE) > 0.0 { 1.0 } else { -1.0 };
        let centre = from + at(on.y, -on.x) * (side * self.rolled);
        let turned = |step: u32| centre + (from - centre).turned(-side * TAU * f64::from(step) / f64::from(PIECES));
        (1..=PIECES).filter(|_| self.rolled > 0.0).map(turned).collect()
    }

    /// In which direction the wire would go on there.
    fn beyond(&self, end: f64, sense: f64) -> Point {
        const STEP: f64 = 1e-4;
        Point::towards((self.at(end + sense * STEP) - self.at(end)).angle())
    }

    /// The edges where it is cut off.
    fn cut_ends(&self) -> Vec<Mark> {
        let edge = |(end, sense): (f64, f64)| {
            let aside = self.beyond(end, sense).turned(PI / 2.0) * 0.47;
            line(polyline(&[self.at(end) - aside, self.at(end) + aside]))
        };
        [(0.0, -1.0), (self.turns, 1.0)].into_iter().filter(|_| self.rolled <= 0.0).map(edge).collect()
    }

    /// Its turns, the near halves over the far ones, each with its number at the left.
    fn marks(&self) -> Vec<Mark> {
        let halves = || (0..2 * MOST + 2).filter(|half| 0.5 * f64::from(*half) < self.turns);
        let (far, near) =
            (halves().filter(|half| half.is_multiple_of(2)), halves().filter(|half| !half.is_multiple_of(2)));
        let mut marks: Vec<Mark> = far.flat_map(|half| wire(&self.half(half))).collect();
        marks.extend(near.flat_map(|half| wire_over(&self.half(half))));
        marks.extend(self.cut_ends());
        marks.extend(self.numbers());
        marks
    }

    fn numbers(&self) -> Vec<Mark> {
        let shown = self.whole.min(MOST);
        let part = self.turns - f64::from(shown);
        let named = |number: u32| match number {
            0 => eighths(part),
            _ if number == shown => self.whole.to_string(),
            _ if number + 1 == shown && shown < self.whole => "\u{2026}".to_owned(),
            _ => number.to_string(),
        };
        let place = |number: u32| {
            let level = self.at(f64::from(shown - number) + 0.5).y + 1.0;
            Type::SMALL_STRONG.mark(&named(number), at(1.4, level), Anchor::Middle)
        };
        (u32::from(part <= 0.0)..=shown).map(place).collect()
    }
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
