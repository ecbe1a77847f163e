//! How long pages take to become files; a PNG beside the drawing library and the encoder alone.

mod support;

use std::sync::Arc;

use divan::{Bencher, black_box};
use festoon::art::Ink;
use festoon::design::Choice;
use festoon::export::{About, Effort, pdf, png, svg};
use festoon::paint::font;
use festoon::paint::mark::{Page, Weight};
use festoon::sheet::Style;
use festoon::trade::paper::Paper;
use festoon::{pages, piece};
use resvg::usvg::{Options, Tree};
use tiny_skia::{Color, Pixmap, Transform};

/// Print quality.
const DPI: f32 = 300.0;
/// Pixels in an inch by which SVG measures millimetres (CSS Values and Units, absolute lengths).
const PIXELS: f32 = 96.0;

fn main() {
    divan::main();
}

fn all_pages() -> Vec<Page> {
    pages(&support::piece(500), &Style { paper: Paper::A4, ink: Ink::Colour, prices: false })
}

/// The page with the drape.
fn face() -> Page {
    all_pages().swap_remove(0)
}

#[divan::bench]
fn svg_of_500_beads(bencher: Bencher<'_, '_>) {
    let page = face();
    bencher.bench_local(|| svg(black_box(&page)));
}

#[divan::bench(sample_count = 20)]
fn png_of_500_beads(bencher: Bencher<'_, '_>) {
    let page = face();
    bencher.bench_local(|| png(black_box(&page), DPI.into(), Effort::File));
}

/// What a PNG cannot do without: parsing the same SVG, drawing it and encoding the pixels.
#[divan::bench(sample_count = 20)]
fn parse_draw_and_encode_alone(bencher: Bencher<'_, '_>) {
    let text = svg(&face());
    let options = options();
    bencher.bench_local(|| alone(black_box(&text), &options));
}

#[divan::bench(sample_count = 20)]
fn pdf_of_500_beads(bencher: Bencher<'_, '_>) {
    let pages = all_pages();
    let about = About { title: "Measured necklace".into(), ..About::default() };
    bencher.bench_local(|| pdf(black_box(&pages), &about));
}

/// From its text; limit: 0.3 s. What was laid on a neck or a table is kept, so that the first run alone has it all.
#[divan::bench(sample_count = 20)]
fn pdf_of_saltmarsh(bencher: Bencher<'_, '_>) {
    let (source, about) = (support::saltmarsh(), About { title: "Saltmarsh".into(), ..About::default() });
    let style = Style { paper: Paper::A4, ink: Ink::Colour, prices: false };
    bencher.bench_local(|| {
        let piece = piece(black_box(&source), &Choice::default(), None).0.expect("a sound pattern");
        pdf(pages(&piece, &style), &about)
    });
}

fn options() -> Options<'static> {
    let mut fonts = fontdb::Database::new();
    for weight in [Weight::Regular, Weight::Semibold] {
        fonts.load_font_source(fontdb::Source::Binary(Arc::new(font::file(weight))));
    }
    Options { fontdb: Arc::new(fonts), font_family: font::FAMILY.into(), ..Options::default() }
}

fn alone(text: &str, options: &Options<'_>) -> Vec<u8> {
    let tree = Tree::from_str(text, options).expect("SVG that can be read");
    let pixels = drawn(&tree);
    let mut out = Vec::new();
    let mut encoder = ::png::Encoder::new(&mut out, pixels.width(), pixels.height());
    encoder.set_color(::png::ColorType::Rgba);
    encoder.set_compression(::png::Compression::Balanced);
    let mut writer = encoder.write_header().expect("a header");
    writer.write_image_data(pixels.data()).expect("as many bytes as pixels");
    writer.finish().expect("an end");
    out
}

fn drawn(tree: &Tree) -> Pixmap {
    let scale = DPI / PIXELS;
    let [width, height] = [tree.size().width(), tree.size().height()].map(|side| (side * scale).round() as u32);
    let mut pixels = Pixmap::new(width, height).expect("a page with an area");
    pixels.fill(Color::WHITE);
    resvg::render(tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
    pixels
}
