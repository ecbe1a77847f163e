//! The soft shadow of a drawing: how opaque it is, blurred by a Gaussian as small as that is smooth.

use std::ops::Range;

use tiny_skia::Pixmap;

use crate::many;
use crate::paint::mark::{Rgb, Shadow};

/// Least standard deviation, in pixels, of a blur that is made smaller: what is as smooth loses nothing when it is
/// drawn larger.
const SMOOTH: f64 = 2.5;
/// How far a blur reaches, in standard deviations: beyond are 3 in 1,000 of it.
const FAR: f64 = 3.0;
/// Rows of a drawing that are worked on at a time: few enough to stay in a processor's own store.
const BAND: usize = 128;
/// Values of a row that are skipped together where all are nothing.
const BLOCK: usize = 32;

/// A drawing and its shadow.
pub struct Soft<'a> {
    drawing: &'a Pixmap,
    /// How many pixels of the drawing one of the shadow is wide.
    times: usize,
    /// Weights of the blur across and down.
    weights: [Vec<f32>; 2],
    /// By how many of its own pixels the shadow is moved.
    moved: [i32; 2],
    colour: Rgb,
    opacity: f32,
}

impl<'a> Soft<'a> {
    /// The shadow of a drawing that has so many pixels a mm.
    pub fn new(drawing: &'a Pixmap, shadow: &Shadow, scale: f64) -> Self {
        let sigma = shadow.blur * scale;
        let times = (sigma / SMOOTH).floor().max(1.0);
        let throw = [shadow.throw.x, shadow.throw.y].map(|throw| throw * scale / times);
        // Whole pixels are moved, parts of one are moved by the blur.
        let weights = throw.map(|throw| gaussian(sigma / times, throw - throw.floor()));
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels, at least 1 of them")]
        let (times, moved) = (times as usize, throw.map(|throw| throw.floor() as i32));
        Self { drawing, times, weights, moved, colour: shadow.colour, opacity: shadow.opacity as f32 }
    }

    /// Lays the shadow and then the drawing over another drawing of its size.
    pub fn lay(&self, pixels: &mut Pixmap) {
        let width = 4 * pixels.width() as usize;
        many::rows(pixels.data_mut(), width * BAND, |band, rows| {
            self.darken(band * BAND, rows);
            lay(&self.drawing.data()[band * BAND * width..][..rows.len()], rows);
        });
    }

    /// Lays the shadow over the rows of another drawing from one on.
    fn darken(&self, from: usize, rows: &mut [u8]) {
        let across: Vec<_> = (0..self.drawing.width() as usize).map(|at| self.between(at, 0)).collect();
        let places = (from..from + rows.len() / (4 * across.len())).map(|at| self.between(at, 1));
        let down: Vec<_> = places.collect();
        let [first, last] = [down.first(), down.last()].map(|place| place.map_or(0, |place| place.before));
        let (shade, mut mixed) = (self.blurred(first, last + 1), PixelRow::empty(self.width()));
        for (down, row) in down.iter().zip(rows.chunks_exact_mut(4 * across.len())) {
            let upper = (down.before - first).unsigned_abs() as usize;
            mixed.clear();
            mixed.add_all(self.opacity * (1.0 - down.share), &shade[upper]);
            mixed.add_all(self.opacity * down.share, &shade[upper + 1]);
            self.tint_row(&across, &mixed, row);
        }
    }

    /// Darkens a row of pixels, each of which stands between two of the shadow's.
    fn tint_row(&self, across: &[Blend], mixed: &PixelRow, pixels: &mut [u8]) {
        let beyond = whole(self.reach(0));
        let before = |at: i32| across.partition_point(|place| place.before < at - beyond);
        for run in mixed.runs() {
            let [from, to] = [before(whole(run.start) - 1), before(whole(run.end))];
            let places = across[from..to].iter().zip(pixels[4 * from..4 * to].chunks_exact_mut(4));
            places.for_each(|(place, pixel)| self.tint(place.of(&mixed.values, beyond), pixel));
        }
    }

    /// Where a column or a row of the drawing stands in the shadow.
    fn between(&self, at: usize, axis: usize) -> Blend {
        Blend::new((at as f64 + 0.5) / self.times as f64 - 0.5 - f64::from(self.moved[axis]))
    }

    /// How many pixels the blur reaches.
    fn reach(&self, axis: usize) -> usize {
        self.weights[axis].len() / 2
    }

    /// How many pixels a row of the shadow has: those of the drawing, made smaller, and how far they are blurred.
    fn width(&self) -> usize {
        (self.drawing.width() as usize).div_ceil(self.times) + 2 * self.reach(0)
    }

    /// Rows of the shadow from one to another.
    fn blurred(&self, first: i32, last: i32) -> Vec<PixelRow> {
        let (reach, down) = (whole(self.reach(1)), &self.weights[1]);
        let rows: Vec<_> = (first - reach..=last + reach).map(|row| self.blurred_across(row)).collect();
        let mixed = |some: &[PixelRow]| {
            let mut sums = PixelRow::empty(self.width());
            down.iter().zip(some).for_each(|(weight, row)| sums.add_all(*weight, row));
            sums
        };
        rows.windows(down.len()).map(mixed).collect()
    }

    /// A row under the weights across, as much longer as they reach beyond it.
    fn blurred_across(&self, row: i32) -> PixelRow {
        let mut sums = PixelRow::empty(self.width());
        let opaque = usize::try_from(row).map_or_else(|_| PixelRow::empty(0), |row| self.opaque(row));
        let (runs, beyond): (Vec<_>, _) = (opaque.runs().collect(), 2 * self.reach(0));
        for (at, weight) in self.weights[0].iter().enumerate() {
            runs.iter().for_each(|run| sums.add(*weight, &opaque.values[run.clone()], run.start + beyond - at));
        }
        sums
    }

    /// How opaque the drawing is along a row, from 0 to 1: each value is the mean of a square of its pixels.
    fn opaque(&self, row: usize) -> PixelRow {
        let width = self.drawing.width() as usize;
        let share = 1.0 / (255 * self.times * self.times) as f32;
        let mut opaque = PixelRow::empty(width.div_ceil(self.times));
        for pixels in self.drawing.pixels().chunks_exact(width).skip(row * self.times).take(self.times) {
            for (at, some) in pixels.chunks(BLOCK * self.times).enumerate() {
                if some.iter().any(|pixel| pixel.alpha() > 0) {
                    let squares = some.chunks(self.times);
                    let sums = squares.map(|square| square.iter().map(|pixel| f32::from(pixel.alpha())).sum::<f32>());
                    opaque.add(share, &sums.collect::<Vec<_>>(), at * BLOCK);
                }
            }
        }
        opaque
    }

    /// Darkens a pixel.
    fn tint(&self, opacity: f32, pixel: &mut [u8]) {
        if opacity > 0.0 {
            let Rgb(red, green, blue) = self.colour;
            let colour = [red, green, blue, 255].map(f32::from);
            pixel.iter_mut().zip(colour).for_each(|(under, over)| *under = under_a(over, opacity, *under));
        }
    }
}

/// A row of values, most of which are nothing.
struct PixelRow {
    values: Vec<f32>,
    /// Which of its blocks may hold something.
    filled: Vec<bool>,
}

impl PixelRow {
    fn empty(width: usize) -> Self {
        Self { values: vec![0.0; width], filled: vec![false; width.div_ceil(BLOCK)] }
    }

    fn clear(&mut self) {
        self.values.fill(0.0);
        self.filled.fill(false);
    }

    /// Adds values, each so many times, from a place on.
    fn add(&mut self, times: f32, values: &[f32], from: usize) {
        let to = from + values.len();
        self.values[from..to].iter_mut().zip(values).for_each(|(sum, value)| *sum += times * value);
        self.filled[from / BLOCK..to.div_ceil(BLOCK)].fill(true);
    }

    /// Adds another row as long, each value so many times.
    fn add_all(&mut self, times: f32, other: &Self) {
        other.runs().for_each(|run| self.add(times, &other.values[run.clone()], run.start));
    }

    /// Where blocks in a row may hold something.
    fn runs(&self) -> impl Iterator<Item = Range<usize>> {
        let mut end = 0;
        let run = move |alike: &[bool]| {
            let start = end;
            end = (start + alike.len() * BLOCK).min(self.values.len());
            alike[0].then_some(start..end)
        };
        self.filled.chunk_by(|one, next| one == next).filter_map(run)
    }
}

/// A place between one pixel's middle and the next one's.
struct Blend {
    before: i32,
    /// How much of the next one it has.
    share: f32,
}

impl Blend {
    fn new(place: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "a place on a drawing")]
        let before = place.floor() as i32;
        Self { before, share: (place - place.floor()) as f32 }
    }

    /// What is there in a row that begins so many pixels earlier, and beyond which there is nothing.
    fn of(&self, row: &[f32], earlier: i32) -> f32 {
        let at = |at: i32| usize::try_from(at + earlier).ok().and_then(|at| row.get(at)).copied().unwrap_or(0.0);
        at(self.before) + (at(self.before + 1) - at(self.before)) * self.share
    }
}

/// A number of pixels.
#[expect(clippy::cast_possible_truncation, clippy::cast_possible_wrap, reason = "no drawing is so large")]
const fn whole(pixels: usize) -> i32 {
    pixels as i32
}

/// A value of 0 to 255 under another of an opacity.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
fn under_a(over: f32, opacity: f32, value: u8) -> u8 {
    let under = f32::from(value);
    (under + (over - under) * opacity + 0.5) as u8
}

/// Lays drawn pixels over others.
fn lay(drawn: &[u8], pixels: &mut [u8]) {
    let both = drawn.chunks_exact(4).zip(pixels.chunks_exact_mut(4));
    for (over, under) in both.filter(|(over, _)| over[3] > 0) {
        let through = u32::from(255 - over[3]);
        for (over, under) in over.iter().zip(under) {
            let shows = u32::from(*under) * through + 128;
            // A 255th, rounded. The colours are multiplied by their opacity, so that no sum is beyond 255.
            #[expect(clippy::cast_possible_truncation, reason = "at most 255")]
            let shows = ((shows + (shows >> 8)) >> 8) as u8;
            *under = over.saturating_add(shows);
        }
    }
}

/// The weights of a Gaussian, an odd number of them, 1 together; its top stands so much of a pixel before the middle.
fn gaussian(sigma: f64, before: f64) -> Vec<f32> {
    #[expect(clippy::cast_possible_truncation, reason = "a blur is some pixels wide")]
    let far = (FAR * sigma).ceil() as i32 + 1;
    let sigma = sigma.max(f64::MIN_POSITIVE);
    let weight = |at: i32| libm::exp(-0.5 * ((f64::from(at) + before) / sigma).powi(2));
    let weights: Vec<_> = (-far..=far).map(weight).collect();
    let all: f64 = weights.iter().sum();
    weights.into_iter().map(|weight| (weight / all) as f32).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;

    #[test]
    fn a_blur_keeps_what_it_spreads_and_its_width() {
        let mut dot = Pixmap::new(101, 101).unwrap();
        dot.data_mut()[4 * (50 * 101 + 50) + 3] = 255;
        let shadow = Shadow { throw: Point::new(0.0, 0.25), blur: 4.0, colour: Rgb::BLACK, opacity: 1.0 };
        let soft = Soft::new(&dot, &shadow, 1.0);
        let (rows, reach) = (soft.blurred(-20, 120), soft.reach(0) as f64);
        let values = rows.iter().enumerate().flat_map(|(y, row)| {
            let place = move |x: usize| [x as f64 - reach, y as f64 - 20.0];
            row.values.iter().enumerate().map(move |(x, value)| (place(x), f64::from(*value)))
        });
        let moment = |axis: usize, about: f64, power: i32| -> f64 {
            values.clone().map(|(at, value)| value * (at[axis] - about).powi(power)).sum()
        };
        assert!((moment(0, 0.0, 0) - 1.0).abs() < 1e-4);
        for (axis, middle) in [(0, 50.0), (1, 50.25)] {
            assert!(moment(axis, middle, 1).abs() < 0.01);
            // Cut off beyond three standard deviations, a Gaussian has 0.973 of its variance and more.
            assert!((0.973..1.0).contains(&(moment(axis, middle, 2) / 16.0)));
        }
    }
}
