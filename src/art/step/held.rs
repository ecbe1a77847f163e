//! What keeps its place: stops, bars, chain, and beads along a ruler.

use super::own::{Props, RowRoom, clipped};
use crate::art::pen::{PLAIN, arrow, at, cord, cutters, filled, ghost, hidden, line, metal, tail, wire};
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb};
use crate::paint::outline::{ellipse, polyline, rounded_rect};
use crate::pattern::FindingKind;
use crate::steps::WithBeads;
use crate::steps::task::Pass;

/// Upper edge of a ruler.
pub const RULER: f64 = 14.0;
/// Where cord runs above one.
const LEVEL: f64 = 7.0;

/// A crimp pressed on one cord where the ruler says, and a bead that slides against it.
pub fn stop(slides: bool, own: Props<'_>) -> Vec<Mark> {
    let bead = own.row(0, RowRoom { count: 1, long: 8.0, broad: [1.6, 5.6] }).first(1);
    let mut marks = cord(&polyline(&[at(0.0, LEVEL), at(24.0, LEVEL)]), PLAIN);
    let [long, broad] = own.pressed_crimp(bead.scale);
    let half = if slides { 0.5 * long } else { 2.1 };
    marks.push(pressed(at(12.0, LEVEL), [2.0 * half, if slides { broad } else { 2.2 }], own));
    marks.extend(slides.then(|| bead.from(at(12.0 + half, LEVEL), 0.0)).into_iter().flatten());
    marks.extend((!slides).then(|| ghost(polyline(&[at(12.0, 9.2), at(12.0, RULER)]))));
    marks.extend(arrow(&[at(12.0, 1.2), at(12.0, 5.2)]));
    marks.extend(arrow(&[at(12.0, 12.8), at(12.0, 8.8)]));
    marks.extend(ruler());
    marks
}

/// A group of beads between two crimps that are pressed where they stand.
pub fn group(own: Props<'_>) -> Vec<Mark> {
    let beads = own.beads(0);
    let row = own.fitted(&beads, RowRoom { count: 16, long: 15.0, broad: [0.0, 6.0] }).within(15.0);
    let (level, half) = (9.0, 0.5 * row.length());
    let mut marks = cord(&polyline(&[at(0.0, level), at(24.0, level)]), PLAIN);
    marks.extend(row.about(at(12.0, level), 0.0));
    let crimp = own.pressed_crimp(row.scale);
    let off = half + 0.5 * crimp[0];
    for x in [12.0 - off, 12.0 + off] {
        marks.push(pressed(at(x, level), crimp, own));
        marks.extend(arrow(&[at(x, 2.8), at(x, 7.2)]));
        marks.extend(arrow(&[at(x, 15.2), at(x, 10.8)]));
    }
    marks
}

/// The piece's crimp pressed about a place on a level cord, so long and so broad.
fn pressed(middle: Point, [long, broad]: [f64; 2], own: Props<'_>) -> Mark {
    let outline = rounded_rect(middle - at(0.5 * long, 0.5 * broad), long, broad, 0.4);
    filled(outline, own.metal(own.crimp_at()))
}

/// Beads along a ruler, with what is measured among them.
pub fn measured(among: WithBeads, own: Props<'_>) -> Vec<Mark> {
    let room = if among == WithBeads::Crimps { 14.0 } else { 18.4 };
    let beads = if among == WithBeads::Crimps { own.beads(0) } else { own.bits(0).to_vec() };
    let row = own.fitted(&beads, RowRoom { count: 3, long: room, broad: [0.0, 5.0] }).within(room);
    let half = 0.5 * row.length();
    let crimp = own.pressed_crimp(row.scale);
    let out = if among == WithBeads::Crimps { crimp[0] } else { 0.0 };
    let (from, to) = (12.0 - half - out, 12.0 + half + out);
    let mut marks = cord(&polyline(&[at(0.0, LEVEL), at(24.0, LEVEL)]), PLAIN);
    marks.extend(row.about(at(12.0, LEVEL), 0.0));
    let letters = row.letters(12.0 - half, row.baseline(LEVEL));
    if among == WithBeads::Crimps {
        marks.extend([from + 0.5 * out, to - 0.5 * out].map(|x| pressed(at(x, LEVEL), crimp, own)));
    }
    let top =
        if [from, to].iter().any(|x| is_lettered(&letters, *x)) { row.baseline(LEVEL) + 0.5 } else { LEVEL + 2.0 };
    marks.extend(letters);
    marks.extend([from, to].map(|x| ghost(polyline(&[at(x, top), at(x, RULER)]))));
    if among != WithBeads::Knots {
        marks.extend(arrow(&[at(0.6, 2.6), at(6.4, 2.6)]));
        marks.extend(arrow(&[at(23.4, 2.6), at(17.6, 2.6)]));
    }
    marks.extend(ruler());
    marks
}

/// Whether a letter stands across an upright line, or close to it.
fn is_lettered(letters: &[Mark], x: f64) -> bool {
    const CLEAR: f64 = 0.3;
    letters.iter().any(|letter| match letter {
        Mark::Text(text) => (text.at.x - x).abs() < 0.5 * Type::SMALL_STRONG.width(&text.text) + CLEAR,
        _ => false,
    })
}

/// How long a ruler's line is.
const fn tick_length(step: u32) -> f64 {
    if step.is_multiple_of(5) { 1.9 } else { 1.1 }
}

/// A ruler below what is measured.
#[must_use]
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

/// The same upright, to the right of what is measured.
#[must_use]
pub fn ruler_upright() -> Vec<Mark> {
    let tick = |step: u32| {
        let y = 0.8 + 1.62 * f64::from(step);
        line(polyline(&[at(19.6, y), at(19.6 + tick_length(step), y)]))
    };
    let edge = filled(rounded_rect(at(19.6, 0.2), 3.6, 17.4, 0.3), Rgb::WHITE);
    std::iter::once(edge).chain((0..=10).map(tick)).collect()
}

/// How high in mm on the page the two or three holes or loops of a bar are.
pub const fn holes(strands: u8) -> &'static [f64] {
    if strands > 2 { &[3.6, 9.0, 14.4] } else { &[5.4, 12.6] }
}

/// Two or three strands through the numbered holes of a bar.
pub fn bar(strands: u8, own: Props<'_>) -> Vec<Mark> {
    let holes = holes(strands);
    let strand = |y: &f64| cord(&polyline(&[at(2.6, *y), at(24.0, *y)]), PLAIN);
    let mut marks: Vec<Mark> = holes.iter().flat_map(strand).collect();
    marks.push(metal(rounded_rect(at(11.0, 0.6), 2.6, 16.8, 1.0)));
    let broad = if strands > 2 { 4.8 } else { 6.0 };
    for (y, number) in holes.iter().zip(0..) {
        marks.extend(beside(number, [at(11.0, *y), at(13.6, *y)], (8.0, broad), own));
    }
    marks.extend(holes.iter().zip(1..).flat_map(|(y, number)| through(*y, number)));
    marks
}

/// The beads of a strand before what it shares with others and after it.
fn beside(strand: usize, [before, after]: [Point; 2], (long, broad): (f64, f64), own: Props<'_>) -> Vec<Mark> {
    let fit = |rows: usize| own.row(rows, RowRoom { count: 2, long, broad: [0.0, broad] });
    let scale = fit(2 * strand).scale.min(fit(2 * strand + 1).scale);
    let row = |row: usize| own.scaled(row, scale).within(long);
    [row(2 * strand).from(before, std::f64::consts::PI), row(2 * strand + 1).from(after, 0.0)].concat()
}

/// A hole's number and the way through it.
fn through(y: f64, number: u8) -> Vec<Mark> {
    let number = Type::SMALL_STRONG.mark(&number.to_string(), at(0.2, y + 0.9), Anchor::Start);
    let way = [-0.5, 0.5].map(|aside| hidden(polyline(&[at(11.2, y + aside), at(13.4, y + aside)])));
    [vec![number], way.to_vec()].concat()
}

/// A bead with several holes, the first of which a strand goes through, or the next as well.
pub fn bored(pass: Pass, own: Props<'_>) -> Vec<Mark> {
    let Some(kind) = own.cast.kinds.first().copied() else { return Vec::new() };
    let middle = at(14.0, 9.0);
    let (bead, scale) = own.kind(kind, middle, [8.0, 15.0]);
    let design = own.stencils.design();
    let across = design.beads[kind].bores.map(|bores| bores.across()).unwrap_or_default();
    let half = 0.5 * design.beads[kind].along.value() * scale;
    let mut marks = Vec::new();
    for (number, off) in across.iter().enumerate().take(if pass == Pass::First { 1 } else { 2 }) {
        let y = middle.y + off * scale;
        let is_new = number > 0 || pass == Pass::First;
        marks.extend(tail(&polyline(&[at(2.4, y), at(if is_new { 23.4 } else { 24.0 }, y)]), PLAIN));
    }
    marks.push(bead);
    for (number, off) in across.iter().enumerate() {
        let y = middle.y + off * scale;
        let named = Type::SMALL_STRONG.mark(&(number + 1).to_string(), at(0.1, y + 0.9), Anchor::Start);
        marks.push(named);
        if number > 1 || (number > 0 && pass == Pass::First) {
            continue;
        }
        marks.extend(crate::art::pen::through(&[(at(middle.x - half, y), at(middle.x + half, y))]));
        let row = own.scaled(2 * number, scale).within(middle.x - half - 2.6);
        marks.extend(row.from(at(middle.x - half, y), std::f64::consts::PI));
        let is_new = number > 0 || pass == Pass::First;
        let row = own.scaled(2 * number + 1, scale).within(24.0 - middle.x - half);
        marks.extend((!is_new).then(|| row.from(at(middle.x + half, y), 0.0)).into_iter().flatten());
        let from = at(middle.x + half + 0.8, y + 1.6 * off.signum());
        marks.extend(is_new.then(|| arrow(&[from, from + at(4.6, 0.0)])).into_iter().flatten());
    }
    vec![clipped(marks)]
}

/// What holds strands apart, its loops to the right of what they hang on, two or three of them as far apart as the drawing's.
pub fn spread(strands: u8, own: Props<'_>) -> Mark {
    let holes = holes(strands);
    let breadth = holes[holes.len() - 1] - holes[0] + 6.0;
    let of_box = |kind| own.of_kind(kind).is_some();
    let long = if of_box(FindingKind::BoxHalf) || of_box(FindingKind::SlideHalf) { 3.2 } else { 2.2 };
    metal(rounded_rect(at(6.2 - long, 9.0 - 0.5 * breadth), long, breadth, 1.0))
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
