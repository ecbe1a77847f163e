//! A row of beads that lies in an oval, its closure at the top: enlarged, and where not all of it has room, with its middle left
//! out at the foot.

use std::f64::consts::{FRAC_PI_2, TAU};

use crate::art::{STEP_ROOM, Stencils};
use crate::design::{Bar, Design, Part, Strand};
use crate::drape::Hung;
use crate::geometry::{Point, path};
use crate::paint::mark::Mark;
use crate::piece::Piece;
use crate::sheet::figure::{self, Canvas, ClosureWay, Frame, Layers, Sketch, Track, hooked, joined, mouths, on_tracks};
use crate::steps::Inspection;
use crate::units::Length;

use super::{ALONG, ENLARGED, LEFT_OUT, PULL, Seen, broadest, first, once_round, pulled, spans};

/// How broad beads are drawn at most.
const BROAD: f64 = 3.2;
/// How long its closure is drawn at most.
const CLOSURE: f64 = 15.0;
/// Points along a way round.
const STEPS: u32 = 240;

/// A row that lies in an oval.
pub struct Oval<'a> {
    piece: &'a Piece,
    strand: &'a Strand,
    hung: &'a Hung,
    seen: Seen,
    /// Half its breadth and height on paper, to the middle of its beads.
    half: (f64, f64),
    scale: f64,
    /// How long its closure is, closed as short as it goes, in mm of the piece.
    gap: f64,
    /// What lies outside the middle of its beads on paper, with the room beyond.
    out: f64,
}

impl<'a> Oval<'a> {
    /// A piece's first strand with room for how it is measured.
    pub fn of(how: Inspection, piece: &'a Piece) -> Option<Self> {
        let (strand, hung) = first(piece)?;
        let design = &piece.design;
        let parts = || [design.closure.left(), design.closure.right()].into_iter().flatten();
        let least = parts().map(|part| part.least.value()).sum::<f64>();
        let gap = least - figure::overlap(design).unwrap_or_default();
        let tall = parts().map(|part| broad(part, design)).fold(broadest(design), f64::max);
        let scale = (BROAD / broadest(design)).min(ENLARGED).min(CLOSURE / gap.max(1.0));
        let (width, height) = STEP_ROOM;
        let spare = match how {
            Inspection::Inside => 0.2,
            Inspection::Pulled => PULL,
            _ => ALONG,
        };
        let out = 0.5 * broadest(design) * scale + spare;
        let half = (0.5 * width - out, 0.5 * height - out.max(0.5 * tall * scale));
        let round = path::length(&ellipse(half));
        let scale = scale.max(round / (strand.finished.value() + gap));
        // As much as would have room with one bead more, made to fit.
        let longest = design.beads.iter().map(|bead| bead.along.value()).fold(0.0, f64::max);
        let seen = Seen::of(strand, hung, round / scale - gap + longest, LEFT_OUT / scale);
        let left_out = if seen.is_whole() { 0.0 } else { LEFT_OUT };
        let scale = scale.min((round - left_out) / (gap + seen.first + seen.last));
        Some(Self { piece, strand, hung, seen, half, scale, gap, out })
    }

    /// From its top on to the right, in mm of the piece.
    fn line(&self) -> Vec<Point> {
        ellipse((self.half.0 / self.scale, self.half.1 / self.scale))
    }

    /// Whether at least half of what is seen are beads.
    pub fn is_strung(&self) -> bool {
        let (seen, finished) = (self.seen, self.strand.finished.value());
        let is_seen = |from: f64, to: f64| to <= seen.first || from >= finished - seen.last;
        let beads = spans(self.strand, self.hung).filter(|(from, to, is_bead)| *is_bead && is_seen(*from, *to));
        2.0 * beads.map(|(from, to, _)| to - from).sum::<f64>() >= seen.first + seen.last
    }

    /// The row with its closure, and the arrows that say how it is measured.
    pub fn marks(&self, how: Inspection, stencils: &Stencils<'_>) -> Vec<Mark> {
        let (width, height) = STEP_ROOM;
        let origin = Point::new(0.5 * width, height - self.half.1 - self.out);
        let canvas = Canvas::new(Frame { origin, scale: self.scale }, stencils);
        let mut marks = self.closed(canvas);
        let beside = 0.5 * broadest(&self.piece.design) * self.scale;
        let round = |off: f64| once_round(origin, (self.half.0 + off, self.half.1 + off));
        marks.extend(match how {
            Inspection::Inside => round(-beside - 1.1),
            Inspection::Pulled => pulled(origin, self.half.0 + beside),
            _ => round(beside + 1.1),
        });
        marks
    }

    /// The strand, the closure between its ends, and the strokes where some of it is left out.
    fn closed(&self, canvas: Canvas<'_>) -> Vec<Mark> {
        let (line, seen) = (self.line(), self.seen);
        let all = path::length(&line);
        let on = |along: f64| path::along(&line, along).unwrap_or_default();
        let (first, last) = (|before: f64| all - 0.5 * self.gap - before, |after: f64| 0.5 * self.gap + after);
        let way = seen.way(|before| on(first(before)), |after| on(last(after)));
        let laid = on_tracks(self.piece, &Track::all(&vec![way].into()));
        let Some(hung) = laid.first().and_then(Option::as_ref) else { return Vec::new() };
        let mut marks = self.closure(&line, hung, canvas).around(Sketch::new(self.strand, hung, canvas).alone());
        let [from, to] = [first(seen.first), last(seen.last)];
        let between: Vec<_> =
            (0..=12).map(|step| canvas.page(on(from + (to - from) * f64::from(step) / 12.0))).collect();
        marks.extend(seen.left_out(self.strand, &between, canvas));
        marks
    }

    fn closure(&self, line: &[Point], hung: &Hung, canvas: Canvas<'_>) -> Layers {
        let design = canvas.design();
        let all = path::length(line);
        let (reach, steps) = (self.gap + 8.0, f64::from(STEPS));
        let way = |sign: f64| {
            let place = |step: u32| {
                let along = -0.5 * self.gap + reach * f64::from(step) / steps;
                path::along(line, (sign * along).rem_euclid(all)).unwrap_or_default()
            };
            (0..=STEPS).map(place).collect::<Vec<_>>()
        };
        let drawn = [design.closure.left(), design.closure.right()].map(hooked);
        let [first, last] = mouths(design, std::iter::once(Some(hung)));
        let ways = [ClosureWay { line: way(1.0), mouth: first }, ClosureWay { line: way(-1.0), mouth: last }];
        joined(ways, drawn, [Point::new(0.0, -1.0); 2], canvas)
    }
}

/// A closed line round the origin from its top on clockwise as it is seen, its height up.
fn ellipse((across, up): (f64, f64)) -> Vec<Point> {
    let place = |step: u32| {
        let turn = FRAC_PI_2 - TAU * f64::from(step) / f64::from(STEPS);
        Point::new(across * libm::cos(turn), up * libm::sin(turn))
    };
    (0..=STEPS).map(place).collect()
}

/// How broad a part of the closure is.
fn broad(part: &Part, design: &Design) -> f64 {
    let finding = &design.findings[part.finding];
    [finding.across(), finding.bar().map(Bar::breadth)].into_iter().flatten().map(Length::value).fold(0.0, f64::max)
}
