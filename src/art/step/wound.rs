//! What is wound: a tassel over a card, and strands about one another.

use std::f64::consts::{PI, TAU};

use super::own::{Props, RowRoom};
use crate::art::pen::{arrow, at, cord, cutters, filled, line, tinted};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Rgb, Segment};
use crate::paint::outline::{circle, curve, ellipse, polyline, rounded_rect};

/// How long in mm the way of a strand is that turns about others.
const AROUND: f64 = 21.0;

/// Thread wound over a card, tied above and cut below; then its neck bound.
pub fn tassel() -> Vec<Mark> {
    let (upper, lower) = (4.4, 13.6);
    let turns = [2.0, 3.3, 4.6, 5.9, 7.2];
    let mut marks = cord(&circle(at(4.6, 2.2), 1.5), tinted());
    marks.extend(cord(&polyline(&[at(1.2, upper), at(8.0, upper)]), tinted()));
    marks.push(filled(rounded_rect(at(0.2, upper + 0.5), 8.8, lower - upper - 1.0, 0.3), Rgb::WHITE));
    marks.extend(turns.into_iter().flat_map(|x| cord(&polyline(&[at(x, upper - 0.8), at(x, lower)]), Rgb::WHITE)));
    marks.extend(cutters(at(8.2, lower), PI / 2.0));
    marks.extend(arrow(&[at(11.2, 7.4), at(15.6, 7.4)]));
    marks.extend(bound(19.8));
    marks
}

/// A finished tassel that hangs about a line.
fn bound(x: f64) -> Vec<Mark> {
    const FOOT: f64 = 17.4;
    let side = |sign: f64, share: f64| {
        let across = |half: f64| x + sign * share * half;
        [at(across(1.6), 4.6), at(across(1.1), 6.8), at(across(2.2), 9.6), at(across(3.4), FOOT)]
    };
    let (left, right) = (side(-1.0, 1.0), side(1.0, 1.0));
    let outline: Vec<Point> = left.into_iter().chain(right.into_iter().rev()).collect();
    let mut marks = cord(&circle(at(x, 2.4), 1.5), tinted());
    marks.push(filled(skirt(&outline), Rgb::WHITE));
    marks.extend([-0.6, -0.2, 0.2, 0.6].map(|share| line(curve(&side(1.0, share)))));
    marks.push(filled(ellipse(at(x, 4.9), 1.9, 1.5), Rgb::WHITE));
    marks.extend([6.4, 7.3].into_iter().flat_map(|y| cord(&polyline(&[at(x - 1.4, y), at(x + 1.4, y)]), tinted())));
    marks
}

/// Down one side, straight across the foot and up the other.
fn skirt(outline: &[Point]) -> Vec<Segment> {
    let (down, up) = outline.split_at(outline.len() / 2);
    let mut segments = curve(down);
    segments.push(Segment::Line(up[0]));
    segments.extend(curve(up).split_off(1));
    segments.push(Segment::Close);
    segments
}

/// Two or three strands turned about one another, whatever they end in.
pub fn twisted(strands: u8, own: Props<'_>) -> Vec<Mark> {
    const BROAD: f64 = 3.0;
    let mut beads: Vec<_> = (0..usize::from(strands)).flat_map(|strand| turning(strand, strands, BROAD, own)).collect();
    beads.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    let mut marks = cord(&polyline(&[at(0.4, 9.0), at(23.6, 9.0)]), Rgb::WHITE);
    marks.extend(beads.into_iter().map(|(_, bead)| bead));
    let round =
        [-1.3, -0.7, 0.0, 0.7, 1.3].map(|turn: f64| at(20.4 + 2.9 * libm::cos(turn), 9.0 + 5.8 * libm::sin(turn)));
    marks.extend(arrow(&round));
    marks
}

/// The beads of a strand that turns about others, each with how near it is.
fn turning(strand: usize, strands: u8, broad: f64, own: Props<'_>) -> Vec<(f64, Mark)> {
    let beads = own.beads(strand);
    let row = own.fitted(&beads, RowRoom { count: 16, long: f64::INFINITY, broad: [0.0, broad] });
    let way = |share: f64| {
        let turn = TAU * (1.25 * share + strand as f64 / f64::from(strands));
        let out = 2.6 * libm::sqrt(libm::sin(PI * share.clamp(0.0, 1.0)));
        (out * libm::cos(turn), at(4.2 + 14.6 * share, 9.0 + out * libm::sin(turn)))
    };
    let (mut share, mut marks) = (0.0, Vec::new());
    for bit in (0..beads.len()).cycle().map_while(|at| row.after(at).first(1).some()) {
        // As long along its turn as it is.
        let half = 0.5 * bit.length() / AROUND;
        let (near, middle) = way(share + half);
        share += 2.0 * half;
        if share > 1.0 {
            break;
        }
        let angle = (way(share).1 - way(share - 2.0 * half).1).angle();
        marks.extend(bit.about(middle, angle).into_iter().map(|mark| (near, mark)));
    }
    marks
}
