//! A display bust of plain stone: chest, shoulders cut short, and a neck with a level top.
//!
//! Sizes are shares of the neck's breadth, by eye: for the picture alone.

use crate::geometry::Point;
use crate::sheet::figure::{Extent, Frame};
use crate::sheet::mark::{Fill, Mark, Rgb, Step, Stop, Stroke};
use crate::sheet::outline;

/// The stone: a warm grey that is nobody's skin.
const STONE: Rgb = Rgb(0xc9, 0xbf, 0xb4);
const SHADE: Rgb = Rgb(0x5a, 0x4e, 0x46);
const LIGHT: Rgb = Rgb(0xfb, 0xf7, 0xf1);
/// Height of the neck.
const NECK: f64 = 0.74;
/// How far the shoulders reach to either side.
const REACH: f64 = 1.22;
/// Layers of the neck, which melt into the chest.
const LAYERS: u32 = 14;

/// A bust made for a neck.
pub struct Bust {
    /// The neck's breadth.
    pub breadth: f64,
    /// The neck's depth.
    pub depth: f64,
    /// How far down the piece hangs; negative.
    pub lowest: f64,
}

impl Bust {
    /// Its foot.
    fn foot(&self) -> f64 {
        (self.lowest - 0.4 * self.breadth).min(-1.15 * self.breadth)
    }

    /// The box round it.
    pub fn extent(&self) -> Extent {
        let reach = REACH * self.breadth;
        Extent { low: Point::new(-reach, self.foot()), high: Point::new(reach, (NECK + 0.09) * self.breadth) }
    }

    /// Chest and shoulders.
    pub fn body(&self, frame: &Frame) -> Vec<Mark> {
        let outline = self.torso(frame);
        let reach = REACH * self.breadth;
        let across = [(0.0, -0.3), (0.12, -0.08), (0.34, 0.42), (0.6, 0.06), (0.86, -0.2), (1.0, -0.42)];
        let (left, right) = (frame.page(Point::new(-reach, 0.0)), frame.page(Point::new(reach, 0.0)));
        let fill = Fill::Linear(left, right, across.map(|(at, tone)| solid(at, tone)).to_vec());
        let down = [(0.0, 0.0), (0.5, 0.02), (0.85, 0.16), (1.0, 0.3)];
        let (top, foot) = (frame.page(Point::ORIGIN), frame.page(Point::new(0.0, self.foot())));
        let dusk = Fill::Linear(top, foot, down.map(|(at, opacity)| Stop { at, colour: SHADE, opacity }).to_vec());
        let mut marks = vec![area(outline.clone(), fill), area(outline, dusk)];
        marks.extend([-1.0, 1.0].into_iter().flat_map(|side| self.collarbone(side, frame)));
        marks
    }

    /// The outline of neck, shoulders and chest.
    fn torso(&self, frame: &Frame) -> Vec<Step> {
        let foot = self.foot() / self.breadth;
        let half = [
            (0.41, 0.4),
            (0.435, 0.16),
            (0.5, 0.0),
            (0.64, -0.1),
            (0.86, -0.18),
            (1.06, -0.27),
            (1.19, -0.42),
            (REACH, -0.62),
            (1.14, foot * 0.72),
            (0.94, foot * 0.88),
            (0.56, foot * 0.975),
            (0.0, foot),
        ];
        self.mirrored(&half, frame)
    }

    /// A closed curve through points of the right half and their mirror images.
    fn mirrored(&self, half: &[(f64, f64)], frame: &Frame) -> Vec<Step> {
        let at = |sign: f64, (x, y): &(f64, f64)| frame.page(Point::new(sign * x, *y) * self.breadth);
        let right = half.iter().map(|point| at(1.0, point));
        let left = half.iter().rev().filter(|(x, _)| *x > 0.0).map(|point| at(-1.0, point));
        let points: Vec<_> = right.chain(left).collect();
        let mut steps = outline::curve(&points);
        steps.push(Step::Close);
        steps
    }

    /// The light on a collarbone and the hollow above it.
    fn collarbone(&self, side: f64, frame: &Frame) -> Vec<Mark> {
        let base = self.depth / self.breadth / 2.0;
        let at = |x: f64, y: f64| frame.page(Point::new(side * x, y) * self.breadth);
        let bone = |up: f64| {
            let y = -base - 0.1 + up;
            [at(0.1, y - 0.02), at(0.3, y + 0.045), at(0.52, y + 0.08), at(0.74, y + 0.17), at(0.94, y + 0.2)]
        };
        let mut marks = soft_line(&bone(0.035), 0.075 * self.breadth, SHADE, 0.17);
        marks.extend(soft_line(&bone(-0.01), 0.06 * self.breadth, LIGHT, 0.3));
        marks
    }

    /// The neck, which covers what lies behind it and melts into the chest in front.
    pub fn neck(&self, frame: &Frame) -> Vec<Mark> {
        let mut marks: Vec<_> = (0..LAYERS).rev().map(|layer| self.layer(layer, frame)).collect();
        let top = frame.page(Point::new(0.0, NECK * self.breadth));
        let cut = |share: f64| outline::ellipse(top, 0.41 * self.breadth * share, 0.085 * self.breadth * share);
        let left = top - Point::new(0.41 * self.breadth, 0.0);
        let right = top + Point::new(0.41 * self.breadth, 0.0);
        marks.push(area(cut(1.0), Fill::Linear(left, right, vec![solid(0.0, 0.35), solid(0.4, 0.7), solid(1.0, 0.2)])));
        marks
    }

    /// One layer: whole above the neck's sides, and the faintest of all the lowest.
    fn layer(&self, layer: u32, frame: &Frame) -> Mark {
        let share = f64::from(layer) / f64::from(LAYERS - 1);
        let opacity = if layer == 0 { 1.0 } else { 0.13 };
        let base = self.depth / self.breadth / 2.0 * (0.12 + 1.0 * share);
        let half = [(0.41, NECK), (0.408, 0.45), (0.434, 0.16), (0.494, 0.0), (0.36, -base * 0.72), (0.0, -base)];
        let side = 0.5 * self.breadth;
        let across = [(0.0, -0.34), (0.1, -0.16), (0.36, 0.4), (0.6, 0.02), (0.85, -0.3), (1.0, -0.46)];
        let (left, right) = (frame.page(Point::new(-side, 0.0)), frame.page(Point::new(side, 0.0)));
        let stops = across.map(|(at, tone)| Stop { opacity, ..solid(at, tone) }).to_vec();
        area(self.mirrored(&half, frame), Fill::Linear(left, right, stops))
    }
}

/// A line that fades to both sides: many lines on top of each other, each narrower than the last.
fn soft_line(points: &[Point], width: f64, colour: Rgb, opacity: f64) -> Vec<Mark> {
    const LINES: u32 = 9;
    let line = |index: u32| {
        let width = width * f64::from(LINES - index) / f64::from(LINES);
        let stroke = Stroke { opacity: opacity / f64::from(LINES), round: true, ..Stroke::new(colour, width) };
        Mark::Shape { outline: outline::curve(points), fill: None, stroke: Some(stroke) }
    };
    (0..LINES).map(line).collect()
}

fn area(outline: Vec<Step>, fill: Fill) -> Mark {
    Mark::Shape { outline, fill: Some(fill), stroke: None }
}

/// The stone lightened (above 0) or darkened (below 0).
fn solid(at: f64, tone: f64) -> Stop {
    let colour = if tone < 0.0 { STONE.mixed(SHADE, -tone) } else { STONE.mixed(LIGHT, tone) };
    Stop { at, colour, opacity: 1.0 }
}
