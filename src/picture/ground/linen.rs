//! Linen in plain weave: level threads, and upright ones that go over and under them by turns.

use super::{falloff, sheet};
use crate::geometry::Point;
use crate::geometry::noise;
use crate::paint::mark::{Fill, Mark, Rgb, Stroke};
use crate::paint::outline;

/// Distance between threads in mm, unless so many would be needed as to make the picture slow.
const PITCH: f64 = 0.62;
/// Most threads each way.
const MOST: f64 = 420.0;
/// Undyed flax.
const FLAX: Rgb = Rgb(0xd9, 0xcc, 0xb4);
/// What is seen between threads.
const GAP: Rgb = Rgb(0xa8, 0x99, 0x80);
/// Straight pieces of a thread, whose ends stand a little aside.
const PIECES: u32 = 14;

/// The cloth.
pub fn marks(width: f64, height: f64) -> Vec<Mark> {
    let pitch = PITCH.max(width.max(height) / MOST);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "no more than `MOST`")]
    let count = |side: f64| (side / pitch).ceil() as u32 + 1;
    let level = (0..count(height)).flat_map(|row| Thread::new(row, 1, pitch, width, false).marks());
    let upright = (0..count(width)).flat_map(|column| Thread::new(column, 2, pitch, height, true).marks());
    let ground = sheet(width, height, Fill::Flat(GAP, 1.0));
    std::iter::once(ground).chain(level).chain(upright).chain([falloff(width, height, 0.3)]).collect()
}

/// One thread through the cloth.
struct Thread {
    index: u32,
    seed: u64,
    pitch: f64,
    length: f64,
    upright: bool,
}

impl Thread {
    const fn new(index: u32, seed: u64, pitch: f64, length: f64, upright: bool) -> Self {
        Self { index, seed, pitch, length, upright }
    }

    /// Its body, whole where it is level, as dashes over every other level thread where it is
    /// upright; and the light on it where it lies on top.
    fn marks(&self) -> [Mark; 2] {
        let chance = |kind: u64| noise::both_ways(self.seed + kind * 8, self.index, 0);
        let tone = FLAX
            .mixed(if chance(1) > 0.0 { Rgb(0xee, 0xe4, 0xd0) } else { Rgb(0xb5, 0xa4, 0x86) }, chance(1).abs() * 0.34);
        let thick = self.pitch * (0.86 + 0.12 * chance(2));
        let body = if self.upright { vec![self.pitch * 1.02, self.pitch * 0.98] } else { Vec::new() };
        let light = vec![self.pitch * 0.6, self.pitch * 1.4];
        let over = if self.upright { 0 } else { 1 };
        [
            self.line(tone, thick, body, 0.0, 0),
            self.line(tone.mixed(Rgb::WHITE, 0.34), thick * 0.5, light, self.pitch * 0.2, over),
        ]
    }

    /// Along the thread, with dashes that begin where every other crossing does.
    fn line(&self, colour: Rgb, width: f64, dashes: Vec<f64>, shift: f64, over: u32) -> Mark {
        let begin = shift - self.pitch * f64::from(1 + (self.index + over) % 2) - self.pitch / 2.0;
        let reach = self.length + 2.0 * self.pitch - begin;
        let at = |piece: u32| {
            let aside = noise::both_ways(self.seed + 3, self.index, piece) * self.pitch * 0.1;
            let along = begin + reach * f64::from(piece) / f64::from(PIECES);
            let across = self.pitch * f64::from(self.index) + aside;
            if self.upright { Point::new(across, along) } else { Point::new(along, across) }
        };
        let path: Vec<_> = (0..=PIECES).map(at).collect();
        Mark::Shape {
            outline: outline::polyline(&path),
            fill: None,
            stroke: Some(Stroke { dashes, ..Stroke::new(colour, width) }),
        }
    }
}
