//! What keeps its place: stops, bars, chain, and beads along a ruler.

use super::pen::{PLAIN, arrow, at, bead, cord, cutters, filled, ghost, hidden, line, metal, wire};
use super::tight;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb};
use crate::paint::outline::{ellipse, polyline, rounded_rect};
use crate::steps::WithBeads;

/// Upper edge of a ruler.
pub const RULER: f64 = 14.0;

/// A crimp pressed on one cord where the ruler says, and a bead that slides against it.
pub fn stop(slides: bool) -> Vec<Mark> {
    let mut marks = cord(&polyline(&[at(0.0, 7.0), at(24.0, 7.0)]), PLAIN);
    marks.push(metal(rounded_rect(at(9.9, 5.9), 4.2, 2.2, 0.4)));
    marks.extend(slides.then(|| bead(at(16.9, 7.0), 2.7)));
    marks.extend((!slides).then(|| ghost(polyline(&[at(12.0, 9.2), at(12.0, RULER)]))));
    marks.extend(arrow(&[at(12.0, 1.2), at(12.0, 5.2)]));
    marks.extend(arrow(&[at(12.0, 12.8), at(12.0, 8.8)]));
    marks.extend(ruler());
    marks
}

/// A group of beads between two crimps that are pressed where they stand.
pub fn group() -> Vec<Mark> {
    let mut marks = cord(&polyline(&[at(0.0, 9.0), at(24.0, 9.0)]), PLAIN);
    marks.extend([9.4, 14.6].map(|x| bead(at(x, 9.0), 2.6)));
    for x in [5.4, 18.6] {
        marks.push(metal(rounded_rect(at(x - 1.3, 7.9), 2.6, 2.2, 0.4)));
        marks.extend(arrow(&[at(x, 2.8), at(x, 7.2)]));
        marks.extend(arrow(&[at(x, 15.2), at(x, 10.8)]));
    }
    marks
}

/// Beads along a ruler, with what is measured among them.
pub fn measured(among: WithBeads) -> Vec<Mark> {
    let mut marks = cord(&polyline(&[at(0.0, 7.0), at(24.0, 7.0)]), PLAIN);
    let (beads, [from, to]) = match among {
        WithBeads::Nothing => ([5.1, 9.7, 14.3, 18.9].map(|x| bead(at(x, 7.0), 2.3)), [2.8, 21.2]),
        WithBeads::Crimps => ([6.3, 10.1, 13.9, 17.7].map(|x| bead(at(x, 7.0), 1.9)), [2.2, 21.8]),
        WithBeads::Knots => ([4.5, 9.5, 14.5, 19.5].map(|x| bead(at(x, 7.0), 1.8)), [2.7, 21.3]),
    };
    marks.extend(beads);
    match among {
        WithBeads::Nothing => {}
        WithBeads::Crimps => marks.extend([from, to - 2.2].map(|x| metal(rounded_rect(at(x, 5.9), 2.2, 2.2, 0.4)))),
        WithBeads::Knots => marks.extend([7.0, 12.0, 17.0].into_iter().flat_map(|x| tight::knot(at(x, 7.0), 0.7))),
    }
    marks.extend([from, to].map(|x| ghost(polyline(&[at(x, 9.0), at(x, RULER)]))));
    if among != WithBeads::Knots {
        marks.extend(arrow(&[at(0.6, 2.8), at(6.4, 2.8)]));
        marks.extend(arrow(&[at(23.4, 2.8), at(17.6, 2.8)]));
    }
    marks.extend(ruler());
    marks
}

/// How long a ruler's line is.
pub const fn tick_length(step: u32) -> f64 {
    if step.is_multiple_of(5) { 1.9 } else { 1.1 }
}

/// A ruler below what is measured.
pub fn ruler() -> Vec<Mark> {
    const STEPS: u32 = 14;
    let tick = |step: u32| {
        let x = 0.9 + 1.6 * f64::from(step);
        line(polyline(&[at(x, RULER), at(x, RULER + tick_length(step))]))
    };
    let mut marks = vec![filled(rounded_rect(at(0.2, RULER), 23.6, 3.4, 0.3), Rgb::WHITE)];
    marks.extend((0..=STEPS).map(tick));
    marks
}

/// How high on the page the two or three holes or loops of a bar are.
pub const fn holes(strands: u8) -> &'static [f64] {
    if strands > 2 { &[3.6, 9.0, 14.4] } else { &[5.4, 12.6] }
}

/// Two or three strands through the numbered holes of a bar.
pub fn bar(strands: u8) -> Vec<Mark> {
    let holes = holes(strands);
    let strand = |y: &f64| cord(&polyline(&[at(2.6, *y), at(24.0, *y)]), PLAIN);
    let mut marks: Vec<Mark> = holes.iter().flat_map(strand).collect();
    marks.push(metal(rounded_rect(at(11.0, 0.6), 2.6, 16.8, 1.0)));
    marks.extend(holes.iter().flat_map(|y| [bead(at(8.4, *y), 2.3), bead(at(16.2, *y), 2.3)]));
    marks.extend(holes.iter().zip(1..).flat_map(|(y, number)| through(*y, number)));
    marks
}

/// A hole's number and the way through it.
fn through(y: f64, number: u8) -> Vec<Mark> {
    let number = Type::SMALL_STRONG.mark(&number.to_string(), at(0.2, y + 0.9), Anchor::Start);
    let way = [-0.5, 0.5].map(|aside| hidden(polyline(&[at(11.2, y + aside), at(13.4, y + aside)])));
    [vec![number], way.to_vec()].concat()
}

/// A chain cut through a link, which is lost.
pub fn chain() -> Vec<Mark> {
    let flat = |x: f64| ellipse(at(x, 9.6), 2.5, 1.7);
    let upright = |x: f64| rounded_rect(at(x - 1.7, 9.6 - 0.3), 3.4, 0.6, 0.3);
    let mut marks: Vec<Mark> = [2.8, 9.4].iter().flat_map(|x| wire(&flat(*x))).collect();
    marks.extend([6.1, 12.7].map(|x| metal(upright(x))));
    marks.push(ghost(flat(16.0)));
    marks.push(ghost(upright(19.3)));
    marks.extend(cutters(at(16.0, 7.9), 0.0));
    marks.extend(arrow(&[at(20.4, 12.6), at(21.8, 14.2), at(23.4, 15.0)]));
    marks
}
