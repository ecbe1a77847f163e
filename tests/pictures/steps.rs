//! The small drawings beside the steps, to look at; each stays inside its box.

use std::sync::Arc;

use festoon::art::{STEP_SIZE, step};
use festoon::export::{Effort, png};
use festoon::geometry::Point;
use festoon::paint::layout::Block;
use festoon::paint::mark::{Mark, Page};
use festoon::paint::outline::flattened;
use festoon::steps::Drawing;

/// The points of all outlines, with the corners that the lines' thickness adds to each.
fn outlines(marks: &[Mark]) -> Vec<Point> {
    let of = |mark: &Mark| match mark {
        Mark::Shape { outline, stroke, .. } => {
            let half = stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
            let corners = [Point::new(-half, -half), Point::new(half, half)];
            flattened(outline).into_iter().flat_map(|point| corners.map(|corner| point + corner)).collect()
        }
        Mark::Text(number) => vec![number.at, number.at - Point::new(0.0, number.size)],
        Mark::Stamp { .. } => panic!("a drawing has no stamps"),
        held => outlines(held.inner()),
    };
    marks.iter().flat_map(of).collect()
}

#[test]
fn every_drawing_fills_its_box_and_no_more() {
    let (width, height) = STEP_SIZE;
    for drawing in Drawing::all() {
        let points = outlines(&step(drawing));
        let inside =
            |point: &Point| (-1e-9..=width + 1e-9).contains(&point.x) && (-1e-9..=height + 1e-9).contains(&point.y);
        let outside: Vec<_> = points.iter().filter(|point| !inside(point)).collect();
        assert!(outside.is_empty(), "{drawing:?}: {outside:?}");
        let broad = points.iter().map(|point| point.x).fold(0.0, f64::max)
            - points.iter().map(|point| point.x).fold(width, f64::min);
        assert!(broad > width * 0.75, "{drawing:?} is only {broad} mm broad");
    }
}

#[test]
fn contact_sheet_of_the_steps() {
    let (width, height) = STEP_SIZE;
    let place = |(at, drawing): (usize, Drawing)| {
        let corner = Point::new(3.0 + (at % 4) as f64 * (width + 6.0), 3.0 + (at / 4) as f64 * (height + 6.0));
        Block::new(width, height, step(drawing)).at(corner)
    };
    let marks = Drawing::all().enumerate().flat_map(place).collect();
    let (title, description) = ("Steps".into(), "Drawn to be looked at.".into());
    let high = 3.0 + Drawing::all().count().div_ceil(4) as f64 * (height + 6.0);
    let page = Page { width: 127.0, height: high, title, description, symbols: Arc::default(), marks };
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/target/pictures");
    std::fs::create_dir_all(folder).unwrap();
    let picture = png(&page, 330.0, Effort::Preview).unwrap();
    std::fs::write(format!("{folder}/steps.png"), &picture).unwrap();
    assert!(!picture.is_empty());
}
