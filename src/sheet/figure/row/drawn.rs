//! One line of a row, and where everything on it stands.
//!
//! From top to bottom: letters of runs and lengths of bare cord over thin brackets, the count of
//! every ten beads, the beads with what hangs from them, the ruler.

use std::f64::consts::PI;

use crate::art::Deal;
use crate::design::{Cord, Dangle, End, Index, What};
use crate::geometry::{Point, Point3};
use crate::paint::layout::Block;
use crate::paint::mark::Mark;
use crate::paint::{outline, style};
use crate::pattern::CordKind;
use crate::sheet::english;
use crate::sheet::figure::fastened::{Fastened, LEAST_KNOT};
use crate::sheet::figure::names::{Lies, Names};
use crate::sheet::figure::ruler::{Ruler, RulerStretch};
use crate::sheet::figure::{Canvas, Frame, ends};
use crate::sheet::said::Alternative;
use crate::steps::ends::{Fastening, way};
use crate::steps::posts::{Keeps, Post};
use crate::steps::side::Side;

use super::labels::{self, LineLabels};
use super::spans::{self, Span, Spanned, TAIL};
use super::{LEAD, RowOf};

/// Stations in mm that differ by less are the same.
const SAME_STATION: f64 = 1e-6;
/// Room in mm between the beads and what stands below them.
const ABOVE_RULER: f64 = 1.0;
/// Least that a line reaches above its cord and below it, in mm.
const LEAST_REACH: f64 = 1.0;
/// Shortest stretch in mm along which a ruler has anything to read.
const LEAST_RULER: f64 = 5.0;
/// How far in mm the cord runs on beyond a line that does not end with the strand.
const STUB: f64 = 3.5;
/// Half of the room in mm between the two strokes of a cut, beyond half of the cord.
const CUT: f64 = 0.9;
/// How much farther in mm those strokes reach up and down.
const CUT_TALL: f64 = 0.9;

/// A line to draw.
pub struct RowLine<'a, 'r> {
    pub of: &'r RowOf<'a>,
    /// What stands on the line, each in its place.
    pub spans: Vec<Span<'a>>,
}

impl<'a, 'r> RowLine<'a, 'r> {
    /// Puts spans on a line.
    pub fn new(of: &'r RowOf<'a>, mut spans: Vec<Span<'a>>) -> Self {
        let mut x = of.lead;
        for span in &mut spans {
            span.x = x;
            x += span.length();
        }
        Self { of, spans }
    }

    /// The line as a block, and how many of its runs are too short for their letter.
    pub fn draw(&self) -> (Block, usize) {
        let labels = LineLabels::new(self);
        let cord = labels.height() + labels::counts_height(&self.spans) + self.most(|span| span.reach.above);
        let names_top = cord + self.most(|span| span.reach.below) + ABOVE_RULER;
        let names = Names::new(self.names(), self.of.width);
        let mut marks = labels.marks();
        marks.extend(labels::counts(self, cord));
        let row = self.row(cord);
        marks.extend(labels::beside_branches(self, cord));
        marks.push(Mark::figure(english::figure(&self.shows()), row));
        marks.extend(names.marks(names_top, Lies::Above));
        let (ruler, height) = self.ruler(names_top + names.height());
        marks.extend(ruler);
        (Block::new(self.of.width, height, marks), labels.left_out)
    }

    /// The farthest that anything on the line reaches in a way.
    pub fn most(&self, reach: fn(&Span<'_>) -> f64) -> f64 {
        self.spans.iter().map(reach).fold(LEAST_REACH, f64::max)
    }

    /// The ruler from a height on, where there is anything to read along it, and how far down that reaches.
    fn ruler(&self, top: f64) -> (Vec<Mark>, f64) {
        let (ruler, stretches) = (Ruler::new(self.of.units, self.of.width), self.stretches());
        if stretches.iter().all(|stretch| stretch.length < LEAST_RULER) {
            return (Vec::new(), top);
        }
        (ruler.marks(&stretches, Point::new(0.0, top)), top + ruler.height())
    }

    /// What stays in its place on this line, by name, with where on it that stands.
    fn names(&self) -> Vec<(String, f64)> {
        let named = |post: &Post| {
            let is_group = post.keeps == Keeps::Group;
            let on = |span: &&Span<'_>| {
                let Spanned::Bit(bit, _) = span.thing else { return false };
                let at = if is_group { 0.0 } else { bit.before };
                (span.from + at - post.station.value()).abs() < SAME_STATION
            };
            let span = self.spans.iter().find(on)?;
            Some((post.name.clone(), if is_group { span.x } else { span.centre() }))
        };
        self.of.posts.all().iter().filter_map(named).collect()
    }

    fn shows(&self) -> Alternative<'_> {
        let numbers = || self.spans.iter().map(|span| span.number).filter(|number| *number > 0);
        let name = &self.of.strand.name;
        match (numbers().next(), numbers().next_back()) {
            (Some(first), Some(last)) => Alternative::Beads(name, [first, last]),
            _ => Alternative::Strand(name),
        }
    }

    /// Where the ruler runs.
    fn stretches(&self) -> Vec<RulerStretch> {
        let (mut stretches, mut goes_on): (Vec<RulerStretch>, _) = (Vec::new(), false);
        for span in &self.spans {
            let measured = span.is_measured();
            match stretches.last_mut().filter(|_| goes_on && measured) {
                Some(stretch) => stretch.length += span.cord,
                None if measured => {
                    stretches.push(RulerStretch { x: span.x, from: span.from, length: span.cord, closes: false });
                }
                None => {}
            }
            goes_on = measured;
        }
        for stretch in &mut stretches {
            stretch.closes = (stretch.from + stretch.length - self.of.strand.finished.value()).abs() < SAME_STATION;
        }
        stretches
    }

    /// The line's beads and all else with the cord at a height: branches behind the beads beside them, beads below what
    /// covers them.
    fn row(&self, y: f64) -> Vec<Mark> {
        let mut marks: Vec<_> = self.spans.iter().filter_map(|span| self.hanger(span, y)).collect();
        marks.extend(self.cord(y));
        let (branches, strung): (Vec<&Span<'_>>, Vec<_>) = self.spans.iter().partition(|span| span.branch().is_some());
        let (beads, others): (Vec<_>, Vec<_>) = strung.into_iter().partition(|span| span.bead().is_some());
        for span in branches.into_iter().chain(beads).chain(others) {
            match span.thing {
                Spanned::End(side) => marks.extend(self.end(&AtEnd { span, side, y })),
                Spanned::Bit(..) => marks.extend(self.bit(span, y)),
                Spanned::Bare { .. } | Spanned::More(..) => {
                    marks.extend(is_cut(span).then(|| cut(Point::new(span.centre(), y), self.half_cut())));
                }
            }
        }
        marks
    }

    /// Half of the length in which cut cord is not drawn; its round ends stand out beyond its line.
    fn half_cut(&self) -> f64 {
        CUT + self.of.strand.cord_width(self.of.design()).value() / 2.0
    }

    /// The cord, in pieces between its cuts.
    fn cord(&self, y: f64) -> Vec<Mark> {
        let before = |span: &Span<'_>| self.begun(span.from).unwrap_or(-STUB);
        let from = self.spans.first().map_or(0.0, |span| self.edge(span, [span.x, span.end_x()], before(span)));
        let to = self.spans.last().map_or(0.0, |span| self.edge(span, [span.end_x(), span.x], STUB));
        let cuts = self.spans.iter().filter(|span| is_cut(span)).flat_map(|span| self.cut_at(span));
        let edges: Vec<f64> = std::iter::once(from).chain(cuts).chain([to]).collect();
        let piece = |pair: &[f64]| {
            self.of.stencils.strand_cord(self.of.strand, &[Point::new(pair[0], y), Point::new(pair[1], y)], 1.0)
        };
        edges.chunks_exact(2).map(piece).collect()
    }

    /// Where cord begins or ends beside a span that stands at a line's end: with an end's tail, behind its loop, where it is
    /// turned into one, or in its findings; it goes on beyond a line that no end closes.
    fn edge(&self, span: &Span<'_>, [outer, inner]: [f64; 2], stub: f64) -> f64 {
        let strand = self.of.strand;
        let is_bare = |end: &End| end.findings.is_empty() && !strand.is_turned(end, self.of.design());
        match span.thing {
            Spanned::End(side) if is_bare(&strand.ends[side]) => {
                let plain = self.of.fastened[side].plain_from();
                if side == 0 { outer + plain } else { outer - plain }
            }
            Spanned::End(_) => inner,
            Spanned::Bit(..) | Spanned::More(..) | Spanned::Bare { .. } => outer + stub,
        }
    }

    /// Between where cord that is cut is not drawn; behind it links stand as they stand in the strand.
    fn cut_at(&self, span: &Span<'_>) -> [f64; 2] {
        let half = self.half_cut();
        let past = span.from + span.cord - span.end_x();
        [span.centre() - half, self.of.strand.face_from(self.of.design(), span.centre() + half + past) - past]
    }

    /// From where, before a line that does not begin with the strand, links of chain are drawn, so that each stands at its
    /// station: from the nearest link on its face that has room.
    fn begun(&self, station: f64) -> Option<f64> {
        let (strand, design) = (self.of.strand, self.of.design());
        let pair = 2.0 * design.cords[strand.cord].link?.value();
        let next = strand.face_from(design, station) - station;
        let room = LEAD - strand.cord_width(design).value();
        Some(if pair - next <= room { next - pair } else { next })
    }

    /// The ring or pin of a branch that hangs on the cord, and not below it.
    fn hanger(&self, span: &Span<'_>, y: f64) -> Option<Mark> {
        let dangle = span.branch().filter(|_| span.hang == 0.0)?;
        let at = Point::new(span.centre(), y);
        self.canvas(span.scale).hanger((dangle, self.of.strand.cord), at, Point3::DOWN)
    }

    fn bit(&self, span: &Span<'_>, y: f64) -> Vec<Mark> {
        let Spanned::Bit(bit, deal) = span.thing else { return Vec::new() };
        let canvas = self.canvas(span.scale);
        let below = spans::below(bit, self.of.strand, self.of.design());
        let at = Point::new(span.centre(), y + below * canvas.scale());
        match &bit.what {
            What::Dangle(dangle) => hung((dangle, deal), self.of.strand.cord, span.hang, at, canvas),
            _ => canvas.strung((bit, deal), self.of.strand, at, (0.0, 0.0)),
        }
    }

    /// The line at a scale.
    fn canvas(&self, scale: f64) -> Canvas<'a> {
        Canvas::new(Frame { scale, ..Frame::ACTUAL }, self.of.stencils)
    }

    /// An end with its loop and findings, or its knot and tail.
    fn end(&self, at: &AtEnd<'_, '_>) -> Vec<Mark> {
        let (strand, design) = (self.of.strand, self.of.design());
        let end = &strand.ends[at.side];
        match () {
            () if strand.is_turned(end, design) => vec![self.canvas(1.0).turned_loop(strand, at.inner(), at.outward())],
            () if way(design, strand, Side::First) == Fastening::Tied => Vec::new(),
            () if matches!(self.of.fastened[at.side], Fastened::Plain) && end.findings.is_empty() => {
                self.knot(at.point(TAIL), at.inward()).into_iter().collect()
            }
            () => self.fastened(end, at),
        }
    }

    /// An end with what fastens it, and its findings.
    fn fastened(&self, end: &End, at: &AtEnd<'_, '_>) -> Vec<Mark> {
        let canvas = self.canvas(at.span.scale);
        let outward = at.outward();
        let place = (at.point(0.0), PI - outward, [0.0; 2]);
        let mut marks = self.of.fastened[at.side].marks(self.of.strand, place, canvas);
        for closed in ends::closed(end, self.of.design()) {
            let angle = if closed.outward { outward } else { outward + PI };
            marks.push(canvas.stencils.finding(closed.finding, at.point(closed.depth), angle, canvas.scale()));
        }
        marks
    }

    /// The knot that ends a cord, at the foot of its tail; chain ends with its last link.
    fn knot(&self, root: Point, inward: f64) -> Option<Mark> {
        let (strand, design) = (self.of.strand, self.of.design());
        let size = strand.knot_width(design).value().clamp(LEAST_KNOT, TAIL);
        let at = root - Point::new(inward * size / 2.0, 0.0);
        let is_chain = design.cords[strand.cord].kind == CordKind::Chain;
        (!is_chain).then(|| self.of.stencils.knot(strand.cord, strand.legs, at, 0.0, 1.0, size))
    }
}

/// An end of a line's strand, on the line with the cord at a height.
struct AtEnd<'a, 's> {
    span: &'s Span<'a>,
    side: usize,
    y: f64,
}

impl AtEnd<'_, '_> {
    /// Which way along the line is inward.
    const fn inward(&self) -> f64 {
        if self.side == 0 { 1.0 } else { -1.0 }
    }

    /// The direction outward.
    const fn outward(&self) -> f64 {
        if self.side == 0 { PI } else { 0.0 }
    }

    /// A point so far from its loop inward.
    fn point(&self, distance: f64) -> Point {
        let outer = if self.side == 0 { self.span.x } else { self.span.end_x() };
        Point::new(outer + self.inward() * distance * self.span.scale, self.y)
    }

    /// Where it ends inward.
    fn inner(&self) -> Point {
        Point::new(if self.side == 0 { self.span.end_x() } else { self.span.x }, self.y)
    }
}

/// Whether cord is drawn shorter there than it is.
fn is_cut(span: &Span<'_>) -> bool {
    span.is_broken() && matches!(span.thing, Spanned::Bare { .. } | Spanned::More(..))
}

/// Two strokes across cord that is drawn shorter than it is.
fn cut(at: Point, half: f64) -> Mark {
    let tall = half + CUT_TALL;
    let stroke = |x: f64| outline::line(at + Point::new(x - tall / 3.0, tall), at + Point::new(x + tall / 3.0, -tall));
    let outline = [stroke(-CUT), stroke(CUT)].concat();
    Mark::Shape { outline, fill: None, stroke: Some(style::INK_RULE) }
}

/// A branch so far below the cord, with a thin line down to it.
fn hung(branch: (&Dangle, Deal), cord: Index<Cord>, below: f64, at: Point, canvas: Canvas<'_>) -> Vec<Mark> {
    if below == 0.0 {
        return canvas.branch(branch, cord, at, Point3::DOWN);
    }
    let top = at + Point::new(0.0, below);
    let stroke = Some(style::QUIET_LINE);
    let line = Mark::Shape { outline: outline::line(at, top), fill: None, stroke };
    let hanger = canvas.hanger((branch.0, cord), top, Point3::DOWN);
    std::iter::once(line).chain(hanger).chain(canvas.branch(branch, cord, top, Point3::DOWN)).collect()
}
