//! The small worn figure: the neck's front and where each strand lies on the chest.

use crate::Piece;
use crate::drape::Worn;
use crate::geometry::{Extent, Point};
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};

use super::labels::is_numbered;
use super::{DISC, Frame, lowest_point, straightened};

/// How far the shoulders reach beyond the neck on each side, as a share of its breadth: for the
/// drawing alone.
const SHOULDER: f64 = 0.75;
/// How far the shoulders fall over that way, as a share of the neck's breadth.
const SLOPE: f64 = 0.35;
/// How much of the neck is drawn, as a share of its breadth.
const THROAT: f64 = 0.5;

/// The figure in a box of a width on the page with its upper left corner at a point; its height is
/// what it takes, returned with the marks. Nothing for pieces that are not hung round a neck.
pub fn worn(piece: &Piece, corner: Point, width: f64, most_height: f64) -> Option<(Vec<Mark>, f64)> {
    let worn = piece.drape.worn.as_ref().filter(|worn| worn.lines.iter().any(|line| !line.is_empty()))?;
    let extent = extent(worn)?;
    let scale = (width / extent.width()).min(most_height / extent.height());
    let left = corner.x + (width - extent.width() * scale) / 2.0;
    let frame = Frame { origin: Point::new(left - extent.low.x * scale, corner.y + extent.high.y * scale), scale };
    let mut marks = vec![body(worn, &frame)];
    let mut seats = Vec::new();
    for (index, line) in worn.lines.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
        marks.push(strand(line, &frame));
        if is_numbered(piece) {
            let seat = seat(line, &frame, &seats);
            seats.push(seat);
            marks.push(number(piece, index, seat));
        }
    }
    Some((marks, extent.height() * scale))
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
