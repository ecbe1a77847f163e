//! One line of a row: where it ends, where everything on it stands, and how it is drawn.
//!
//! From top to bottom: letters of runs and lengths of bare cord over thin brackets, the count of
//! every ten beads, the beads with what hangs from them, the ruler.

use std::f64::consts::PI;

use crate::art::Stencils;
use crate::design::{Dangle, Design, End, Strand, What};
use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};
use crate::pattern::CordKind;
use crate::sheet::english;
use crate::sheet::figure::ends;
use crate::sheet::figure::fastened::Fastened;
use crate::sheet::figure::names::{Lies, Names};
use crate::sheet::figure::ruler::{Ruler, RulerStretch};
use crate::sheet::figure::strands::{branch, strung_finding, turned_loop};
use crate::sheet::said::Alternative;
use crate::steps::ends::{Fastening, way};
use crate::steps::posts::{Keeps, Post};
use crate::steps::side::Side;
use crate::units::{Length, UnitStyle};

use super::label::{self, LineLabels};
use super::span::{self, Span, Spanned, TAIL};

/// Least room left and right of a line, for cord that goes on and the ruler's unit.
const LEAD: f64 = 7.0;
/// Shortest that bare cord is drawn, with room for its length.
const SHORTEST: f64 = 14.0;
/// Share of a line below which the last one is made longer.
const LEAST_LAST: f64 = 0.33;
/// Share of a line at its end in which it may end beside bare cord or between runs, and where a repeat begins.
const NEAR: f64 = 0.2;
const FAR: f64 = 0.25;
/// Into how many steps a line is divided to find the shortest equal ones.
const STEPS: u8 = 24;
/// How many beads of a run that fills its line stand with bare cord on the next.
const FEW: usize = 6;
/// Stations that differ by less are the same.
const SAME: f64 = 1e-6;
/// Room between the beads and what stands below them.
const ABOVE_RULER: f64 = 1.0;
/// Shortest stretch in mm along which a ruler has anything to read.
const LEAST_RULER: f64 = 5.0;
/// How far the cord runs on beyond a line that does not end with the strand.
const STUB: f64 = 3.5;
/// Half of the room between the two strokes of a cut, beyond half of the cord.
const CUT: f64 = 0.9;
/// Least size of a knot that ends a cord, so that it is seen.
const LEAST_KNOT: f64 = 0.8;

/// Room left and right of every line of a row: what reaches beyond its own length has it.
pub fn lead(spans: &[Span<'_>]) -> f64 {
    let over = spans.iter().map(|span| span.reach.aside - span.before.min(span.after));
    over.fold(LEAD, f64::max)
}

/// The spans in lines no longer than the room: in equal ones where a few beads would stand on the last alone.
pub fn broken<'a>(spans: &[Span<'a>], room: f64) -> Vec<Vec<Span<'a>>> {
    let full = filled(spans, room);
    let last: f64 = full.last().into_iter().flatten().map(Span::length).sum();
    if full.len() < 2 || last > LEAST_LAST * room {
        return full;
    }
    let rooms = (1..STEPS).map(|step| room * f64::from(step) / f64::from(STEPS));
    rooms.map(|room| filled(spans, room)).find(|even| even.len() == full.len()).unwrap_or(full)
}

/// The spans in lines as full as can be. A line ends where a run does, if that is near its end; bare cord that ends the
/// row stands on the line of the last beads.
fn filled<'a>(spans: &[Span<'a>], room: f64) -> Vec<Vec<Span<'a>>> {
    let (mut lines, mut from, mut length) = (Vec::new(), 0, 0.0);
    for (at, span) in spans.iter().enumerate() {
        if at > from && length + span.length() > room {
            let cut = last_place(spans, from, at, room);
            lines.push(spans[from..cut].to_vec());
            length = spans[cut..at].iter().map(Span::length).sum();
            from = cut;
        }
        length += span.length();
    }
    if from < spans.len() {
        lines.push(spans[from..].to_vec());
    }
    gather(&mut lines, room);
    lines
}

/// Brings a last line without beads to the beads before it: up to them where there is room for its
/// cord cut short, or else the last run, or the last few beads of one that fills its line, down to it.
fn gather(lines: &mut Vec<Vec<Span<'_>>>, room: f64) {
    let is_strung = |span: &Span<'_>| matches!(span.thing, Spanned::Bit(_) | Spanned::More(..));
    let Some(mut last) = lines.pop_if(|last| !last.iter().any(is_strung)) else { return };
    let Some(before) = lines.last_mut() else { return lines.push(last) };
    let beads = before.iter().rposition(is_strung).map_or(0, |at| at + 1);
    last.splice(0..0, before.drain(beads..));
    let length = |spans: &[Span<'_>]| spans.iter().map(Span::length).sum::<f64>();
    let (bare, ends): (Vec<_>, Vec<_>) = last.iter().copied().partition(Span::is_bare);
    let left = room - length(before) - length(&ends);
    if left >= SHORTEST * bare.len() as f64 {
        let most = left / bare.len().max(1) as f64;
        before.extend(last.iter().map(|span| span.cut_short(most)));
    } else {
        let starts_run = |at: &usize| before[*at].run.0 == 0 && !before[*at].is_knot();
        let few = before.len().saturating_sub(FEW).max(1).min(before.len());
        let run = (1..before.len()).rev().find(starts_run).unwrap_or(few);
        if length(&before[run..]) + length(&last) <= room {
            last.splice(0..0, before.split_off(run));
        }
        lines.push(last);
    }
}

/// Where to end a line that has room up to a span: near its end beside bare cord, or where a repeat begins, or else where no
/// run goes on and no finding, such as a cap, is parted from what it faces.
fn last_place(spans: &[Span<'_>], from: usize, at: usize, room: f64) -> usize {
    let near = |share: f64| {
        let mut left = share * room;
        let is_near = move |cut: &usize| {
            let near = left >= 0.0;
            left -= spans[cut - 1].length();
            near
        };
        (from + 1..=at).rev().take_while(is_near)
    };
    let beside_bare = |cut: &usize| spans[*cut].is_bare() || spans[*cut - 1].is_bare();
    let parts_facing = |cut: usize| spans[cut].faces(false) || spans[cut - 1].faces(true);
    let between_runs = |cut: &usize| spans[*cut].run.0 == 0 && !spans[*cut].is_knot() && !parts_facing(*cut);
    let at_repeat = |cut: &usize| spans[*cut].opens && between_runs(cut);
    let bare = near(NEAR).find(beside_bare);
    bare.or_else(|| near(FAR).find(at_repeat)).or_else(|| near(NEAR).find(between_runs)).unwrap_or(at)
}

/// A line to draw.
pub struct RowLine<'a, 's> {
    /// The design.
    pub design: &'a Design,
    /// How lengths are printed.
    pub units: UnitStyle,
    /// The strand.
    pub strand: &'a Strand,
    /// How its cord ends on both sides.
    pub fastened: [Fastened; 2],
    /// What stays in its place on the strand.
    pub posts: &'s [Post],
    /// What stands on the line.
    pub spans: &'s [Span<'a>],
    /// Room at its left.
    pub lead: f64,
    /// Width with the room at both sides.
    pub width: f64,
}

/// A span on its line.
#[derive(Clone, Copy)]
pub struct PlacedSpan<'a, 's> {
    /// The span.
    pub span: &'s Span<'a>,
    /// Where it starts.
    pub x: f64,
}

impl PlacedSpan<'_, '_> {
    /// Where its centre stands.
    #[must_use]
    pub fn centre(&self) -> f64 {
        self.x + self.span.before
    }

    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> f64 {
        self.x + self.span.length()
    }
}

impl<'a, 's> RowLine<'a, 's> {
    /// The line as a block, and how many of its runs are too short for their letter.
    pub fn draw(&self, stencils: &mut Stencils<'_>) -> (Block, usize) {
        let placed = self.placed();
        let most = |of: fn(&Span<'_>) -> f64| self.spans.iter().map(of).fold(1.0, f64::max);
        let labels = LineLabels::new(self, &placed);
        let cord = labels.height() + label::counts_height(self.spans) + most(|span| span.reach.above);
        let names_top = cord + most(|span| span.reach.below) + ABOVE_RULER;
        let names = Names::new(self.names(&placed), self.width);
        let ruler_top = names_top + names.height();
        let mut marks = labels.marks();
        marks.extend(label::counts(&placed, cord, self.units, self.width));
        let row = row(self, &placed, cord, stencils);
        marks.extend(label::beside_branches(self.design, &placed, cord, self.width));
        marks.push(Mark::figure(english::figure(&self.shows()), row));
        marks.extend(names.marks(names_top, Lies::Above));
        let (ruler, stretches) = (Ruler::new(self.units, self.width), stretches(&placed, self.strand.finished));
        if stretches.iter().all(|stretch| stretch.length < LEAST_RULER) {
            return (Block::new(self.width, ruler_top, marks), labels.left_out);
        }
        marks.extend(ruler.marks(&stretches, Point::new(0.0, ruler_top)));
        (Block::new(self.width, ruler_top + ruler.height(), marks), labels.left_out)
    }

    fn placed(&self) -> Vec<PlacedSpan<'a, 's>> {
        let mut x = self.lead;
        let place = |span: &'s Span<'a>| {
            let placed = PlacedSpan { span, x };
            x += span.length();
            placed
        };
        self.spans.iter().map(place).collect()
    }

    /// What stays in its place on this line, by name, with where on it that stands.
    fn names(&self, placed: &[PlacedSpan<'_, '_>]) -> Vec<(String, f64)> {
        let named = |post: &Post| {
            let on = |one: &&PlacedSpan<'_, '_>| {
                let Spanned::Bit(bit) = one.span.thing else { return false };
                let at = if post.keeps == Keeps::Group { 0.0 } else { bit.before };
                (one.span.from + at - post.station.value()).abs() < SAME
            };
            let one = placed.iter().find(on)?;
            Some((post.name.clone(), if post.keeps == Keeps::Group { one.x } else { one.centre() }))
        };
        self.posts.iter().filter_map(named).collect()
    }

    fn shows(&self) -> Alternative<'_> {
        let numbers = || self.spans.iter().map(|span| span.number).filter(|number| *number > 0);
        let name = &self.strand.name;
        match (numbers().next(), numbers().next_back()) {
            (Some(first), Some(last)) => Alternative::Beads(name, [first, last]),
            _ => Alternative::Strand(name),
        }
    }
}

/// Where the ruler runs, on a line of a strand of a length.
fn stretches(placed: &[PlacedSpan<'_, '_>], finished: Length) -> Vec<RulerStretch> {
    let mut stretches: Vec<RulerStretch> = Vec::new();
    let mut goes_on = false;
    for one in placed {
        let measured = one.span.is_measured() && !one.span.is_broken();
        match stretches.last_mut().filter(|_| goes_on && measured) {
            Some(stretch) => stretch.length += one.span.cord,
            None if measured => {
                stretches.push(RulerStretch { x: one.x, from: one.span.from, length: one.span.cord, closes: false });
            }
            None => {}
        }
        goes_on = measured;
    }
    for stretch in &mut stretches {
        stretch.closes = (stretch.from + stretch.length - finished.value()).abs() < SAME;
    }
    stretches
}

/// Half of the length in which cut cord is not drawn; its round ends stand out beyond its line.
fn half_cut(line: &RowLine<'_, '_>) -> f64 {
    CUT + line.strand.cord_width(line.design).value() / 2.0
}

/// The line's beads and all else with the cord at a height: branches behind the beads beside them, beads below what covers them.
fn row(line: &RowLine<'_, '_>, placed: &[PlacedSpan<'_, '_>], cord: f64, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let mut marks = self::cord(line, placed, cord, stencils);
    let (branches, strung): (Vec<&PlacedSpan<'_, '_>>, Vec<_>) =
        placed.iter().partition(|one| one.span.branch().is_some());
    let (beads, others): (Vec<_>, Vec<_>) = strung.into_iter().partition(|one| one.span.bead().is_some());
    for one in branches.into_iter().chain(beads).chain(others) {
        match one.span.thing {
            Spanned::End(side) => marks.extend(end(line, one, side, cord, stencils)),
            Spanned::Bit(_) => marks.extend(bit(line, one, cord, stencils)),
            Spanned::Bare { .. } | Spanned::More(..) if one.span.is_broken() => {
                marks.push(cut(Point::new(one.centre(), cord), half_cut(line)))
            }
            Spanned::Bare { .. } | Spanned::More(..) => {}
        }
    }
    marks
}

/// The cord, in pieces between its cuts.
fn cord(line: &RowLine<'_, '_>, placed: &[PlacedSpan<'_, '_>], y: f64, stencils: &Stencils<'_>) -> Vec<Mark> {
    // Cord begins with an end's tail, behind its loop, where it is turned into one, or in its findings, and goes on beyond a line that no end closes.
    let is_bare = |end: &End| end.findings.is_empty() && !line.strand.is_turned(end, line.design);
    let edge = |one: &PlacedSpan<'_, '_>, [outer, inner]: [f64; 2], stub: f64| match one.span.thing {
        Spanned::End(side) if is_bare(&line.strand.ends[side]) => {
            let plain = line.fastened[side].plain_from();
            if side == 0 { outer + plain } else { outer - plain }
        }
        Spanned::End(_) => inner,
        Spanned::Bit(_) | Spanned::More(..) | Spanned::Bare { .. } => outer + stub,
    };
    let before = |one: &PlacedSpan<'_, '_>| begun(line, one.span.from).unwrap_or(-STUB);
    let from = placed.first().map_or(0.0, |one| edge(one, [one.x, one.end()], before(one)));
    let to = placed.last().map_or(0.0, |one| edge(one, [one.end(), one.x], STUB));
    let half = half_cut(line);
    let is_cut = |one: &&PlacedSpan<'_, '_>| {
        one.span.is_broken() && matches!(one.span.thing, Spanned::Bare { .. } | Spanned::More(..))
    };
    // Behind a cut links stand as they stand in the strand.
    let behind = |one: &PlacedSpan<'_, '_>| {
        let past = one.span.from + one.span.cord - one.end();
        line.strand.face_from(line.design, one.centre() + half + past) - past
    };
    let cuts = placed.iter().filter(is_cut).flat_map(|one| [one.centre() - half, behind(one)]);
    let edges: Vec<f64> = std::iter::once(from).chain(cuts).chain([to]).collect();
    let piece =
        |pair: &[f64]| stencils.strand_cord(line.strand, &[Point::new(pair[0], y), Point::new(pair[1], y)], 1.0);
    edges.chunks_exact(2).map(piece).collect()
}

/// From where, before a line that does not begin with the strand, links of chain are drawn, so that each stands at its
/// station: from the nearest link on its face that has room.
fn begun(line: &RowLine<'_, '_>, station: f64) -> Option<f64> {
    let pair = 2.0 * line.design.cords[line.strand.cord].link?.value();
    let next = line.strand.face_from(line.design, station) - station;
    let room = LEAD - line.strand.cord_width(line.design).value();
    Some(if pair - next <= room { next - pair } else { next })
}

/// Two strokes across cord that is drawn shorter than it is.
fn cut(at: Point, half: f64) -> Mark {
    let tall = half + 0.9;
    let stroke = |x: f64| outline::line(at + Point::new(x - tall / 3.0, tall), at + Point::new(x + tall / 3.0, -tall));
    let outline = [stroke(-CUT), stroke(CUT)].concat();
    Mark::Shape { outline, fill: None, stroke: Some(Stroke::new(style::INK, 0.25)) }
}

fn bit(line: &RowLine<'_, '_>, one: &PlacedSpan<'_, '_>, y: f64, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let Spanned::Bit(bit) = one.span.thing else { return Vec::new() };
    let scale = one.span.scale;
    let at = Point::new(one.centre(), y + span::below(bit, line.strand, line.design) * scale);
    match &bit.what {
        What::Bead(bead) => vec![stencils.bead(*bead, at, 0.0, scale)],
        What::Knot => vec![stencils.knot(line.strand.cord, line.strand.legs, at, 0.0, scale, bit.length())],
        What::Finding(index) => vec![strung_finding(*index, bit, at, 0.0, scale, stencils)],
        What::Dangle(dangle) => hung(dangle, one, at, line.design, stencils),
        What::Gap => Vec::new(),
    }
}

/// A branch, with a thin line down to it where it is drawn below the beads.
fn hung(
    dangle: &Dangle,
    one: &PlacedSpan<'_, '_>,
    at: Point,
    design: &Design,
    stencils: &mut Stencils<'_>,
) -> Vec<Mark> {
    let top = at + Point::new(0.0, one.span.hang);
    let stroke = Some(Stroke::new(style::QUIET, 0.2));
    let line = Mark::Shape { outline: outline::line(at, top), fill: None, stroke };
    let branch = branch(dangle, top, design, one.span.scale, stencils);
    (one.span.hang > 0.0).then_some(line).into_iter().chain(branch).collect()
}

/// An end with its loop and findings, or its knot and tail.
fn end(
    line: &RowLine<'_, '_>,
    one: &PlacedSpan<'_, '_>,
    side: usize,
    y: f64,
    stencils: &mut Stencils<'_>,
) -> Vec<Mark> {
    let end = &line.strand.ends[side];
    // Distances from the loop inward, and the way outward.
    let (outer, inward) = if side == 0 { (one.x, 1.0) } else { (one.end(), -1.0) };
    let on = |distance: f64| Point::new(outer + inward * distance * one.span.scale, y);
    if line.strand.is_turned(end, line.design) {
        let (root, outward) = if side == 0 { (one.end(), PI) } else { (one.x, 0.0) };
        return vec![turned_loop(line.strand, Point::new(root, y), outward, 1.0, stencils)];
    }
    if way(line.design, line.strand, Side::First) == Fastening::Tied {
        return Vec::new();
    }
    let fastened = line.fastened[side];
    if matches!(fastened, Fastened::Plain) && end.findings.is_empty() {
        return knot(line, on(TAIL), inward, stencils).into_iter().collect();
    }
    let place = (on(0.0), if side == 0 { 0.0 } else { PI }, 0.0);
    let mut marks = fastened.marks(line.strand, place, one.span.scale, line.design, stencils);
    let outward = if side == 0 { PI } else { 0.0 };
    for closed in ends::closed(end, line.design) {
        let angle = if closed.outward { outward } else { outward + PI };
        marks.push(stencils.finding(closed.finding, on(closed.depth), angle, one.span.scale));
    }
    marks
}

/// The knot that ends a cord, at the foot of its tail; chain ends with its last link.
fn knot(line: &RowLine<'_, '_>, root: Point, inward: f64, stencils: &mut Stencils<'_>) -> Option<Mark> {
    let cord = &line.design.cords[line.strand.cord];
    let size = line.strand.knot_width(line.design).value().clamp(LEAST_KNOT, TAIL);
    let at = root - Point::new(inward * size / 2.0, 0.0);
    (cord.kind != CordKind::Chain).then(|| stencils.knot(line.strand.cord, line.strand.legs, at, 0.0, 1.0, size))
}
