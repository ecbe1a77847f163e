//! A strand's row: all that is strung, laid straight at actual size and broken into lines.
//!
//! Lines break between beads. Bare cord of more than [`spans::LONG`] mm, and less of it where beads slide,
//! is cut short with a mark; so is the ruler there. What no page has room for is drawn smaller,
//! with the ruler broken, and [`StrandRow::reduced`] counts it. Of a long run of one bead the first and the last are drawn, with
//! the number of those between them. Of repeats that would fill many lines the first and the last are drawn, and a line
//! between them says what is left out. Nothing is left out otherwise: beads drawn and beads told as left out are the strand's.
//!
//! A line has from top to bottom: letters of runs and lengths of bare cord over thin brackets, the count of every ten beads,
//! the beads with what hangs from them, the ruler.

mod labels;
mod lines;
mod spans;

use crate::art::{Deal, Stencils};
use crate::design::{Cord, Dangle, Design, End, Index, Strand, What};
use crate::geometry::{Point, Point3};
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::Mark;
use crate::paint::{outline, style};
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::{Alternative, LeftOut};
use crate::steps::posts::{Keeps, Post, Posts};
use crate::units::UnitStyle;

pub use labels::{LETTER, runs};
pub use spans::half;

use super::ends::LevelEnd;
use super::fastened::Fastened;
use super::meeting::meeting;
use super::names::{Lies, Names};
use super::ruler::{Ruler, RulerStretch};
use super::{Canvas, Frame};
use labels::LineLabels;
use lines::{Portion, broken, open, portions, shortened};
use spans::{Span, Spanned, spans};

/// Least room left and right of a line in mm, for cord that goes on and the ruler's unit.
const LEAD: f64 = 7.0;

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

/// A row as drawn.
pub struct StrandRow {
    /// Its lines, from the first end to the last.
    pub lines: Vec<Block>,
    /// How many things are drawn smaller than they are.
    pub reduced: usize,
    /// How many runs are too short for their letter.
    pub unlettered: usize,
    /// Whether repeats are left out, which a line then tells.
    pub elided: bool,
}

/// What all lines of a row have in common.
struct RowOf<'a> {
    strand: &'a Strand,
    /// What stays in its place on the strand.
    posts: Posts<'a>,
    /// How its cord ends on both sides.
    fastened: [Fastened; 2],
    /// How lengths are printed.
    units: UnitStyle,
    stencils: &'a Stencils<'a>,
    /// Room at both sides of a line.
    lead: f64,
    /// Width with that.
    width: f64,
}

/// Draws the row of a strand in lines of a width.
pub fn row(piece: &Piece, strand: Index<Strand>, width: f64, stencils: &Stencils<'_>) -> StrandRow {
    let (design, units) = (&piece.design, piece.telling.units);
    let (strand, starts) = (&design.strands[strand], &piece.drape.strands[strand].starts);
    let fastened = [0, 1].map(|side| Fastened::of(strand, side, design));
    let mut spans = spans(design, strand, starts, fastened);
    let of = RowOf { strand, posts: Posts::new(design, strand), fastened, units, stencils, lead: lead(&spans), width };
    open(strand, &mut spans, of.room());
    let mut row = StrandRow { lines: Vec::new(), reduced: 0, unlettered: 0, elided: false };
    row.reduced = spans.iter().filter(|span| span.scale < 1.0).count();
    portions(strand, &spans, of.room()).iter().for_each(|portion| row.add(portion, &of));
    row.meet(&of);
    row
}

/// Room left and right of every line of a row: what reaches beyond its own length has it.
fn lead(spans: &[Span<'_>]) -> f64 {
    let over = spans.iter().map(|span| span.reach.aside - span.before.min(span.after));
    over.fold(LEAD, f64::max)
}

impl<'a> RowOf<'a> {
    const fn design(&self) -> &'a Design {
        self.stencils.design()
    }

    /// Width that the spans of a line have.
    fn room(&self) -> f64 {
        self.width - 2.0 * self.lead
    }

    /// The line that says what is left out.
    fn told(&self, said: &LeftOut) -> Block {
        Type::STRONG.paragraph(&english::left_out(self.design(), said, self.units), self.width)
    }
}

impl StrandRow {
    /// Adds the lines of a portion.
    fn add(&mut self, portion: &Portion<'_, '_>, of: &RowOf<'_>) {
        match portion {
            Portion::Drawn(spans) => self.draw(spans, of),
            Portion::LeftOut(said) => {
                self.elided = true;
                self.lines.push(of.told(said));
            }
        }
    }

    /// Adds lines on which spans are drawn.
    fn draw(&mut self, spans: &[Span<'_>], of: &RowOf<'_>) {
        for spans in broken(&shortened(spans, of.posts.all(), of.room()), of.room()) {
            let (block, unlettered) = RowLine::new(of, spans).draw();
            self.unlettered += unlettered;
            self.lines.push(block);
        }
    }

    /// Adds what both ends go through where they meet.
    fn meet(&mut self, of: &RowOf<'_>) {
        if let Some((block, reduced)) = meeting(of.strand, of.width, of.stencils) {
            self.reduced += usize::from(reduced);
            self.lines.push(block);
        }
    }
}

/// A line to draw.
struct RowLine<'a, 'r> {
    of: &'r RowOf<'a>,
    /// What stands on the line, each in its place.
    spans: Vec<Span<'a>>,
}

impl<'a, 'r> RowLine<'a, 'r> {
    /// Puts spans on a line.
    fn new(of: &'r RowOf<'a>, mut spans: Vec<Span<'a>>) -> Self {
        let mut x = of.lead;
        for span in &mut spans {
            span.x = x;
            x += span.length();
        }
        Self { of, spans }
    }

    /// The line as a block, and how many of its runs are too short for their letter.
    fn draw(&self) -> (Block, usize) {
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
    fn most(&self, reach: fn(&Span<'_>) -> f64) -> f64 {
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
        let numbers = || self.spans.iter().filter_map(|span| span.number);
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
                Spanned::End(side) => marks.extend(self.end(span, side, y)),
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
        let dangle = span.branch().filter(|_| span.hang.is_none())?;
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

    /// An end with what closes it.
    fn end(&self, span: &Span<'_>, side: usize, y: f64) -> Vec<Mark> {
        let [left, right] = [span.x, span.end_x()].map(|x| Point::new(x, y));
        let between = if side == 0 { [left, right] } else { [right, left] };
        let (strand, fastened) = (self.of.strand, self.of.fastened[side]);
        LevelEnd { strand, side, fastened, between, canvas: self.canvas(span.scale) }.marks()
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
fn hung(branch: (&Dangle, Deal), cord: Index<Cord>, below: Option<f64>, at: Point, canvas: Canvas<'_>) -> Vec<Mark> {
    let Some(below) = below else { return canvas.branch(branch, cord, at, Point3::DOWN) };
    let top = at + Point::new(0.0, below);
    let stroke = Some(style::QUIET_LINE);
    let line = Mark::Shape { outline: outline::line(at, top), fill: None, stroke };
    let hanger = canvas.hanger((branch.0, cord), top, Point3::DOWN);
    std::iter::once(line).chain(hanger).chain(canvas.branch(branch, cord, top, Point3::DOWN)).collect()
}
