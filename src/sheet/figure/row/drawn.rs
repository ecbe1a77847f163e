//! What is drawn of a line of a row: the cord with its cuts, the ends, and all that is strung.

use std::f64::consts::PI;

use crate::art::Stencils;
use crate::design::{Dangle, End, What};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};
use crate::pattern::CordKind;
use crate::sheet::figure::ends;
use crate::sheet::figure::fastened::Fastened;
use crate::sheet::figure::{Canvas, Frame};
use crate::steps::ends::{Fastening, way};
use crate::steps::side::Side;

use super::line::{LEAD, PlacedSpan, RowLine};
use super::span::{self, Span, Spanned, TAIL};

/// How far the cord runs on beyond a line that does not end with the strand.
const STUB: f64 = 3.5;
/// Half of the room between the two strokes of a cut, beyond half of the cord.
const CUT: f64 = 0.9;
/// Least size of a knot that ends a cord, so that it is seen.
const LEAST_KNOT: f64 = 0.8;

/// Half of the length in which cut cord is not drawn; its round ends stand out beyond its line.
fn half_cut(line: &RowLine<'_, '_>) -> f64 {
    CUT + line.strand.cord_width(line.design).value() / 2.0
}

/// The line's beads and all else with the cord at a height: branches behind the beads beside them, beads below what covers them.
pub fn row(line: &RowLine<'_, '_>, placed: &[PlacedSpan<'_, '_>], y: f64, stencils: &Stencils<'_>) -> Vec<Mark> {
    let mut marks = cord(line, placed, y, stencils);
    let (branches, strung): (Vec<&PlacedSpan<'_, '_>>, Vec<_>) =
        placed.iter().partition(|one| one.span.branch().is_some());
    let (beads, others): (Vec<_>, Vec<_>) = strung.into_iter().partition(|one| one.span.bead().is_some());
    for one in branches.into_iter().chain(beads).chain(others) {
        match one.span.thing {
            Spanned::End(side) => marks.extend(end(line, one, side, y, stencils)),
            Spanned::Bit(_) => marks.extend(bit(line, one, y, stencils)),
            Spanned::Bare { .. } | Spanned::More(..) => {
                marks.extend(is_cut(one.span).then(|| cut(Point::new(one.centre(), y), half_cut(line))));
            }
        }
    }
    marks
}

/// The cord, in pieces between its cuts.
fn cord(line: &RowLine<'_, '_>, placed: &[PlacedSpan<'_, '_>], y: f64, stencils: &Stencils<'_>) -> Vec<Mark> {
    let before = |one: &PlacedSpan<'_, '_>| begun(line, one.span.from).unwrap_or(-STUB);
    let from = placed.first().map_or(0.0, |one| edge(line, one, [one.x, one.end()], before(one)));
    let to = placed.last().map_or(0.0, |one| edge(line, one, [one.end(), one.x], STUB));
    let cuts = placed.iter().filter(|one| is_cut(one.span)).flat_map(|one| cut_at(line, one));
    let edges: Vec<f64> = std::iter::once(from).chain(cuts).chain([to]).collect();
    let piece =
        |pair: &[f64]| stencils.strand_cord(line.strand, &[Point::new(pair[0], y), Point::new(pair[1], y)], 1.0);
    edges.chunks_exact(2).map(piece).collect()
}

/// Where cord begins or ends beside a span that stands at a line's end: with an end's tail, behind its loop, where it is
/// turned into one, or in its findings; it goes on beyond a line that no end closes.
fn edge(line: &RowLine<'_, '_>, one: &PlacedSpan<'_, '_>, [outer, inner]: [f64; 2], stub: f64) -> f64 {
    let is_bare = |end: &End| end.findings.is_empty() && !line.strand.is_turned(end, line.design);
    match one.span.thing {
        Spanned::End(side) if is_bare(&line.strand.ends[side]) => {
            let plain = line.fastened[side].plain_from();
            if side == 0 { outer + plain } else { outer - plain }
        }
        Spanned::End(_) => inner,
        Spanned::Bit(_) | Spanned::More(..) | Spanned::Bare { .. } => outer + stub,
    }
}

/// Whether cord is drawn shorter there than it is.
fn is_cut(span: &Span<'_>) -> bool {
    span.is_broken() && matches!(span.thing, Spanned::Bare { .. } | Spanned::More(..))
}

/// Between where cord that is cut is not drawn; behind it links stand as they stand in the strand.
fn cut_at(line: &RowLine<'_, '_>, one: &PlacedSpan<'_, '_>) -> [f64; 2] {
    let half = half_cut(line);
    let past = one.span.from + one.span.cord - one.end();
    [one.centre() - half, line.strand.face_from(line.design, one.centre() + half + past) - past]
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

fn bit(line: &RowLine<'_, '_>, one: &PlacedSpan<'_, '_>, y: f64, stencils: &Stencils<'_>) -> Vec<Mark> {
    let Spanned::Bit(bit) = one.span.thing else { return Vec::new() };
    let canvas = canvas(one, stencils);
    let at = Point::new(one.centre(), y + span::below(bit, line.strand, line.design) * canvas.scale());
    match &bit.what {
        What::Dangle(dangle) => hung(dangle, one.span.hang, at, canvas),
        _ => canvas.strung(bit, line.strand, at, (0.0, 0.0)),
    }
}

/// A branch, with a thin line down to it where it is drawn below the beads.
fn hung(dangle: &Dangle, below: f64, at: Point, canvas: Canvas<'_>) -> Vec<Mark> {
    let top = at + Point::new(0.0, below);
    let stroke = Some(Stroke::new(style::QUIET, 0.2));
    let line = Mark::Shape { outline: outline::line(at, top), fill: None, stroke };
    (below > 0.0).then_some(line).into_iter().chain(canvas.branch(dangle, top)).collect()
}

/// Canvas for a span at the scale at which it is drawn.
fn canvas<'a>(one: &PlacedSpan<'_, '_>, stencils: &'a Stencils<'a>) -> Canvas<'a> {
    Canvas::new(Frame { scale: one.span.scale, ..Frame::ACTUAL }, stencils)
}

/// An end with its loop and findings, or its knot and tail.
fn end(line: &RowLine<'_, '_>, one: &PlacedSpan<'_, '_>, side: usize, y: f64, stencils: &Stencils<'_>) -> Vec<Mark> {
    let end = &line.strand.ends[side];
    let at = AtEnd { one, side, y };
    match () {
        () if line.strand.is_turned(end, line.design) => {
            let (root, outward) = if side == 0 { (one.end(), PI) } else { (one.x, 0.0) };
            vec![Canvas::new(Frame::ACTUAL, stencils).turned_loop(line.strand, Point::new(root, y), outward)]
        }
        () if way(line.design, line.strand, Side::First) == Fastening::Tied => Vec::new(),
        () if matches!(line.fastened[side], Fastened::Plain) && end.findings.is_empty() => {
            knot(line, at.point(TAIL), at.inward(), stencils).into_iter().collect()
        }
        () => fastened(line, end, &at, stencils),
    }
}

/// An end of a line's strand, on the line with the cord at a height.
struct AtEnd<'p, 'a, 's> {
    one: &'p PlacedSpan<'a, 's>,
    side: usize,
    y: f64,
}

impl AtEnd<'_, '_, '_> {
    /// Which way along the line is inward.
    const fn inward(&self) -> f64 {
        if self.side == 0 { 1.0 } else { -1.0 }
    }

    /// A point so far from its loop inward.
    fn point(&self, distance: f64) -> Point {
        let outer = if self.side == 0 { self.one.x } else { self.one.end() };
        Point::new(outer + self.inward() * distance * self.one.span.scale, self.y)
    }
}

/// An end with what fastens it, and its findings.
fn fastened(line: &RowLine<'_, '_>, end: &End, at: &AtEnd<'_, '_, '_>, stencils: &Stencils<'_>) -> Vec<Mark> {
    let (scale, is_first) = (at.one.span.scale, at.side == 0);
    let place = (at.point(0.0), if is_first { 0.0 } else { PI }, [0.0; 2]);
    let mut marks = line.fastened[at.side].marks(line.strand, place, canvas(at.one, stencils));
    let outward = if is_first { PI } else { 0.0 };
    for closed in ends::closed(end, line.design) {
        let angle = if closed.outward { outward } else { outward + PI };
        marks.push(stencils.finding(closed.finding, at.point(closed.depth), angle, scale));
    }
    marks
}

/// The knot that ends a cord, at the foot of its tail; chain ends with its last link.
fn knot(line: &RowLine<'_, '_>, root: Point, inward: f64, stencils: &Stencils<'_>) -> Option<Mark> {
    let cord = &line.design.cords[line.strand.cord];
    let size = line.strand.knot_width(line.design).value().clamp(LEAST_KNOT, TAIL);
    let at = root - Point::new(inward * size / 2.0, 0.0);
    (cord.kind != CordKind::Chain).then(|| stencils.knot(line.strand.cord, line.strand.legs, at, 0.0, 1.0, size))
}
