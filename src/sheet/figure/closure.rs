//! The closure laid open: each side's findings along a line that leads away from the strands' ends.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Bar, Design, Finding, Index, Part, Worn};
use crate::drape::fall;
use crate::geometry::{Extent, Point, path};
use crate::paint::mark::Mark;
use crate::pattern::{FindingKind, Kind};
use crate::units::Length;

use super::extender::extender;
use super::fastened::lies_over_closure;
use super::{Frame, outline_box};

/// Room in mm of the piece that stays open between the two sides of an arch.
const OPENING: f64 = 8.0;
/// Chords into which an arch is cut to measure along it.
const CHORDS: usize = 240;
/// Room between a loose chain and the strands beside it, by eye.
const ASIDE: f64 = 4.0;
/// Chords of the turn in which it comes over.
const TURN: u32 = 16;
/// Flattest arch: its height as a share of half the span.
const FLATTEST: f64 = 0.62;

/// A closure laid open: the line that each side follows, in the drape's frame.
pub struct Closing {
    left: Vec<Point>,
    right: Vec<Point>,
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
pub fn closing(piece: &Piece) -> Option<Closing> {
    let [first, last] = middles(piece)?;
    let closure = &piece.design.closure;
    let (left, right) = (reach(closure.left()), reach(closure.right()));
    let ray = |from: Point, towards: Point, length: f64| vec![from, from + towards * (length + OPENING)];
    if fall::falls(&piece.design) {
        return in_front(piece, ray, [left, right]);
    }
    if piece.design.is_ring() {
        let [left, right] =
            [(first, -1.0, left), (last, 1.0, right)].map(|(from, x, length)| ray(from, Point::new(x, 0.0), length));
        return Some(Closing { left, right });
    }
    Some(match piece.design.heading.kind {
        Kind::Necklace | Kind::Strap | Kind::Bracelet | Kind::Anklet => {
            let arch = arch(last.x - first.x, left.max(right) + OPENING / 2.0);
            let way =
                |parts| loose(parts, &piece.design).unwrap_or_else(|| risen(&arch, covered(parts, &piece.design)));
            let [up, over] = [closure.left(), closure.right()].map(way);
            let mirrored = over.iter().map(|point| Point::new(last.x - point.x, last.y + point.y)).collect();
            Closing { left: up.iter().map(|point| first + *point).collect(), right: mirrored }
        }
        Kind::Earrings => {
            let top = if closure.loops() { first.between(last, 0.5) } else { first };
            Closing { left: ray(top, Point::new(0.0, 1.0), left), right: Vec::new() }
        }
    })
}

/// What the ends of the first strand end in, where they are in front: towards each other where one goes through the
/// other, else straight down.
fn in_front(piece: &Piece, ray: impl Fn(Point, Point, f64) -> Vec<Point>, [left, right]: [f64; 2]) -> Option<Closing> {
    let (strand, hung) = piece.design.strands.first().zip(piece.drape.strands.first())?;
    let (first, last) = (hung.joints.first()?.at, hung.joints.last()?.at);
    let down = Point::new(0.0, -1.0);
    let towards = match fall::meeting(&piece.design, strand, hung) {
        Some(meeting) if meeting != first => Point::towards((meeting - first).angle()),
        _ => down,
    };
    Some(Closing { left: ray(first, towards, left), right: ray(last, down, right) })
}

/// The middle of the strands' first ends and of their last ones, which bars may hold apart.
fn middles(piece: &Piece) -> Option<[Point; 2]> {
    let (inner, outer) = piece.drape.strands.first().zip(piece.drape.strands.last())?;
    let [first, last] = inner.ends;
    let [other_first, other_last] = outer.ends;
    let apart = piece.design.strands.last().is_some_and(|strand| strand.aside.value() > 0.0);
    Some(if apart { [first.between(other_first, 0.5), last.between(other_last, 0.5)] } else { inner.ends })
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

/// The way of a side whose extender hangs: up along what is before it, over, and down clear of the strands.
fn loose(parts: &[Part], design: &Design) -> Option<Vec<Point>> {
    let chain = extender(parts, design)?;
    let (height, length) = (reach(parts) - chain.reach.value(), chain.reach.value() + OPENING);
    let beads = design.beads.iter().map(|bead| bead.across.value() / 2.0).fold(0.0, f64::max);
    let radius = (half_breadth(design).max(beads) + ASIDE) / 2.0;
    let over = |step: u32| {
        let turn = PI * f64::from(step) / f64::from(TURN);
        Point::new(radius * (libm::cos(turn) - 1.0), height + radius * libm::sin(turn))
    };
    let foot = Point::new(-2.0 * radius, height - length);
    Some(std::iter::once(Point::ORIGIN).chain((0..=TURN).map(over)).chain([foot]).collect())
}

/// An arch that begins so much higher, on an upright line.
fn risen(arch: &[Point], by: f64) -> Vec<Point> {
    let foot = (by > 0.0).then_some(Point::ORIGIN);
    foot.into_iter().chain(arch.iter().map(|point| *point + Point::new(0.0, by))).collect()
}

/// Half of the breadth of the broadest finding.
fn half_breadth(design: &Design) -> f64 {
    let broadest = |finding: &Finding| {
        let bar = finding.bar().map(Bar::breadth);
        [finding.mouth(), finding.outside(), bar].into_iter().flatten().fold(Length::ZERO, Length::max)
    };
    design.findings.iter().map(|finding| broadest(finding).value() / 2.0).fold(3.0, f64::max)
}

fn reach(parts: &[Part]) -> f64 {
    parts.iter().map(|part| part.reach.value()).sum()
}

/// A quarter of an ellipse from the left end upright to the crown, at least as long as asked.
fn arch(span: f64, length: f64) -> Vec<Point> {
    let a = span / 2.0;
    let (mut low, mut high) = (FLATTEST * a, (length.max(a)) * 1.1);
    for _ in 0..40 {
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

/// The stretch of a line between two distances.
fn stretch(line: &[Point], from: f64, to: f64) -> Vec<Point> {
    let steps = ((to - from) / 0.5).ceil().max(1.0);
    let at = |step: f64| path::along(line, from + (to - from) * step / steps);
    (0..=steps as usize).filter_map(|step| at(step as f64)).collect()
}

impl Closing {
    /// The box round the closure, in the drape's frame.
    pub fn extent(&self, design: &Design) -> Option<Extent> {
        let sides = [(&self.left, design.closure.left()), (&self.right, design.closure.right())];
        let lines = sides.into_iter().filter(|(_, parts)| !parts.is_empty());
        let points = lines.flat_map(|(line, parts)| stretch(line, 0.0, reach(parts)));
        Extent::of(points).map(|extent| extent.grown(half_breadth(design)))
    }

    /// Both sides' findings.
    pub fn layers(&self, design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Layers {
        let closure = &design.closure;
        let sides = [(self.left.as_slice(), closure.left()), (&self.right, closure.right())];
        Layers::of(sides, design, frame, stencils)
    }
}

/// What is drawn of a closure: what strands lie before, and what lies before them.
#[derive(Default)]
pub struct Layers {
    /// The first end's side, where the strand's last end goes through its ring; both sides where cord is tied to them.
    pub behind: Vec<Mark>,
    /// All else, and of that ring the half that lies before the strand.
    pub before: Vec<Mark>,
}

impl Layers {
    /// Strands between what lies behind and before them.
    pub fn around(self, strands: Vec<Mark>) -> Vec<Mark> {
        [self.behind, strands, self.before].concat()
    }

    /// Both sides, each with the line that leads away from the strands' ends.
    pub fn of(
        [(left, first), (right, last)]: [(&[Point], &[Part]); 2],
        design: &Design,
        frame: &Frame,
        stencils: &mut Stencils<'_>,
    ) -> Self {
        let half = passed(left, first, design, frame, stencils).map(|half| Mark::ornament(vec![half]));
        let figure = |label: &str, marks: Vec<Mark>| (!marks.is_empty()).then(|| Mark::figure(label, marks));
        let first = figure("first side of the closure", side(left, first, design, frame, stencils));
        let last = figure("last side of the closure", side(right, last, design, frame, stencils));
        let drawn = |marks: [Option<Mark>; 3]| marks.into_iter().flatten().collect();
        if lies_over_closure(design) {
            Self { behind: drawn([first, last, None]), before: drawn([half, None, None]) }
        } else if half.is_some() {
            Self { behind: drawn([first, None, None]), before: drawn([half, last, None]) }
        } else {
            Self { behind: Vec::new(), before: drawn([first, last, None]) }
        }
    }
}

/// A closure drawn joined: before the strands, or behind them where cord is tied to it.
pub fn layered(marks: Vec<Mark>, design: &Design) -> Layers {
    let (behind, before) = if lies_over_closure(design) { (marks, Vec::new()) } else { (Vec::new(), marks) };
    Layers { behind, before }
}

/// The half that lies before the strand of a ring through which its last end goes; nothing where not all of that side is
/// drawn.
fn passed(line: &[Point], parts: &[Part], design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Option<Mark> {
    let closure = &design.closure;
    let is_passed = matches!(closure.open(), Some(Worn::Through(_))) && parts.len() == closure.left().len();
    let ring = parts.last().filter(|_| is_passed && !line.is_empty())?;
    let next = reach(parts);
    let side = Side { line, design, frame, stencils, marks: Vec::new() };
    let (from, outward) = side.way_of(ring.finding, next - ring.reach.value(), next);
    Some(side.stencils.lower_half(ring.finding, from, outward, frame.scale))
}

/// The findings of one side laid straight along x from the frame's origin.
pub fn laid_side(parts: &[Part], design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let line = [Point::ORIGIN, Point::new(reach(parts) + OPENING, 0.0)];
    side(&line, parts, design, frame, stencils)
}

/// The findings of one side along a line that leads away from the strands' ends; none where there is no
/// line, as on the side of an earring on which it does not hang.
pub fn side(line: &[Point], parts: &[Part], design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    if line.is_empty() {
        return Vec::new();
    }
    let mut drawn = Side { line, design, frame, stencils, marks: Vec::new() };
    let mut at = 0.0;
    for (index, part) in parts.iter().enumerate() {
        let next = at + part.reach.value();
        let kind = |index: usize| parts.get(index).map(|part| design.findings[part.finding].kind());
        match (kind(index), kind(index + 1)) {
            (Some(FindingKind::Chain), _) => drawn.chain(part.finding, at, next),
            (Some(FindingKind::EndBar | FindingKind::BoxHalf | FindingKind::SlideHalf), _) => {
                drawn.across(part.finding, at)
            }
            (Some(FindingKind::EyePin), Some(FindingKind::Cone | FindingKind::BeadCap)) => {
                drawn.covered_pin(at, part, &parts[index + 1]);
            }
            (Some(FindingKind::EyePin), _) => drawn.pin(at, part),
            (Some(FindingKind::Cone | FindingKind::BeadCap), _)
                if index > 0 && design.findings[parts[index - 1].finding].is_pin() => {}
            _ => drawn.straight(part.finding, at, next),
        }
        at = next;
    }
    drawn.marks
}

/// One side of the closure as it is drawn.
struct Side<'a, 's, 'd> {
    line: &'a [Point],
    design: &'a Design,
    frame: &'a Frame,
    stencils: &'s mut Stencils<'d>,
    marks: Vec<Mark>,
}

impl Side<'_, '_, '_> {
    /// Where a stretch starts on the page, and its direction there.
    fn way(&self, at: f64, next: f64) -> (Point, f64) {
        let on = |distance| path::along(self.line, distance).map(|point| self.frame.page(point)).unwrap_or_default();
        (on(at), (on(next) - on(at)).angle())
    }

    fn chain(&mut self, finding: Index<Finding>, at: f64, next: f64) {
        let line: Vec<_> = stretch(self.line, at, next).into_iter().map(|point| self.frame.page(point)).collect();
        self.marks.push(self.stencils.chain(finding, &line, self.frame.scale));
    }

    /// A pin with nothing on it, cut and closed with a loop at once.
    fn pin(&mut self, at: f64, pin: &Part) {
        let wire = self.design.findings[pin.finding].wire().map_or(0.0, |wire| wire.value());
        let (from, outward) = self.way(at - wire / 2.0, at + pin.reach.value());
        self.marks.push(self.stencils.pin(pin.finding, from, outward, self.frame.scale, pin.reach.value() + wire));
    }

    /// A pin from the strands' loops out through a cone or cap, which covers it and the strands' ends.
    fn covered_pin(&mut self, at: f64, pin: &Part, cone: &Part) {
        let cover = self.design.findings[cone.finding].length().unwrap_or_default();
        let Some(sizes) = self.design.findings[pin.finding].pin() else { return };
        let reach = pin.reach + cone.reach + sizes.wire;
        let (from, outward) = self.way(at, at + reach.value());
        let on =
            |distance: crate::units::Length| from + Point::towards(outward) * (distance.value() * self.frame.scale);
        let eye = on(sizes.wire * -0.5);
        let mouth = on(sizes.eye() - sizes.wire + cone.reach - cover);
        self.marks.push(self.stencils.pin(pin.finding, eye, outward, self.frame.scale, reach.value()));
        self.marks.push(self.stencils.finding(cone.finding, mouth, outward, self.frame.scale));
    }

    /// A bar, square to the line where it stands.
    fn across(&mut self, finding: Index<Finding>, at: f64) {
        let (from, outward) = self.way(at, at + 0.1);
        self.marks.push(self.stencils.finding(finding, from, outward, self.frame.scale));
    }

    /// Where a finding along the line starts, and its direction. A ring counts for what is inside it: its wire lies round
    /// what hangs there.
    fn way_of(&self, finding: Index<Finding>, at: f64, next: f64) -> (Point, f64) {
        let back = self.design.findings[finding].ring().map_or(0.0, |ring| ring.wire.value());
        self.way(at - back, next)
    }

    /// A finding along the line.
    fn straight(&mut self, finding: Index<Finding>, at: f64, next: f64) {
        let (from, outward) = self.way_of(finding, at, next);
        self.marks.push(self.stencils.finding(finding, from, outward, self.frame.scale));
    }
}
