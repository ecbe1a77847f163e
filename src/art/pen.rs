//! How the small drawings are drawn: cords, wires, metal, beads and arrows.

use std::f64::consts::FRAC_PI_2;

use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark, Rgb, Segment, Stroke};
use crate::paint::{outline, style};

/// Thickness of a cord, edges included.
const CORD: f64 = 1.0;
/// Thickness of a wire, edges included.
const WIRE: f64 = 0.95;
/// Thickness of the lines that are edges.
pub const EDGE: f64 = 0.22;
/// What metal is filled with.
pub const METAL: Rgb = Rgb(0xdd, 0xe0, 0xe3);
/// Length of an arrow's head.
const HEAD: f64 = 1.5;

/// The colour of a cord.
pub const PLAIN: Rgb = Rgb::WHITE;

/// The colour that tells one cord from another.
pub fn tinted() -> Rgb {
    style::ACCENT.mixed(Rgb::WHITE, 0.6)
}

/// A point.
#[must_use]
pub const fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn stroked(path: &[Segment], colour: Rgb, width: f64) -> Mark {
    Mark::Shape { outline: path.to_vec(), fill: None, stroke: Some(Stroke::new(colour, width)) }
}

/// A cord along a path.
pub fn cord(path: &[Segment], colour: Rgb) -> Vec<Mark> {
    vec![stroked(path, style::INK, CORD), stroked(path, colour, CORD - 2.0 * EDGE)]
}

/// A cord that is cut off at the path's end.
pub fn tail(path: &[Segment], colour: Rgb) -> Vec<Mark> {
    cord(path, colour).into_iter().chain(cut(path, CORD)).collect()
}

/// The edge where something so broad is cut off at a path's end.
fn cut(path: &[Segment], broad: f64) -> Option<Mark> {
    let points = outline::flattened(path);
    let [.., before, end] = points.as_slice() else { return None };
    let aside = Point::towards((*end - *before).angle() + FRAC_PI_2) * (broad / 2.0);
    Some(stroked(&outline::line(*end - aside, *end + aside), style::INK, EDGE))
}

/// How broad in mm one cord is, or the two legs of a doubled one.
pub fn breadth(legs: u8) -> f64 {
    if legs > 1 { 2.0 * CORD - EDGE } else { CORD }
}

/// One cord along a path, or both legs of a doubled one side by side.
pub fn legs(path: &[Segment], count: u8) -> Vec<Mark> {
    let broad = breadth(count);
    let between = (count > 1).then(|| stroked(path, style::INK, EDGE));
    [stroked(path, style::INK, broad), stroked(path, PLAIN, broad - 2.0 * EDGE)].into_iter().chain(between).collect()
}

/// The same where they lie over something.
pub fn legs_over(path: &[Segment], count: u8) -> Vec<Mark> {
    [vec![stroked(path, Rgb::WHITE, breadth(count) + 0.7)], legs(path, count)].concat()
}

/// The same cut off at the path's end.
pub fn tails(path: &[Segment], count: u8) -> Vec<Mark> {
    legs(path, count).into_iter().chain(cut(path, breadth(count))).collect()
}

/// A stretch of cord that lies over another: paper shows on both sides of it.
pub fn cord_over(path: &[Segment], colour: Rgb) -> Vec<Mark> {
    [vec![stroked(path, Rgb::WHITE, CORD + 0.7)], cord(path, colour)].concat()
}

/// A path's pieces from one to another.
pub fn stretch(path: &[Segment], from: usize, to: usize) -> Vec<Segment> {
    let start = path.get(from).and_then(|segment| match segment {
        Segment::Move(to) | Segment::Line(to) | Segment::Curve(_, _, to) => Some(Segment::Move(*to)),
        Segment::Close => None,
    });
    start.into_iter().chain(path.iter().take(to + 1).skip(from + 1).copied()).collect()
}

/// A wire, or a thin wall of metal, along a path.
pub fn wire(path: &[Segment]) -> Vec<Mark> {
    vec![stroked(path, style::INK, WIRE), stroked(path, METAL, WIRE - 2.0 * EDGE)]
}

/// A stretch of wire that lies over something.
pub fn wire_over(path: &[Segment]) -> Vec<Mark> {
    [vec![stroked(path, Rgb::WHITE, WIRE + 0.7)], wire(path)].concat()
}

/// A solid piece of metal.
pub fn metal(outline: Vec<Segment>) -> Mark {
    filled(outline, METAL)
}

/// An area with its edge.
pub fn filled(outline: Vec<Segment>, colour: Rgb) -> Mark {
    Mark::Shape { outline, fill: Some(Fill::Flat(colour, 1.0)), stroke: Some(Stroke::new(style::INK, EDGE)) }
}

/// A thin line.
pub fn line(path: Vec<Segment>) -> Mark {
    stroked(&path, style::INK, EDGE * 0.8)
}

/// Where something was or will be.
pub fn ghost(path: Vec<Segment>) -> Mark {
    let stroke = Stroke { dashes: vec![0.9, 0.6], ..Stroke::new(style::ACCENT, EDGE) };
    Mark::Shape { outline: path, fill: None, stroke: Some(stroke) }
}

/// What is hidden behind or inside something.
pub fn hidden(path: Vec<Segment>) -> Mark {
    let stroke = Stroke { dashes: vec![0.6, 0.5], ..Stroke::new(style::INK, EDGE * 0.8) };
    Mark::Shape { outline: path, fill: None, stroke: Some(stroke) }
}

/// The ways of cords through something, seen on whatever colour that has.
pub fn through(ways: &[(Point, Point)]) -> Vec<Mark> {
    let lines: Vec<_> = ways.iter().flat_map(|(from, to)| outline::line(*from, *to)).collect();
    vec![stroked(&lines, Rgb::WHITE, EDGE * 2.0), hidden(lines)]
}

/// The ways of two level cords through what hides them, from one x to another.
pub fn ways(x: [f64; 2], levels: [f64; 2]) -> Mark {
    hidden(levels.map(|y| outline::polyline(&x.map(|x| at(x, y)))).concat())
}

/// The jaws of cutters about to meet at a place, from above, or turned by so many radians.
pub fn cutters(tip: Point, turn: f64) -> Vec<Mark> {
    let jaw = |side: f64| {
        let corners = [at(0.15, -0.2), at(0.9, -3.4), at(2.6, -6.4), at(3.6, -6.0), at(2.7, -2.4)];
        filled(outline::polygon(&corners.map(|corner| tip + at(side * corner.x, corner.y).turned(turn))), style::RULE)
    };
    vec![jaw(-1.0), jaw(1.0)]
}

/// An arrow through points, its head at the last.
pub fn arrow(points: &[Point]) -> Vec<Mark> {
    let [.., before, tip] = points else { return Vec::new() };
    let back = (*before - *tip).angle();
    let side = |turn: f64| *tip + Point::towards(back + turn) * HEAD;
    let head = outline::polygon(&[*tip, side(0.42), side(-0.42)]);
    let stroke = Stroke { round: true, ..Stroke::new(style::ACCENT, 0.45) };
    let mut shaft = points.to_vec();
    if let Some(end) = shaft.last_mut() {
        *end = *tip + Point::towards(back) * (HEAD * 0.7);
    }
    vec![
        Mark::Shape { outline: outline::curve(&shaft), fill: None, stroke: Some(stroke) },
        Mark::Shape { outline: head, fill: Some(Fill::Flat(style::ACCENT, 1.0)), stroke: None },
    ]
}
