//! The soft shadow of a drawing: how opaque it is, blurred by a Gaussian as small as that is smooth.

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
        let shade = self.blurred(first, last + 1);
        let mut mixed = vec![0.0; shade.width];
        for (down, row) in down.iter().zip(rows.chunks_exact_mut(4 * across.len())) {
            let upper = (down.before - first).unsigned_abs() as usize;
            if [upper, upper + 1].into_iter().any(|at| shade.row(at).is_some()) {
                mixed.fill(0.0);
                for (at, share) in [(upper, 1.0 - down.share), (upper + 1, down.share)] {
                    add(self.opacity * share, shade.row(at).unwrap_or_default(), &mut mixed);
                }
                across
                    .iter()
                    .zip(row.chunks_exact_mut(4))
                    .for_each(|(across, pixel)| self.tint(across.of(&mixed), pixel));
            }
        }
    }

    /// Where a column or a row of the drawing stands in the shadow.
    fn between(&self, at: usize, axis: usize) -> Between {
        Between::new((at as f64 + 0.5) / self.times as f64 - 0.5 - f64::from(self.moved[axis]), self.reach(axis))
    }

    /// How many pixels the blur reaches.
    fn reach(&self, axis: usize) -> usize {
        self.weights[axis].len() / 2
    }

    /// Rows of the shadow from one to another.
    fn blurred(&self, first: i32, last: i32) -> Rows {
        let (reach, down) = (whole(self.reach(1)), &self.weights[1]);
        let width = (self.drawing.width() as usize).div_ceil(self.times) + 2 * self.reach(0);
        let mut held = vec![0.0; width - 2 * self.reach(0)];
        let mut rows = Rows::new(width);
        (first - reach..=last + reach).for_each(|row| rows.add(|sums| self.blur_row(row, &mut held, sums)));
        let mut shade = Rows::new(width);
        for at in 0..(last - first + 1).unsigned_abs() as usize {
            shade.add(|sums| {
                let some = down.iter().enumerate().filter_map(|(on, weight)| Some((weight, rows.row(at + on)?)));
                some.map(|(weight, row)| add(*weight, row, sums)).count() > 0
            });
        }
        shade
    }

    /// A row under the weights across, as much longer as they reach beyond it; whether anything is in it.
    fn blur_row(&self, row: i32, held: &mut [f32], sums: &mut [f32]) -> bool {
        let Ok(row) = usize::try_from(row) else { return false };
        self.opaque(row, held);
        let filled = |value: &f32| *value > 0.0;
        let (Some(from), Some(to)) = (held.iter().position(filled), held.iter().rposition(filled)) else {
            return false;
        };
        let beyond = 2 * self.reach(0);
        for (at, weight) in self.weights[0].iter().enumerate() {
            add(*weight, &held[from..=to], &mut sums[beyond - at + from..]);
        }
        true
    }

    /// How opaque the drawing is along a row, from 0 to 1: each value is the mean of a square of its pixels.
    fn opaque(&self, row: usize, values: &mut [f32]) {
        let width = self.drawing.width() as usize;
        let share = 1.0 / (255 * self.times * self.times) as f32;
        values.fill(0.0);
        for pixels in self.drawing.pixels().chunks_exact(width).skip(row * self.times).take(self.times) {
            for (value, square) in values.iter_mut().zip(pixels.chunks(self.times)) {
                *value += share * square.iter().map(|pixel| f32::from(pixel.alpha())).sum::<f32>();
            }
        }
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

/// Rows of values, some of them empty, in one store.
struct Rows {
    width: usize,
    values: Vec<f32>,
    filled: Vec<bool>,
}

impl Rows {
    const fn new(width: usize) -> Self {
        Self { width, values: Vec::new(), filled: Vec::new() }
    }

    /// Adds a row of nothing; what is put into it is said to be something.
    fn add(&mut self, put: impl FnOnce(&mut [f32]) -> bool) {
        let start = self.values.len();
        self.values.resize(start + self.width, 0.0);
        self.filled.push(put(&mut self.values[start..]));
    }

    /// A row, unless it is empty.
    fn row(&self, at: usize) -> Option<&[f32]> {
        self.filled.get(at).filter(|filled| **filled).map(|_| &self.values[at * self.width..][..self.width])
    }
}

/// Adds values, each so many times.
fn add(times: f32, values: &[f32], sums: &mut [f32]) {
    sums.iter_mut().zip(values).for_each(|(sum, value)| *sum += times * value);
}

/// A place between one pixel's middle and the next one's.
struct Between {
    before: i32,
    /// Where the one before stands in a blurred row.
    index: Option<usize>,
    /// How much of the next one it has.
    share: f32,
}

impl Between {
    /// A place in rows that begin so much earlier.
    fn new(place: f64, earlier: usize) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "a place on a drawing")]
        let before = place.floor() as i32;
        Self { before, index: usize::try_from(before + whole(earlier)).ok(), share: (place - place.floor()) as f32 }
    }

    /// What is there in a row, beyond which there is nothing.
    fn of(&self, row: &[f32]) -> f32 {
        let at = |at: usize| row.get(at).copied().unwrap_or(0.0);
        self.index.map_or(0.0, |index| at(index) + (at(index + 1) - at(index)) * self.share)
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
        let row = |at: usize| rows.row(at).unwrap_or_default();
        let values = (0..141).map(|at| (at, row(at))).flat_map(|(y, row)| {
            let place = move |x: usize| [x as f64 - reach, y as f64 - 20.0];
            row.iter().enumerate().map(move |(x, value)| (place(x), f64::from(*value)))
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
