//! Whether every number of what is drawn is one.

use festoon::geometry::Point;
use festoon::paint::mark::{Fill, Mark, Page, Segment};

/// The first mark of a page that has a number that is none.
pub fn fault(page: &Page) -> Option<String> {
    if !all(&[page.width, page.height]) {
        return Some(format!("a page of {} x {}", page.width, page.height));
    }
    let symbols = page.symbols.iter().flat_map(|symbol| &symbol.marks);
    let mut marks: Vec<&Mark> = page.marks.iter().chain(symbols).collect();
    while let Some(mark) = marks.pop() {
        if !finite(mark) {
            return Some(format!("{mark:?}"));
        }
        marks.extend(mark.inner());
    }
    None
}

fn all(numbers: &[f64]) -> bool {
    numbers.iter().all(|number| number.is_finite())
}

fn at(points: &[Point]) -> bool {
    points.iter().all(|point| all(&[point.x, point.y]))
}

/// Whether a mark's own numbers are finite.
fn finite(mark: &Mark) -> bool {
    match mark {
        Mark::Shape { outline, fill, stroke } => {
            outline.iter().all(segment)
                && fill.as_ref().is_none_or(filled)
                && stroke.as_ref().is_none_or(|stroke| all(&[stroke.width, stroke.opacity]) && all(&stroke.dashes))
        }
        Mark::Text(text) => at(&[text.at]) && all(&[text.size, text.angle]),
        Mark::Stamp { at: place, angle, scale, .. } => at(&[*place]) && all(&[*angle, *scale]),
        Mark::Raised { shadow, .. } => at(&[shadow.throw]) && all(&[shadow.blur, shadow.opacity]),
        Mark::Blurred { blur, .. } => all(&[*blur]),
        Mark::Clipped { within, .. } => at(&[within.low, within.high]),
        Mark::Group { .. } => true,
    }
}

fn segment(segment: &Segment) -> bool {
    match segment {
        Segment::Move(point) | Segment::Line(point) => at(&[*point]),
        Segment::Curve(one, two, end) => at(&[*one, *two, *end]),
        Segment::Close => true,
    }
}

fn filled(fill: &Fill) -> bool {
    match fill {
        Fill::Flat(_, opacity) => all(&[*opacity]),
        Fill::Linear(from, to, stops) => at(&[*from, *to]) && stops.iter().all(|stop| all(&[stop.at, stop.opacity])),
        Fill::Radial(centre, radius, stops) => {
            at(&[*centre]) && all(&[*radius]) && stops.iter().all(|stop| all(&[stop.at, stop.opacity]))
        }
    }
}
