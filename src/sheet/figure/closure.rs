//! The closure laid open: each side's findings along a line that leads away from the strands' ends.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::design::{Bar, Design, Finding, Part};
use crate::drape::fall;
use crate::geometry::{Extent, Point, path};
use crate::pattern::{FindingKind, Kind};
use crate::piece::Piece;
use crate::units::Length;

use super::extender::extender;
use super::side::{ClosureWay, Layers, mouths, reach, stretch};
use super::{Canvas, outline_box};

/// Room in mm of the piece that stays open between the two sides of an arch.
const OPENING: f64 = 8.0;
/// Chords into which an arch is cut to measure along it.
const CHORDS: usize = 240;
/// Room in mm between a loose chain and the strands beside it, by eye.
const CHAIN_ASIDE: f64 = 4.0;
/// Chords of the turn in which it comes over.
const TURN: u32 = 16;
/// Flattest arch: its height as a share of half the span.
const FLATTEST: f64 = 0.62;
/// Highest that is tried: its height as a share of its length, which no arch reaches.
const HIGHEST: f64 = 1.1;
/// How often what is between both is halved: to less than a float's last place.
const HALVINGS: u32 = 40;
/// Least half breadth in mm of what a closure is taken for.
const LEAST_HALF: f64 = 3.0;

/// A closure laid open: the way that each side takes, in the drape's frame.
pub struct OpenClosure {
    left: ClosureWay,
    right: ClosureWay,
    /// The way of the first strand, where its end goes through the ring in which it begins.
    strand: Vec<Point>,
}

/// The box round strands and closure as they hang, in the drape's frame.
#[must_use]
pub fn hanging_extent(piece: &Piece) -> Extent {
    let strands = outline_box(piece).unwrap_or_default();
    let closure = closing(piece).and_then(|closing| closing.extent(&piece.design));
    closure.map_or(strands, |closure| strands.and(closure))
}

/// Lays the closure open: in an arch above a necklace, but for an extender, which hangs; straight on beyond the ends of a bracelet,
/// upward from an earring.
pub fn closing(piece: &Piece) -> Option<OpenClosure> {
    let [first, last] = middles(piece)?;
    let closure = &piece.design.closure;
    let reaches = [reach(closure.left()), reach(closure.right())];
    match piece.design.heading.kind {
        _ if fall::falls(&piece.design) => in_front(piece, reaches),
        _ if piece.design.is_ring() => {
            let [left, right] = [(first, -1.0, reaches[0]), (last, 1.0, reaches[1])]
                .map(|(from, x, length)| ray(from, Point::new(x, 0.0), length));
            Some(OpenClosure::of(left, right, piece))
        }
        Kind::Necklace | Kind::Strap | Kind::Bracelet | Kind::Anklet => Some(arched(piece, [first, last], reaches)),
        Kind::Earrings => {
            let top = if closure.loops() { first.between(last, 0.5) } else { first };
            Some(OpenClosure::of(ray(top, Point::new(0.0, 1.0), reaches[0]), Vec::new(), piece))
        }
    }
}

/// A line from a point in a direction, with room beyond a length.
fn ray(from: Point, towards: Point, length: f64) -> Vec<Point> {
    vec![from, from + towards * (length + OPENING)]
}

/// Both sides in an arch from the strands' ends, but for an extender.
fn arched(piece: &Piece, [first, last]: [Point; 2], [left, right]: [f64; 2]) -> OpenClosure {
    let (design, closure) = (&piece.design, &piece.design.closure);
    let arch = arch(last.x - first.x, left.max(right) + OPENING / 2.0);
    let way = |parts| loose(parts, design).unwrap_or_else(|| risen(&arch, covered(parts, design)));
    let [up, over] = [closure.left(), closure.right()].map(way);
    let mirrored = over.iter().map(|point| Point::new(last.x - point.x, last.y + point.y)).collect();
    OpenClosure::of(up.iter().map(|point| first + *point).collect(), mirrored, piece)
}

/// What the ends of the first strand end in, where they are in front: towards each other where one goes through the
/// other, else straight down.
fn in_front(piece: &Piece, [left, right]: [f64; 2]) -> Option<OpenClosure> {
    let (strand, hung) = piece.design.strands.first().zip(piece.drape.strands.first())?;
    let (first, last) = (hung.joints.first()?.at, hung.joints.last()?.at);
    let down = Point::new(0.0, -1.0);
    let towards = match fall::meeting(&piece.design, strand, hung) {
        Some(meeting) if meeting != first => Point::towards((meeting - first).angle()),
        _ => down,
    };
    Some(OpenClosure::of(ray(first, towards, left), ray(last, down, right), piece))
}

/// The middle of the strands' first ends and of their last ones, which bars may hold apart.
fn middles(piece: &Piece) -> Option<[Point; 2]> {
    let (inner, outer) = piece.drape.strands.first().zip(piece.drape.strands.last())?;
    let [first, last] = inner.ends;
    let [other_first, other_last] = outer.ends;
    Some(if piece.design.are_held_apart() {
        [first.between(other_first, 0.5), last.between(other_last, 0.5)]
    } else {
        inner.ends
    })
}

/// How far a pin reaches out through the cone that covers it: cones stand upright over their strands.
fn covered(parts: &[Part], design: &Design) -> f64 {
    match parts {
        [pin, cone, ..] if design.findings[pin.finding].is_pin() => match design.findings[cone.finding].kind() {
            FindingKind::Cone => (pin.reach + cone.reach).value(),
            _ => 0.0,
        },
        _ => 0.0,
    }
}

/// The way of a side whose extender hangs: up along what is before it, to the side, and down clear of the strands.
fn loose(parts: &[Part], design: &Design) -> Option<Vec<Point>> {
    let chain = extender(parts, design)?;
    let (height, length) = (reach(parts) - chain.reach.value(), chain.reach.value() + OPENING);
    let beads = design.beads.iter().map(|bead| bead.across.value() / 2.0).fold(0.0, f64::max);
    let aside = half_breadth(design).max(beads) + CHAIN_ASIDE;
    let over = |step: u32| {
        let (sin, cos) = libm::sincos(FRAC_PI_2 * f64::from(step) / f64::from(TURN));
        Point::new(-aside * sin, height + 0.5 * aside * (cos - 1.0))
    };
    let foot = Point::new(-aside, height - length);
    Some(std::iter::once(Point::ORIGIN).chain((0..=TURN).map(over)).chain([foot]).collect())
}

/// An arch that begins so much higher, on an upright line.
fn risen(arch: &[Point], by: f64) -> Vec<Point> {
    let foot = (by > 0.0).then_some(Point::ORIGIN);
    foot.into_iter().chain(arch.iter().map(|point| *point + Point::new(0.0, by))).collect()
}

/// Half of the breadth of the broadest finding.
fn half_breadth(design: &Design) -> f64 {
    // Of a ring that says no more than what is inside it, the least does.
    let broadest = |finding: &Finding| {
        let bar = finding.bar().map(Bar::breadth);
        [finding.mouth(), finding.outside(), bar].into_iter().flatten().fold(Length::ZERO, Length::max)
    };
    design.findings.iter().map(|finding| broadest(finding).value() / 2.0).fold(LEAST_HALF, f64::max)
}

/// A quarter of an ellipse from the left end upright to the crown, at least as long as asked.
fn arch(span: f64, length: f64) -> Vec<Point> {
    let a = span / 2.0;
    let (mut low, mut high) = (FLATTEST * a, length.max(a) * HIGHEST);
    for _ in 0..HALVINGS {
        let middle = low.midpoint(high);
        *if path::length(&quarter(a, middle)) < length { &mut low } else { &mut high } = middle;
    }
    quarter(a, high)
}

fn quarter(a: f64, b: f64) -> Vec<Point> {
    let at = |step: usize| {
        let angle = PI - FRAC_PI_2 * step as f64 / CHORDS as f64;
        Point::new(a + a * libm::cos(angle), b * libm::sin(angle))
    };
    (0..=CHORDS).map(at).collect()
}

impl OpenClosure {
    fn of(left: Vec<Point>, right: Vec<Point>, piece: &Piece) -> Self {
        let [under, beneath] = mouths(&piece.design, piece.drape.strands.iter().map(Some));
        let passes = piece.drape.strands.first().filter(|_| piece.design.closure.goes_through());
        let strand = passes.into_iter().flat_map(|hung| &hung.joints).map(|joint| joint.at).collect();
        let [left, right] = [(left, under), (right, beneath)].map(|(line, mouth)| ClosureWay { line, mouth });
        Self { left, right, strand }
    }

    /// The box round the closure, in the drape's frame.
    pub fn extent(&self, design: &Design) -> Option<Extent> {
        let sides = [(&self.left.line, design.closure.left()), (&self.right.line, design.closure.right())];
        let lines = sides.into_iter().filter(|(_, parts)| !parts.is_empty());
        let points = lines.flat_map(|(line, parts)| stretch(line, 0.0, reach(parts)));
        Extent::of(points).map(|extent| extent.grown(half_breadth(design)))
    }

    /// Both sides' findings.
    pub fn layers(&self, canvas: Canvas<'_>) -> Layers {
        let closure = &canvas.design().closure;
        Layers::of([(&self.left, closure.left()), (&self.right, closure.right())], &self.strand, canvas)
    }
}
