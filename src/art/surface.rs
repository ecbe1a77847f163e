//! What lies on a bead's surface: reflections, rims, grain, and where its hole comes out.

use super::bead::{BeadDrawing, area};
use super::light::toned;
use super::shape::{self, Extents};
use crate::design::Bores;
use crate::geometry::noise;
use crate::geometry::{Point, path};
use crate::paint::mark::{Fill, Mark, Rgb, Segment, Stroke};
use crate::paint::outline::{self, flattened, polygon};
use crate::pattern::{Drilled, Finish, Shape};

/// The coin's flat face inside its rim.
pub fn coin_face(bead: &BeadDrawing<'_>) -> Option<Mark> {
    let Extents { along, across, .. } = bead.size;
    let face = || outline::ellipse(Point::ORIGIN, along * 0.76, across * 0.76);
    let groove = Stroke { opacity: 0.55, ..Stroke::new(toned(bead.colour, -0.4), bead.edge) };
    (bead.bead.shape == Shape::Coin).then(|| Mark::Shape { outline: face(), fill: None, stroke: Some(groove) })
}

/// Light thrown back on the edge that is turned away: a sickle along it.
pub fn rim_light(bead: &BeadDrawing<'_>) -> Option<Mark> {
    const REACH: f64 = 0.9;
    const OUTER: f64 = 0.91;
    const BREADTH: f64 = 0.11;
    let away = bead.light.towards * -1.0;
    // Angle off the direction away from the light, of every second point of the edge.
    let off = |p: Point| Point::new(p.x * away.x + p.y * away.y, p.y * away.x - p.x * away.y).angle();
    let edge = flattened(&bead.outline).into_iter().step_by(2);
    let mut rim: Vec<(f64, Point)> = edge.map(|p| (off(p), p)).filter(|(off, _)| off.abs() < REACH).collect();
    rim.sort_by(|a, b| a.0.total_cmp(&b.0));
    let outer = rim.iter().map(|(_, point)| *point * OUTER);
    let share = |off: f64| OUTER - BREADTH * (1.0 - (off / REACH) * (off / REACH));
    let inner = rim.iter().rev().map(|(off, point)| *point * share(*off));
    let sickle: Vec<Point> = outer.chain(inner).collect();
    let fill = Fill::Flat(toned(bead.colour, 0.75), bead.shading.rim);
    let wanted = bead.shading.rim > 0.0 && !bead.is_cylinder() && rim.len() > 2;
    wanted.then(|| area(outline::closed_curve(&sickle), fill, None))
}

/// How much of its strength the reflection on a bulge has, along which it spreads.
const BULGING: f64 = 0.55;

/// The light's reflection: a spot, a line along a cylinder, a star on cut glass.
pub fn glint(bead: &BeadDrawing<'_>) -> Option<Mark> {
    let Extents { along, across, .. } = bead.size;
    let size = along.min(across) * bead.shading.glint_size;
    let y = bead.light.towards.y * across * 0.55;
    let (outline, strength) = match bead.bead.shape {
        _ if bead.finish == Finish::Faceted => (star(bead.towards_light(0.5), size, -bead.light.turned), 1.0),
        Shape::Barrel => (outline::ellipse(Point::new(0.0, y), along * 0.45, size * 0.45), BULGING),
        _ if bead.is_cylinder() => {
            let reach = along * 0.62;
            (outline::rounded_rect(Point::new(-reach, y - size * 0.4), reach * 2.0, size * 0.8, size), 1.0)
        }
        _ => (spot(bead, size), 1.0),
    };
    let fill = Fill::Flat(Rgb::WHITE, bead.shading.glint * strength);
    (bead.shading.glint > 0.0).then(|| area(outline, fill, None))
}

/// An oval spot on the way to the light, lying across that way.
fn spot(bead: &BeadDrawing<'_>, size: f64) -> Vec<Segment> {
    let (at, reach) = (bead.towards_light(0.52), bead.reach());
    let flat = outline::ellipse(Point::ORIGIN, size * 0.68, size * 1.15);
    let turn = Point::new(bead.light.towards.x / reach.x, bead.light.towards.y / reach.y).angle();
    outline::mapped(&flat, |point| at + point.turned(turn))
}

/// A star of four points, upright when it is turned so far.
fn star(at: Point, size: f64, turned: f64) -> Vec<Segment> {
    const WAIST: f64 = 0.2;
    let corner = |i: u32| {
        let reach = if i.is_multiple_of(2) { size } else { size * WAIST };
        at + Point::towards(turned + f64::from(i) * std::f64::consts::FRAC_PI_4) * reach
    };
    polygon(&(0..8).map(corner).collect::<Vec<_>>())
}

/// Stipple: on matte beads dark, where they turn from the light; on frosted ones white, all over.
pub fn grain(bead: &BeadDrawing<'_>, outline: &[Point]) -> Option<Mark> {
    let Extents { along, across, .. } = bead.size;
    let (tone, opacity) = match bead.finish {
        Finish::Matte => (toned(bead.colour, -0.6), 0.7),
        Finish::Frosted => (toned(bead.colour, 0.95), 0.75),
        _ => return None,
    };
    let shaded = |at: Point, chance: f64| {
        let towards = bead.light.towards;
        let facing = (at.x * towards.x / along + at.y * towards.y / across) * 0.9;
        bead.finish == Finish::Frosted || facing + chance * 0.7 < 0.25
    };
    let dots = dots(outline, along.min(across), shaded);
    (!dots.is_empty()).then(|| area(dots, Fill::Flat(tone, opacity), None))
}

/// Small squares on their corners inside an outline, about evenly but not in rows.
fn dots(outline: &[Point], least: f64, wanted: impl Fn(Point, f64) -> bool) -> Vec<Segment> {
    const INSIDE: f64 = 0.88;
    let (gap, radius) = ((least / 6.0).max(0.25), (least / 42.0).clamp(0.045, 0.1));
    let reach = outline.iter().map(|point| point.length()).fold(0.0, f64::max);
    let inside: Vec<Point> = outline.iter().map(|point| *point * INSIDE).collect();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few dozen: the gap is a share of it"
    )]
    let count = (2.0 * reach / gap).ceil().min(200.0) as u32;
    let place = |(row, column): (u32, u32)| {
        let jitter = Point::new(noise::both_ways(1, row, column), noise::both_ways(2, row, column)) * (gap * 0.42);
        Point::new(f64::from(column) * gap - reach, f64::from(row) * gap - reach) + jitter
    };
    let all = (0..=count).flat_map(|row| (0..=count).map(move |column| (row, column)));
    let shown = all.filter(|cell| {
        let at = place(*cell);
        path::holds(&inside, at) && wanted(at, noise::both_ways(3, cell.0, cell.1))
    });
    shown.flat_map(|cell| diamond(place(cell), radius)).collect()
}

fn diamond(at: Point, radius: f64) -> Vec<Segment> {
    let corner = |x: f64, y: f64| at + Point::new(x, y) * radius;
    polygon(&[corner(1.0, 0.0), corner(0.0, 1.0), corner(-1.0, 0.0), corner(0.0, -1.0)])
}

/// Dark places where the hole comes out: half rounds on flat ends, slits on the sides of a tip, a round in the front.
pub fn hole_ends(bead: &BeadDrawing<'_>) -> Option<Mark> {
    let shape = bead.bead.shape;
    let flat_ended = bead.bead.hangs()
        || !matches!(shape, Shape::Round | Shape::Oval | Shape::Rondelle | Shape::Bicone | Shape::Chip);
    let holes = bead.bead.bores.map_or_else(|| vec![0.0], Bores::across);
    let end = |side: f64| holes.iter().flat_map(|off| mouth(bead.size, side, *off)).collect::<Vec<_>>();
    let ends = match (bead.bead.drilled, shape) {
        (Drilled::Tip, _) => tip_ends(bead),
        (Drilled::Front, _) => {
            let [hole, x] = [bead.size.hole, shape::tip_hole(bead.size)];
            outline::ellipse(Point::new(x, 0.0), hole, hole)
        }
        (Drilled::Lengthwise, Shape::Drop) => end(-1.0),
        (Drilled::Lengthwise, _) => [end(-1.0), end(1.0)].concat(),
    };
    flat_ended.then(|| area(ends, Fill::Flat(toned(bead.colour, -0.65), 1.0), None))
}

/// The half round of a hole at one end or the other, so far off the middle.
fn mouth(Extents { along, across, hole }: Extents, side: f64, off: f64) -> Vec<Segment> {
    let hole = hole.min(across * 0.6);
    let depth = (hole * 0.4).min(along * 0.12);
    let at = |x: f64, y: f64| Point::new(side * (along - x * depth), off + y * hole);
    let round = Segment::Curve(at(1.33, -1.0), at(1.33, 1.0), at(0.0, 1.0));
    vec![Segment::Move(at(0.0, -1.0)), round, Segment::Close]
}

/// The two mouths of a hole across the tip, seen from the side.
fn tip_ends(bead: &BeadDrawing<'_>) -> Vec<Segment> {
    let (x, hole) = (shape::tip_hole(bead.size), bead.size.hole);
    let near = flattened(&bead.outline).into_iter().filter(|at| (at.x - x).abs() < hole);
    let half = near.map(|at| at.y.abs()).fold(hole * 0.5, f64::max);
    let mouth = |side: f64| outline::ellipse(Point::new(x, side * (half - hole * 0.3)), hole * 0.7, hole * 0.26);
    [mouth(-1.0), mouth(1.0)].concat()
}
