//! Contact sheets: every shape in every finish, every finding, every hatch, to look at.

use festoon::art::{Ink, Stencils};
use festoon::design::nth;
use festoon::export::{About, Effort, pdf, png, svg};
use festoon::geometry::Point;
use festoon::paint::mark::{Anchor, Mark, Page, Rgb, Text, Weight};
use festoon::pattern::{CordKind, FindingKind, Finish, Shape};

use crate::reference::assert_reference;
use crate::samples::{self, Sample};

const REED: Rgb = Rgb(0x5d, 0x7f, 0x5b);
const COLOURS: [Rgb; 12] = [
    REED,
    Rgb(0xc9, 0xd6, 0xd8),
    Rgb(0xb5, 0x8a, 0x3a),
    Rgb(0x6b, 0x4a, 0x63),
    Rgb(0x1d, 0x1d, 0x20),
    Rgb(0xf4, 0xef, 0xe6),
    Rgb(0xb2, 0x3a, 0x2e),
    Rgb(0x2f, 0x5d, 0x8c),
    Rgb(0xe0, 0xa8, 0x4e),
    Rgb(0x3b, 0x8f, 0x8a),
    Rgb(0xd9, 0x8c, 0x9a),
    Rgb(0x7a, 0x5a, 0x3c),
];

fn label(at: Point, text: &str) -> Mark {
    let (size, weight, colour, anchor) = (2.5, Weight::Regular, Rgb::BLACK, Anchor::Middle);
    Mark::Text(Text { at, text: text.into(), size, weight, colour, anchor, angle: 0.0 })
}

fn page(stencils: Stencils, marks: Vec<Mark>, title: &str) -> Page {
    let description = "Drawn to be looked at.".into();
    Page {
        width: 210.0,
        height: 297.0,
        title: title.into(),
        description,
        symbols: stencils.into_symbols().into(),
        marks,
    }
}

pub fn write(page: &Page, name: &str) {
    write_at(page, name, 150.0);
}

fn write_at(page: &Page, name: &str, dpi: f64) {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/target/pictures");
    std::fs::create_dir_all(folder).unwrap();
    std::fs::write(format!("{folder}/{name}.svg"), svg(page)).unwrap();
    std::fs::write(format!("{folder}/{name}.png"), png(page, dpi, Effort::Preview).unwrap()).unwrap();
    std::fs::write(format!("{folder}/{name}.pdf"), pdf(std::slice::from_ref(page), &About::default()).unwrap())
        .unwrap();
}

fn all_beads(across: f64) -> Sample {
    let of = |shape: &Shape| Finish::ALL.iter().map(|finish| samples::bead(*shape, *finish, across, REED)).collect();
    Sample::of_beads(Shape::ALL.iter().flat_map(|shape| -> Vec<_> { of(shape) }))
}

/// Shapes down, finishes across; each large, at 6 mm and at 4 mm turned.
fn bead_page(sample: &Sample, ink: Ink, name: &str) -> Page {
    let stencils = sample.stencils(ink);
    let mut marks = Vec::new();
    for (index, bead) in sample.design.beads.iter().enumerate() {
        let (row, column) = (index / Finish::ALL.len(), index % Finish::ALL.len());
        let at = Point::new(19.0 + column as f64 * 28.0, 14.0 + row as f64 * 23.0);
        marks.push(stencils.bead(nth(index), at, 0.0, 1.8));
        marks.push(stencils.bead(nth(index), at + Point::new(14.0, -4.5), 0.9, 1.0));
        marks.push(stencils.bead(nth(index), at + Point::new(14.0, 4.5), -1.2, 0.66));
        marks.push(label(at + Point::new(2.0, 10.5), &bead.name));
    }
    page(stencils, marks, name)
}

#[test]
fn every_shape_in_every_finish_is_drawn_in_every_ink() {
    let sample = all_beads(6.0);
    for (ink, name) in [(Ink::Colour, "beads"), (Ink::Grey, "beads-grey"), (Ink::Outline, "beads-outline")] {
        let page = bead_page(&sample, ink, name);
        let most = page.symbols.iter().map(|symbol| symbol.marks.len()).max();
        assert!(most <= Some(18), "{name}: {most:?} marks in a symbol");
        write(&page, name);
        if ink == Ink::Colour {
            assert_reference(&page, 84.0, "contact-sheet");
        }
        assert_eq!(page.marks.len(), sample.design.beads.len() * 4);
    }
}

#[test]
fn strands_of_many_colours_are_drawn() {
    let shapes = [Shape::Round, Shape::Bicone, Shape::Rondelle, Shape::Seed, Shape::Barrel, Shape::Drop];
    let beads = COLOURS.iter().enumerate().flat_map(|(i, colour)| {
        let sample = move |j: usize| samples::bead(shapes[(i + j) % 6], Finish::ALL[(i * 2 + j) % 7], 6.0, *colour);
        (0..7).map(sample)
    });
    let cord = (samples::cord(CordKind::Wire, 0.38), Rgb(180, 178, 170));
    let sample = Sample::new(beads.collect(), Vec::new(), vec![cord]);
    let stencils = sample.stencils(Ink::Colour);
    let mut marks = Vec::new();
    for row in 0..12 {
        let at = |x: f64| Point::new(x, 28.0 + row as f64 * 21.0 - 12.0 * libm::pow((x - 105.0) / 90.0, 2.0));
        let path: Vec<Point> = (0..=95).map(|i| at(10.0 + f64::from(i) * 2.0)).collect();
        marks.push(stencils.cord(nth(0), &path, 1.0));
        let mut x = 22.0;
        let mut count = 0;
        while x < 188.0 {
            let index = row * 7 + count % 7;
            let half = sample.design.beads[nth(index)].along.value() / 2.0;
            let angle = (at(x + half + 0.1) - at(x + half - 0.1)).angle();
            marks.push(stencils.bead(nth(index), at(x + half * libm::cos(angle)), angle, 1.0));
            x += half * 2.0 * libm::cos(angle);
            count += 1;
        }
    }
    let page = page(stencils, marks, "Strands");
    assert!(page.marks.len() > 300);
    write(&page, "strands");
}

#[test]
fn every_finding_is_drawn() {
    let brass = Rgb(0xc2, 0x9a, 0x4b);
    let silver = Rgb(0xb4, 0xb8, 0xbc);
    // Brass and silver by turns.
    let kinds = FindingKind::ALL.iter().zip([brass, silver].into_iter().cycle());
    let findings = kinds.map(|(kind, colour)| (samples::finding(*kind), colour)).collect();
    let cord = |(kind, diameter, colour): &(CordKind, f64, Rgb)| (samples::cord(*kind, *diameter), *colour);
    let cords = CORDS.iter().map(cord).collect();
    let sample = Sample::new(Vec::new(), findings, cords);
    for (ink, name) in [(Ink::Colour, "findings"), (Ink::Outline, "findings-outline")] {
        let page = finding_page(&sample, ink);
        assert!(page.marks.len() > 2 * FindingKind::ALL.len());
        write(&page, name);
        if ink == Ink::Colour {
            assert_reference(&page, 80.0, "contact-sheet-findings");
        }
    }
}

const CORDS: [(CordKind, f64, Rgb); 6] = [
    (CordKind::Silk, 1.0, Rgb(150, 40, 60)),
    (CordKind::Leather, 2.0, Rgb(90, 60, 40)),
    (CordKind::Wire, 0.5, Rgb(180, 178, 170)),
    (CordKind::Thread, 0.4, Rgb(40, 60, 110)),
    (CordKind::Elastic, 0.8, Rgb(200, 205, 210)),
    (CordKind::Chain, 1.6, Rgb(194, 154, 75)),
];

fn finding_page(sample: &Sample, ink: Ink) -> Page {
    let stencils = sample.stencils(ink);
    let mut marks = Vec::new();
    for (index, finding) in sample.design.findings.iter().enumerate() {
        let at = Point::new(8.0 + (index % 5) as f64 * 40.0, 20.0 + (index / 5) as f64 * 35.0);
        let large = if finding.length().unwrap_or_default().value() > 16.0 { 1.1 } else { 1.4 };
        marks.push(stencils.finding(nth(index), at, 0.0, large));
        marks.push(stencils.finding(nth(index), at + Point::new(26.0, -8.0), 1.2, 0.66));
        marks.push(label(at + Point::new(12.0, 16.0), &finding.name));
    }
    let chain = FindingKind::ALL.iter().position(|kind| *kind == FindingKind::Chain).unwrap();
    let wave = |y: f64| -> Vec<Point> {
        (0..60).map(move |i| Point::new(10.0 + f64::from(i), y + 5.0 * libm::sin(f64::from(i) * 0.1))).collect()
    };
    marks.push(stencils.chain(nth(chain), &wave(236.0), 1.0));
    marks.extend((0..CORDS.len()).map(|index| stencils.cord(nth(index), &wave(243.0 + 6.0 * index as f64), 1.0)));
    marks.push(stencils.pressed_crimp(nth(0), Point::new(90.0, 240.0), 0.0, 3.0));
    marks.push(stencils.knot(nth(0), 1, Point::new(110.0, 240.0), 0.3, 3.0, 2.0));
    marks.push(stencils.pin(nth(2), Point::new(120.0, 240.0), 0.0, 2.0, 18.0));
    marks.push(stencils.finding(nth(1), Point::new(127.0, 240.0), 0.0, 2.0));
    marks.push(stencils.chain(nth(chain), &[Point::new(90.0, 262.0), Point::new(190.0, 262.0)], 3.0));
    page(stencils, marks, "Findings")
}

#[test]
fn beads_are_drawn_large() {
    let wanted = [
        (Shape::Round, Finish::Gloss, 0),
        (Shape::Round, Finish::Pearl, 5),
        (Shape::Round, Finish::Clear, 9),
        (Shape::Round, Finish::Metallic, 2),
        (Shape::Round, Finish::Frosted, 10),
        (Shape::Round, Finish::Matte, 6),
        (Shape::Round, Finish::Faceted, 3),
        (Shape::Bicone, Finish::Clear, 1),
        (Shape::Bicone, Finish::Gloss, 7),
        (Shape::Rondelle, Finish::Faceted, 9),
        (Shape::Barrel, Finish::Gloss, 11),
        (Shape::Drop, Finish::Pearl, 8),
        (Shape::Cube, Finish::Gloss, 7),
        (Shape::Square, Finish::Gloss, 6),
        (Shape::Tube, Finish::Metallic, 2),
        (Shape::Coin, Finish::Gloss, 3),
        (Shape::Chip, Finish::Gloss, 9),
        (Shape::Seed, Finish::Gloss, 7),
        (Shape::Oval, Finish::Clear, 10),
        (Shape::Drop, Finish::Clear, 7),
    ];
    let bead = |(shape, finish, colour): &(Shape, Finish, usize)| samples::bead(*shape, *finish, 6.0, COLOURS[*colour]);
    let sample = Sample::of_beads(wanted.iter().map(bead));
    let stencils = sample.stencils(Ink::Colour);
    let marks = (0..wanted.len()).map(|index| {
        let at = Point::new(28.0 + (index % 4) as f64 * 51.0, 30.0 + (index / 4) as f64 * 58.0);
        stencils.bead(nth(index), at, 0.4, 5.0)
    });
    let marks: Vec<Mark> = marks.collect();
    assert_eq!(marks.len(), wanted.len());
    write(&page(stencils, marks, "Large"), "large");
}

/// At the size that small beads print: every shape 4 mm across in every finish, in each ink.
#[test]
fn beads_are_drawn_small() {
    for (ink, name) in [(Ink::Colour, "small"), (Ink::Grey, "small-grey")] {
        let bead =
            |i: usize| samples::bead(Shape::ALL[i / 7], Finish::ALL[i % 7], 4.0, COLOURS[(i / 7 * 5 + i % 7) % 12]);
        let sample = Sample::of_beads((0..84).map(bead));
        let stencils = sample.stencils(ink);
        let at = |index: usize| Point::new(6.0 + (index % 7) as f64 * 8.0, 5.0 + (index / 7) as f64 * 6.5);
        let marks: Vec<Mark> = (0..84).map(|index| stencils.bead(nth(index), at(index), -0.3, 1.0)).collect();
        assert_eq!(marks.len(), 84);
        write_at(&Page { width: 60.0, height: 82.0, ..page(stencils, marks, "Small") }, name, 380.0);
    }
}
