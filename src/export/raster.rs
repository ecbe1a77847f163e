//! Marks into pixels, by their SVG; but raised marks are drawn once, and their shadow is made of what was drawn, blurred
//! as small as it is soft.

use std::sync::Arc;

use resvg::usvg::Tree;
use tiny_skia::{ColorU8, FilterQuality, Pixmap, PixmapPaint, Transform};

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
    let soft = soft.pixmap(shadow.colour, shadow.opacity).ok_or(ExportError::NoArea)?;
    let larger = smaller as f32;
    let place = Transform::from_translate(whole[0] as f32, whole[1] as f32).post_scale(larger, larger);
    let smooth = PixmapPaint { quality: FilterQuality::Bilinear, ..PixmapPaint::default() };
    pixels.draw_pixmap(0, 0, soft.as_ref(), &smooth, place, None);
    pixels.draw_pixmap(0, 0, layer.as_ref(), &PixmapPaint::default(), Transform::identity(), None);
    Ok(())
}

/// How opaque a drawing is, in rows from 0 to 1.
struct Shade {
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
        Self { width, values }
    }

    /// Under a Gaussian of such a standard deviation, moved on by parts of a pixel across and down.
    fn blurred(&self, sigma: f64, parts: [f64; 2]) -> Self {
        let [across, down] = parts.map(|part| gaussian(sigma, part));
        self.along_rows(&across).along_rows(&down)
    }

    /// Rows under weights, as columns.
    fn along_rows(&self, weights: &[f32]) -> Self {
        let (width, height) = (self.width, self.values.len() / self.width);
        let mut values = vec![0.0; self.values.len()];
        let mut padded = vec![0.0; width + weights.len() - 1];
        let mut sums = vec![0.0; width];
        for (y, row) in self.values.chunks_exact(width).enumerate() {
            padded[weights.len() / 2..][..width].copy_from_slice(row);
            sums.fill(0.0);
            for (at, weight) in weights.iter().enumerate() {
                sums.iter_mut().zip(&padded[at..]).for_each(|(sum, value)| *sum += weight * value);
            }
            values.iter_mut().skip(y).step_by(height).zip(&sums).for_each(|(value, sum)| *value = *sum);
        }
        Self { width: height, values }
    }

    /// In a colour, of an opacity where it is full.
    fn pixmap(&self, Rgb(red, green, blue): Rgb, opacity: f64) -> Option<Pixmap> {
        let [width, height] = [self.width, self.values.len() / self.width].map(|size| u32::try_from(size).ok());
        let mut pixmap = Pixmap::new(width?, height?)?;
        for (pixel, value) in pixmap.pixels_mut().iter_mut().zip(&self.values) {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and 255")]
            let alpha = (f64::from(*value) * opacity * 255.0).round().clamp(0.0, 255.0) as u8;
            *pixel = ColorU8::from_rgba(red, green, blue, alpha).premultiply();
        }
        Some(pixmap)
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
        let mut dot = Shade { width: 101, values: vec![0.0; 101 * 101] };
        dot.values[50 * 101 + 50] = 1.0;
        let soft = dot.blurred(4.0, [0.0, 0.25]);
        let moment = |of: fn(usize) -> usize, about: f64, power: i32| -> f64 {
            let moments = soft.values.iter().enumerate();
            moments.map(|(at, value)| f64::from(*value) * (of(at) as f64 - about).powi(power)).sum()
        };
        assert!((moment(|at| at % 101, 0.0, 0) - 1.0).abs() < 1e-4);
        for (of, middle) in [((|at| at % 101) as fn(usize) -> usize, 50.0), (|at| at / 101, 50.25)] {
            assert!(moment(of, middle, 1).abs() < 0.01);
            // Cut off beyond three standard deviations, a Gaussian has 0.973 of its variance and more.
            assert!((0.973..1.0).contains(&(moment(of, middle, 2) / 16.0)));
        }
    }
}
