//! Lanes: a strand, or a side of the closure, laid straight at actual size below its ruler. Lengths in mm on paper.

use crate::art::Stencils;
use crate::design::{Bit, Design, Part, Rest, Strand, What};
use crate::drape::{Hung, Seat};
use crate::geometry::{Extent, Point};
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::Mark;
use crate::paint::{outline, style};
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::figure::names::{Lies, Names};
use crate::sheet::figure::{self, Canvas, Frame, Ruler, RulerStretch, Sketch};
use crate::sheet::said::{self, SideOf};
use crate::steps::posts::{Posts, between};
use crate::units::{Length, UnitStyle};

use super::strip::StripWindow;

/// Room between a lane's ruler and what it measures.
const BELOW_RULER: f64 = 1.5;
/// Room between a cut and a lane's words.
const LABEL: f64 = 1.0;

/// How far below the cord the line stands that says where a lane begins or ends.
const BEYOND_CORD: f64 = 2.0;

/// What is laid in a lane.
enum InLane<'a> {
    Strand(&'a Strand, &'a Hung),
    Side(&'a [Part]),
}

/// A lane.
pub struct Lane<'a> {
    laid: InLane<'a>,
    words: String,
    /// Length of what is laid in mm.
    pub length: f64,
    /// How far it reaches above its line, and below.
    reach: (f64, f64),
    /// How far it reaches before its start, and beyond its end.
    lead: f64,
    tail: f64,
    /// Length of the longest thing in it.
    pub longest: f64,
    /// How far the ends of its cord's lines stand out.
    round: f64,
    units: UnitStyle,
    /// What stays in its place, by name, with its station.
    posts: Vec<(String, f64)>,
    /// Height of their names, all in one line of rows.
    naming: f64,
}

/// The lanes of a piece.
pub fn lanes<'a>(piece: &'a Piece, stencils: &Stencils<'_>) -> Vec<Lane<'a>> {
    let design = &piece.design;
    let strands =
        design.strands.iter().zip(&piece.drape.strands).map(|(strand, hung)| Lane::strand(piece, strand, hung));
    let closure = &design.closure;
    let both = !closure.left().is_empty() && !closure.right().is_empty();
    let sides = [(closure.left(), SideOf::First), (closure.right(), SideOf::Last)];
    let sides = sides.into_iter().filter(|(parts, _)| !parts.is_empty());
    let which = |side| if both { side } else { SideOf::Only };
    strands.chain(sides.map(|(parts, side)| Lane::side(piece, parts, which(side), stencils))).collect()
}

impl<'a> Lane<'a> {
    /// One that is as long as what is laid in it, and reaches as far as a box.
    fn new(laid: InLane<'a>, words: String, (length, extent): (f64, Extent), units: UnitStyle) -> Self {
        Self {
            laid,
            words,
            length,
            reach: (extent.high.y, -extent.low.y),
            lead: -extent.low.x,
            tail: (extent.high.x - length).max(0.0),
            longest: 0.0,
            round: 0.0,
            units,
            posts: Vec::new(),
            naming: Names::new(Vec::new(), length).height(),
        }
    }

    fn strand(piece: &'a Piece, strand: &'a Strand, hung: &'a Hung) -> Self {
        let (design, length) = (&piece.design, strand.finished.value());
        let straight = hung.straight(0.0, length, |seat| !meets(seat, strand));
        let extent = figure::strand_box(design, strand, &straight).unwrap_or_default();
        let units = piece.telling.units;
        let lane = Self::new(InLane::Strand(strand, hung), of_strand(design, strand, units), (length, extent), units);
        let posts = Posts::new(design, strand);
        let posts: Vec<_> = posts.all().iter().map(|post| (post.name.clone(), post.station.value())).collect();
        Self {
            reach: reach(extent),
            lead: lane.lead.max(0.0),
            longest: strand.bits().map(|bit| 2.0 * aside(bit, design)).fold(0.0, f64::max),
            round: strand.cord_width(design).value() / 2.0,
            naming: Names::new(posts.clone(), length + lane.tail).height(),
            posts,
            ..lane
        }
    }

    fn side(piece: &'a Piece, parts: &'a [Part], side: SideOf, stencils: &Stencils<'_>) -> Self {
        let units = piece.telling.units;
        let length: Length = parts.iter().map(|part| part.reach).sum();
        let words = english::lane(said::LaneName::Side(side, length), units);
        let longest = parts.iter().map(|part| part.reach - part.cut.unwrap_or_default());
        let marks = figure::laid_side(parts, Canvas::new(Frame::ACTUAL, stencils));
        // On the page y counts downward.
        let Extent { low, high } = stencils.around(&marks).unwrap_or_default();
        let extent = Extent { low: Point::new(low.x, -high.y), high: Point::new(high.x, -low.y) };
        let lane = Self::new(InLane::Side(parts), words, (length.value(), extent), units);
        Self { longest: longest.fold(Length::ZERO, Length::max).value(), ..lane }
    }

    /// Height of the lane.
    pub fn height(&self) -> f64 {
        self.cord() + self.reach.1
    }

    /// Height of the cord below the lane's upper edge.
    fn cord(&self) -> f64 {
        self.names_top() + self.naming + BELOW_RULER + self.reach.0
    }

    fn names_top(&self) -> f64 {
        self.ruler_top() + Ruler::new(self.units, 0.0).height()
    }

    /// What stays in its place and lies in a window, by name, with where on the page that stands.
    fn names(&self, window: StripWindow, width: f64) -> Names {
        let inside = self.posts.iter().filter(|(_, at)| (window.first..=window.last).contains(at));
        Names::new(inside.map(|(name, at)| (name.clone(), at - window.first)), width)
    }

    fn ruler_top(&self) -> f64 {
        Type::SMALL_STRONG.line_height()
    }

    /// Where the last thing in it ends.
    pub fn end(&self) -> f64 {
        self.length + self.tail
    }

    /// Length with all that reaches beyond its ends.
    pub fn whole(&self) -> f64 {
        self.lead + self.end()
    }

    /// How far below the lane's upper edge the things reach that a window shows.
    pub fn depth(&self, window: StripWindow, piece: &Piece) -> f64 {
        let InLane::Strand(strand, hung) = self.laid else { return self.height() };
        let hung = hung.straight(0.0, 0.0, |seat| is_shown(window, seat, strand, &piece.design));
        let extent = figure::strand_box(&piece.design, strand, &hung);
        self.cord() + extent.map_or(0.0, |extent| reach(extent).1)
    }

    /// What a window shows of it, on a width; with its number, if it is one of several strips.
    pub fn draw(&self, window: StripWindow, number: Option<usize>, width: f64, stencils: &Stencils<'_>) -> Block {
        let words = number.map_or_else(|| self.words.clone(), |number| english::strip(number, &self.words));
        let window = self.with_lead(window);
        let origin = Point::new(-window.first, self.cord());
        let canvas = Canvas::new(Frame { origin, scale: 1.0 }, stencils);
        let drawn = Mark::figure(words.clone(), self.shown(window, width, canvas));
        let left = window.from - window.first + LABEL;
        let label = Type::SMALL_STRONG.fitted(&words, width - left).at(Point::new(left, 0.0));
        let ruler = Ruler::new(self.units, width).marks(&[self.stretch(window)], Point::new(0.0, self.ruler_top()));
        let names = self.names(window, width).marks(self.names_top(), Lies::Below);
        let ends = self.ends(window, origin);
        let marks = label.into_iter().chain(ruler).chain(names).chain(ends).chain([drawn]);
        Block::new(width, self.height(), marks.collect())
    }

    /// What is laid in it as far as a window shows that.
    fn shown(&self, window: StripWindow, width: f64, canvas: Canvas<'_>) -> Vec<Mark> {
        match self.laid {
            InLane::Strand(strand, hung) => {
                let hung = self.laid_in(window, strand, hung, canvas.design());
                Sketch::new(strand, &hung, canvas).alone()
            }
            InLane::Side(parts) => within(figure::laid_side(parts, canvas), -self.longest, width),
        }
    }

    /// The window moved for what reaches before the start of a lane that is not cut.
    fn with_lead(&self, window: StripWindow) -> StripWindow {
        let needed = (self.lead + window.first).max(0.0);
        let uncut = window.from == 0.0 && self.end() + needed <= window.to;
        let shift = if uncut { needed } else { 0.0 };
        StripWindow { first: window.first - shift, last: window.last - shift, ..window }
    }

    /// What a window shows of the ruler.
    fn stretch(&self, window: StripWindow) -> RulerStretch {
        let (from, to) = (window.first.max(0.0), window.last.min(self.length));
        RulerStretch { x: from - window.first, from, length: to - from, closes: to == self.length }
    }

    /// What a window shows of a strand.
    fn laid_in(&self, window: StripWindow, strand: &Strand, hung: &Hung, design: &Design) -> Hung {
        let wanted = |seat: &Seat| is_shown(window, seat, strand, design);
        let from = strand.face_from(design, (window.first + self.round).max(0.0));
        hung.straight(from, (window.last - self.round).min(self.length), wanted)
    }

    /// Thin lines down from the ruler where the lane begins and ends.
    fn ends(&self, window: StripWindow, origin: Point) -> Option<Mark> {
        let stretch = self.stretch(window);
        let (first, last) = (stretch.from, stretch.from + stretch.length);
        let top = self.cord() - self.reach.0 - BELOW_RULER;
        let line = |station: f64| {
            let x = origin.x + station;
            outline::line(Point::new(x, top), Point::new(x, self.cord() + BEYOND_CORD))
        };
        let ends = [first, last].into_iter().filter(|at| *at == 0.0 || *at == self.length);
        let outline: Vec<_> = ends.flat_map(line).collect();
        let stroke = Some(style::RULE_HAIRLINE);
        (!outline.is_empty()).then_some(Mark::Shape { outline, fill: None, stroke })
    }
}

/// What is said of a strand's lane.
fn of_strand(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let slides = strand.trains.iter().any(|train| matches!(train.rest, Rest::Free(from, to) if to > from));
    let (name, between) = (&strand.name, between(design, strand));
    english::lane(said::LaneName::Strand { name, finished: strand.finished, between, slides }, units)
}

/// Whether a window shows a seat: in its own part what lies there at least in part, and beyond what it has room for
/// the whole of.
fn is_shown(window: StripWindow, seat: &Seat, strand: &Strand, design: &Design) -> bool {
    let (start, end) = taken(seat, strand, design);
    let is_inside = (start < window.to && end > window.from) || (start >= window.first && end <= window.last);
    is_inside && !meets(seat, strand)
}

/// Whether a seat is that of what both ends meet in, which lies apart.
fn meets(seat: &Seat, strand: &Strand) -> bool {
    seat.bit(strand).what.is_meeting()
}

/// The stations between which a seat takes room.
fn taken(seat: &Seat, strand: &Strand, design: &Design) -> (f64, f64) {
    let aside = aside(seat.bit(strand), design);
    (seat.station - aside, seat.station + aside)
}

/// How far a bit reaches along the cord from its centre at most, with what hangs from it.
fn aside(bit: &Bit, design: &Design) -> f64 {
    let at = Extent::default();
    let length = bit.before.max(bit.after);
    match bit.what {
        What::Gap => 0.0,
        What::Dangle(_) => figure::bit_box(bit, at, design).high.x.max(length),
        // A cap reaches over its bead by as much as it is longer than the cord that it takes.
        What::Finding(index) => length.max(design.findings[index].along().value() - length),
        What::Bead(_) | What::Knot => length,
    }
}

fn reach(extent: Extent) -> (f64, f64) {
    (extent.high.y.max(1.0), (-extent.low.y).max(1.0))
}

/// The marks without stamps outside a stretch of x.
fn within(marks: Vec<Mark>, from: f64, to: f64) -> Vec<Mark> {
    let keep = |mark: Mark| match mark {
        Mark::Stamp { at, .. } => (from..=to).contains(&at.x).then_some(mark),
        held => Some(held.map_inner(|marks| within(marks, from, to))),
    };
    marks.into_iter().filter_map(keep).collect()
}
