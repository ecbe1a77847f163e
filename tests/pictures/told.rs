//! What tells beads apart at the size that they print: 4 mm, 300 dpi.

use festoon::Piece;
use festoon::art::{Ink, Stencils};
use festoon::design::{Bead, Choice, nth};
use festoon::geometry::Point;
use festoon::paint::mark::{Mark, Page, Rgb};
use festoon::palette::Coat;
use festoon::pattern::{CordKind, Finish, Shape};
use festoon::trade::sight::{Lab, Sight, ciede2000, contrast, linear, seen_by};

use crate::ink::pixels;
use crate::samples::{self, Sample};
use crate::shelved::shelved;

/// A bead in the middle of a small page, with a cord of a colour through it.
fn strung(bead: (Bead, Coat), ink: Ink, size: f64, cord: Option<Rgb>) -> Page {
    let cords = vec![(samples::cord(CordKind::Leather, 0.4), cord.unwrap_or(Rgb::WHITE))];
    let sample = Sample::new(vec![bead], Vec::new(), cords);
    let stencils = sample.stencils(ink);
    let middle = Point::new(size / 2.0, size / 2.0);
    let ends = [Point::new(0.0, middle.y), Point::new(size, middle.y)];
    let mut marks: Vec<Mark> = cord.iter().map(|_| stencils.cord(nth(0), &ends, 1.0)).collect();
    marks.push(stencils.bead(nth(0), middle, 0.0, 1.0));
    let (title, description) = (String::new(), String::new());
    Page { width: size, height: size, title, description, symbols: stencils.into_symbols().into(), marks }
}

/// CIEDE2000 of two pictures of a size, pixel by pixel, where either has more than white paper.
fn apart(one: &[Rgb], other: &[Rgb]) -> Vec<f64> {
    let lab = |colour: Rgb| Lab::of(seen_by(colour, Sight::Normal));
    let drawn = one.iter().zip(other).filter(|(one, other)| **one != Rgb::WHITE || **other != Rgb::WHITE);
    drawn.map(|(one, other)| ciede2000(lab(*one), lab(*other))).collect()
}

/// An eighth of the pixels differ by 4 or more, where a difference of 1 is about what can just be seen of
/// two areas side by side: the light's reflection, the shade, the grain or the facets are others.
#[test]
fn finishes_are_told_apart_at_four_millimetres() {
    const SEEN: f64 = 4.0;
    const SHARE: f64 = 0.125;
    let mut alike = Vec::new();
    for colour in [Rgb(0x5d, 0x7f, 0x5b), Rgb(0xc9, 0xd6, 0xd8), Rgb(0xb2, 0x3a, 0x2e)] {
        for shape in Shape::ALL {
            let drawn = |finish: &Finish| {
                let bead = samples::bead(*shape, *finish, 4.0, colour);
                (*finish, pixels(&strung(bead, Ink::Colour, 9.0, None), 300.0))
            };
            let drawn: Vec<_> = Finish::ALL.iter().map(drawn).collect();
            for (at, (one, picture)) in drawn.iter().enumerate() {
                for (other, another) in &drawn[..at] {
                    let apart = apart(picture, another);
                    let share = apart.iter().filter(|apart| **apart > SEEN).count() as f64 / apart.len() as f64;
                    if share < SHARE {
                        alike.push(format!("{colour:?} {shape}: {one} and {other}, {share:.3}"));
                    }
                }
            }
        }
    }
    assert!(alike.is_empty(), "{}", alike.join("\n"));
}

/// The pixels of a bead in its middle, with a cord of a colour below it.
fn middle(finish: Finish, shape: Shape, cord: Rgb) -> Rgb {
    let bead = samples::bead(shape, finish, 6.0, Rgb(0x5d, 0x7f, 0x5b));
    let pixels = pixels(&strung(bead, Ink::Colour, 12.0, Some(cord)), 127.0);
    pixels[30 * 60 + 30]
}

#[test]
fn the_cord_shows_through_clear_and_frosted_beads_alone() {
    for finish in Finish::ALL {
        for shape in Shape::ALL {
            let (dark, pale) = (middle(*finish, *shape, Rgb::BLACK), middle(*finish, *shape, Rgb(0xf5, 0xf0, 0xe6)));
            let seen = linear(pale)[1] - linear(dark)[1] > 0.02;
            let transparent = matches!(finish, Finish::Clear | Finish::Frosted);
            assert_eq!(seen, transparent, "{finish} {shape}: {dark:?} {pale:?}");
        }
    }
}

/// WCAG 2.2, 1.4.11: 3 : 1 of what must be seen to understand a figure. Paper counts as white; of the
/// edge's middle pixels one at least is all edge at 600 dpi.
#[test]
fn pale_beads_have_an_edge_on_paper() {
    for colour in [Rgb::WHITE, Rgb(0xf4, 0xef, 0xe6), Rgb(0xdf, 0xe9, 0xe6), Rgb(0xff, 0xf6, 0xc8)] {
        for (shape, finish) in Shape::ALL.iter().flat_map(|shape| Finish::ALL.iter().map(move |finish| (shape, finish)))
        {
            let bead = samples::bead(*shape, *finish, 4.0, colour);
            let pixels = pixels(&strung(bead, Ink::Colour, 9.0, None), 600.0);
            let down: Vec<Rgb> = pixels.iter().skip(213 / 2).step_by(213).copied().collect();
            let first = down.iter().position(|pixel| *pixel != Rgb::WHITE).unwrap();
            let darkest = down[first..first + 4].iter().map(|pixel| contrast(*pixel, Rgb::WHITE)).fold(0.0, f64::max);
            assert!(darkest >= 3.0, "{colour:?} {finish} {shape}: {darkest}");
        }
    }
}

/// The pieces of the shipped patterns.
pub fn shipped() -> Vec<Piece> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/patterns");
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let patterns = files.filter(|file| file.extension().is_some_and(|ending| ending == "yaml"));
    let read = |path: std::path::PathBuf| shelved(&format!("patterns/{}", path.file_name().unwrap().to_str().unwrap()));
    patterns.map(|path| festoon::piece(&read(path), &Choice::default(), None).0.unwrap()).collect()
}

/// The pixels of a pattern's beads, each in the middle of a square of a size.
fn kinds(piece: &Piece, ink: Ink, size: f64) -> Vec<Vec<Rgb>> {
    let drawn = |index: usize| {
        let stencils = Stencils::new(&piece.design, &piece.palette, ink);
        let marks = vec![stencils.bead(nth(index), Point::new(size, size) * 0.5, 0.0, 1.0)];
        let (title, description, symbols) = (String::new(), String::new(), stencils.into_symbols().into());
        pixels(&Page { width: size, height: size, title, description, symbols, marks }, 300.0)
    };
    (0..piece.design.beads.len()).map(drawn).collect()
}

/// Every two kinds of a pattern, as they are drawn in its key: a twentieth of what either covers differs
/// by a quarter of the way from black to white.
#[test]
fn beads_of_a_pattern_are_told_apart_in_grey_and_outline() {
    for (piece, ink) in shipped().iter().flat_map(|piece| [(piece, Ink::Grey), (piece, Ink::Outline)]) {
        let sizes = piece.design.beads.iter().flat_map(|bead| [bead.along.value(), bead.across.value()]);
        let kinds = kinds(piece, ink, sizes.fold(1.0, f64::max));
        for (at, one) in kinds.iter().enumerate() {
            for (before, other) in kinds[..at].iter().enumerate() {
                let covered = one.iter().zip(other).filter(|(a, b)| **a != Rgb::WHITE || **b != Rgb::WHITE).count();
                let differ = one.iter().zip(other).filter(|(a, b)| a.0.abs_diff(b.0) > 64).count();
                let share = differ as f64 / covered as f64;
                assert!(share > 0.05, "{} in {ink:?}: {before} and {at}, {share:.3}", piece.design.heading.title);
            }
        }
    }
}

#[test]
fn pearls_differ_a_little_and_alike_in_every_run() {
    let pearl = samples::bead(Shape::Round, Finish::Pearl, 8.0, Rgb(0xf1, 0xeb, 0xdf));
    let sample = Sample::of_beads([pearl]);
    let stamped = || {
        let stencils = sample.stencils(Ink::Colour);
        let dealt = |bit| Some(festoon::art::Deal::of("row", 0, bit));
        let stamp = |bit| stencils.bead_aslant(nth(0), dealt(bit), Point::ORIGIN, (0.0, 0.0), 1.0);
        let stamps: Vec<_> = (0..60).map(stamp).collect();
        (stamps, stencils.into_symbols())
    };
    let (stamps, symbols) = stamped();
    assert_eq!((&stamps, &symbols), (&stamped().0, &stamped().1));
    assert!((3..=5).contains(&symbols.len()), "{} variants", symbols.len());
    let page = |symbol: &festoon::paint::mark::Symbol| Page {
        width: 10.0,
        height: 10.0,
        title: String::new(),
        description: String::new(),
        marks: vec![Mark::Stamp { symbol: symbol.key, at: Point::new(5.0, 5.0), angle: 0.0, scale: 1.0, along: 1.0 }],
        symbols: vec![symbol.clone()].into(),
    };
    let drawn: Vec<_> = symbols.iter().map(|symbol| pixels(&page(symbol), 300.0)).collect();
    for (at, one) in drawn.iter().enumerate() {
        for other in &drawn[..at] {
            let apart = apart(one, other);
            let apart = apart.iter().sum::<f64>() / apart.len() as f64;
            assert!((0.5..8.0).contains(&apart), "{apart}");
        }
    }
}
