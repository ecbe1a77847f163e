//! One side of a closure: its findings along a line that leads away from the strands' ends, behind the strands or before them.

use std::f64::consts::PI;

use crate::art::{eye_wire, ring_round};
use crate::design::{Design, Finding, Index, Part, Strand};
use crate::drape::Hung;
use crate::geometry::{Point, path};
use crate::paint::mark::Mark;
use crate::pattern::FindingKind;
use crate::sheet::english;
use crate::sheet::said::Alternative;
use crate::units::Length;

use super::Canvas;
use super::fastened::{is_hitched, reach_round};

/// How far on in mm a line's direction is taken.
const AHEAD: f64 = 0.1;
/// Chords in mm into which a stretch of a line is cut.
const CHORD: f64 = 0.5;
/// How far back a ring lies over a strand that comes into it, as a share of the turn between where that enters and leaves, by
/// eye.
const OVER_STRAND: f64 = 0.7;

/// The way of one side of a closure.
#[derive(Clone, Debug, Default)]
pub struct ClosureWay {
    /// The line that leads away from the strands' ends; none on the side of an earring on which it does not hang.
    pub line: Vec<Point>,
    /// The middle of the strands at the mouth of the cone that covers their ends, where there is one.
    pub mouth: Option<Point>,
}

impl From<Vec<Point>> for ClosureWay {
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
    Some((length - cone.reach - *sizes.eye() + sizes.wire).value().max(0.0))
}

/// How long parts of a closure are in mm.
pub fn reach(parts: &[Part]) -> f64 {
    parts.iter().map(|part| part.reach.value()).sum()
}

/// Parts of a closure, each with where it begins and ends along its side, in mm.
fn placed(parts: &[Part]) -> impl Iterator<Item = (&Part, [f64; 2])> {
    parts.iter().scan(0.0, |at, part| {
        let from = *at;
        *at += part.reach.value();
        Some((part, [from, *at]))
    })
}

/// The stretch of a line between two distances.
pub fn stretch(line: &[Point], from: f64, to: f64) -> Vec<Point> {
    let steps = ((to - from) / CHORD).ceil().max(1.0);
    let at = |step: f64| path::along(line, from + (to - from) * step / steps);
    (0..=steps as usize).filter_map(|step| at(step as f64)).collect()
}

/// What is drawn of a closure: what strands lie before, and what lies before them.
///
/// Of two rings or loops that link one lies before the other at one of the two places where they cross, and behind it at
/// the other.
#[derive(Default)]
pub struct Layers {
    /// Each side of it, but for one that covers the strands' ends.
    pub behind: Vec<Mark>,
    /// Such a side; where rings and loops link what of them is nearer, and of a ring through which the strand's last end
    /// goes the half that lies before that.
    pub before: Vec<Mark>,
}

impl Layers {
    /// Strands between what lies behind and before them.
    pub fn around(self, strands: Vec<Mark>) -> Vec<Mark> {
        [self.behind, strands, self.before].concat()
    }

    /// The same with each mark as something makes it.
    pub fn map(self, mut mark: impl FnMut(Mark) -> Mark) -> Self {
        let [behind, before] = [self.behind, self.before].map(|marks| marks.into_iter().map(&mut mark).collect());
        Self { behind, before }
    }

    /// Both sides, each with the line that leads away from the strands' ends, and the way of the strand that goes through
    /// the ring of an open piece.
    pub fn of(
        [(left, first), (right, last)]: [(&ClosureWay, &[Part]); 2],
        strand: &[Point],
        canvas: Canvas<'_>,
    ) -> Self {
        let design = canvas.design();
        let part = passed(left, first, strand, canvas).map(|part| Mark::ornament(vec![part]));
        let mut sides = [(0, left, first), (1, right, last)];
        sides.sort_by_key(|(_, _, parts)| lies_across(parts, design));
        let mut layers = Self::default();
        for (at, way, parts) in sides {
            let drawn = side(way, parts, Some(at), canvas);
            let layer = if lies_before(parts, design) { &mut layers.before } else { &mut layers.behind };
            layer.extend((!drawn.is_empty()).then(|| Mark::figure(english::figure(&Alternative::Side(at)), drawn)));
            if part.is_none() {
                layers.before.extend(linked(way, parts, at, canvas));
            }
        }
        layers.before.extend(part);
        layers
    }
}

/// Whether a side of the closure covers the strands' ends, so that it lies before them.
pub fn lies_before(parts: &[Part], design: &Design) -> bool {
    parts.first().is_some_and(|part| design.findings[part.finding].is_pin())
}

/// Whether a side of the closure ends in a bar that lies across the ring of the other.
fn lies_across(parts: &[Part], design: &Design) -> bool {
    parts.last().is_some_and(|part| design.findings[part.finding].kind() == FindingKind::ToggleBar)
}

/// The part that lies before the strand of a ring through which its last end goes: where that leaves it; nothing where not
/// all of that side is drawn.
fn passed(way: &ClosureWay, parts: &[Part], strand: &[Point], canvas: Canvas<'_>) -> Option<Mark> {
    /// Farthest in radians beyond it.
    const FARTHEST: f64 = 1.2;
    let closure = &canvas.design().closure;
    let is_passed = closure.goes_through() && parts.len() == closure.left().len();
    let ring = parts.last().filter(|_| is_passed && !way.line.is_empty())?;
    let next = reach(parts);
    let side = DrawnSide::new(way, parts, Some(0), canvas);
    let (from, outward) = side.way_of(ring.finding, next - ring.reach.value(), next);
    let [middle, radius] = ring_round(&canvas.design().findings[ring.finding])?.map(|size| size * canvas.scale());
    let centre = from + Point::towards(outward) * middle;
    let strand: Vec<_> = strand.iter().map(|place| canvas.page(*place)).collect();
    let [entered, left] = crossings(&strand, centre, radius)?;
    let apart = (left - entered + PI).rem_euclid(2.0 * PI) - PI;
    // What comes into the ring lies over it as far as its beads are broad, and the part goes on beyond all shadows.
    let [near, far] = [(OVER_STRAND * apart.abs()).min(FARTHEST), FARTHEST].map(|reach| reach.copysign(apart));
    let about = (left + 0.5 * (far - near), 0.5 * (far + near).abs());
    Some(canvas.stencils.ring_part(ring.finding, from, outward, canvas.scale(), about))
}

/// In which directions from the middle of a round a line comes into it and leaves it at last.
fn crossings(line: &[Point], centre: Point, radius: f64) -> Option<[f64; 2]> {
    let off = |place: Point| place.distance(centre) - radius;
    let crosses = line.windows(2).filter(|pair| (off(pair[0]) > 0.0) != (off(pair[1]) > 0.0));
    let place = |pair: &[Point]| pair[0].between(pair[1], off(pair[0]) / (off(pair[0]) - off(pair[1])));
    let all: Vec<_> = crosses.map(|pair| (place(pair) - centre).angle()).collect();
    let [.., entered, left] = all.as_slice() else { return None };
    Some([*entered, *left])
}

/// The findings of one side laid straight along x from the frame's origin.
pub fn laid_side(parts: &[Part], canvas: Canvas<'_>) -> Vec<Mark> {
    let line = vec![Point::ORIGIN, Point::new(reach(parts) + 1.0, 0.0)];
    side(&ClosureWay::from(line), parts, None, canvas)
}

/// How far what holds the strands' ends on a side lies over them: nothing where their loops reach round its wire, else by
/// that of a ring, which counts for what is inside it, and of other eyes by half.
fn set_back(parts: &[Part], side: Option<usize>, design: &Design) -> f64 {
    let Some(finding) = parts.first().map(|part| &design.findings[part.finding]) else { return 0.0 };
    let share = if finding.ring().is_some() { 1.0 } else { 0.5 };
    let is_over = side.map_or(finding.ring().is_some(), |side| !reach_round(design, side));
    if is_over { share * eye_wire(finding) } else { 0.0 }
}

/// What of one side's rings and eyes lies before what they link with: to the right of the way outward towards the strands,
/// to its left at the outer end of a ring.
pub fn linked(way: &ClosureWay, parts: &[Part], at: usize, canvas: Canvas<'_>) -> Vec<Mark> {
    if way.line.is_empty() {
        return Vec::new();
    }
    let mut drawn = DrawnSide::new(way, parts, Some(at), canvas);
    for (index, (part, stretch)) in placed(parts).enumerate() {
        drawn.links(part.finding, stretch, index > 0 || !is_hitched(canvas.design(), at));
    }
    drawn.marks
}

/// The findings of one side along its way, of the first ends or the last where it is known; none where there is none.
pub fn side(way: &ClosureWay, parts: &[Part], of: Option<usize>, canvas: Canvas<'_>) -> Vec<Mark> {
    if way.line.is_empty() {
        return Vec::new();
    }
    let mut drawn = DrawnSide::new(way, parts, of, canvas);
    let design = canvas.design();
    for (index, (part, stretch)) in placed(parts).enumerate() {
        let kind = |index: usize| parts.get(index).map(|part| design.findings[part.finding].kind());
        let covered = parts.get(index + 1).filter(|_| kind(index + 1).is_some_and(covers));
        let is_cover =
            kind(index).is_some_and(covers) && index > 0 && design.findings[parts[index - 1].finding].is_pin();
        if !is_cover {
            drawn.part(part, stretch, covered);
        }
    }
    drawn.marks
}

/// Whether what is of a kind covers a pin before it.
const fn covers(kind: FindingKind) -> bool {
    matches!(kind, FindingKind::Cone | FindingKind::BeadCap)
}

/// One side of the closure as it is drawn.
struct DrawnSide<'a> {
    along: &'a ClosureWay,
    canvas: Canvas<'a>,
    /// How far its first finding lies over the strands' ends.
    back: f64,
    marks: Vec<Mark>,
}

impl<'a> DrawnSide<'a> {
    /// With nothing drawn yet; see [`side`].
    fn new(along: &'a ClosureWay, parts: &[Part], of: Option<usize>, canvas: Canvas<'a>) -> Self {
        Self { along, canvas, back: set_back(parts, of, canvas.design()), marks: Vec::new() }
    }

    fn finding(&self, index: Index<Finding>) -> &'a Finding {
        &self.canvas.design().findings[index]
    }

    /// A part between two distances, with what covers it, where it is a pin.
    fn part(&mut self, part: &Part, [at, next]: [f64; 2], cover: Option<&Part>) {
        match self.finding(part.finding).kind() {
            FindingKind::Chain => self.chain(part.finding, at, next),
            FindingKind::EndBar | FindingKind::BoxHalf | FindingKind::SlideHalf => self.across(part.finding, at),
            FindingKind::EyePin => match cover {
                Some(cover) => self.covered_pin(at, part, cover),
                None => self.pin(at, part),
            },
            _ => self.straight(part.finding, at, next),
        }
    }

    /// Where a stretch starts on the page, and its direction there.
    fn way(&self, at: f64, next: f64) -> (Point, f64) {
        let on =
            |distance| path::along(&self.along.line, distance).map(|point| self.canvas.page(point)).unwrap_or_default();
        (on(at), (on(next) - on(at)).angle())
    }

    fn chain(&mut self, finding: Index<Finding>, at: f64, next: f64) {
        let line: Vec<_> =
            stretch(&self.along.line, at, next).into_iter().map(|point| self.canvas.page(point)).collect();
        self.marks.push(self.canvas.stencils.chain(finding, &line, self.canvas.scale()));
    }

    /// A pin with nothing on it, cut and closed with a loop at once.
    fn pin(&mut self, at: f64, pin: &Part) {
        let wire = self.finding(pin.finding).wire().map_or(0.0, |wire| wire.value());
        let (from, outward) = self.way(at - wire / 2.0, at + pin.reach.value());
        self.marks.push(self.canvas.stencils.pin(
            pin.finding,
            from,
            outward,
            self.canvas.scale(),
            pin.reach.value() + wire,
        ));
    }

    /// A pin from the strands' loops out through a cone or cap, which covers it and the strands' ends, in one line with the
    /// strands at the cone's mouth.
    fn covered_pin(&mut self, at: f64, pin: &Part, cone: &Part) {
        let cover = self.finding(cone.finding).along();
        let Some(sizes) = self.finding(pin.finding).pin() else { return };
        let reach = pin.reach + cone.reach + sizes.wire;
        let (start, ahead) = self.way(at, at + reach.value());
        let tip = start + Point::towards(ahead) * (reach.value() * self.canvas.scale());
        let outward = self.along.mouth.map_or(ahead, |mouth| (tip - self.canvas.page(mouth)).angle());
        let on = |distance: Length| tip - Point::towards(outward) * ((reach - distance).value() * self.canvas.scale());
        let eye = on(sizes.wire * -0.5);
        let mouth = on(*sizes.eye() - sizes.wire + cone.reach - cover);
        self.marks.push(self.canvas.stencils.pin(pin.finding, eye, outward, self.canvas.scale(), reach.value()));
        self.marks.push(self.canvas.stencils.finding(cone.finding, mouth, outward, self.canvas.scale()));
    }

    /// A bar, square to the line where it stands.
    fn across(&mut self, finding: Index<Finding>, at: f64) {
        let (from, outward) = self.way(at, at + AHEAD);
        self.marks.push(self.canvas.stencils.finding(finding, from, outward, self.canvas.scale()));
    }

    /// Where a finding along the line starts, and its direction. A ring counts for what is inside it: its wire lies round
    /// what hangs there.
    fn way_of(&self, finding: Index<Finding>, at: f64, next: f64) -> (Point, f64) {
        let ring = self.finding(finding).ring().map_or(0.0, |ring| ring.wire.value());
        self.way(at - if at > 0.0 { ring } else { self.back }, next)
    }

    /// What of a finding lies before what it links with: towards the strands if that is so, and at a ring's outer end.
    fn links(&mut self, finding: Index<Finding>, [at, next]: [f64; 2], inward: bool) {
        let kind = self.finding(finding);
        let scale = self.canvas.scale();
        let (from, outward) =
            if kind.comb().is_some() { self.way(at, at + AHEAD) } else { self.way_of(finding, at, next) };
        if inward && eye_wire(kind) > 0.0 {
            self.marks.push(self.canvas.stencils.linked(finding, from, outward, scale));
        }
        if let Some(ring) = kind.ring() {
            let outside = ring.outside.unwrap_or(ring.inside + *ring.wire * 2.0);
            let tip = from + Point::towards(outward) * (outside.value() * scale);
            self.marks.push(self.canvas.stencils.linked(finding, tip, outward + PI, scale));
        }
    }

    /// A finding along the line.
    fn straight(&mut self, finding: Index<Finding>, at: f64, next: f64) {
        let (from, outward) = self.way_of(finding, at, next);
        self.marks.push(self.canvas.stencils.finding(finding, from, outward, self.canvas.scale()));
    }
}
