//! Marks into pixels, by their SVG; but raised marks are drawn once, and their shadow is made of what was drawn, blurred
//! as small as it is soft.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use resvg::usvg::Tree;
use tiny_skia::{Color, Pixmap, Transform};

use super::ExportError;
use super::soft::Soft;
use super::tree::tree;
use crate::many;
use crate::paint::mark::{Mark, Page};

/// Draws a page over all of the pixels.
///
/// # Errors
/// Where the page has no area, or the drawing library refuses it.
pub fn draw(page: &Page, pixels: &mut Pixmap) -> Result<(), ExportError> {
    Sheets { page, spare: Mutex::default() }.marks(&page.marks, pixels)
}

/// How marks are drawn.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Layering {
    /// With those beside them.
    Flat,
    /// Each by itself, with its shadow.
    Raised,
    /// One by one, as some within are raised.
    Holds,
}

impl Layering {
    fn of(mark: &Mark) -> Self {
        match mark {
            Mark::Raised { .. } => Self::Raised,
            Mark::Group { marks, .. } if marks.iter().any(|mark| Self::of(mark) != Self::Flat) => Self::Holds,
            _ => Self::Flat,
        }
    }
}

/// Raised marks that are drawn at a time, each as large as the page.
const AT_ONCE: usize = 2;

/// A page that is drawn, and drawings of its size that are done with: each new one costs as much as what is drawn on it.
struct Sheets<'a> {
    page: &'a Page,
    spare: Mutex<Vec<Pixmap>>,
}

impl Sheets<'_> {
    /// Draws some of the page's marks over what is there; raised ones that follow flat ones are drawn beside them.
    fn marks(&self, some: &[Mark], pixels: &mut Pixmap) -> Result<(), ExportError> {
        let size = [pixels.width(), pixels.height()];
        let runs: Vec<&[Mark]> = some.chunk_by(|one, next| Layering::of(one) == Layering::of(next)).collect();
        let mut ahead = None;
        for (at, run) in runs.iter().enumerate() {
            match Layering::of(&run[0]) {
                Layering::Flat => {
                    let raised = runs.get(at + 1).filter(|next| Layering::of(&next[0]) == Layering::Raised);
                    let first = raised.and_then(|raised| raised.chunks(AT_ONCE).next());
                    let flat = tree(&self.with(run))?;
                    let drawn = many::both(|| render(&flat, pixels), || first.map(|some| self.layers(some, size)));
                    ahead = drawn.1;
                }
                Layering::Raised => run.chunks(AT_ONCE).try_for_each(|some| {
                    let layers = ahead.take().unwrap_or_else(|| self.layers(some, size));
                    self.lay(some, layers, pixels)
                })?,
                Layering::Holds => run.iter().try_for_each(|mark| self.marks(mark.inner(), pixels))?,
            }
        }
        Ok(())
    }

    /// The page with some of its marks alone.
    fn with(&self, some: &[Mark]) -> Page {
        let (title, description) = (String::new(), String::new());
        Page { title, description, symbols: Arc::clone(&self.page.symbols), marks: some.to_vec(), ..*self.page }
    }

    /// Raised marks each on a drawing of its own.
    fn layers(&self, some: &[Mark], size: [u32; 2]) -> Vec<Result<Pixmap, ExportError>> {
        many::map(some, |mark| self.layer(mark.inner(), size))
    }

    /// Lays raised marks that are drawn with their shadows over what is there, one after the other.
    fn lay(
        &self,
        some: &[Mark],
        layers: Vec<Result<Pixmap, ExportError>>,
        pixels: &mut Pixmap,
    ) -> Result<(), ExportError> {
        for (mark, layer) in some.iter().zip(layers) {
            let layer = layer?;
            if let Mark::Raised { shadow, .. } = mark {
                Soft::new(&layer, shadow, f64::from(pixels.width()) / self.page.width).lay(pixels);
            }
            self.spare().push(layer);
        }
        Ok(())
    }

    /// Marks on a drawing of their own.
    fn layer(&self, some: &[Mark], [width, height]: [u32; 2]) -> Result<Pixmap, ExportError> {
        let spare = self.spare().pop();
        let mut layer = spare.map_or_else(|| Pixmap::new(width, height).ok_or(ExportError::NoArea), Ok)?;
        // New ones too: what is read before it is written is slow to be written.
        layer.fill(Color::TRANSPARENT);
        self.marks(some, &mut layer)?;
        Ok(layer)
    }

    fn spare(&self) -> MutexGuard<'_, Vec<Pixmap>> {
        self.spare.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Draws what is parsed, whole: in parts, lines that cross from one to the next would be cut there, each part's piece
/// rounded for itself, and show a step.
fn render(tree: &Tree, pixels: &mut Pixmap) {
    let (width, height) = (pixels.width() as f32, pixels.height() as f32);
    let scale = Transform::from_scale(width / tree.size().width(), height / tree.size().height());
    resvg::render(tree, scale, &mut pixels.as_mut());
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;
    use crate::paint::mark::{Fill, Rgb, Shadow};
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
}
