//! Stringing: beads laid out and threaded, what keeps them on, slack drawn up, tails among beads.

use std::f64::consts::PI;

use super::held::holes;
use super::pen::{
    PLAIN, arrow, at, bead, cord, cord_over, cutters, filled, ghost, hidden, line, metal, stretch, tail, wire,
};
use super::tight;
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb, Segment};
use crate::paint::outline::{circle, curve, ellipse, polygon, polyline, rounded_rect};

/// Where cord runs.
const LEVEL: f64 = 9.0;

/// One to three kinds of bead on a board, each in a row behind its letter.
pub fn laid_out(kinds: u8) -> Vec<Mark> {
    let rows: &[f64] = match kinds {
        0 | 1 => &[9.0],
        2 => &[5.4, 12.6],
        _ => &[3.8, 9.0, 14.2],
    };
    let row = |((y, letter), radius): ((&f64, &str), f64)| {
        let letter = Type::SMALL_STRONG.mark(letter, at(2.6, y + 1.0), Anchor::Middle);
        let beads = (0..6).map(move |place| bead(at(6.4 + 2.9 * f64::from(place), *y), radius));
        std::iter::once(letter).chain(beads).collect::<Vec<_>>()
    };
    let board = filled(rounded_rect(at(0.2, 0.4), 23.6, 17.2, 1.2), Rgb::WHITE);
    let all = rows.iter().zip(["A", "B", "C"]).zip([1.4, 1.1, 1.3]).flat_map(row);
    std::iter::once(board).chain(all).collect()
}

/// Beads on a cord, and one that its needle or its bare end goes through.
pub fn threaded(has_needle: bool) -> Vec<Mark> {
    let next = at(16.0, LEVEL);
    let mut marks = if has_needle { needle() } else { tail(&level(0.0, 22.6), PLAIN) };
    marks.extend([2.4, 6.8].map(|x| bead(at(x, LEVEL), 2.2)));
    marks.push(bead(next, 2.2));
    marks.push(bored(next, 2.2));
    marks.extend(arrow(&[at(19.4, 4.2), at(16.0, 3.6), at(11.4, 4.2)]));
    marks
}

/// A cord in the eye of a needle, which goes on to the right.
fn needle() -> Vec<Mark> {
    let shaft =
        [at(10.4, LEVEL - 0.55), at(13.0, LEVEL - 0.4), at(24.2, LEVEL), at(13.0, LEVEL + 0.4), at(10.4, LEVEL + 0.55)];
    let mut marks = cord(&level(0.0, 9.6), PLAIN);
    marks.push(metal(polygon(&shaft)));
    marks.push(filled(ellipse(at(11.3, LEVEL), 0.6, 0.25), Rgb::WHITE));
    marks.extend(cord(&curve(&[at(9.4, LEVEL), at(10.6, LEVEL - 0.1), at(11.2, LEVEL)]), PLAIN));
    marks
}

/// A tube threaded onto a cord's end.
pub fn on_end() -> Vec<Mark> {
    let mut marks = tail(&level(0.0, 21.4), PLAIN);
    marks.push(metal(rounded_rect(at(8.0, 7.0), 4.6, 4.0, 0.5)));
    marks.push(bored(at(10.3, LEVEL), 2.1));
    marks.push(ghost(rounded_rect(at(18.6, 7.0), 4.6, 4.0, 0.5)));
    marks.extend(arrow(&[at(20.4, 4.2), at(16.0, 3.4), at(11.4, 4.2)]));
    marks
}

/// A cover threaded onto a cord's end, its hollow side towards that.
pub fn cover_on_end() -> Vec<Mark> {
    let mut marks = tail(&level(0.0, 22.6), PLAIN);
    marks.extend(tight::open_cover(at(4.6, LEVEL), 3.2, 0.9));
    marks.extend(arrow(&[at(21.4, 3.4), at(18.0, 2.6), at(14.6, 3.4)]));
    marks
}

/// A spring on a cord that keeps beads from its end.
pub fn stopped() -> Vec<Mark> {
    let mut marks = tail(&level(24.0, 0.6), PLAIN);
    marks.extend([15.2, 20.0].map(|x| bead(at(x, LEVEL), 2.4)));
    marks.extend([7.2, 8.3, 9.4, 10.5, 11.6].iter().flat_map(|x| wire(&ellipse(at(*x, LEVEL), 0.7, 2.2))));
    marks.extend([-1.0, 1.0].iter().flat_map(|side| wire(&circle(at(9.4 + side * 3.0, LEVEL - 3.4), 1.2))));
    marks.extend(arrow(&[at(4.4, 14.4), at(7.4, 14.4), at(11.0, 13.0)]));
    marks
}

/// Beads pushed up to a crimp while the tail that comes back through it is pulled: the loop gets shorter.
pub fn drawn_up() -> Vec<Mark> {
    let upper =
        [at(0.0, 8.3), at(6.0, 8.3), at(11.0, 8.3), at(15.0, 8.3), at(17.2, 7.2), at(19.4, 7.2), at(20.6, LEVEL)];
    let lower = [at(19.4, 10.8), at(17.2, 10.8), at(15.0, 9.7), at(11.0, 9.7), at(9.2, 10.9), at(6.6, 14.0)];
    let way = curve(&[upper.as_slice(), &lower].concat());
    let mut marks = tail(&way, PLAIN);
    marks.extend(wire(&circle(at(21.4, LEVEL), 2.4)));
    marks.extend(cord_over(&stretch(&way, 4, 6), PLAIN));
    marks.push(metal(rounded_rect(at(10.8, 7.0), 4.2, 4.0, 0.5)));
    marks.push(hidden([polyline(&[at(11.0, 8.3), at(14.8, 8.3)]), polyline(&[at(11.0, 9.7), at(14.8, 9.7)])].concat()));
    marks.extend([2.4, 6.8].map(|x| bead(at(x, 8.6), 2.2)));
    marks.extend(arrow(&[at(0.8, 4.2), at(4.0, 3.8), at(8.4, 4.2)]));
    marks.extend(arrow(&[at(5.6, 14.6), at(4.2, 16.0), at(2.2, 17.2)]));
    marks
}

/// A bead that goes over a cord and the tail beside it, towards their crimp.
pub fn over_tail() -> Vec<Mark> {
    let mut marks =
        [cord(&polyline(&[at(0.0, 8.3), at(16.0, 8.3)]), PLAIN), wire(&circle(at(21.4, LEVEL), 2.4))].concat();
    marks.extend(tail(&polyline(&[at(16.0, 9.7), at(2.6, 9.7)]), PLAIN));
    marks.extend(cord(&ellipse(at(17.9, LEVEL), 2.4, 1.2), PLAIN));
    marks.extend(tight::pressed(at(14.2, LEVEL)));
    marks.push(bead(at(6.4, LEVEL), 2.8));
    marks.extend([8.3, 9.7].map(|y| hidden(polyline(&[at(3.8, y), at(9.0, y)]))));
    marks.extend(arrow(&[at(2.0, 3.6), at(5.0, 3.2), at(9.6, 3.6)]));
    marks
}

/// A tail cut off where it leaves the beads.
pub fn tail_out() -> Vec<Mark> {
    let mut marks = tail(&curve(&[at(14.0, LEVEL), at(10.4, 8.6), at(8.6, 6.6), at(7.6, 3.2)]), PLAIN);
    marks.extend(cord(&level(0.0, 16.0), PLAIN));
    marks.extend(cord(&ellipse(at(19.6, LEVEL), 1.8, 1.1), PLAIN));
    marks.extend(wire(&circle(at(22.2, LEVEL), 1.7)));
    marks.extend([5.6, 12.6].map(|x| bead(at(x, LEVEL), 2.7)));
    marks.extend(tight::pressed(at(17.0, LEVEL)));
    marks.extend(cutters(at(8.9, 6.9), -0.45 * PI));
    marks
}

/// A knot slid into the bead beside it.
pub fn knot_hidden() -> Vec<Mark> {
    let mut marks = cord(&level(0.0, 24.0), PLAIN);
    marks.extend(tight::knot(at(5.2, LEVEL), 1.4));
    marks.push(bead(at(15.4, LEVEL), 4.6));
    marks.push(hidden(circle(at(15.4, LEVEL), 1.4)));
    marks.push(bored(at(15.4, LEVEL), 4.5));
    marks.extend(arrow(&[at(5.2, 5.4), at(8.0, 3.2), at(11.4, 3.4)]));
    marks
}

/// Groups of beads along a cord, as far apart from one another.
pub fn spaced() -> Vec<Mark> {
    let mut marks = cord(&level(0.0, 24.0), PLAIN);
    marks.extend([1.9, 5.1, 10.4, 13.6, 18.9, 22.1].map(|x| bead(at(x, LEVEL), 1.6)));
    for (from, to) in [(6.7, 8.8), (15.2, 17.3)] {
        let middle = f64::midpoint(from, to);
        marks.extend([from, to].map(|x| ghost(polyline(&[at(x, LEVEL + 1.6), at(x, 14.4)]))));
        marks.extend(arrow(&[at(from - 3.2, 13.6), at(from - 0.1, 13.6)]));
        marks.extend(arrow(&[at(to + 3.2, 13.6), at(to + 0.1, 13.6)]));
        marks.extend([-0.35, 0.35].map(|y| line(polyline(&[at(middle - 0.7, 4.6 + y), at(middle + 0.7, 4.6 + y)]))));
    }
    marks
}

/// The loops of two or three strands in those of a bar, side by side in their order.
pub fn end_bar(strands: u8) -> Vec<Mark> {
    let strand = |(y, number): (&f64, u8)| {
        let number = Type::SMALL_STRONG.mark(&number.to_string(), at(0.4, y + 0.9), Anchor::Start);
        let eye = wire(&circle(at(7.4, *y), 1.3));
        let round = ellipse(at(10.4, *y), 2.6, 1.0);
        let on = cord(&polyline(&[at(13.6, *y), at(24.0, *y)]), PLAIN);
        let beads = vec![bead(at(18.4, *y), 1.9), bead(at(22.2, *y), 1.9)];
        [
            vec![number],
            cord(&round, PLAIN),
            eye,
            cord_over(&stretch(&round, 1, 2), PLAIN),
            on,
            beads,
            tight::pressed(at(14.2, *y)),
        ]
        .concat()
    };
    let mut marks: Vec<Mark> = holes(strands).iter().zip(1..).flat_map(strand).collect();
    marks.push(metal(rounded_rect(at(4.0, 0.6), 2.2, 16.8, 1.0)));
    marks
}

/// A level line at the cord's height.
fn level(from: f64, to: f64) -> Vec<Segment> {
    polyline(&[at(from, LEVEL), at(to, LEVEL)])
}

/// The way of a cord through what is so far to both sides of its middle.
fn bored(middle: Point, half: f64) -> Mark {
    let edge = |side: f64| polyline(&[middle + at(-half, side), middle + at(half, side)]);
    hidden([edge(-0.5), edge(0.5)].concat())
}
