//! What must be true of every bead's and finding's drawing.

use std::collections::BTreeMap;

use festoon::art::{Ink, Look};
use festoon::design::{Form, Stated, nth};
use festoon::export::{Effort, png};
use festoon::geometry::Point;
use festoon::paint::mark::{Mark, Page, Rgb, Symbol};
use festoon::paint::outline::flattened;
use festoon::pattern::{FindingKind, Finish, Shape};

use festoon::units::Length;
use proptest::prelude::*;

use crate::samples::{self, Sample};

/// Least and greatest corner of all that marks draw, edges included.
fn extent(marks: &[Mark]) -> (Point, Point) {
    let mut least = Point::new(f64::INFINITY, f64::INFINITY);
    let mut most = least * -1.0;
    for mark in marks {
        let Mark::Shape { outline, stroke, .. } = mark else { panic!("art is made of shapes") };
        let edge = stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
        for point in flattened(outline) {
            least = Point::new(least.x.min(point.x - edge), least.y.min(point.y - edge));
            most = Point::new(most.x.max(point.x + edge), most.y.max(point.y + edge));
        }
    }
    (least, most)
}

fn symbols(sample: &Sample, ink: Ink, angle: f64) -> Vec<Symbol> {
    let stencils = sample.stencils(ink);
    for index in 0..sample.design.beads.len() {
        stencils.bead(nth(index), Point::ORIGIN, angle, 1.0);
    }
    stencils.into_symbols()
}

#[test]
fn every_bead_fills_its_box_and_no_more() {
    for ink in [Ink::Colour, Ink::Grey, Ink::Outline] {
        for (shape, finish) in Shape::ALL.iter().flat_map(|shape| Finish::ALL.iter().map(move |finish| (shape, finish)))
        {
            let bead = samples::bead(*shape, *finish, 6.0, Rgb(90, 120, 90));
            let (x, y) = (bead.0.along.value() / 2.0, bead.0.across.value() / 2.0);
            let symbols = symbols(&Sample::of_beads([bead]), ink, 0.5);
            let (least, most) = extent(&symbols[0].marks);
            let name = format!("{finish} {shape} in {ink:?}");
            assert!(least.x >= -x - 0.01 && most.x <= x + 0.01, "{name}: {least:?} {most:?} beyond {x}");
            assert!(least.y >= -y - 0.01 && most.y <= y + 0.01, "{name}: {least:?} {most:?} beyond {y}");
            assert!(most.x > x * 0.96 && most.y > y * 0.96, "{name}: {most:?} short of {x} {y}");
        }
    }
}

/// A line at a join may stand out by its own half width, no more.
#[test]
fn findings_of_stated_size_are_drawn_to_size() {
    let stated = [
        (FindingKind::Crimp, 2.0),
        (FindingKind::Cone, 12.0),
        (FindingKind::EyePin, 25.0),
        (FindingKind::HeadPin, 25.0),
        (FindingKind::Clasp, 12.0),
        (FindingKind::Chain, 4.0),
        (FindingKind::JumpRing, 5.0),
        (FindingKind::SpacerBar, 2.5),
        (FindingKind::EndBar, 8.0),
        (FindingKind::BoxHalf, 8.0),
        (FindingKind::SlideHalf, 7.0),
        (FindingKind::BeadCap, 3.0),
        (FindingKind::CrimpCover, 3.0),
        (FindingKind::WireGuard, 4.5),
        (FindingKind::Bail, 8.0),
        (FindingKind::EarWire, 20.0),
        (FindingKind::KnotCover, 8.0),
        (FindingKind::SpringRing, 8.0),
        (FindingKind::Hook, 12.0),
        (FindingKind::ToggleRing, 12.0),
        // A rod of 1.8 mm lies that and a quarter of it within the ring, beyond the 5 mm that the bar adds to the piece.
        (FindingKind::ToggleBar, 5.0 + 1.8 * (1.25 + 0.5)),
        (FindingKind::BarrelHalf, 8.0),
        (FindingKind::CordEnd, 9.0),
        (FindingKind::Charm, 16.0),
        (FindingKind::Tassel, 22.0),
        (FindingKind::SpectacleLoop, 20.0),
    ];
    assert_eq!(stated.len(), FindingKind::ALL.len());
    for (kind, length) in stated {
        let sample = Sample::new(Vec::new(), vec![(samples::finding(kind), Rgb(190, 150, 70))], Vec::new());
        let stencils = sample.stencils(Ink::Colour);
        stencils.finding(nth(0), Point::ORIGIN, 0.0, 1.0);
        let (least, most) = extent(&stencils.into_symbols()[0].marks);
        assert!(least.x.abs() < 0.15, "{kind} starts at {}", least.x);
        assert!((most.x - length).abs() < 0.15, "{kind} reaches {} of {length}", most.x);
    }
}

#[test]
fn a_jump_ring_is_as_wide_as_its_inside_and_both_thicknesses_of_its_wire() {
    let mut ring = samples::finding(FindingKind::JumpRing);
    ring.form = Form::JumpRing(samples::ring(6.0, 1.2));
    let sample = Sample::new(Vec::new(), vec![(ring, Rgb(0xb4, 0xb8, 0xbc))], Vec::new());
    let stencils = sample.stencils(Ink::Colour);
    stencils.finding(nth(0), Point::ORIGIN, 0.0, 1.0);
    let (least, most) = extent(&stencils.into_symbols()[0].marks);
    assert!((most.x - least.x - 8.4).abs() < 0.01 && (most.y - least.y - 8.4).abs() < 0.01, "{least:?} {most:?}");
}

/// The colour that most pixels of a bead have, drawn 40 mm high.
fn dominant(shape: Shape, finish: Finish, colour: Rgb) -> Rgb {
    let sample = Sample::of_beads([samples::bead(shape, finish, 40.0, colour)]);
    let stencils = sample.stencils(Ink::Colour);
    let marks = vec![stencils.bead(nth(0), Point::new(40.0, 40.0), 0.0, 1.0)];
    let (title, description) = (String::new(), String::new());
    let page = Page { width: 80.0, height: 80.0, title, description, symbols: stencils.into_symbols().into(), marks };
    let file = png(&page, 75.0, Effort::Preview).unwrap();
    let mut reader = ::png::Decoder::new(std::io::Cursor::new(file)).read_info().unwrap();
    let mut data = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut data).unwrap();
    let mut counts: BTreeMap<Rgb, u32> = BTreeMap::new();
    for pixel in data.chunks_exact(3).filter(|pixel| *pixel != [255, 255, 255]) {
        *counts.entry(Rgb(pixel[0], pixel[1], pixel[2])).or_default() += 1;
    }
    counts.into_iter().max_by_key(|(_, count)| *count).unwrap().0
}

#[test]
fn gloss_and_matte_beads_have_their_colour() {
    for colour in [Rgb(0x5d, 0x7f, 0x5b), Rgb(0xb2, 0x3a, 0x2e), Rgb(0x1d, 0x1d, 0x20), Rgb(0xf4, 0xef, 0xe6)] {
        for (shape, finish) in Shape::ALL.iter().flat_map(|shape| [(*shape, Finish::Gloss), (*shape, Finish::Matte)]) {
            // The two slanting halves of a bicone and the slopes of a chip never face us.
            if matches!(shape, Shape::Bicone) {
                continue;
            }
            let seen = dominant(shape, finish, colour);
            let off = |a: u8, b: u8| a.abs_diff(b) <= 2;
            assert!(
                off(seen.0, colour.0) && off(seen.1, colour.1) && off(seen.2, colour.2),
                "{finish} {shape}: {seen:?} for {colour:?}"
            );
        }
    }
}

#[test]
fn symbols_are_few_and_ordered() {
    let beads = vec![
        samples::bead(Shape::Round, Finish::Gloss, 6.0, Rgb(1, 2, 3)),
        samples::bead(Shape::Tube, Finish::Gloss, 6.0, Rgb(1, 2, 3)),
        samples::bead(Shape::Drop, Finish::Gloss, 6.0, Rgb(1, 2, 3)),
    ];
    let sample = Sample::of_beads(beads);
    for ink in [Ink::Colour, Ink::Outline] {
        let stencils = sample.stencils(ink);
        for turn in 0..720 {
            (0..3).for_each(|index| drop(stencils.bead(nth(index), Point::ORIGIN, f64::from(turn).to_radians(), 1.0)));
        }
        let looks = stencils.into_looks();
        assert!(looks.is_sorted_by_key(|(_, symbol)| symbol.key.to_string()));
        for (index, most) in [1, 13, 24].into_iter().enumerate() {
            let is_it = |(look, _): &&(Look, Symbol)| matches!(look, Look::Bead { bead, .. } if bead.number() == index);
            assert_eq!(looks.iter().filter(is_it).count(), most, "{ink:?} {index}");
        }
    }
}

proptest! {
    #[test]
    fn beads_of_any_proportions_stay_in_their_box(
        kind in 0..84_usize,
        across in 0.5..60.0_f64,
        along in 0.2..4.0_f64,
        hole in 0.02..0.95_f64,
        angle in -10.0..10.0_f64,
    ) {
        let (mut bead, coat) = samples::bead(Shape::ALL[kind / 7], Finish::ALL[kind % 7], across, Rgb(90, 120, 90));
        bead.along = Length::mm(across * along);
        bead.hole = Stated::Stated(Length::mm(across * hole));
        let (x, y) = (bead.along.value() / 2.0, across / 2.0);
        let sample = Sample::of_beads([(bead, coat)]);
        for ink in [Ink::Colour, Ink::Grey, Ink::Outline] {
            let (least, most) = extent(&symbols(&sample, ink, angle)[0].marks);
            let over = (most.x - x).max(-x - least.x).max(most.y - y).max(-y - least.y);
            prop_assert!(over <= 0.01, "{over} beyond the box in {ink:?}");
        }
    }
}
