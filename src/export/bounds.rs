//! The boxes that marks take on a page, for the regions of filters: never too small, often a little
//! too large.

use std::collections::BTreeMap;

use crate::geometry::{Extent, Point};
use crate::paint::mark::{Key, Mark, Page, Segment, Symbol};

/// How far mitred corners may reach out, in half widths of the line: SVG's usual limit.
const MITRE: f64 = 4.0;
/// How far a blur is seen, in standard deviations.
pub const SOFT: f64 = 3.0;

/// How far the symbols of a page reach.
#[derive(Debug)]
pub struct Bounds {
    /// Of each symbol the farthest distance of anything in it from its origin.
    reach: BTreeMap<Key, f64>,
    page: Extent,
}

impl Bounds {
    /// Measures symbols of a page. A symbol that stamps another must come after it.
    pub fn of(page: &Page, symbols: &[&Symbol]) -> Self {
        let mut bounds = Self {
            reach: BTreeMap::new(),
            page: Extent { low: Point::ORIGIN, high: Point::new(page.width, page.height) },
        };
        for symbol in symbols {
            let reach = bounds.around(&symbol.marks).map_or(0.0, |Extent { low, high }| {
                let far = |low: f64, high: f64| low.abs().max(high.abs());
                Point::new(far(low.x, high.x), far(low.y, high.y)).length()
            });
            bounds.reach.insert(symbol.key, reach);
        }
        bounds
    }

    /// The box round marks, grown on all sides, as far as it is on the page.
    pub fn on_page(&self, marks: &[Mark], grown: f64) -> Extent {
        self.around(marks).map_or(Extent::default(), |extent| extent.grown(grown)).within(self.page)
    }

    fn around(&self, marks: &[Mark]) -> Option<Extent> {
        marks.iter().filter_map(|mark| self.of_mark(mark)).reduce(Extent::and)
    }

    fn of_mark(&self, mark: &Mark) -> Option<Extent> {
        match mark {
            Mark::Shape { outline, stroke, .. } => {
                let edge = stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0 * MITRE);
                Extent::of(outline.iter().flat_map(corners)).map(|extent| extent.grown(edge))
            }
            Mark::Text(text) => Some(Extent::at(text.at).grown(text.size * (1.0 + text.text.chars().count() as f64))),
            Mark::Stamp { symbol, at, scale, along, .. } => {
                Some(Extent::at(*at).grown(self.reach.get(symbol).copied().unwrap_or(0.0) * scale * along.max(1.0)))
            }
            Mark::Group { marks, .. } => self.around(marks),
            Mark::Raised { shadow, marks } => {
                let extent = self.around(marks)?;
                Some(extent.and(extent.moved(shadow.throw)).grown(SOFT * shadow.blur))
            }
            Mark::Clipped { within, marks } => Some(self.around(marks)?.within(*within)),
            Mark::Blurred { blur, marks } => Some(self.around(marks)?.grown(SOFT * blur)),
        }
    }
}

/// The points between which a segment lies.
fn corners(segment: &Segment) -> Vec<Point> {
    match *segment {
        Segment::Move(to) | Segment::Line(to) => vec![to],
        Segment::Curve(first, second, to) => vec![first, second, to],
        Segment::Close => Vec::new(),
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
        let stamp =
            Mark::Stamp { symbol: Key::new("s"), at: Point::new(50.0, 50.0), angle: 1.0, scale: 2.0, along: 1.0 };
        let shadow = Shadow { throw: Point::new(4.0, 0.0), blur: 1.0, colour: Rgb::BLACK, opacity: 1.0 };
        let marks = vec![Mark::Raised { shadow, marks: vec![stamp] }];
        let (title, description) = (String::new(), String::new());
        let page = Page { width: 100.0, height: 100.0, title, description, symbols: symbols.into(), marks };
        let Extent { low, high } =
            Bounds::of(&page, &page.symbols.iter().collect::<Vec<_>>()).on_page(&page.marks, 0.0);
        assert!(low.x <= 50.0 - 2.0 * 3.5 - 3.0 && high.x >= 50.0 + 2.0 * 3.5 + 4.0 + 3.0);
        assert!(low.y > 30.0 && high.y < 70.0);
    }
}
