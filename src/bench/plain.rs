//! A drawing made plain: a browser shows areas at once, but takes its time over hundreds of beads of a dozen marks each.

use std::collections::BTreeMap;

use crate::geometry::{Extent, Point};
use crate::paint::mark::{Fill, Key, Mark, Page, Rgb, Segment, Stroke};
use crate::paint::outline::{flattened, mapped};

/// Width in mm of the lines that part areas of one colour, and how dark they are in it.
const EDGE: (f64, f64) = (0.15, 0.4);

/// How much of a symbol's length and breadth an area must have to stand for it.
const COVERS: f64 = 0.85;

/// What a symbol covers, in one colour.
struct Area {
    outline: Vec<Segment>,
    colour: Rgb,
}

/// The same drawing with each stamp as the area that it covers; those of one colour that follow one another are one.
#[must_use]
pub fn plain(page: Page) -> Page {
    let areas = page.symbols.iter().filter_map(|symbol| Some((symbol.key, area(&symbol.marks)?))).collect();
    let marks = plain_marks(page.marks, &areas);
    Page { marks, ..page }
}

/// The first area of a symbol, on which all else lies; nothing where that leaves more of it bare.
fn area(marks: &[Mark]) -> Option<Area> {
    let all = outlines(marks);
    let whole = all.iter().filter_map(|(outline, _)| Extent::of(flattened(outline))).reduce(Extent::and)?;
    let covers = |outline: &[Segment]| {
        Extent::of(flattened(outline))
            .is_some_and(|part| part.width() > COVERS * whole.width() && part.height() > COVERS * whole.height())
    };
    let (outline, fill) = all.into_iter().find_map(|(outline, fill)| Some((outline, fill?)))?;
    covers(outline).then_some(())?;
    Some(Area { outline: outline.to_vec(), colour: colour(fill)? })
}

/// Every outline of marks, with its fill.
fn outlines(marks: &[Mark]) -> Vec<(&[Segment], Option<&Fill>)> {
    marks.iter().flat_map(outlines_of).collect()
}

fn outlines_of(mark: &Mark) -> Vec<(&[Segment], Option<&Fill>)> {
    match mark {
        Mark::Shape { outline, fill, .. } => vec![(outline, fill.as_ref())],
        other => outlines(other.inner()),
    }
}

/// A fill's colour, of a gradient that half way.
fn colour(fill: &Fill) -> Option<Rgb> {
    match fill {
        Fill::Flat(colour, _) => Some(*colour),
        Fill::Linear(_, _, stops) | Fill::Radial(_, _, stops) => Some(stops.get(stops.len() / 2)?.colour),
    }
}

fn plain_marks(marks: Vec<Mark>, areas: &BTreeMap<Key, Area>) -> Vec<Mark> {
    let mut plain = Vec::new();
    let mut covered: BTreeMap<Rgb, Vec<Segment>> = BTreeMap::new();
    for mark in marks {
        if let Some((colour, outline)) = stamped(&mark, areas) {
            covered.entry(colour).or_default().extend(outline);
        } else {
            plain.extend(std::mem::take(&mut covered).into_iter().map(shape));
            plain.push(mark.map_inner(|marks| plain_marks(marks, areas)));
        }
    }
    plain.extend(covered.into_iter().map(shape));
    plain
}

/// Where a stamp's area lies, and its colour.
fn stamped(mark: &Mark, areas: &BTreeMap<Key, Area>) -> Option<(Rgb, Vec<Segment>)> {
    let Mark::Stamp { symbol, at, angle, scale, along } = mark else { return None };
    let area = areas.get(symbol)?;
    let place = |point: Point| *at + Point::new(point.x * along, point.y).turned(*angle) * *scale;
    Some((area.colour, mapped(&area.outline, place)))
}

fn shape((colour, outline): (Rgb, Vec<Segment>)) -> Mark {
    let (width, dark) = EDGE;
    let stroke = Stroke::new(colour.mixed(Rgb::BLACK, dark), width);
    Mark::Shape { outline, fill: Some(Fill::Flat(colour, 1.0)), stroke: Some(stroke) }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::paint::mark::Symbol;
    use crate::paint::outline::rect;

    #[test]
    fn stamps_become_areas_where_they_stand_and_one_of_a_colour() {
        let bar = |fill| Mark::Shape { outline: rect(Point::new(0.0, 0.0), 4.0, 2.0), fill: Some(fill), stroke: None };
        let (red, key) = (Rgb(200, 0, 0), Key::new("bar"));
        let stamp = |x, angle| Mark::Stamp { symbol: key, at: Point::new(x, 0.0), angle, scale: 2.0, along: 0.5 };
        let page = Page {
            width: 100.0,
            height: 100.0,
            title: String::new(),
            description: String::new(),
            symbols: Arc::from(vec![Symbol { key, marks: vec![bar(Fill::Flat(red, 0.5)), stamp(0.0, 0.0)] }]),
            marks: vec![stamp(10.0, 0.0), stamp(20.0, std::f64::consts::FRAC_PI_2)],
        };
        let drawn = plain(page);
        let [Mark::Shape { outline, fill, .. }] = &drawn.marks[..] else { panic!("{:?}", drawn.marks) };
        assert_eq!(*fill, Some(Fill::Flat(red, 1.0)));
        let corners = flattened(outline);
        // Half as long and twice enlarged the bar is 4 by 4; turned by a right angle it reaches to the left.
        for (at, (x, y)) in [(10.0, 0.0), (14.0, 4.0)].into_iter().chain([(20.0, 0.0), (16.0, 4.0)]).enumerate() {
            let corner = |corner: &Point| (corner.x - x).abs() < 1e-9 && (corner.y - y).abs() < 1e-9;
            assert!(corners.iter().any(corner), "corner {at}: {corners:?}");
        }
    }
}
