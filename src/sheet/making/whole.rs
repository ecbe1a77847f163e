//! The finished piece as it is measured and tried: its own closure and the beads beside that, from both ends, with what lies
//! between them left out.

use std::f64::consts::{FRAC_PI_2, TAU};

use crate::art::pen::{arrow, at, ghost, line};
use crate::art::{RULER, STEP_ROOM, Stencils, boxed, clipped, ruler, ruler_upright};
use crate::design::{Bar, Design, Entries, Part, Strand, nth};
use crate::drape::{Hung, Waypoint};
use crate::geometry::{Point, Point3, path};
use crate::paint::layout::Rect;
use crate::paint::mark::Mark;
use crate::paint::outline::polyline;
use crate::piece::Piece;
use crate::sheet::figure::{
    self, Canvas, ClosureWay, Frame, Layers, Track, closing_on, hooked, joined, mouths, on_tracks,
};
use crate::steps::{Drawing, Inspection, english};
use crate::units::Length;

/// How broad beads are drawn at most, and strands side by side.
const BROAD: f64 = 3.2;
const ABREAST: f64 = 6.0;
/// How long its closure is drawn at most.
const CLOSURE: f64 = 15.0;
/// How many times as large as it is a piece is drawn at most.
const ENLARGED: f64 = 1.5;
/// Points along a way round, and steps in mm along a straight one.
const STEPS: u32 = 240;

/// A finished piece as it is measured.
pub fn figure(how: Inspection, piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    let marks = match how {
        Inspection::Hung => hung(piece, stencils),
        Inspection::Straight => straight(piece, stencils),
        Inspection::Pulled => pulled(piece, stencils),
        Inspection::Round | Inspection::Inside => closed(how == Inspection::Inside, piece, stencils),
    };
    boxed(english::drawing(Drawing::Inspected(how)), vec![clipped(marks)])
}

/// An earring that hangs beside an upright ruler.
fn hung(piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    let (width, height) = STEP_ROOM;
    let extent = figure::hanging_extent(piece);
    let frame = Frame::filling(extent, Rect::new(4.0, 0.4, width - 11.0, height - 0.8));
    let canvas = Canvas::new(frame, stencils);
    let strands = piece.drape.strands.iter().map(Some).collect();
    let closure = figure::closing(piece).map(|closing| closing.layers(canvas)).unwrap_or_default();
    let mut marks = closure.around(figure::strands(&strands, canvas));
    let drawn = stencils.around(&marks).unwrap_or_default();
    marks.extend([drawn.low.y, drawn.high.y].map(|y| ghost(polyline(&[at(drawn.high.x + 0.6, y), at(19.6, y)]))));
    marks.extend(ruler_upright());
    marks.extend(arrow(&[at(2.0, 6.0), at(2.0, 16.4)]));
    marks
}

/// A piece that lies in a round.
struct RoundFigure<'a> {
    piece: &'a Piece,
    /// Half its breadth and height on paper, to the middle of its beads.
    half: (f64, f64),
    scale: f64,
    /// How long its closure is, closed as short as it goes, in mm of the piece.
    gap: f64,
    /// What lies outside the middle of its beads on paper, with the room beyond.
    out: f64,
}

impl<'a> RoundFigure<'a> {
    /// One so much smaller than its room on all sides.
    fn new(piece: &'a Piece, spare: f64) -> Self {
        let design = &piece.design;
        let parts = [design.closure.left(), design.closure.right()];
        let gap = parts.iter().flat_map(|parts| parts.iter()).map(|part| part.least.value()).sum::<f64>()
            - figure::overlap(design).unwrap_or_default();
        let tall = parts
            .iter()
            .flat_map(|parts| parts.iter())
            .map(|part| broad(part, design))
            .fold(broadest(design), f64::max);
        let abreast = abreast(design);
        let scale = (BROAD / broadest(design)).min(ABREAST / (abreast + broadest(design))).min(ENLARGED);
        let scale = scale.min(CLOSURE / gap.max(1.0));
        let (width, height) = STEP_ROOM;
        let out = 0.5 * (broadest(design) + abreast) * scale + spare;
        let half = (0.5 * width - out, 0.5 * height - out.max(0.5 * tall * scale));
        let all = strand(piece).map_or(1.0, |strand| strand.finished.value()) + gap;
        let least = path::length(&ellipse(half, 1.0)) / all;
        Self { piece, half, scale: scale.max(least), gap, out }
    }

    fn canvas<'s>(&self, stencils: &'s Stencils<'s>) -> Canvas<'s> {
        let (width, height) = STEP_ROOM;
        let origin = at(0.5 * width, height - self.half.1 - self.out);
        Canvas::new(Frame { origin, scale: self.scale }, stencils)
    }

    /// From its top on to the right, so far outside its middle, in mm of the piece.
    fn line(&self, out: f64) -> Vec<Point> {
        let half = (self.half.0 / self.scale + out, self.half.1 / self.scale + out);
        ellipse(half, 1.0)
    }

    /// The ways of the strands from both ends down to where they meet.
    fn ways(&self) -> Entries<Vec<Waypoint>, Strand> {
        let design = &self.piece.design;
        let middle = 0.5 * abreast(design);
        let way = |(strand, out): (&Strand, f64)| {
            let line = self.line(out - middle);
            let all = path::length(&line);
            let (finished, seen) = (strand.finished.value(), 0.5 * (all - self.gap).max(0.0));
            let on = |along: f64| path::along(&line, along).unwrap_or_default();
            halves(
                finished,
                seen.min(0.5 * finished),
                |before| on(all - 0.5 * self.gap - before),
                |after| on(0.5 * self.gap + after),
            )
        };
        design.strands.iter().zip(offsets(design)).map(way).collect()
    }

    /// The strands and the closure between their ends.
    fn marks(&self, canvas: Canvas<'_>) -> Vec<Mark> {
        let tracks = Track::all(&self.ways());
        let laid = on_tracks(self.piece, &tracks);
        let hung = laid.iter().map(Option::as_ref).collect();
        let mut marks = self.closure(&hung, canvas).around(strung(&hung, canvas));
        let foot = canvas.page(Point::new(0.0, -self.half.1 / self.scale));
        let half = 0.5 * (broadest(canvas.design()) + abreast(canvas.design())) * self.scale;
        let is_whole = laid.iter().flatten().all(|hung| hung.unseen.is_none_or(|[from, to]| to - from < 1.0));
        marks.extend((!is_whole).then(|| left_out(foot, half)).into_iter().flatten());
        marks
    }

    fn closure(&self, hung: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>) -> Layers {
        let design = canvas.design();
        let drawn = [design.closure.left(), design.closure.right()].map(hooked);
        let line = self.line(0.0);
        let all = path::length(&line);
        let (reach, steps) = (self.gap + 8.0, f64::from(STEPS));
        let way = |sign: f64| {
            let place = |step: u32| {
                let along = -0.5 * self.gap + reach * f64::from(step) / steps;
                path::along(&line, (sign * along).rem_euclid(all)).unwrap_or_default()
            };
            (0..=STEPS).map(place).collect::<Vec<_>>()
        };
        let [first, last] = mouths(design, hung.iter().copied());
        let ways = [ClosureWay { line: way(1.0), mouth: first }, ClosureWay { line: way(-1.0), mouth: last }];
        joined(ways, drawn, [Point::new(0.0, -1.0); 2], canvas)
    }
}

/// A closed piece, and the way round it along which it is measured: inside it, or through its beads.
fn closed(inside: bool, piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    let round = RoundFigure::new(piece, if inside { 0.2 } else { 1.9 });
    let canvas = round.canvas(stencils);
    let mut marks = round.marks(canvas);
    let beside = 0.5 * (broadest(&piece.design) + abreast(&piece.design)) * round.scale + 1.1;
    let off = if inside { beside } else { -beside };
    let place = |turn: f64| {
        canvas.page(Point::ORIGIN) + at((round.half.0 - off) * libm::cos(turn), (round.half.1 - off) * libm::sin(turn))
    };
    marks.extend(arrow(&(0..=24).map(|step| place(-0.7 + 4.4 * f64::from(step) / 24.0)).collect::<Vec<_>>()));
    marks
}

/// A ring of beads without a closure, pulled from both sides.
fn pulled(piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    let round = RoundFigure::new(piece, 3.2);
    let canvas = round.canvas(stencils);
    let mut marks = round.marks(canvas);
    let middle = canvas.page(Point::ORIGIN);
    let beside = round.half.0 + 0.5 * broadest(&piece.design) * round.scale + 0.4;
    marks.extend(
        [-1.0, 1.0]
            .iter()
            .flat_map(|side| arrow(&[middle + at(side * beside, 0.0), middle + at(side * (beside + 2.6), 0.0)])),
    );
    marks
}

/// A piece laid straight along a ruler, from what one end ends in to what the other does.
fn straight(piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    const LEVEL: f64 = 7.0;
    const ENDS: [f64; 2] = [0.8, 23.2];
    let design = &piece.design;
    let [left, right] = [design.closure.left(), design.closure.right()]
        .map(|parts| parts.iter().map(|part| part.least.value()).sum::<f64>());
    let long = ENDS[1] - ENDS[0];
    let scale = (3.6 / broadest(design)).min(0.6 * long / (left + right).max(1.0)).min(ENLARGED);
    let canvas = Canvas::new(Frame { origin: at(ENDS[0], LEVEL), scale }, stencils);
    let all = long / scale;
    let way = |strand: &Strand| {
        let (finished, seen) = (strand.finished.value(), 0.5 * (all - left - right));
        halves(
            finished,
            seen.min(0.5 * finished),
            |before| Point::new(left + before, 0.0),
            |after| Point::new(all - right - after, 0.0),
        )
    };
    let lines = design.strands.iter().take(1).map(way).collect();
    let tracks = Track::all(&lines);
    let laid = on_tracks(piece, &tracks);
    let hung = laid.iter().map(Option::as_ref).collect();
    let mut marks = closing_on(&tracks, canvas).around(strung(&hung, canvas));
    marks.extend(left_out(at(ENDS[0] + 0.5 * (left + all - right) * scale, LEVEL), 0.5 * broadest(design) * scale));
    marks.extend(ENDS.map(|x| ghost(polyline(&[at(x, LEVEL + 1.8), at(x, RULER)]))));
    marks.extend(ruler());
    marks
}

/// The way of a strand as far as it is seen from both ends, by how far from each end a place is.
fn halves(finished: f64, seen: f64, first: impl Fn(f64) -> Point, last: impl Fn(f64) -> Point) -> Vec<Waypoint> {
    /// How far the closure's way goes on beyond the ends.
    const BEYOND: f64 = 100.0;
    let steps = STEPS / 2;
    let spot =
        |station: f64, place: Point, hidden: bool| Waypoint { station, at: Point3::new(place.x, place.y, 0.0), hidden };
    let along = |step: u32| seen * f64::from(step) / f64::from(steps);
    let before = (0..=steps).map(|step| spot(along(step), first(along(step)), false));
    let after = (0..=steps).rev().map(|step| spot(finished - along(step), last(along(step)), false));
    let between = spot(0.5 * finished, first(seen), true);
    let outer = [spot(-BEYOND, first(-BEYOND), false), spot(finished + BEYOND, last(-BEYOND), false)];
    let [one, other] = outer;
    std::iter::once(one).chain(before).chain([between]).chain(after).chain([other]).collect()
}

/// The strands as far as they are laid, with what they share where all of them are drawn.
fn strung(hung: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>) -> Vec<Mark> {
    let rows = canvas.design().strands.iter().zip(hung);
    let laid = rows.filter_map(|(strand, hung)| Some(figure::Sketch::new(strand, (*hung)?, canvas)));
    let shared = if offsets(canvas.design()).len() > 1 { figure::bars(hung, canvas) } else { Vec::new() };
    laid.flat_map(|sketch| sketch.strand()).chain(shared).collect()
}

/// Two strokes across what is left out in a place.
fn left_out(middle: Point, half: f64) -> Vec<Mark> {
    let tall = half + 0.7;
    let stroke = |x: f64| line(polyline(&[middle + at(x - tall / 4.0, tall), middle + at(x + tall / 4.0, -tall)]));
    vec![stroke(-0.5), stroke(0.5)]
}

/// A closed line round the origin from its top on clockwise as it is seen, its height up.
fn ellipse((across, up): (f64, f64), turns: f64) -> Vec<Point> {
    let place = |step: u32| {
        let turn = FRAC_PI_2 - TAU * turns * f64::from(step) / f64::from(STEPS);
        Point::new(across * libm::cos(turn), up * libm::sin(turn))
    };
    (0..=STEPS).map(place).collect()
}

fn strand(piece: &Piece) -> Option<&Strand> {
    piece.design.strands.first()
}

/// Strands whose lengths differ by no more than this, in mm, lie side by side in a round.
const ALIKE: f64 = 1.0;

/// How far each strand that is drawn lies outside the first: all that are of one length where what closes them holds them
/// apart, else the first.
fn offsets(design: &Design) -> Vec<f64> {
    let holds = |parts: &[Part]| parts.first().is_some_and(|part| design.findings[part.finding].comb().is_some());
    let is_alike = |strand: &Strand| (strand.finished - design.strands[nth(0)].finished).value().abs() < ALIKE;
    if !holds(design.closure.left()) || !design.strands.iter().all(is_alike) {
        return vec![0.0];
    }
    design.strands.iter().map(|strand| strand.aside.value()).collect()
}

/// How far apart the first and the last strand are.
fn abreast(design: &Design) -> f64 {
    offsets(design).last().copied().unwrap_or_default()
}

/// How broad the broadest bead that is strung is.
fn broadest(design: &Design) -> f64 {
    design.beads.iter().map(|bead| bead.across.value()).fold(1.0, f64::max)
}

/// How broad a part of the closure is.
fn broad(part: &Part, design: &Design) -> f64 {
    let finding = &design.findings[part.finding];
    [finding.across(), finding.bar().map(Bar::breadth)].into_iter().flatten().map(Length::value).fold(0.0, f64::max)
}
