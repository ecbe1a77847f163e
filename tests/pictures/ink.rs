//! Grey and outline: no colour anywhere, and beads told apart by their marks.

use festoon::art::Ink;
use festoon::design::{Choice, nth};
use festoon::export::{Effort, png};
use festoon::geometry::Point;
use festoon::paint::mark::{Page, Rgb};
use festoon::pattern::{Finish, Shape};
use festoon::sheet::{self, Style};
use festoon::source::Source;
use festoon::trade::paper::Paper;

use crate::samples::{self, Sample};

/// Pixels of a page on white.
pub fn pixels(page: &Page, dpi: f64) -> Vec<Rgb> {
    let file = png(page, dpi, Effort::Preview).unwrap();
    let mut reader = ::png::Decoder::new(std::io::Cursor::new(file)).read_info().unwrap();
    let mut data = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut data).unwrap();
    data.chunks_exact(3).map(|pixel| Rgb(pixel[0], pixel[1], pixel[2])).collect()
}

/// Share of the pixels that are not white.
fn inked(pixels: &[Rgb]) -> f64 {
    pixels.iter().filter(|pixel| **pixel != Rgb::WHITE).count() as f64 / pixels.len() as f64
}

fn saltmarsh(ink: Ink) -> Vec<Page> {
    let source = Source::new("saltmarsh.yaml", include_str!("../../patterns/saltmarsh.yaml"));
    let piece = festoon::piece(&source, &Choice::default(), None).0.unwrap();
    let style = Style { paper: Paper::A4, ink, prices: false };
    festoon::pages(&piece, &style).into_iter().chain(sheet::proof(&piece, &style).unwrap()).collect()
}

/// Prints how much of each page is not white at 60 dpi, where thin lines count for more than they
/// print. The limit keeps pages from filling with ink.
#[test]
#[expect(clippy::print_stdout, reason = "the shares are to be read")]
fn grey_and_outline_pages_have_no_colour_and_no_page_much_ink() {
    for ink in Ink::ALL {
        for page in saltmarsh(*ink) {
            let pixels = pixels(&page, 60.0);
            let share = inked(&pixels);
            println!("{} in {}: {:.1} % of the page is not white", page.title, ink.word(), share * 100.0);
            assert!(share < 0.25, "{}", page.title);
            let grey = pixels.iter().all(|Rgb(red, green, blue)| red == green && green == blue);
            assert_eq!(grey, *ink != Ink::Colour, "{} in {}", page.title, ink.word());
        }
    }
}

/// Two beads count as told apart where a twentieth of the pixels of their box differ by a quarter of
/// the way from black to white.
#[test]
fn marks_on_4_mm_beads_differ() {
    const DPI: f64 = 300.0;
    for ink in [Ink::Grey, Ink::Outline] {
        for (shape, finish) in Shape::ALL.iter().flat_map(|shape| [(*shape, Finish::Gloss), (*shape, Finish::Faceted)])
        {
            let beads = (0..14).map(|_| samples::bead(shape, finish, 4.0, Rgb(0x5d, 0x7f, 0x5b)));
            let sample = Sample::of_beads(beads);
            let drawn: Vec<_> = (0..14).map(|index| pixels(&alone(&sample, index, ink), DPI)).collect();
            for (at, one) in drawn.iter().enumerate() {
                for (other, pixels) in drawn[..at].iter().enumerate() {
                    let differ = one.iter().zip(pixels).filter(|(a, b)| a.0.abs_diff(b.0) > 64).count();
                    let share = differ as f64 / one.len() as f64;
                    assert!(share > 0.05, "{finish} {shape} in {ink:?}: {other} and {at} differ in {share:.3}");
                }
            }
        }
    }
}

/// A page as large as a bead, with nothing else on it.
fn alone(sample: &Sample, index: usize, ink: Ink) -> Page {
    let bead = &sample.design.beads[nth(index)];
    let (width, height) = (bead.along.value(), bead.across.value());
    let stencils = sample.stencils(ink);
    let marks = vec![stencils.bead(nth(index), Point::new(width / 2.0, height / 2.0), 0.0, 1.0)];
    let (title, description) = (String::new(), String::new());
    Page { width, height, title, description, symbols: stencils.into_symbols().into(), marks }
}
