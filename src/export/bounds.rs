//! The boxes that marks take on a page, for the regions of filters: never too small, often a little
//! too large.

use std::collections::BTreeMap;

use crate::geometry::Point;
use crate::paint::mark::{Key, Mark, Page, Step, Symbol};

/// A box: its upper left and lower right corners, in mm.
pub type Box = (Point, Point);

/// How far the symbols of a page reach.
#[derive(Debug)]
pub struct Bounds {
    /// Of each symbol the farthest distance of anything in it from its origin.
    reach: BTreeMap<Key, f64>,
    page: Box,
}

impl Bounds {
    /// Measures symbols of a page. A symbol that stamps another must come after it.
    pub fn of(page: &Page, symbols: &[&Symbol]) -> Self {
        let mut bounds = Self { reach: BTreeMap::new(), page: (Point::ORIGIN, Point::new(page.width, page.height)) };
        for symbol in symbols {
            let reach = bounds.around(&symbol.marks).map_or(0.0, |(low, high)| {
                let far = |low: f64, high: f64| low.abs().max(high.abs());
                Point::new(far(low.x, high.x), far(low.y, high.y)).length()
            });
            bounds.reach.insert(symbol.key, reach);
        }
        bounds
    }

    /// The box round marks, grown on all sides, as far as it is on the page.
    pub fn on_page(&self, marks: &[Mark], grown: f64) -> Box {
        let ((left, top), (right, bottom)) = self.around(marks).map_or(((0.0, 0.0), (0.0, 0.0)), |(low, high)| {
            ((low.x - grown, low.y - grown), (high.x + grown, high.y + grown))
        });
        let (least, most) = self.page;
        (
            Point::new(left.clamp(least.x, most.x), top.clamp(least.y, most.y)),
            Point::new(right.clamp(least.x, most.x), bottom.clamp(least.y, most.y)),
        )
    }

    fn around(&self, marks: &[Mark]) -> Option<Box> {
        marks.iter().filter_map(|mark| self.of_mark(mark)).reduce(joined)
    }

    fn of_mark(&self, mark: &Mark) -> Option<Box> {
        match mark {
            Mark::Shape { outline, stroke, .. } => {
                // Mitred corners may reach four half widths out, SVG's usual limit.
                let edge = stroke.as_ref().map_or(0.0, |stroke| stroke.width * 2.0);
                outline.iter().flat_map(corners).map(|point| round(point, edge)).reduce(joined)
            }
            Mark::Text(text) => Some(round(text.at, text.size * (1.0 + text.text.chars().count() as f64))),
            Mark::Stamp { symbol, at, scale, .. } => {
                Some(round(*at, self.reach.get(symbol).copied().unwrap_or(0.0) * scale))
            }
            Mark::Group { marks, .. } => self.around(marks),
            Mark::Raised { shadow, marks } => {
                let (low, high) = self.around(marks)?;
                let soft = 3.0 * shadow.blur;
                let (low, high) = joined((low, high), (low + shadow.throw, high + shadow.throw));
                Some((low - Point::new(soft, soft), high + Point::new(soft, soft)))
            }
            Mark::Clipped { low, high, marks } => {
                let (least, most) = self.around(marks)?;
                let within = |at: Point| Point::new(at.x.max(low.x).min(high.x), at.y.max(low.y).min(high.y));
                Some((within(least), within(most)))
            }
            Mark::Blurred { blur, marks } => {
                let (low, high) = self.around(marks)?;
                let soft = 3.0 * blur;
                Some((low - Point::new(soft, soft), high + Point::new(soft, soft)))
            }
        }
    }
}

fn round(point: Point, by: f64) -> Box {
    (point - Point::new(by, by), point + Point::new(by, by))
}

fn joined(one: Box, other: Box) -> Box {
    let low = Point::new(one.0.x.min(other.0.x), one.0.y.min(other.0.y));
    (low, Point::new(one.1.x.max(other.1.x), one.1.y.max(other.1.y)))
}

/// The points between which a step lies.
fn corners(step: &Step) -> Vec<Point> {
    match *step {
        Step::Move(to) | Step::Line(to) => vec![to],
        Step::Curve(first, second, to) => vec![first, second, to],
        Step::Close => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paint::mark::{Rgb, Shadow, Stroke};
    use crate::paint::outline;

    #[test]
    fn boxes_hold_stamps_strokes_and_shadows() {
        let line = |from, to| Mark::Shape {
            outline: outline::line(from, to),
            fill: None,
            stroke: Some(Stroke::new(Rgb::BLACK, 1.0)),
        };
        let symbols = [Symbol { key: Key::new("s"), marks: vec![line(Point::ORIGIN, Point::new(3.0, 0.0))] }];
        let stamp = Mark::Stamp { symbol: Key::new("s"), at: Point::new(50.0, 50.0), angle: 1.0, scale: 2.0 };
        let shadow = Shadow { throw: Point::new(4.0, 0.0), blur: 1.0, colour: Rgb::BLACK, opacity: 1.0 };
        let marks = vec![Mark::Raised { shadow, marks: vec![stamp] }];
        let (title, description) = (String::new(), String::new());
        let page = Page { width: 100.0, height: 100.0, title, description, symbols: symbols.into(), marks };
        let (low, high) = Bounds::of(&page, &page.symbols.iter().collect::<Vec<_>>()).on_page(&page.marks, 0.0);
        assert!(low.x <= 50.0 - 2.0 * 3.5 - 3.0 && high.x >= 50.0 + 2.0 * 3.5 + 4.0 + 3.0);
        assert!(low.y > 30.0 && high.y < 70.0);
    }
}
