//! Slate: dark stone, softly mottled, with a few veins.

use super::{falloff, sheet, solid};
use crate::geometry::Point;
use crate::geometry::noise;
use crate::paint::mark::{ColourStop, Fill, Key, Mark, Rgb, Stroke, Symbol};
use crate::paint::outline;

/// Clouds of lighter and darker stone.
const CLOUDS: u32 = 260;
/// Grains.
const GRAINS: u32 = 2600;
/// Veins of quartz.
const VEINS: u32 = 5;
/// The stone.
const STONE: Rgb = Rgb(0x56, 0x5d, 0x63);
const LIGHT: Rgb = Rgb(0x92, 0x9b, 0xa1);
const DARK: Rgb = Rgb(0x2c, 0x31, 0x36);
const CLOUD_LIGHT: Key = Key::new("slate-light");
const CLOUD_DARK: Key = Key::new("slate-dark");

/// The stone.
pub fn marks(width: f64, height: f64, symbols: &mut Vec<Symbol>) -> Vec<Mark> {
    symbols.extend([cloud(CLOUD_LIGHT, LIGHT, 0.16), cloud(CLOUD_DARK, DARK, 0.24)]);
    let side = width.max(height);
    let ends = [solid(0.0, STONE.mixed(LIGHT, 0.12)), solid(1.0, STONE.mixed(DARK, 0.2))];
    let fill = Fill::Linear(Point::ORIGIN, Point::new(width * 0.4, height), ends.to_vec());
    let mut marks = vec![sheet(width, height, fill)];
    marks.extend((0..CLOUDS).map(|index| floating(index, width, height, side)));
    marks.push(grains(1, LIGHT, width, height, side));
    marks.push(grains(2, DARK, width, height, side));
    marks.extend((0..VEINS).flat_map(|index| vein(index, width, height)));
    marks.push(falloff(width, height, 0.45));
    marks
}

/// A soft round patch, of radius 1 about its middle.
fn cloud(key: Key, colour: Rgb, opacity: f64) -> Symbol {
    let stop = |at, share: f64| ColourStop { at, colour, opacity: opacity * share };
    let fill = Fill::Radial(Point::ORIGIN, 1.0, vec![stop(0.0, 1.0), stop(0.5, 0.55), stop(1.0, 0.0)]);
    let outline = outline::circle(Point::ORIGIN, 1.0);
    Symbol { key, marks: vec![Mark::Shape { outline, fill: Some(fill), stroke: None }] }
}

fn floating(index: u32, width: f64, height: f64, side: f64) -> Mark {
    let chance = |kind: u64| noise::unit(10 + kind, index, 0);
    let symbol = if chance(1) < 0.5 { CLOUD_LIGHT } else { CLOUD_DARK };
    let size = chance(2);
    let at = Point::new(chance(3) * width, chance(4) * height);
    Mark::Stamp { symbol, at, angle: 0.0, scale: side * (0.012 + 0.13 * size * size), along: 1.0 }
}

/// Grains of one colour, as short strokes along the stone's grain.
fn grains(seed: u64, colour: Rgb, width: f64, height: f64, side: f64) -> Mark {
    let grain = |index: u32| {
        let chance = |kind: u64| noise::unit(20 * seed + kind, index, 1);
        let from = Point::new(chance(1) * width, chance(2) * height);
        outline::line(from, from + Point::towards(-0.35 + 0.3 * chance(3)) * (side * 0.006 * chance(4)))
    };
    let outline = (0..GRAINS).flat_map(grain).collect();
    let stroke = Stroke { opacity: 0.22, round: true, ..Stroke::new(colour, side * 0.0007) };
    Mark::Shape { outline, fill: None, stroke: Some(stroke) }
}

/// A vein right across the page: a pale line with a dark one beside it.
fn vein(index: u32, width: f64, height: f64) -> [Mark; 2] {
    const BENDS: u32 = 16;
    let chance = |kind: u64, at| noise::both_ways(60 + kind, index, at);
    let (from, slope) = ((f64::from(index) + 0.5 + 0.4 * chance(1, 0)) / f64::from(VEINS), -0.22 + 0.12 * chance(2, 0));
    let at = |bend: u32| {
        let share = -0.05 + 1.1 * f64::from(bend) / f64::from(BENDS);
        Point::new(share * width, (from + 0.1 + slope * share + 0.012 * chance(3, bend)) * height)
    };
    let path: Vec<_> = (0..=BENDS).map(at).collect();
    let thick = width.max(height) * 0.0011 * (1.0 + 0.6 * chance(4, 0));
    let line = |colour, aside: f64, opacity| Mark::Shape {
        outline: outline::mapped(&outline::curve(&path), |point| point + Point::new(0.0, aside)),
        fill: None,
        stroke: Some(Stroke { opacity, round: true, ..Stroke::new(colour, thick) }),
    };
    [line(DARK, thick, 0.35), line(LIGHT, 0.0, 0.22 + 0.1 * chance(5, 0))]
}
