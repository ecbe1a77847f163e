//! Marks into pixels, by their SVG; but raised marks are drawn once, and their shadow is made of what was drawn, blurred
//! as small as it is soft.

use std::sync::Arc;

use resvg::usvg::Tree;
use tiny_skia::{Color, Pixmap, Transform};

use super::ExportError;
use super::soft::Soft;
use super::tree::tree;
use crate::paint::mark::{Mark, Page, Shadow};

/// Draws a page over all of the pixels.
///
/// # Errors
/// Where the page has no area, or the drawing library refuses it.
pub fn draw(page: &Page, pixels: &mut Pixmap) -> Result<(), ExportError> {
    if !page.marks.iter().any(is_raised) {
        render(&tree(page)?, pixels);
        return Ok(());
    }
    Sheets { page, spare: Vec::new() }.marks(&page.marks, pixels)
}

/// Whether a mark is raised, or is a group that holds such marks.
fn is_raised(mark: &Mark) -> bool {
    match mark {
        Mark::Raised { .. } => true,
        Mark::Group { marks, .. } => marks.iter().any(is_raised),
        _ => false,
    }
}

/// A page that is drawn, and empty drawings of its size that lie ready: each new one costs as much as what is drawn on
/// it.
struct Sheets<'a> {
    page: &'a Page,
    spare: Vec<Pixmap>,
}

impl Sheets<'_> {
    /// Draws some of the page's marks over what is there.
    fn marks(&mut self, some: &[Mark], pixels: &mut Pixmap) -> Result<(), ExportError> {
        for run in some.chunk_by(|one, next| !is_raised(one) && !is_raised(next)) {
            match run {
                [Mark::Raised { shadow, marks }] => self.raised(shadow, marks, pixels)?,
                [Mark::Group { marks, .. }] if is_raised(&run[0]) => self.marks(marks, pixels)?,
                flat => render(&tree(&self.with(flat))?, pixels),
            }
        }
        Ok(())
    }

    /// The page with some of its marks alone.
    fn with(&self, some: &[Mark]) -> Page {
        let (title, description) = (String::new(), String::new());
        Page { title, description, symbols: Arc::clone(&self.page.symbols), marks: some.to_vec(), ..*self.page }
    }

    /// Draws marks by themselves, then their shadow and them over what is there.
    fn raised(&mut self, shadow: &Shadow, some: &[Mark], pixels: &mut Pixmap) -> Result<(), ExportError> {
        let new = || Pixmap::new(pixels.width(), pixels.height()).ok_or(ExportError::NoArea);
        let mut layer = self.spare.pop().map_or_else(new, Ok)?;
        self.marks(some, &mut layer)?;
        Soft::new(&layer, shadow, f64::from(pixels.width()) / self.page.width).lay(pixels);
        layer.fill(Color::TRANSPARENT);
        self.spare.push(layer);
        Ok(())
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
    use crate::paint::mark::{Fill, Rgb};
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
