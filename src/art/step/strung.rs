//! Stringing: beads laid out and threaded, what keeps them on, slack drawn up, tails among beads.

use std::f64::consts::PI;

use super::crimp::{round_ring, sleeve};
use super::held::{holes, spread};
use super::own::{CRIMP, Props, RowRoom, clipped};
use super::tight;
use crate::art::pen::{
    PLAIN, arrow, at, cord, cord_over, cutters, filled, ghost, legs, line, metal, stretch, tail, tails, through, wire,
};
use crate::design::{Bead, Index};
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb, Segment};
use crate::paint::outline::{arc, circle, curve, ellipse, polygon, polyline, rounded_rect};
use crate::pattern::FindingKind;
use crate::steps::Slack;

/// Where cord runs.
const LEVEL: f64 = 9.0;
/// Most kinds of bead that are laid out in one column, and in all.
const COLUMN: usize = 4;
const KINDS: usize = 10;

/// The kinds of bead on a board, each in a row behind its letter, in one column or two.
pub fn laid_out(own: Props<'_>) -> Vec<Mark> {
    let kinds = &own.cast.kinds[..own.cast.kinds.len().min(KINDS)];
    let columns = if kinds.len() > COLUMN { 2 } else { 1 };
    let rows = kinds.len().div_ceil(columns).max(1);
    let (apart, long) = ((16.4 / rows as f64).min(7.2), if columns > 1 { 7.4 } else { 17.4 });
    let scale = own.common(kinds, [0.5 * long, (apart - 0.9).min(4.6)]);
    let row = |(place, kind): (usize, &Index<Bead>)| {
        let left = 2.4 + 11.6 * (place / rows) as f64;
        let level = LEVEL + apart * ((place % rows) as f64 - 0.5 * (rows - 1) as f64);
        laid(*kind, at(left, level), long, (own, scale))
    };
    let board = filled(rounded_rect(at(0.2, 0.4), 23.6, 17.2, 1.2), Rgb::WHITE);
    std::iter::once(board).chain(kinds.iter().enumerate().flat_map(row)).collect()
}

/// A letter, and behind it as many of its beads as one piece has or there is room for.
fn laid(kind: Index<Bead>, from: Point, long: f64, (own, scale): (Props<'_>, f64)) -> Vec<Mark> {
    const MOST: f64 = 6.0;
    const BETWEEN: f64 = 0.4;
    let design = own.stencils.design();
    let (bead, all) = (&design.beads[kind], design.counts()[kind]);
    let each = bead.along.value() * scale + BETWEEN;
    let place = |number: u32| from + at(2.0 + each * (f64::from(number) + 0.5), 0.0);
    let letter = Type::SMALL_STRONG.mark(&bead.letter, from + at(0.0, 1.0), Anchor::Middle);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most six")]
    let count = ((long / each).floor()).clamp(1.0, MOST) as u32;
    let beads = (0..count.min(all)).map(|number| own.stencils.bead(kind, place(number), 0.0, scale));
    std::iter::once(letter).chain(beads).collect()
}

/// Beads on a cord, and one that its needle or its bare end goes through.
pub fn threaded(has_needle: bool, own: Props<'_>) -> Vec<Mark> {
    let row = own.row(0, RowRoom { count: 3, long: 13.8, broad: [1.8, 6.4] });
    let strung = row.within(9.3);
    let next = row.after(strung.count()).first(1);
    let count = if own.cast.legs > 1 { 2 } else { 1 };
    let mut marks = if has_needle { needle(count) } else { tails(&level(0.0, 22.6), count) };
    marks.extend(strung.from(at(0.3, LEVEL), 0.0));
    marks.extend(next.about(at(16.2, LEVEL), 0.0));
    let half = 0.5 * next.length();
    marks.extend(through(&[(at(16.2 - half, LEVEL), at(16.2 + half, LEVEL))]));
    let baseline = strung.baseline(LEVEL).max(next.baseline(LEVEL));
    marks.extend(strung.letters(0.3, baseline));
    marks.extend(next.letters(16.2 - half, baseline));
    let above = (0.5 * strung.broadest().max(next.broadest()) - 3.2).clamp(0.0, 2.8);
    marks.extend(arrow(&[at(19.4, 4.2), at(16.0, 3.6), at(11.4, 4.2)].map(|point| point - at(0.0, above))));
    vec![clipped(marks)]
}

/// A cord, or both legs of a doubled one, in the eye of a needle, which goes on to the right.
fn needle(count: u8) -> Vec<Mark> {
    let shaft =
        [at(10.4, LEVEL - 0.55), at(13.0, LEVEL - 0.4), at(24.2, LEVEL), at(13.0, LEVEL + 0.4), at(10.4, LEVEL + 0.55)];
    let mut marks = legs(&level(0.0, 9.6), count);
    marks.push(metal(polygon(&shaft)));
    marks.push(filled(ellipse(at(11.3, LEVEL), 0.6, 0.25), Rgb::WHITE));
    marks.extend(cord(&curve(&[at(9.4, LEVEL), at(10.6, LEVEL - 0.1), at(11.2, LEVEL)]), PLAIN));
    marks
}

/// A crimp threaded onto a cord's end.
pub fn on_end(own: Props<'_>) -> Vec<Mark> {
    let long = own.crimp_length();
    let tube = |x: f64| rounded_rect(at(x, LEVEL - 0.5 * CRIMP), long, CRIMP, 0.5);
    let mut marks = tail(&level(0.0, 21.4), PLAIN);
    marks.push(metal(tube(8.0)));
    marks.extend(through(&[(at(8.0, LEVEL), at(8.0 + long, LEVEL))]));
    marks.push(ghost(tube(23.2 - long)));
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

/// A spring on a cord, near its end.
pub fn stopped() -> Vec<Mark> {
    let mut marks = tail(&level(24.0, 0.6), PLAIN);
    marks.extend([7.2, 8.3, 9.4, 10.5, 11.6].iter().flat_map(|x| wire(&ellipse(at(*x, LEVEL), 0.7, 2.2))));
    marks.extend([-1.0, 1.0].iter().flat_map(|side| wire(&circle(at(9.4 + side * 3.0, LEVEL - 3.4), 1.2))));
    marks.extend(arrow(&[at(4.4, 14.4), at(7.4, 14.4), at(11.0, 13.0)]));
    marks
}

/// The tail that comes back through a crimp pulled, so that the loop gets shorter: from bare cord, from beads that are pushed
/// up, or through these.
pub fn drawn_up(slack: Slack, own: Props<'_>) -> Vec<Mark> {
    const TUBE: f64 = 10.8;
    let long = own.crimp_length();
    let ring = TUBE + long + 6.4;
    let row = own.beside_crimp(2, 7.6);
    let beads = if slack == Slack::Bare { row.first(0) } else { row };
    let left = TUBE - beads.length();
    let out = match slack {
        Slack::Bare | Slack::Beads => [at(TUBE, 9.7), at(TUBE - 1.6, 11.2), at(TUBE - 4.2, 14.4)],
        Slack::Through => [at(TUBE, 9.7), at(left, 9.7), at(left - 1.8, 11.8)],
    };
    let upper = [at(0.0, 8.3), at(6.0, 8.3), at(TUBE, 8.3), at(TUBE + long, 8.3)];
    let round = [at(-4.2, -1.8), at(-2.0, -1.8), at(-0.8, 0.0), at(-2.0, 1.8), at(-4.2, 1.8)];
    let back = [at(TUBE + long, 9.7)];
    let way = curve(&[upper.as_slice(), &round.map(|point| at(ring, LEVEL) + point), &back, &out].concat());
    let mut marks = tail(&way, PLAIN);
    marks.extend(round_ring(&way, wire(&circle(at(ring, LEVEL), 2.4)), own));
    marks.extend(own.crimp_between([TUBE, TUBE + long], LEVEL));
    marks.extend(beads.from(at(TUBE, LEVEL), PI));
    if slack == Slack::Through {
        marks.extend(through(&[8.3, 9.7].map(|y| (at(left, y), at(TUBE, y)))));
    }
    if slack != Slack::Bare {
        marks.extend(arrow(&[at(0.8, 3.6), at(4.0, 3.2), at(8.4, 3.6)]));
    }
    let end = out[2];
    marks.extend(arrow(
        &[end + at(-1.0, 0.6), end + at(-2.4, 2.0), end + at(-4.2, 3.0)].map(|point| at(point.x.max(0.6), point.y)),
    ));
    vec![clipped(marks)]
}

/// A bead that goes over a cord and the tail beside it, towards their crimp.
pub fn over_tail(own: Props<'_>) -> Vec<Mark> {
    let bead = own.row(0, RowRoom { count: 1, long: 7.0, broad: [2.9, 6.0] }).first(1);
    let half = 0.5 * bead.length();
    let middle = at(6.8, LEVEL);
    let mut marks = [
        cord(&polyline(&[at(0.0, 8.3), at(16.0, 8.3)]), PLAIN),
        closed_loop(17.9, wire(&circle(at(21.4, LEVEL), 2.4)), own),
    ]
    .concat();
    marks.extend(tail(&polyline(&[at(16.0, 9.7), at((middle.x - half - 1.8).max(0.6), 9.7)]), PLAIN));
    marks.extend(tight::pressed(at(14.2, LEVEL)));
    marks.extend(bead.about(middle, 0.0));
    marks.extend(through(&[8.3, 9.7].map(|y| (at(middle.x - half, y), at(middle.x + half, y)))));
    marks.extend(arrow(&[at(2.0, 3.6), at(5.0, 3.2), at(9.6, 3.6)]));
    vec![clipped(marks)]
}

/// A loop about a middle, in its guard where it has one, and the ring that it goes round.
fn closed_loop(middle: f64, ring: Vec<Mark>, own: Props<'_>) -> Vec<Mark> {
    const LONG: f64 = 2.2;
    if own.of_kind(FindingKind::WireGuard).is_none() {
        return [ring, cord(&ellipse(at(middle, LEVEL), LONG, 1.2), PLAIN)].concat();
    }
    let broad = (LONG, 1.7);
    let guard = |from: f64, to: f64| sleeve(&arc(at(middle, LEVEL), broad, from, to));
    let cord = cord(&ellipse(at(middle, LEVEL), broad.0, broad.1), PLAIN);
    [cord, guard(-0.6 * PI, 0.6 * PI), ring, guard(-0.6 * PI, 0.0)].concat()
}

/// A tail cut off where it leaves the beads.
pub fn tail_out(own: Props<'_>) -> Vec<Mark> {
    const PRESSED: f64 = 15.4;
    const BETWEEN: f64 = 1.6;
    let row = own.row(0, RowRoom { count: 2, long: 10.6, broad: [2.2, 5.4] });
    let within = row.within(6.4);
    let beside = row.first(within.count().max(1));
    let out = PRESSED - beside.length();
    let mut marks =
        tail(&curve(&[at(out + 1.4, LEVEL), at(out - 1.0, 8.6), at(out - 2.2, 6.6), at(out - 2.8, 3.2)]), PLAIN);
    marks.extend(cord(&level(0.0, 16.0), PLAIN));
    marks.extend(closed_loop(19.2, wire(&circle(at(22.2, LEVEL), 1.7)), own));
    marks.extend(beside.from(at(PRESSED, LEVEL), PI));
    marks.extend(row.after(beside.count()).within(out - BETWEEN).from(at(out - BETWEEN, LEVEL), PI));
    marks.extend(tight::pressed(at(17.0, LEVEL)));
    marks.extend(cutters(at(out - 1.9, 6.9), -0.45 * PI));
    vec![clipped(marks)]
}

/// A knot slid into the bead beside it.
pub fn knot_hidden(own: Props<'_>) -> Vec<Mark> {
    let bead = own.row(0, RowRoom { count: 1, long: 10.0, broad: [3.6, 9.0] }).first(1);
    let (middle, half) = (at(15.4, LEVEL), 0.5 * bead.length());
    let mut marks = cord(&level(0.0, 24.0), PLAIN);
    marks.extend(tight::knot(at(5.2, LEVEL), 1.4));
    marks.extend(bead.about(middle, 0.0));
    marks.push(ghost(circle(middle, 1.4)));
    marks.extend(through(&[(middle - at(half, 0.0), middle + at(half, 0.0))]));
    marks.extend(arrow(&[at(5.2, 5.4), at(8.0, 3.2), at(11.4, 3.4)]));
    marks
}

/// Groups of beads along a cord: as much bare cord between them.
pub fn spaced(own: Props<'_>) -> Vec<Mark> {
    let group = own.row(0, RowRoom { count: 16, long: 5.2, broad: [0.0, 5.0] });
    let (middles, half) = ([2.8, 12.0, 21.2], 0.5 * group.length());
    let mut marks = cord(&level(0.0, 24.0), PLAIN);
    marks.extend(middles.iter().flat_map(|x| group.about(at(*x, LEVEL), 0.0)));
    for pair in middles.windows(2) {
        let (from, to) = (pair[0] + half, pair[1] - half);
        let middle = from.midpoint(to);
        marks.extend([from, to].map(|x| ghost(polyline(&[at(x, LEVEL + 0.8), at(x, 14.8)]))));
        marks.extend([from, to].iter().flat_map(|x| arrow(&[at(middle, 13.8), at(*x, 13.8)])));
        marks.extend([-0.35, 0.35].map(|y| line(polyline(&[at(middle - 0.7, 4.6 + y), at(middle + 0.7, 4.6 + y)]))));
    }
    marks
}

/// The loops of two or three strands in those of a bar, side by side in their order.
pub fn end_bar(strands: u8, own: Props<'_>) -> Vec<Mark> {
    let strand = |(y, number): (&f64, u8)| {
        let number = Type::SMALL_STRONG.mark(&number.to_string(), at(0.0, y + 0.9), Anchor::Start);
        let eye = wire(&circle(at(7.4, *y), 1.3));
        let round = ellipse(at(10.4, *y), 2.6, 1.0);
        let on = cord(&polyline(&[at(13.6, *y), at(24.0, *y)]), PLAIN);
        let loops = [cord(&round, PLAIN), eye, cord_over(&stretch(&round, 1, 2), PLAIN)];
        [vec![number], loops.concat(), on, tight::pressed(at(14.2, *y))].concat()
    };
    let mut marks: Vec<Mark> = holes(strands).iter().zip(1..).flat_map(strand).collect();
    marks.push(spread(strands, own));
    marks
}

/// A level line at the cord's height.
fn level(from: f64, to: f64) -> Vec<Segment> {
    polyline(&[at(from, LEVEL), at(to, LEVEL)])
}
