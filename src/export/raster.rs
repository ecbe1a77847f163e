//! Marks into pixels, by their SVG; but raised marks are drawn once, and their shadow is made of what was drawn, blurred
//! as small as it is soft.

use std::sync::Arc;

use resvg::usvg::Tree;
use tiny_skia::{Pixmap, Transform};

use super::ExportError;
use super::tree::tree;
use crate::paint::mark::{Mark, Page, Rgb, Shadow};

/// Least standard deviation, in pixels, of a blur that is made smaller: what is as smooth loses nothing when it is
/// drawn larger.
const SMOOTH: f64 = 2.5;
/// How far a blur reaches, in standard deviations: beyond are 3 in 1,000 of it.
const FAR: f64 = 3.0;

/// Draws a page over all of the pixels.
///
/// # Errors
/// Where the page has no area, or the drawing library refuses it.
pub fn draw(page: &Page, pixels: &mut Pixmap) -> Result<(), ExportError> {
    if !page.marks.iter().any(is_raised) {
        render(&tree(page)?, pixels);
        return Ok(());
    }
    marks(page, &page.marks, pixels)
}

/// Whether a mark is raised, or is a group that holds such marks.
fn is_raised(mark: &Mark) -> bool {
    match mark {
        Mark::Raised { .. } => true,
        Mark::Group { marks, .. } => marks.iter().any(is_raised),
        _ => false,
    }
}

/// Draws some of a page's marks over what is there.
fn marks(page: &Page, some: &[Mark], pixels: &mut Pixmap) -> Result<(), ExportError> {
    for run in some.chunk_by(|one, next| !is_raised(one) && !is_raised(next)) {
        match run {
            [Mark::Raised { shadow, marks }] => raised(page, shadow, marks, pixels)?,
            [Mark::Group { marks, .. }] if is_raised(&run[0]) => self::marks(page, marks, pixels)?,
            flat => {
                let (title, description) = (String::new(), String::new());
                let page =
                    Page { title, description, symbols: Arc::clone(&page.symbols), marks: flat.to_vec(), ..*page };
                render(&tree(&page)?, pixels);
            }
        }
    }
    Ok(())
}

/// Draws what is parsed, whole: in parts, lines that cross from one to the next would be cut there, each part's piece
/// rounded for itself, and show a step.
fn render(tree: &Tree, pixels: &mut Pixmap) {
    let (width, height) = (pixels.width() as f32, pixels.height() as f32);
    let scale = Transform::from_scale(width / tree.size().width(), height / tree.size().height());
    resvg::render(tree, scale, &mut pixels.as_mut());
}

/// Draws marks by themselves, then their shadow and them over what is there.
fn raised(page: &Page, shadow: &Shadow, some: &[Mark], pixels: &mut Pixmap) -> Result<(), ExportError> {
    let mut layer = Pixmap::new(pixels.width(), pixels.height()).ok_or(ExportError::NoArea)?;
    marks(page, some, &mut layer)?;
    let scale = f64::from(pixels.width()) / page.width;
    let sigma = shadow.blur * scale;
    let smaller = (sigma / SMOOTH).floor().max(1.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 1 on")]
    let shade = Shade::of(&layer, smaller as usize);
    let throw = [shadow.throw.x, shadow.throw.y].map(|throw| throw * scale / smaller);
    // Whole pixels are moved, parts of one are moved by the blur.
    let (whole, parts) = (throw.map(f64::floor), throw.map(|throw| throw - throw.floor()));
    let soft = shade.blurred(sigma / smaller, parts);
    soft.darken(pixels, shadow, smaller, whole);
    lay(&layer, pixels);
    Ok(())
}

/// Lays a drawing over another of its size.
fn lay(drawing: &Pixmap, pixels: &mut Pixmap) {
    let both = drawing.data().chunks_exact(4).zip(pixels.data_mut().chunks_exact_mut(4));
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

/// How opaque a drawing is, in rows from 0 to 1, where it is not empty.
struct Shade {
    /// Column and row of the drawing, in this one's pixels, at which it begins.
    at: [i32; 2],
    width: usize,
    values: Vec<f32>,
}

impl Shade {
    /// That of a drawing, so many times smaller: each value is the mean of a square of pixels.
    fn of(drawing: &Pixmap, times: usize) -> Self {
        let [across, down] = [drawing.width(), drawing.height()].map(|size| size as usize);
        let width = across.div_ceil(times);
        let mut values = vec![0.0; width * down.div_ceil(times)];
        let share = 1.0 / (255 * times * times) as f32;
        for (row, pixels) in drawing.pixels().chunks_exact(across).enumerate() {
            let start = row / times * width;
            for (value, square) in values[start..].iter_mut().zip(pixels.chunks(times)) {
                *value += share * square.iter().map(|pixel| f32::from(pixel.alpha())).sum::<f32>();
            }
        }
        Self { at: [0, 0], width, values }.without_borders()
    }

    fn height(&self) -> usize {
        self.values.len() / self.width.max(1)
    }

    /// Without the rows and columns at its borders in which nothing is.
    fn without_borders(self) -> Self {
        let row = |row: usize| &self.values[row * self.width..][..self.width];
        let filled: Vec<_> = (0..self.height()).filter(|at| row(*at).iter().any(|value| *value > 0.0)).collect();
        let (Some(top), Some(bottom)) = (filled.first(), filled.last()) else {
            return Self { at: [0, 0], width: 0, values: Vec::new() };
        };
        let first = |row: &[f32]| row.iter().position(|value| *value > 0.0);
        let last = |row: &[f32]| row.iter().rposition(|value| *value > 0.0);
        let left = filled.iter().filter_map(|at| first(row(*at))).min().unwrap_or(0);
        let right = filled.iter().filter_map(|at| last(row(*at))).max().unwrap_or(0);
        let values = (*top..=*bottom).flat_map(|at| row(at)[left..=right].to_vec()).collect();
        #[expect(clippy::cast_possible_truncation, clippy::cast_possible_wrap, reason = "no drawing is so large")]
        let at = [left as i32, *top as i32];
        Self { at, width: right - left + 1, values }
    }

    /// Under a Gaussian of such a standard deviation, moved on by parts of a pixel across and down.
    fn blurred(&self, sigma: f64, parts: [f64; 2]) -> Self {
        let [across, down] = parts.map(|part| gaussian(sigma, part));
        self.along_rows(&across).along_rows(&down)
    }

    /// Rows under weights, as columns, as much longer as the weights reach beyond them.
    fn along_rows(&self, weights: &[f32]) -> Self {
        let (reach, height) = (weights.len() / 2, self.height());
        let width = if height > 0 { self.width + 2 * reach } else { 0 };
        let mut values = vec![0.0; width * height];
        let mut padded = vec![0.0; width + 2 * reach];
        let mut sums = vec![0.0; width];
        for (y, row) in self.values.chunks_exact(self.width.max(1)).enumerate() {
            padded[2 * reach..][..self.width].copy_from_slice(row);
            sums.fill(0.0);
            for (at, weight) in weights.iter().enumerate() {
                sums.iter_mut().zip(&padded[at..]).for_each(|(sum, value)| *sum += weight * value);
            }
            values.iter_mut().skip(y).step_by(height).zip(&sums).for_each(|(value, sum)| *value = *sum);
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_possible_wrap, reason = "a blur is some pixels wide")]
        let left = self.at[0] - reach as i32;
        Self { at: [self.at[1], left], width: height, values }
    }

    /// Lays a shadow over a drawing that is so many times larger, moved by whole pixels of its own.
    fn darken(&self, pixels: &mut Pixmap, shadow: &Shadow, larger: f64, moved: [f64; 2]) {
        if self.values.is_empty() {
            return;
        }
        let size = [pixels.width(), pixels.height()];
        let places = [0, 1].map(|axis| {
            let begins = f64::from(self.at[axis]) + moved[axis];
            (0..size[axis]).map(|at| Between::new((f64::from(at) + 0.5) / larger - 0.5 - begins)).collect::<Vec<_>>()
        });
        let Rgb(red, green, blue) = shadow.colour;
        let colour = [red, green, blue, 255].map(f32::from);
        let mut row = vec![0.0; self.width + 2];
        let rows = pixels.data_mut().chunks_exact_mut(4 * size[0] as usize);
        for (down, pixels) in places[1].iter().zip(rows).filter(|(down, _)| down.touches(self.height())) {
            self.mixed(down, shadow.opacity as f32, &mut row);
            for (across, pixel) in places[0].iter().zip(pixels.chunks_exact_mut(4)) {
                let opacity = if across.touches(self.width) { across.of(&row) } else { 0.0 };
                if opacity > 0.0 {
                    pixel.iter_mut().zip(colour).for_each(|(under, over)| *under = mixed(*under, over, opacity));
                }
            }
        }
    }

    /// A row between two of its own times a factor, with nothing at either end.
    fn mixed(&self, down: &Between, times: f32, row: &mut [f32]) {
        let of = |at: i32| usize::try_from(at).ok().and_then(|at| self.values.chunks_exact(self.width).nth(at));
        row.fill(0.0);
        for (at, share) in [(down.before, 1.0 - down.share), (down.before + 1, down.share)] {
            let values = of(at).unwrap_or_default();
            row[1..].iter_mut().zip(values).for_each(|(mixed, value)| *mixed += times * share * value);
        }
    }
}

/// A place between one pixel's middle and the next one's.
struct Between {
    before: i32,
    /// How much of the next one it has.
    share: f32,
}

impl Between {
    fn new(place: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "a place on a drawing")]
        let before = place.floor() as i32;
        Self { before, share: (place - place.floor()) as f32 }
    }

    /// Whether one of so many pixels stands beside it.
    fn touches(&self, count: usize) -> bool {
        usize::try_from(self.before + 1).is_ok_and(|next| next <= count)
    }

    /// What is there in a row that has a pixel more at either end; one that it touches.
    fn of(&self, row: &[f32]) -> f32 {
        let next = (self.before + 1).unsigned_abs() as usize;
        row[next] + (row[next + 1] - row[next]) * self.share
    }
}

/// A value of 0 to 255 under another of an opacity.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
fn mixed(under: u8, over: f32, opacity: f32) -> u8 {
    let under = f32::from(under);
    (under + (over - under) * opacity + 0.5) as u8
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
    use crate::paint::mark::Fill;
    use crate::paint::outline;

    /// A square's shadow, against the square under a Gaussian: the product of two differences of the normal distribution's
    /// integral (any table of it; here by libm's erfc).
    #[test]
    fn a_squares_shadow_is_that_of_the_normal_distribution() {
        let square = outline::rect(Point::new(30.0, 30.0), 40.0, 40.0);
        let square = Mark::Shape { outline: square, fill: Some(Fill::Flat(Rgb(200, 40, 40), 1.0)), stroke: None };
        for blur in [0.4, 1.0, 3.0, 6.0] {
            let shadow = Shadow { throw: Point::new(5.1, 8.0), blur, colour: Rgb::BLACK, opacity: 0.6 };
            let (title, description) = (String::new(), String::new());
            let marks = vec![Mark::Raised { shadow, marks: vec![square.clone()] }];
            let page = Page { width: 100.0, height: 100.0, title, description, symbols: Arc::default(), marks };
            let mut pixels = Pixmap::new(400, 400).unwrap();
            draw(&page, &mut pixels).unwrap();
            let below = |at: f64| 0.5 * libm::erfc(-at / (blur * std::f64::consts::SQRT_2));
            let within = |at: f64, throw: f64| below(at - 30.0 - throw) - below(at - 70.0 - throw);
            for (at, pixel) in pixels.pixels().iter().enumerate() {
                let [x, y] = [at % 400, at / 400].map(|at| (at as f64 + 0.5) / 4.0);
                let free = [x, y].iter().any(|at| !(29.5..70.5).contains(at));
                let expected = 255.0 * 0.6 * within(x, 5.1) * within(y, 8.0);
                let apart = (f64::from(pixel.alpha()) - expected).abs();
                assert!(!free || apart <= 2.0, "{blur}: {apart} of 255 at {x}, {y}");
            }
        }
    }

    #[test]
    fn a_blur_keeps_what_it_spreads_and_its_width() {
        let mut dot = Shade { at: [0, 0], width: 101, values: vec![0.0; 101 * 101] };
        dot.values[50 * 101 + 50] = 1.0;
        let soft = dot.blurred(4.0, [0.0, 0.25]);
        let place = |at: usize| [at % soft.width, at / soft.width];
        let moment = |axis: usize, about: f64, power: i32| -> f64 {
            let from = |at| place(at)[axis] as f64 + f64::from(soft.at[axis]) - about;
            soft.values.iter().enumerate().map(|(at, value)| f64::from(*value) * from(at).powi(power)).sum()
        };
        assert!((moment(0, 0.0, 0) - 1.0).abs() < 1e-4);
        for (axis, middle) in [(0, 50.0), (1, 50.25)] {
            assert!(moment(axis, middle, 1).abs() < 0.01);
            // Cut off beyond three standard deviations, a Gaussian has 0.973 of its variance and more.
            assert!((0.973..1.0).contains(&(moment(axis, middle, 2) / 16.0)));
        }
    }
}
