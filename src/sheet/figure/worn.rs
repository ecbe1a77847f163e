//! The worn figure: the neck's front and each strand with its beads where it lies on the chest.

use crate::Piece;
use crate::art::Stencils;
use crate::drape::Worn;
use crate::geometry::{Extent, Point};
use crate::paint::layout::Block;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};

use super::labels::is_numbered;
use super::{DISC, Frame, Track, closing_on, lowest_point, on_tracks, straightened};

/// What the figure is called to those who cannot see it.
pub const LABEL: &str = "the piece on the neck";
/// How far the shoulders reach beyond the neck on each side, as a share of its breadth: for the
/// drawing alone.
const SHOULDER: f64 = 0.5;
/// How far the shoulders fall over that way, as a share of the neck's breadth.
const SLOPE: f64 = 0.26;
/// How much of the neck is drawn, as a share of its breadth.
const THROAT: f64 = 0.42;

/// Most things strung that are drawn one by one; of more a line is drawn, as one would see it.
const MOST: usize = 4_000;

/// The figure in a block of a width, at most so high. Nothing for pieces that are not hung round a neck.
pub fn worn(piece: &Piece, width: f64, most_height: f64, stencils: &mut Stencils<'_>) -> Option<Block> {
    let worn = piece.drape.worn.as_ref().filter(|worn| worn.lines.iter().any(|line| !line.is_empty()))?;
    let extent = extent(worn)?;
    let scale = (width / extent.width()).min(most_height / extent.height());
    let left = (width - extent.width() * scale) / 2.0;
    let frame = Frame { origin: Point::new(left - extent.low.x * scale, extent.high.y * scale), scale };
    let mut marks = vec![body(worn, &frame)];
    marks.extend(strands(piece, worn, &frame, stencils));
    let mut seats = Vec::new();
    for (index, line) in worn.lines.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
        if is_numbered(piece) {
            let seat = seat(line, &frame, &seats);
            seats.push(seat);
            marks.push(number(piece, index, seat));
        }
    }
    let height = extent.height() * scale;
    Some(Block::new(width, height, vec![Mark::figure(LABEL, marks)]))
}

/// The box round figure and strands, in the worn frame.
fn extent(worn: &Worn) -> Option<Extent> {
    let shoulder = worn.breadth * (0.5 + SHOULDER);
    let frame = Extent {
        low: Point::new(-shoulder, -worn.breadth * SLOPE - worn.depth / 2.0),
        high: Point::new(shoulder, worn.breadth * THROAT),
    };
    let lines = Extent::of(worn.lines.iter().flatten().copied())?;
    Some(frame.and(lines.grown(worn.breadth * 0.12)))
}

/// Neck and shoulders, in thin lines.
fn body(worn: &Worn, frame: &Frame) -> Mark {
    let (half, fall) = (worn.breadth / 2.0, worn.breadth * SLOPE);
    let side = |sign: f64| {
        let points = [
            Point::new(sign * half * 0.86, worn.breadth * THROAT),
            Point::new(sign * half * 0.88, worn.breadth * THROAT * 0.4),
            Point::new(sign * half, 0.0),
            Point::new(sign * half * 1.5, -fall * 0.35),
            Point::new(sign * (half + worn.breadth * SHOULDER), -fall),
        ];
        stroke(outline::curve(&points.map(|point| frame.page(point))), 0.25)
    };
    let front: Vec<_> = (0..=24)
        .map(|step| {
            let angle = std::f64::consts::PI * f64::from(step) / 24.0;
            frame.page(Point::new(-half * libm::cos(angle), -worn.depth / 2.0 * libm::sin(angle)))
        })
        .collect();
    let base = Mark::Shape {
        outline: outline::polyline(&front),
        fill: None,
        stroke: Some(Stroke { dashes: vec![0.8, 0.8], ..Stroke::new(style::RULE, 0.2) }),
    };
    Mark::figure("neck and shoulders", vec![side(-1.0), side(1.0), base])
}

/// The strands with what is strung on them, and what of the closure comes round to the front; lines
/// where they are too many to be told apart.
fn strands(piece: &Piece, worn: &Worn, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let strung: usize = piece.drape.strands.iter().map(|hung| hung.seats.len()).sum();
    if strung > MOST {
        return worn.lines.iter().filter(|line| !line.is_empty()).map(|line| strand(line, frame)).collect();
    }
    let tracks = Track::all(worn, |_| false);
    let laid = on_tracks(piece, &tracks);
    let laid: Vec<_> = laid.iter().map(Option::as_ref).collect();
    let mut marks = closing_on(&tracks, piece, frame, stencils);
    marks.extend(super::strands(&piece.design, &laid, frame, stencils));
    marks
}

fn strand(line: &[Point], frame: &Frame) -> Mark {
    let points: Vec<_> = line.iter().map(|point| frame.page(*point)).collect();
    stroke(outline::polyline(&straightened(&points)), 0.5)
}

fn stroke(outline: Vec<crate::paint::mark::Step>, width: f64) -> Mark {
    Mark::Shape { outline, fill: None, stroke: Some(Stroke { round: true, ..Stroke::new(style::INK, width) }) }
}

/// The place on a strand nearest its lowest point whose number lies on none that has a place.
fn seat(line: &[Point], frame: &Frame, taken: &[Point]) -> Point {
    let lowest = frame.page(lowest_point(line.iter().copied()));
    let free = |at: &Point| taken.iter().all(|other| at.distance(*other) > 2.0 * DISC + 0.2);
    let places = std::iter::once(lowest).chain(line.iter().map(|point| frame.page(*point)));
    let nearest = places.filter(free).min_by(|a, b| a.distance(lowest).total_cmp(&b.distance(lowest)));
    nearest.unwrap_or(lowest)
}

/// A strand's number in its place.
fn number(piece: &Piece, index: usize, seat: Point) -> Mark {
    let label = format!("strand {}", piece.design.strands[index].name);
    Mark::figure(label, super::disc(index + 1, seat))
}
