//! A display bust of plain stone: chest, shoulders cut short, and a neck with a level top.
//!
//! Sizes are shares of the neck's breadth, by eye: for the picture alone. The stone is drawn in its
//! shade, and soft lights inside its outline model it.

use crate::drape::body::skin::Skin;
use crate::geometry::{Extent, Point, path};
use crate::paint::mark::{ColourStop, Fill, Mark, Rgb, Segment, Stroke};
use crate::paint::outline;
use crate::sheet::figure::Frame;

use super::shade::AWAY;
use crate::geometry::noise;

/// The stone: a warm grey that is nobody's skin.
const STONE: Rgb = Rgb(0xc4, 0xbb, 0xb0);
const SHADE: Rgb = Rgb(0x55, 0x4b, 0x45);
const LIGHT: Rgb = Rgb(0xf8, 0xf3, 0xec);
/// Height of the neck.
const NECK: f64 = 0.66;
/// Half the breadth of the neck's level top, and half its depth as it is seen.
const TOP: (f64, f64) = (0.4, 0.075);
/// How far the shoulders reach to either side.
const REACH: f64 = 1.2;
/// How far its shadow is thrown on the wall, and how soft it is.
const SHADOW: f64 = 0.11;
/// Grains of either colour, and the size of one.
const GRAINS: u32 = 16_000;
const GRAIN: f64 = 0.001;
/// What is seen from close by: to either side, above the neck's base, and below the piece.
const CLOSE: (f64, f64, f64) = (0.78, 0.36, 0.16);
/// What is seen of the chest below the neck's base at least.
const CHEST: f64 = 1.02;
/// How far out the body's own outline is followed; the cut shoulder is rounded off from there.
const SHOULDER: f64 = 0.98;

/// A bust made for a neck.
pub struct Bust {
    /// The body on which the piece rests.
    pub skin: Skin,
    /// The breadth of the neck's base.
    pub breadth: f64,
    /// How far down the piece hangs; negative.
    pub lowest: f64,
}

impl Bust {
    /// Its foot.
    fn foot(&self) -> f64 {
        (self.lowest - 0.4 * self.breadth).min(-1.28 * self.breadth)
    }

    /// How far the neck's base comes down in front.
    fn base(&self) -> f64 {
        -self.skin.front().y / self.breadth
    }

    /// The box round it.
    pub fn extent(&self) -> Extent {
        let reach = REACH * self.breadth;
        Extent { low: Point::new(-reach, self.foot()), high: Point::new(reach, (NECK + TOP.1) * self.breadth) }
    }

    /// The box round what is looked at from close by: the piece, the throat and the shoulders' slope.
    pub fn close(&self) -> Extent {
        let (out, up) = (CLOSE.0 * self.breadth, CLOSE.1 * self.breadth);
        let low = (self.lowest - CLOSE.2 * self.breadth).min(-CHEST * self.breadth);
        Extent { low: Point::new(-out, low), high: Point::new(out, up) }
    }

    /// The bust.
    pub fn marks(&self, frame: &Frame) -> Vec<Mark> {
        let drawing = PlacedBust { bust: self, frame };
        let stone = drawing.outline();
        let inside = outline::flattened(&stone);
        let mut marks = vec![drawing.shadow(&stone)];
        marks.extend(drawing.body(&stone));
        marks.extend(drawing.lights());
        marks.extend([drawing.grains(1, LIGHT, &inside), drawing.grains(2, SHADE, &inside)]);
        marks.extend(drawing.neck_base());
        marks.extend([-1.0, 1.0].into_iter().flat_map(|side| drawing.collarbone(side)));
        marks.push(drawing.top());
        marks
    }
}

/// A bust and where it stands.
struct PlacedBust<'a> {
    bust: &'a Bust,
    frame: &'a Frame,
}

impl PlacedBust<'_> {
    /// A point given in shares of the neck's breadth.
    fn at(&self, x: f64, y: f64) -> Point {
        self.frame.page(Point::new(x, y) * self.bust.breadth)
    }

    /// A length given in the same way.
    fn size(&self, share: f64) -> f64 {
        share * self.bust.breadth * self.frame.scale
    }

    /// The shadow on the wall behind, out of focus. A shadow thrown by what the frame cuts would be
    /// cut with it: this one is drawn.
    fn shadow(&self, stone: &[Segment]) -> Mark {
        let aside = AWAY * self.size(SHADOW);
        let outline = outline::mapped(stone, |point| point + aside);
        self.soft(SHADOW, area(outline, Fill::Flat(Rgb::BLACK, 0.2)))
    }

    /// The stone in its shade: darker to the right and towards the foot.
    fn body(&self, stone: &[Segment]) -> Vec<Mark> {
        let across = [(0.0, -0.3), (0.2, -0.06), (0.45, 0.04), (0.75, -0.16), (1.0, -0.42)];
        let stops = across.map(|(at, tone)| solid(at, tone)).to_vec();
        let fill = Fill::Linear(self.at(-REACH, 0.0), self.at(REACH, 0.0), stops);
        let down = [(0.0, 0.0), (0.4, 0.02), (0.8, 0.2), (1.0, 0.4)];
        let stops = down.map(|(at, opacity)| ColourStop { at, colour: SHADE, opacity }).to_vec();
        let dusk = Fill::Linear(self.at(0.0, 0.0), self.at(0.0, self.bust.foot() / self.bust.breadth), stops);
        vec![area(stone.to_vec(), fill), area(stone.to_vec(), dusk)]
    }

    /// The outline of neck, shoulders and chest.
    fn outline(&self) -> Vec<Segment> {
        let foot = self.bust.foot() / self.bust.breadth;
        let body = self.bust.skin.outline(NECK, SHOULDER);
        let body: Vec<_> = body.iter().map(|at| (at.x / self.bust.breadth, at.y / self.bust.breadth)).collect();
        let low = body.last().map_or(0.0, |last| last.1);
        let shoulder = [(1.1, low - 0.07), (1.17, low - 0.2)];
        let below = [(1.1, foot + 0.384), (0.84, foot + 0.166), (0.44, foot + 0.032), (0.0, foot)];
        let half: Vec<_> = body.into_iter().chain(shoulder).chain(side(below[0])).chain(below).collect();
        let right = half.iter().map(|(x, y)| self.at(*x, *y));
        let left = half.iter().rev().filter(|(x, _)| *x > 0.0).map(|(x, y)| self.at(-x, *y));
        let points: Vec<_> = right.chain(left).collect();
        let mut segments = outline::curve(&points);
        segments.push(Segment::Close);
        segments
    }

    /// The stone's fine grains of one colour, inside its outline.
    fn grains(&self, seed: u64, colour: Rgb, inside: &[Point]) -> Mark {
        let chance = |kind: u64, index| noise::both_ways(80 + 4 * seed + kind, index, 0);
        let Extent { low, high } = self.bust.extent();
        let (middle, half) = (low.between(high, 0.5), (high - low) * 0.5);
        let grain = |index| {
            let at = self.frame.page(middle + Point::new(chance(1, index) * half.x, chance(2, index) * half.y));
            let reach = Point::towards(chance(3, index) * std::f64::consts::PI) * self.size(GRAIN);
            path::holds(inside, at).then(|| outline::line(at, at + reach))
        };
        let outline = (0..GRAINS).filter_map(grain).flatten().collect();
        let stroke = Stroke { opacity: 0.13, round: true, ..Stroke::new(colour, self.size(GRAIN)) };
        Mark::Shape { outline, fill: None, stroke: Some(stroke) }
    }

    /// Light on neck, chest and shoulders, well inside the outline.
    fn lights(&self) -> Vec<Mark> {
        let round = |(x, y): (f64, f64), (across, down): (f64, f64), opacity: f64, blur: f64| {
            let outline = outline::ellipse(self.at(x, y), self.size(across), self.size(down));
            self.soft(blur, area(outline, Fill::Flat(LIGHT, opacity)))
        };
        vec![
            round((-0.27, -0.68), (0.52, 0.26), 0.5, 0.17),
            round((-0.1, 0.26), (0.1, 0.3), 0.55, 0.085),
            round((-0.84, -0.4), (0.15, 0.07), 0.42, 0.07),
            round((0.74, -0.36), (0.16, 0.05), 0.3, 0.07),
        ]
    }

    /// The shade where neck and chest meet, and the hollow of the throat.
    fn neck_base(&self) -> [Mark; 2] {
        let base = self.bust.base();
        let crease = [(-0.38, -0.13), (-0.2, -base * 0.72), (0.0, -base * 0.86), (0.2, -base * 0.72), (0.38, -0.13)];
        let crease = self.line(&crease.map(|(x, y)| self.at(x, y)), 0.05, SHADE, 0.36);
        let hollow = outline::ellipse(self.at(0.0, -base - 0.05), self.size(0.055), self.size(0.05));
        [self.soft(0.045, crease), self.soft(0.03, area(hollow, Fill::Flat(SHADE, 0.42)))]
    }

    /// The light on a collarbone and the shade below it.
    fn collarbone(&self, side: f64) -> [Mark; 2] {
        let y = -self.bust.base() - 0.05;
        let bone = |down: f64| {
            let points = [(0.12, -0.015), (0.3, 0.035), (0.48, 0.075), (0.64, 0.14), (0.76, 0.165)];
            points.map(|(x, up)| self.at(side * x, y + up - down))
        };
        [
            self.soft(0.03, self.line(&bone(0.055), 0.035, SHADE, 0.24)),
            self.soft(0.02, self.line(&bone(0.0), 0.028, LIGHT, 0.5)),
        ]
    }

    /// The level cut at the neck's top.
    fn top(&self) -> Mark {
        let cut = outline::ellipse(self.at(0.0, NECK), self.size(TOP.0), self.size(TOP.1));
        let stops = vec![solid(0.0, 0.2), solid(0.4, 0.55), solid(1.0, 0.05)];
        area(cut, Fill::Linear(self.at(-TOP.0, NECK), self.at(TOP.0, NECK), stops))
    }

    fn line(&self, points: &[Point], width: f64, colour: Rgb, opacity: f64) -> Mark {
        let stroke = Stroke { opacity, round: true, ..Stroke::new(colour, self.size(width)) };
        Mark::Shape { outline: outline::curve(points), fill: None, stroke: Some(stroke) }
    }

    fn soft(&self, blur: f64, mark: Mark) -> Mark {
        Mark::Blurred { blur: self.size(blur), marks: vec![mark] }
    }
}

/// The side from below the shoulder down to a corner, in even steps, so that a curve through them does
/// not bulge.
fn side((x, y): (f64, f64)) -> impl Iterator<Item = (f64, f64)> {
    const TOP: f64 = -0.62;
    let steps = ((TOP - y) / 0.28).floor().max(1.0);
    (0..steps as u32).map(move |step| {
        let share = f64::from(step) / steps;
        (REACH + (x - REACH) * share, TOP + (y - TOP) * share)
    })
}

fn area(outline: Vec<Segment>, fill: Fill) -> Mark {
    Mark::Shape { outline, fill: Some(fill), stroke: None }
}

/// The stone lightened (above 0) or darkened (below 0).
fn solid(at: f64, tone: f64) -> ColourStop {
    let colour = if tone < 0.0 { STONE.mixed(SHADE, -tone) } else { STONE.mixed(LIGHT, tone) };
    ColourStop { at, colour, opacity: 1.0 }
}
