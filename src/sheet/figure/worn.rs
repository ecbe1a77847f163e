//! The worn figure: the neck's front and each strand with its beads where it lies on the chest.

use std::f64::consts::PI;

use crate::art::Stencils;
use crate::design::{Entries, Index, Strand};
use crate::drape::{Hung, Waypoint, Worn};
use crate::geometry::{Extent, Point};
use crate::paint::layout::Block;
use crate::paint::mark::{Mark, Stroke};
use crate::paint::{outline, style};
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::Alternative;

use super::labels::{DISC_ROOM, is_numbered, thick};
use super::{Canvas, Frame, Track, closing_on, lowest_point, on_neck, straightened, strand_box};

/// How far the shoulders are drawn from the middle, and how high the neck, as shares of its base's breadth.
const SHOULDERS: f64 = 1.0;
const THROAT: f64 = 0.42;
/// Room round the strands, as a share of that.
const AROUND: f64 = 0.12;
/// Width in mm of a strand that is drawn as a line.
const STRAND: f64 = 0.5;
/// Dash and gap in mm of what is not seen.
const DASHES: [f64; 2] = [0.8, 0.8];
/// How far to either side of the front the neck's base is drawn: beyond, it turns up behind the shoulder's line.
const SIDE: f64 = 70.0 * PI / 180.0;
/// Steps along that.
const SIDE_STEPS: i32 = 12;

/// Most things strung that are drawn one by one; of more a line is drawn, as one would see it.
const MOST: usize = 4_000;

/// The figure in a block of a width, at most so high. Nothing for pieces that are not hung round a neck.
pub fn worn(piece: &Piece, width: f64, most_height: f64, stencils: &Stencils<'_>) -> Option<Block> {
    let worn = piece.drape.worn.as_ref().filter(|worn| worn.lines.iter().any(|line| !line.is_empty()))?;
    let tracks = Track::all(&worn.lines);
    let laid = on_neck(piece, worn, &tracks);
    let extent = extent(piece, worn, &laid)?;
    let scale = (width / extent.width()).min(most_height / extent.height());
    let left = (width - extent.width() * scale) / 2.0;
    let frame = Frame { origin: Point::new(left - extent.low.x * scale, extent.high.y * scale), scale };
    let mut marks = vec![body(worn, &frame)];
    if strung(piece) > MOST {
        marks.extend(worn.lines.iter().flat_map(|line| strand(line, &frame)));
    } else {
        let laid = laid.iter().map(Option::as_ref).collect();
        let canvas = Canvas::new(frame, stencils);
        marks.extend(closing_on(&tracks, canvas).around(super::strands(&laid, canvas)));
    }
    marks.extend(numbers(piece, worn, &frame));
    let height = extent.height() * scale;
    Some(Block::new(width, height, vec![Mark::figure(english::figure(&Alternative::OnNeck), marks)]))
}

/// How many things are strung.
fn strung(piece: &Piece) -> usize {
    piece.drape.strands.iter().map(|hung| hung.seats.len()).sum()
}

/// The box round figure and strands with what hangs from them, in the worn frame.
fn extent(piece: &Piece, worn: &Worn, laid: &Entries<Option<Hung>, Strand>) -> Option<Extent> {
    let breadth = worn.skin.breadth();
    let frame = Extent {
        low: Point::new(-SHOULDERS * breadth, worn.skin.front().y),
        high: Point::new(SHOULDERS * breadth, THROAT * breadth),
    };
    let seen = worn.lines.iter().flat_map(|line| in_sight(line));
    let lines = Extent::of(seen)?.grown(AROUND * breadth);
    let rows = piece.design.strands.iter().zip(laid);
    let boxes = rows.filter_map(|(strand, hung)| strand_box(&piece.design, strand, hung.as_ref()?));
    Some(boxes.fold(frame.and(lines), Extent::and))
}

/// Neck and shoulders, in thin lines, and the front of the neck's base.
fn body(worn: &Worn, frame: &Frame) -> Mark {
    let right: Vec<Point> = worn.skin.outline(THROAT, SHOULDERS);
    let side = |sign: f64| {
        let points: Vec<_> = right.iter().map(|point| frame.page(Point::new(sign * point.x, point.y))).collect();
        stroke(outline::curve(&points), style::BOLD)
    };
    let front: Vec<_> = (-SIDE_STEPS..=SIDE_STEPS)
        .map(|step| frame.page(worn.skin.around(SIDE * f64::from(step) / f64::from(SIDE_STEPS)).front()))
        .collect();
    let base = Mark::Shape {
        outline: outline::polyline(&front),
        fill: None,
        stroke: Some(Stroke { dashes: DASHES.to_vec(), ..style::RULE_LINE }),
    };
    Mark::figure(english::figure(&Alternative::Neck), vec![side(-1.0), side(1.0), base])
}

/// A strand as a line, or as one on either side of the neck.
fn strand(line: &[Waypoint], frame: &Frame) -> Vec<Mark> {
    let runs = line.chunk_by(|one, other| one.hidden == other.hidden).filter(|run| !run[0].hidden);
    let drawn = |run: &[Waypoint]| {
        let points: Vec<_> = in_sight(run).map(|point| frame.page(point)).collect();
        stroke(outline::polyline(&straightened(&points)), STRAND)
    };
    runs.map(drawn).collect()
}

fn stroke(outline: Vec<crate::paint::mark::Segment>, width: f64) -> Mark {
    Mark::Shape { outline, fill: None, stroke: Some(Stroke { round: true, ..Stroke::new(style::INK, width) }) }
}

/// The places of a line that are seen.
fn in_sight(line: &[Waypoint]) -> impl Iterator<Item = Point> + Clone {
    line.iter().filter(|spot| !spot.hidden).map(|spot| spot.at.front())
}

/// The strands' numbers above their lowest places, where they have room between the strands.
fn numbers(piece: &Piece, worn: &Worn, frame: &Frame) -> Vec<Mark> {
    let seen = piece.design.strands.indices().zip(&worn.lines).filter(|(_, line)| !line.is_empty());
    let place = |(index, line): (Index<Strand>, &Vec<Waypoint>)| {
        (index, frame.page(lowest_point(in_sight(line))), thick(piece, index) * frame.scale)
    };
    let mut places: Vec<_> = seen.map(place).collect();
    places.sort_by(|one, other| one.1.y.total_cmp(&other.1.y));
    let room =
        |[(_, upper, above), (_, lower, below)]: [(Index<Strand>, Point, f64); 2]| lower.y - upper.y - above - below;
    let fits = places.windows(2).all(|pair| room([pair[0], pair[1]]) >= DISC_ROOM);
    let shown = places.into_iter().filter(|_| fits && is_numbered(piece));
    let seat = |at: Point, thick: f64| at - Point::new(0.0, thick + DISC_ROOM / 2.0);
    shown.map(|(index, at, thick)| number(piece, index, seat(at, thick))).collect()
}

/// A strand's number in its place.
fn number(piece: &Piece, index: Index<Strand>, seat: Point) -> Mark {
    let label = english::figure(&Alternative::Strand(&piece.design.strands[index].name));
    Mark::figure(label, super::disc(index.ordinal(), seat))
}
