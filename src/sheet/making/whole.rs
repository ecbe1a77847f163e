//! The finished piece as it is measured and tried: all of it where it has several strands, branches or little but bare cord, and
//! else enlarged, its own closure and the beads beside that from both ends, with what lies between them left out.

mod oval;

use crate::art::pen::{arrow, at, ghost, line};
use crate::art::{RULER, STEP_ROOM, Stencils, boxed, clipped, ruler, ruler_upright};
use crate::design::{Design, Strand, What};
use crate::drape::{Hung, Waypoint};
use crate::geometry::{Extent, Point, Point3, path};
use crate::paint::layout::Rect;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::outline::{curve, ellipse, polyline};
use crate::paint::style;
use crate::piece::Piece;
use crate::sheet::Illustration;
use crate::sheet::figure::{self, Canvas, Frame, Sketch, Track, closing_on, on_tracks};
use crate::steps::{Drawing, Inspection, english};
use oval::OvalRow;

/// How many times as large as it is a piece is drawn at most.
const ENLARGED: f64 = 1.5;
/// Most beads of a piece that is drawn whole.
const MOST_WHOLE: u32 = 1000;
/// Room on paper for the strokes where something is left out.
const LEFT_OUT: f64 = 2.4;
/// How broad beads must be drawn at least for others to be drawn smaller that they are seen.
const LEAST_BROAD: f64 = 1.6;
/// Room beside a piece for an arrow along it, and for one that pulls.
const ALONG: f64 = 1.9;
const PULL: f64 = 3.2;

/// A finished piece as it is measured, and the picture of it.
pub fn figure(how: Inspection, piece: &Piece, picture: &dyn Illustration, stencils: &Stencils<'_>) -> Vec<Mark> {
    let oval = || OvalRow::of(how, piece).filter(|oval| !is_shown_whole(&piece.design) && oval.is_strung());
    let marks = match how {
        Inspection::Hung => hung(piece, stencils),
        Inspection::Straight => straight(piece, stencils),
        _ => oval().map_or_else(|| whole(how, piece, picture, stencils), |oval| oval.marks(how, stencils)),
    };
    boxed(english::drawing(Drawing::Inspected(how)), vec![clipped(marks)])
}

/// Whether a piece is more than one row of beads.
fn is_shown_whole(design: &Design) -> bool {
    let has_branches = design.strands.iter().any(|strand| strand.hung().next().is_some());
    let several = design.strands.len() > 1 || has_branches || design.meeting().is_some();
    several && design.counts().iter().sum::<u32>() <= MOST_WHOLE
}

/// A piece as its picture shows it, and how it is measured: round it, inside it, or pulled.
fn whole(how: Inspection, piece: &Piece, picture: &dyn Illustration, stencils: &Stencils<'_>) -> Vec<Mark> {
    let [beside, above] = match how {
        Inspection::Inside => [0.2, 0.2],
        Inspection::Pulled => [PULL, 0.2],
        _ => [ALONG, ALONG],
    };
    let extent = picture.extent();
    let (width, height) = STEP_ROOM;
    let room = Rect::new(beside, above, width - 2.0 * beside, height - 2.0 * above);
    let canvas = Canvas::new(Frame::filling(extent, room), stencils);
    let measured = if how == Inspection::Inside { opening(piece).unwrap_or(extent) } else { extent };
    let (middle, half) = (canvas.page(measured.middle()), (measured.high - measured.low) * (0.5 * canvas.scale()));
    // Branches hang into what one row lies round.
    let inside = if piece.design.strands.len() > 1 { (0.64, 0.8) } else { (0.5, 0.5) };
    let arrows = match how {
        Inspection::Inside => once_round(middle, (inside.0 * half.x, inside.1 * half.y)),
        Inspection::Pulled => pulled(middle, half.x),
        _ => once_round(middle, (half.x + 1.1, half.y + 1.1)),
    };
    [picture.marks(canvas), arrows].concat()
}

/// The box in what all rows of a piece lie round that closes round a limb.
fn opening(piece: &Piece) -> Option<Extent> {
    let rows = figure::rows(piece);
    let boxes = rows.iter().flatten().filter_map(|row| Extent::of(row.joints.iter().map(|joint| joint.at)));
    let all = boxes.reduce(|all, row| Extent {
        low: Point::new(all.low.x.max(row.low.x), all.low.y.max(row.low.y)),
        high: Point::new(all.high.x.min(row.high.x), all.high.y.min(row.high.y)),
    })?;
    Some(all.grown(-0.5 * broadest(&piece.design)))
}

/// An arrow most of the way round a middle, so far across and down.
fn once_round(middle: Point, (across, down): (f64, f64)) -> Vec<Mark> {
    let place = |turn: f64| middle + at(across * libm::cos(turn), down * libm::sin(turn));
    arrow(&(0..=24).map(|step| place(-0.7 + 4.4 * f64::from(step) / 24.0)).collect::<Vec<_>>())
}

/// Arrows that pull from both sides at what reaches so far from a middle.
fn pulled(middle: Point, half: f64) -> Vec<Mark> {
    let pull = |side: f64| arrow(&[half + 0.4, half + PULL - 0.2].map(|off| middle + at(side * off, 0.0)));
    [-1.0, 1.0].into_iter().flat_map(pull).collect()
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

/// A piece laid straight along a ruler, from what one end ends in to what the other does.
fn straight(piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    const LEVEL: f64 = 7.0;
    const ENDS: [f64; 2] = [0.8, 23.2];
    let design = &piece.design;
    let Some((strand, hung)) = first(piece) else { return Vec::new() };
    let [left, right] = [design.closure.left(), design.closure.right()]
        .map(|parts| parts.iter().map(|part| part.least.value()).sum::<f64>());
    let long = ENDS[1] - ENDS[0];
    let beads: f64 = end_beads(strand, hung).iter().sum();
    let usual = (3.6 / broadest(design)).min(0.6 * long / (left + right).max(1.0)).min(ENLARGED);
    let with_beads = usual.min((long - LEFT_OUT) / (left + right + beads));
    let scale = if with_beads * broadest(design) >= LEAST_BROAD { with_beads } else { usual };
    let scale = scale.max(long / (left + strand.finished.value() + right));
    let canvas = Canvas::new(Frame { origin: at(ENDS[0], LEVEL), scale }, stencils);
    let all = long / scale;
    let seen = SeenEnds::of(strand, hung, all - left - right, LEFT_OUT / scale);
    let lines = [seen.way(|before| Point::new(left + before, 0.0), |after| Point::new(all - right - after, 0.0))];
    let tracks = Track::all(&lines.to_vec().into());
    let laid = on_tracks(piece, &tracks);
    let alone = laid.first().and_then(Option::as_ref).map(|hung| Sketch::new(strand, hung, canvas).alone());
    let mut marks = closing_on(&tracks, canvas).around(alone.unwrap_or_default());
    let between = [left + seen.first, all - right - seen.last].map(|x| at(ENDS[0] + x * scale, LEVEL));
    marks.extend(seen.left_out(strand, &between, canvas));
    marks.extend(ENDS.map(|x| ghost(polyline(&[at(x, LEVEL + 1.8), at(x, RULER)]))));
    marks.extend(ruler());
    marks
}

/// A strap's first end slid onto the arm of a pair of spectacles.
pub fn on_arm(piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    const GRIP: Point = at(13.6, 5.7);
    let outline = curve(&[at(0.4, 5.6), at(8.0, 5.6), at(16.0, 5.8), at(20.4, 7.2), at(23.2, 11.6)]);
    let arm = Mark::Shape { outline, fill: None, stroke: Some(Stroke::new(style::QUIET, 1.8)) };
    // It passes over the far side of the loop that grips it.
    let within = Extent { low: GRIP - at(0.0, 3.0), high: GRIP + at(4.0, 3.0) };
    let over = Mark::Clipped { within, marks: vec![arm.clone()] };
    let mut marks = vec![arm];
    marks.extend(gripping(GRIP, piece, stencils));
    marks.push(over);
    marks.push(ghost(ellipse(at(21.4, 8.3), 1.3, 2.6)));
    marks.extend(arrow(&[at(21.4, 3.0), at(18.6, 2.0), at(15.6, 2.4)]));
    boxed(english::drawing(Drawing::OnArm), vec![clipped(marks)])
}

/// A piece's first end, which hangs to the left from what goes through it.
fn gripping(grip: Point, piece: &Piece, stencils: &Stencils<'_>) -> Vec<Mark> {
    /// How long its closure is drawn, and how much of that is beyond what goes through it.
    const CLOSURE: f64 = 11.0;
    const BEYOND: f64 = 1.6;
    let down = Point::new(-0.72, -0.69);
    let Some((strand, hung)) = first(piece) else { return Vec::new() };
    let left: f64 = piece.design.closure.left().iter().map(|part| part.least.value()).sum();
    let scale = (CLOSURE / left.max(1.0)).min(ENLARGED);
    let canvas = Canvas::new(Frame { origin: grip, scale }, stencils);
    let place = |along: f64| down * (left + along - BEYOND / scale);
    let seen = SeenEnds::of(strand, hung, f64::INFINITY, 0.0);
    let tracks = Track::all(&vec![seen.way(place, |after| place(seen.finished - after))].into());
    let laid = on_tracks(piece, &tracks);
    let alone = laid.first().and_then(Option::as_ref).map(|hung| Sketch::new(strand, hung, canvas).alone());
    closing_on(&tracks, canvas).around(alone.unwrap_or_default())
}

/// The first strand, and how it hangs.
fn first(piece: &Piece) -> Option<(&Strand, &Hung)> {
    piece.design.strands.first().zip(piece.drape.strands.first())
}

/// Where things stand on a strand: from where to where each reaches, in mm from its first end, and whether it is a bead.
fn spans<'a>(strand: &'a Strand, hung: &'a Hung) -> impl DoubleEndedIterator<Item = (f64, f64, bool)> + 'a {
    hung.seats.iter().map(|seat| {
        let bit = seat.bit(strand);
        (seat.station - bit.before, seat.station + bit.after, matches!(bit.what, What::Bead(_)))
    })
}

/// How far from either end the third bead reaches.
fn end_beads(strand: &Strand, hung: &Hung) -> [f64; 2] {
    const SHOWN: usize = 3;
    let beads = || spans(strand, hung).filter(|(.., is_bead)| *is_bead);
    let (first, last) = (beads().take(SHOWN).last(), beads().rev().take(SHOWN).last());
    [first.map_or(0.0, |(_, to, _)| to), last.map_or(0.0, |(from, ..)| strand.finished.value() - from)]
}

/// How much of a strand is seen from its first end, and from its last, in mm.
#[derive(Clone, Copy)]
struct SeenEnds {
    finished: f64,
    first: f64,
    last: f64,
}

impl SeenEnds {
    /// All of it where it has room, else as much as has room beside the strokes without anything cut.
    fn of(strand: &Strand, hung: &Hung, room: f64, strokes: f64) -> Self {
        const ROUNDING: f64 = 1e-6;
        let finished = strand.finished.value();
        if finished <= room + ROUNDING {
            return Self { finished, first: 0.5 * finished, last: 0.5 * finished };
        }
        let room = (room - strokes).max(0.0);
        let across = |place: f64| spans(strand, hung).find(move |(from, to, _)| *from < place && place < *to);
        let uncut = |first: f64| {
            let limit = (room - first).max(0.0);
            let last = across(finished - limit).map_or(limit, |(_, to, _)| (finished - to).max(0.0));
            Self { finished, first, last }
        };
        let beside = |(from, to, _): (f64, f64, bool)| [from.max(0.0), if to <= room { to } else { from.max(0.0) }];
        let [before, behind] = across(0.5 * room).map_or([0.5 * room; 2], beside);
        let [less, more] = [before, behind].map(uncut);
        if more.first + more.last > less.first + less.last { more } else { less }
    }

    /// Whether nothing is left out.
    fn is_whole(&self) -> bool {
        self.first + self.last >= self.finished
    }

    /// The strand's way, by how far from each end a place is.
    fn way(&self, first: impl Fn(f64) -> Point, last: impl Fn(f64) -> Point) -> Vec<Waypoint> {
        /// How far the closure's way goes on beyond the ends.
        const BEYOND: f64 = 100.0;
        const STEPS: u32 = 120;
        let finished = self.finished;
        let spot = |station: f64, place: Point, hidden: bool| {
            let at = Point3::new(place.x, place.y, 0.0);
            Waypoint { station, at, hidden }
        };
        let along = |seen: f64, step: u32| seen * f64::from(step) / f64::from(STEPS);
        let before = (0..=STEPS).map(|step| along(self.first, step)).map(|before| spot(before, first(before), false));
        let after = (0..=STEPS)
            .rev()
            .map(|step| along(self.last, step))
            .map(|after| spot(finished - after, last(after), false));
        let between = spot(0.5 * finished, first(self.first), true);
        let [one, other] = [spot(-BEYOND, first(-BEYOND), false), spot(finished + BEYOND, last(-BEYOND), false)];
        std::iter::once(one).chain(before).chain([between]).chain(after).chain([other]).collect()
    }

    /// Bare cord along places of the page where some of the strand is left out, and two strokes across it.
    fn left_out(&self, strand: &Strand, between: &[Point], canvas: Canvas<'_>) -> Vec<Mark> {
        let tall = 0.5 * broadest(canvas.design()) * canvas.scale() + 0.7;
        let Some(middle) = path::along(between, 0.5 * path::length(between)).filter(|_| !self.is_whole()) else {
            return Vec::new();
        };
        let stroke = |x: f64| line(polyline(&[middle + at(x - tall / 4.0, tall), middle + at(x + tall / 4.0, -tall)]));
        vec![canvas.stencils.strand_cord(strand, between, canvas.scale()), stroke(-0.5), stroke(0.5)]
    }
}

/// How broad the broadest bead that is strung is.
fn broadest(design: &Design) -> f64 {
    design.beads.iter().map(|bead| bead.across.value()).fold(1.0, f64::max)
}
