//! Hatches: what tells beads apart where there is no colour.
//!
//! Fourteen marks, each readable at 4 mm; from the fifteenth bead on they come again, denser and in a
//! frame, then in two.

use std::f64::consts::FRAC_PI_4;

use crate::geometry::{Point, path};
use crate::paint::mark::{Fill, Mark, Rgb, Segment, Stroke};
use crate::paint::outline::{circle, line, mapped, polygon, polyline};

/// How many hatches there are before they come again.
pub const KINDS: usize = 14;
/// The kinds from the lightest to the densest, by the share of a round bead that is black.
const BY_DENSITY: [usize; KINDS] = [0, 13, 12, 5, 8, 3, 1, 2, 4, 9, 6, 10, 7, 11];
const QUARTER_TURN: f64 = std::f64::consts::FRAC_PI_2;
/// How much of the outline a hatch fills, so that the edge stays clear.
const INSET: f64 = 0.84;
/// More frames would fill the bead.
const MOST_FRAMES: u32 = 3;

/// The hatches of beads of these lightnesses: of those that come first the densest for the darkest.
pub fn by_tone(lightness: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..lightness.len()).collect();
    order.sort_by(|one, other| lightness[*other].total_cmp(&lightness[*one]));
    let mut hatches = vec![0; lightness.len()];
    for (round, beads) in order.chunks(KINDS).enumerate() {
        let kinds = BY_DENSITY.into_iter().filter(|kind| *kind < beads.len());
        beads.iter().zip(kinds).for_each(|(bead, kind)| hatches[*bead] = round * KINDS + kind);
    }
    hatches
}

/// The hatch of a number, upright on the page though the bead is turned: level lines stay
/// level, so that a bead on a branch has the mark that it has in the key.
#[must_use]
pub fn upright_hatch(index: usize, outline: &[Point], half: Point, turned: f64) -> Vec<Mark> {
    let on_page: Vec<_> = outline.iter().map(|point| point.turned(turned)).collect();
    hatch(index, &on_page, half).into_iter().map(|mark| mark_turned(mark, -turned)).collect()
}

fn mark_turned(mark: Mark, by: f64) -> Mark {
    match mark {
        Mark::Shape { outline, fill, stroke } => {
            Mark::Shape { outline: mapped(&outline, |point| point.turned(by)), fill, stroke }
        }
        other => other,
    }
}

/// The hatch of a number, inside a bead's outline about the origin. The first is empty.
fn hatch(index: usize, outline: &[Point], half: Point) -> Vec<Mark> {
    let round = u32::try_from(index / KINDS).unwrap_or(u32::MAX);
    let gap = (half.x.min(half.y) * 2.0 / (3.6 + 1.6 * f64::from(round))).max(0.3);
    let width = (gap * 0.2).clamp(0.06, 0.3);
    let frames = round.min(MOST_FRAMES);
    let frame = (0..frames).flat_map(|i| scaled(outline, 0.86 - 0.13 * f64::from(i))).collect::<Vec<_>>();
    let inside: Vec<Point> = outline.iter().map(|point| *point * (INSET - 0.13 * f64::from(frames))).collect();
    let hatch = plain_hatch(index % KINDS, &inside, half * (inside_share(frames)), gap, width);
    (frames > 0).then(|| drawn(frame, width)).into_iter().chain(hatch).collect()
}

/// How much smaller a hatch is inside its frames.
fn inside_share(frames: u32) -> f64 {
    1.0 - 0.15 * f64::from(frames)
}

fn plain_hatch(kind: usize, inside: &[Point], half: Point, gap: f64, width: f64) -> Vec<Mark> {
    let least = half.x.min(half.y);
    let lines = |angle: f64| parallels(inside, gap, angle);
    match kind {
        0 => Vec::new(),
        1 => vec![drawn(lines(0.0), width)],
        2 => vec![drawn(lines(QUARTER_TURN), width)],
        3 => vec![filled(dots(inside, gap, gap * 0.22))],
        4 => vec![drawn(lines(FRAC_PI_4), width)],
        5 => vec![drawn(upright_cross(least * 0.62), width * 1.8)],
        6 => vec![filled(scaled(inside, 0.6))],
        7 => vec![drawn([lines(0.0), lines(QUARTER_TURN)].concat(), width)],
        8 => vec![drawn(scaled(inside, 0.66), width * 1.4)],
        9 => vec![drawn(lines(-FRAC_PI_4), width)],
        10 => vec![filled(half_of(inside))],
        11 => vec![drawn([lines(FRAC_PI_4), lines(-FRAC_PI_4)].concat(), width)],
        12 => vec![drawn(chevrons(least * 0.5, gap * 1.3), width * 1.2)],
        _ => vec![filled(circle(Point::ORIGIN, least * 0.2)), drawn(circle(Point::ORIGIN, least * 0.5), width)],
    }
}

fn drawn(outline: Vec<Segment>, width: f64) -> Mark {
    Mark::Shape { outline, fill: None, stroke: Some(Stroke { round: true, ..Stroke::new(Rgb::BLACK, width) }) }
}

fn filled(outline: Vec<Segment>) -> Mark {
    Mark::Shape { outline, fill: Some(Fill::Flat(Rgb::BLACK, 0.9)), stroke: None }
}

fn scaled(outline: &[Point], by: f64) -> Vec<Segment> {
    polygon(&outline.iter().map(|point| *point * by).collect::<Vec<_>>())
}

/// An upright cross through the middle.
fn upright_cross(arm: f64) -> Vec<Segment> {
    let at = Point::new;
    [line(at(-arm, 0.0), at(arm, 0.0)), line(at(0.0, -arm), at(0.0, arm))].concat()
}

fn chevrons(arm: f64, gap: f64) -> Vec<Segment> {
    let corner = |x: f64, y: f64| Point::new(x + arm * (0.4 - 0.8 * libm::fabs(y)), arm * y);
    let chevron = |x: f64| polyline(&[corner(x, -1.0), corner(x, 0.0), corner(x, 1.0)]);
    [chevron(-gap / 2.0), chevron(gap / 2.0)].concat()
}

/// The part of an area on the side of greater y.
fn half_of(outline: &[Point]) -> Vec<Segment> {
    let lower: Vec<Point> = outline.iter().map(|point| Point::new(point.x, point.y.max(0.0))).collect();
    polygon(&lower)
}

fn dots(outline: &[Point], gap: f64, radius: f64) -> Vec<Segment> {
    let reach = farthest(outline);
    #[expect(clippy::cast_possible_truncation, reason = "a few dozen at most: the gap is a share of the reach")]
    let count = (reach / gap).ceil() as i32;
    let mut segments = Vec::new();
    for row in -count..=count {
        for column in -count..=count {
            let aside = if row % 2 == 0 { 0.0 } else { 0.5 };
            let at = Point::new((f64::from(column) + aside) * gap, f64::from(row) * gap * 0.87);
            if path::holds(outline, at) {
                segments.extend(circle(at, radius));
            }
        }
    }
    segments
}

/// Lines at an angle, a gap apart and one through the middle, cut off at an outline.
fn parallels(outline: &[Point], gap: f64, angle: f64) -> Vec<Segment> {
    let level: Vec<Point> = outline.iter().map(|point| point.turned(-angle)).collect();
    #[expect(clippy::cast_possible_truncation, reason = "a few dozen at most: the gap is a share of the reach")]
    let count = (farthest(outline) / gap).ceil() as i32;
    let row = |i: i32| crossings(&level, f64::from(i) * gap);
    let pieces = (-count..=count).flat_map(row);
    pieces.flat_map(|(from, to)| line(from.turned(angle), to.turned(angle))).collect()
}

fn farthest(outline: &[Point]) -> f64 {
    outline.iter().map(|point| point.length()).fold(0.0, f64::max)
}

/// The stretches of the level line at height `y` that lie inside an outline.
fn crossings(outline: &[Point], y: f64) -> Vec<(Point, Point)> {
    let mut cuts: Vec<f64> = path::crossings(outline, y).collect();
    cuts.sort_by(f64::total_cmp);
    // Each chunk holds exactly two; a closed outline is crossed an even number of times.
    cuts.chunks_exact(2).map(|pair| (Point::new(pair[0], y), Point::new(pair[1], y))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paint::outline::flattened;

    #[test]
    fn the_darkest_bead_has_the_densest_hatch_and_each_its_own() {
        assert_eq!(by_tone(&[0.2, 0.9, 0.5, 0.7]), [2, 0, 1, 3]);
        let many: Vec<f64> = (0..40).map(|at| f64::from(at * 7 % 40)).collect();
        let mut hatches = by_tone(&many);
        assert_eq!(hatches[0], 2 * KINDS + 11);
        hatches.sort_unstable();
        hatches.dedup();
        assert_eq!(hatches.len(), 40);
    }

    #[test]
    fn level_lines_stay_level_on_a_turned_bead() {
        let outline = flattened(&circle(Point::ORIGIN, 2.0));
        for turned in [0.3, QUARTER_TURN, 2.0, -1.0] {
            let hatch = upright_hatch(1, &outline, Point::new(2.0, 2.0), turned);
            let [Mark::Shape { outline: lines, .. }] = hatch.as_slice() else { panic!("one mark of lines") };
            let points: Vec<_> = flattened(lines).into_iter().map(|at| at.turned(turned)).collect();
            assert!(points.len() > 4 && points.chunks(2).all(|ends| (ends[0].y - ends[1].y).abs() < 1e-9));
        }
    }

    #[test]
    fn the_first_two_dozen_hatches_all_differ_and_stay_inside() {
        let outline = flattened(&circle(Point::ORIGIN, 2.0));
        let hatches: Vec<_> = (0..28).map(|index| hatch(index, &outline, Point::new(2.0, 2.0))).collect();
        for (index, one) in hatches.iter().enumerate() {
            assert!(hatches[..index].iter().all(|other| other != one), "{index}");
            for mark in one {
                let Mark::Shape { outline, .. } = mark else { panic!("hatches are shapes") };
                assert!(flattened(outline).iter().all(|point| point.length() <= 1.95), "{index}");
            }
        }
    }
}
