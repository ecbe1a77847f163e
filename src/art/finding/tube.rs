//! Hollow findings turned about the cord: crimps, cones, caps and covers.

use super::{EDGE, FindingDrawing, or};
use crate::design::{Cap, Cone, CordEnd, Crimp, Dimensions};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{circle, curve, line, polyline, rounded_rect};
use crate::trade::usual::{self, WALL};

fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// A tube crimp before it is pressed.
pub fn crimp(drawing: &FindingDrawing, crimp: &Crimp) -> Vec<Mark> {
    let (length, half) = (crimp.length.value(), crimp.outside.value() / 2.0);
    let body = rounded_rect(at(EDGE / 2.0, EDGE / 2.0 - half), length - EDGE, half * 2.0 - EDGE, half * 0.2);
    let rim = |x: f64| line(at(x, -half * 0.8), at(x, half * 0.8));
    let rims = [rim(length * 0.14), rim(length * 0.86)].concat();
    vec![drawing.solid(body, drawing.turned(half), EDGE), drawing.line(rims, EDGE * 0.6)]
}

/// A crimp pressed shut: half as wide again, with the tool's fold along it.
#[must_use]
pub fn pressed(drawing: &FindingDrawing, crimp: &Crimp) -> Vec<Mark> {
    let (length, half) = (crimp.length.value(), crimp.outside.value() * 0.65);
    let waist = |x: f64, y: f64| at(x * length, y * half);
    let body = vec![
        Segment::Move(waist(0.03, -0.8)),
        Segment::Curve(waist(0.3, -1.0), waist(0.7, -1.0), waist(0.97, -0.8)),
        Segment::Line(waist(0.97, 0.8)),
        Segment::Curve(waist(0.7, 1.0), waist(0.3, 1.0), waist(0.03, 0.8)),
        Segment::Close,
    ];
    let fold = curve(&[waist(0.06, 0.0), waist(0.3, 0.1), waist(0.7, 0.1), waist(0.94, 0.0)]);
    let dents = [line(waist(0.3, -0.7), waist(0.3, 0.75)), line(waist(0.7, -0.7), waist(0.7, 0.75))].concat();
    vec![drawing.solid(body, drawing.flat(0.1), EDGE), drawing.line(fold, half * 0.2), drawing.line(dents, EDGE * 0.6)]
}

/// A cone, its mouth to the strands and its tip outward, plain or fluted.
pub fn cone(drawing: &FindingDrawing, cone: &Cone, fluted: bool) -> Vec<Mark> {
    let length = cone.length.value();
    let mouth = or(cone.mouth, cone.inside.value() + 2.0 * WALL.value()) / 2.0 - EDGE / 2.0;
    let tip = (cone.tip.value() / 2.0 + WALL.value()).min(mouth);
    let side = |share: f64| cone_line(length, mouth, tip, share);
    let flutes = |shares: &[f64]| shares.iter().flat_map(|share| polyline(&side(*share))).collect::<Vec<_>>();
    let mut body = polyline(&side(-1.0));
    body.extend(side(1.0).iter().rev().map(|point| Segment::Line(*point)));
    body.push(Segment::Close);
    let rim = vec![
        Segment::Move(at(length * 0.07, -mouth)),
        Segment::Curve(at(length * 0.1, -mouth / 2.0), at(length * 0.1, mouth / 2.0), at(length * 0.07, mouth)),
    ];
    let ring = line(at(length * 0.93, -tip), at(length * 0.93, tip));
    let body = drawing.solid(body, drawing.turned(mouth), EDGE);
    let flutes = fluted.then(|| drawing.line(flutes(&[-0.78, -0.42, 0.0, 0.42, 0.78]), EDGE * 1.1));
    std::iter::once(body).chain(flutes).chain([drawing.line([rim, ring].concat(), EDGE)]).collect()
}

/// The line of a flute from mouth to tip, a share of the half breadth off the axis: straight at the
/// mouth, drawn in like a bell, and a short neck.
fn cone_line(length: f64, mouth: f64, tip: f64, share: f64) -> Vec<Point> {
    const PIECES: u32 = 12;
    let point = |i: u32| {
        let t = f64::from(i) / f64::from(PIECES);
        let narrowing = libm::pow(t, 1.25).min(1.0);
        at((EDGE / 2.0) + (length - EDGE) * t * 0.92, share * (mouth + (tip - mouth) * narrowing))
    };
    (0..=PIECES).map(point).chain([at(length - EDGE / 2.0, share * tip)]).collect()
}

/// A cup over a bead's end, its open side to the strand.
pub fn cap(drawing: &FindingDrawing, cap: &Cap) -> Vec<Mark> {
    let (length, half) = (cap.length.value(), or(cap.outside, 6.0) / 2.0 - EDGE / 2.0);
    let top = half * 0.28;
    let body = vec![
        Segment::Move(at(EDGE / 2.0, -half)),
        Segment::Curve(at(length * 0.75, -half * 0.98), at(length * 0.95, -half * 0.6), at(length - EDGE / 2.0, -top)),
        Segment::Line(at(length - EDGE / 2.0, top)),
        Segment::Curve(at(length * 0.95, half * 0.6), at(length * 0.75, half * 0.98), at(EDGE / 2.0, half)),
    ];
    let scallops = [0.6, 0.2, -0.2, -0.6, -1.0].map(|y| {
        let (from, to) = ((y + 0.4) * half, y * half);
        Segment::Curve(at(length * 0.22, from), at(length * 0.22, to), at(EDGE / 2.0, to))
    });
    let outline = [body, scallops.to_vec(), vec![Segment::Close]].concat();
    let rib =
        |y: f64| curve(&[at(length * 0.3, y * half), at(length * 0.7, y * half * 0.75), at(length * 0.92, y * top)]);
    let ribs = [-0.6, -0.2, 0.2, 0.6].map(rib).concat();
    vec![drawing.solid(outline, drawing.turned(half), EDGE), drawing.line(ribs, EDGE * 0.8)]
}

/// A hollow ball closed over a crimp.
pub fn cover(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let across = or(body.outside, body.length.value());
    let (radius, centre) = (across / 2.0 - EDGE / 2.0, at(across / 2.0, 0.0));
    let seam =
        curve(&[at(across * 0.06, across * 0.14), at(across * 0.5, across * 0.26), at(across * 0.94, across * 0.14)]);
    vec![drawing.solid(circle(centre, radius), drawing.ball(centre, radius), EDGE), drawing.line(seam, EDGE)]
}

/// A hinged cup closed over a knot, with the hook that it hangs by.
pub fn knot_cover(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let half = (or(body.outside, length * usual::COVER_BREADTH) / 2.0).min(length * 0.3) - EDGE / 2.0;
    let centre = at(half + EDGE / 2.0, 0.0);
    let thick = or(body.wire, length * 0.08);
    let eye = (length - half * 2.0 - thick) / 2.0;
    let ring = circle(at(length - thick / 2.0 - eye, 0.0), eye);
    let seam = line(at(centre.x - half * 0.95, 0.0), at(centre.x + half * 0.95, 0.0));
    let mut marks = drawing.wire(&ring, thick);
    marks.push(drawing.solid(circle(centre, half), drawing.ball(centre, half), EDGE));
    marks.push(drawing.line(seam, EDGE * 1.2));
    marks
}

/// A cap over the glued end of a cord, with the ring that it hangs by.
pub fn cord_end(drawing: &FindingDrawing, end: &CordEnd) -> Vec<Mark> {
    let length = end.length.value();
    let half = (or(end.outside, length * usual::CORD_END_BREADTH) / 2.0).min(length * 0.35) - EDGE / 2.0;
    let (thick, eye, cap) = (or(end.wire, length * 0.08), length * 0.15, length * 0.68);
    let ring = circle(at(length - thick / 2.0 - eye, 0.0), eye);
    let body = rounded_rect(at(EDGE / 2.0, -half), cap, half * 2.0, half * 0.35);
    let rim = line(at(cap * 0.16, -half * 0.94), at(cap * 0.16, half * 0.94));
    let mut marks = drawing.wire(&ring, thick);
    marks.push(drawing.solid(body, drawing.turned(half), EDGE));
    marks.push(drawing.line(rim, EDGE));
    marks
}

/// A long loop that grips the arm of spectacles, held in a short tube.
pub fn spectacle_loop(drawing: &FindingDrawing, body: &Dimensions) -> Vec<Mark> {
    let length = body.length.value();
    let thick = or(body.wire, length * usual::SPECTACLE_WIRE);
    let (tube, half) = (length * 0.24, (length * 0.13).max(thick));
    let start = tube * 0.8;
    let arm = rounded_rect(at(start, -half), length - thick / 2.0 - start, half * 2.0, half);
    let holder = rounded_rect(at(EDGE / 2.0, -half * 0.62), tube, half * 1.24, half * 0.15);
    let mut marks = drawing.wire(&arm, thick);
    marks.push(drawing.solid(holder, drawing.turned(half * 0.62), EDGE));
    marks
}
