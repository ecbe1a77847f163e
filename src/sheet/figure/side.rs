//! One side of a closure: its findings along a line that leads away from the strands' ends, behind the strands or before them.

use crate::art::Stencils;
use crate::design::{Design, Finding, Index, Part, Strand, Worn};
use crate::drape::Hung;
use crate::geometry::{Point, path};
use crate::paint::mark::Mark;
use crate::pattern::FindingKind;
use crate::units::Length;

use super::Frame;
use super::fastened::lies_over_closure;

/// The way of one side of a closure.
#[derive(Clone, Debug, Default)]
pub struct Way {
    /// The line that leads away from the strands' ends; none on the side of an earring on which it does not hang.
    pub line: Vec<Point>,
    /// The middle of the strands at the mouth of the cone that covers their ends, where there is one.
    pub mouth: Option<Point>,
}

impl From<Vec<Point>> for Way {
    fn from(line: Vec<Point>) -> Self {
        Self { line, mouth: None }
    }
}

/// The middles of the strands, as far as they are laid, at the mouths of the cones that cover their first and last ends.
pub fn mouths<'h>(design: &Design, laid: impl Iterator<Item = Option<&'h Hung>>) -> [Option<Point>; 2] {
    let laid: Vec<_> = design.strands.iter().zip(laid).filter_map(|(strand, hung)| Some((strand, hung?))).collect();
    [(design.closure.left(), false), (design.closure.right(), true)].map(|(parts, is_last)| {
        let depth = over_strands(parts, design)?;
        let at = |(strand, hung): &(&Strand, &Hung)| {
            let station = if is_last { strand.finished.value() - depth } else { depth };
            hung.reaches(station).then(|| hung.at(station).0)
        };
        let places: Vec<_> = laid.iter().filter_map(at).collect();
        let share = 1.0 / places.len() as f64;
        places.into_iter().map(|place| place * share).reduce(|sum, place| sum + place)
    })
}

/// How far in mm a cone reaches from the ends of the strands that it covers back over them.
fn over_strands(parts: &[Part], design: &Design) -> Option<f64> {
    let [pin, cone, ..] = parts else { return None };
    let sizes = design.findings[pin.finding].pin()?;
    let is_cone = design.findings[cone.finding].kind() == FindingKind::Cone;
    let length = design.findings[cone.finding].length().filter(|_| is_cone)?;
    Some((length - cone.reach - sizes.eye() + sizes.wire).value().max(0.0))
}

/// How long parts of a closure are in mm.
pub fn reach(parts: &[Part]) -> f64 {
    parts.iter().map(|part| part.reach.value()).sum()
}

/// The stretch of a line between two distances.
pub fn stretch(line: &[Point], from: f64, to: f64) -> Vec<Point> {
    let steps = ((to - from) / 0.5).ceil().max(1.0);
    let at = |step: f64| path::along(line, from + (to - from) * step / steps);
    (0..=steps as usize).filter_map(|step| at(step as f64)).collect()
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
        [(left, first), (right, last)]: [(&Way, &[Part]); 2],
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
fn passed(way: &Way, parts: &[Part], design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Option<Mark> {
    let closure = &design.closure;
    let is_passed = matches!(closure.open(), Some(Worn::Through(_))) && parts.len() == closure.left().len();
    let ring = parts.last().filter(|_| is_passed && !way.line.is_empty())?;
    let next = reach(parts);
    let side = Side { along: way, design, frame, stencils, marks: Vec::new() };
    let (from, outward) = side.way_of(ring.finding, next - ring.reach.value(), next);
    Some(side.stencils.lower_half(ring.finding, from, outward, frame.scale))
}

/// The findings of one side laid straight along x from the frame's origin.
pub fn laid_side(parts: &[Part], design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let line = vec![Point::ORIGIN, Point::new(reach(parts) + 1.0, 0.0)];
    side(&Way::from(line), parts, design, frame, stencils)
}

/// The findings of one side along its way; none where there is none.
pub fn side(way: &Way, parts: &[Part], design: &Design, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    if way.line.is_empty() {
        return Vec::new();
    }
    let mut drawn = Side { along: way, design, frame, stencils, marks: Vec::new() };
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
    along: &'a Way,
    design: &'a Design,
    frame: &'a Frame,
    stencils: &'s mut Stencils<'d>,
    marks: Vec<Mark>,
}

impl Side<'_, '_, '_> {
    /// Where a stretch starts on the page, and its direction there.
    fn way(&self, at: f64, next: f64) -> (Point, f64) {
        let on =
            |distance| path::along(&self.along.line, distance).map(|point| self.frame.page(point)).unwrap_or_default();
        (on(at), (on(next) - on(at)).angle())
    }

    fn chain(&mut self, finding: Index<Finding>, at: f64, next: f64) {
        let line: Vec<_> =
            stretch(&self.along.line, at, next).into_iter().map(|point| self.frame.page(point)).collect();
        self.marks.push(self.stencils.chain(finding, &line, self.frame.scale));
    }

    /// A pin with nothing on it, cut and closed with a loop at once.
    fn pin(&mut self, at: f64, pin: &Part) {
        let wire = self.design.findings[pin.finding].wire().map_or(0.0, |wire| wire.value());
        let (from, outward) = self.way(at - wire / 2.0, at + pin.reach.value());
        self.marks.push(self.stencils.pin(pin.finding, from, outward, self.frame.scale, pin.reach.value() + wire));
    }

    /// A pin from the strands' loops out through a cone or cap, which covers it and the strands' ends, in one line with the
    /// strands at the cone's mouth.
    fn covered_pin(&mut self, at: f64, pin: &Part, cone: &Part) {
        let cover = self.design.findings[cone.finding].length().unwrap_or_default();
        let Some(sizes) = self.design.findings[pin.finding].pin() else { return };
        let reach = pin.reach + cone.reach + sizes.wire;
        let (start, ahead) = self.way(at, at + reach.value());
        let tip = start + Point::towards(ahead) * (reach.value() * self.frame.scale);
        let outward = self.along.mouth.map_or(ahead, |mouth| (tip - self.frame.page(mouth)).angle());
        let on = |distance: Length| tip - Point::towards(outward) * ((reach - distance).value() * self.frame.scale);
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
