//! Text is as wide on the page as it was measured.

use std::sync::Arc;

use festoon::export::svg;
use festoon::geometry::Point;
use festoon::paint::font;
use festoon::paint::mark::{Anchor, Mark, Page, Rgb, Text, Weight};
use festoon::paint::metrics;
use resvg::usvg::{Node, Options, Tree};

const SIZE: f64 = 10.0;
const TEXTS: &[&str] = &[
    "Saltmarsh",
    "AVATAR Tokyo Wave, Yes!",
    "fi ffi fl office waffle",
    "16 ½ in, give or take 3⁄16 in – 419 mm",
    "two  spaces",
    "Ελληνικά χάντρες",
    "бусины и нить",
    "mixed Ωμέγα и ½ in",
    "é ñ ü ø å ß čšž",
    "0123456789 × ± ° % & < >",
];

fn drawn_width(text: &str, weight: Weight) -> f64 {
    let at = Point::new(20.0, 50.0);
    let (colour, anchor) = (Rgb::BLACK, Anchor::Start);
    let marks = vec![Mark::Text(Text { at, text: text.into(), size: SIZE, weight, colour, anchor, angle: 0.0 })];
    let (title, description) = (String::new(), String::new());
    let page = Page { width: 210.0, height: 297.0, title, description, symbols: Arc::default(), marks };
    let mut options = Options::default();
    for weight in [Weight::Regular, Weight::Semibold] {
        options.fontdb_mut().load_font_data(font::file(weight).to_vec());
    }
    let tree = Tree::from_str(&svg(&page), &options).unwrap();
    text_width(&tree).expect("the page has a text")
}

/// The advance box in the document's own units: usvg states it in the text's coordinates.
fn text_width(tree: &Tree) -> Option<f64> {
    fn of(node: &Node) -> Option<f64> {
        match node {
            Node::Group(group) => group.children().iter().find_map(of),
            Node::Text(text) => Some(f64::from(text.bounding_box().width())),
            _ => None,
        }
    }
    tree.root().children().iter().find_map(of)
}

/// Source: the text box of usvg 0.47, which draws the PNG and PDF files.
#[test]
fn measured_widths_are_the_drawn_ones() {
    for text in TEXTS {
        for weight in [Weight::Regular, Weight::Semibold] {
            let (measured, drawn) = (metrics::width(text, SIZE, weight), drawn_width(text, weight));
            assert!((measured - drawn).abs() < 1e-3, "{text} {weight:?}: measured {measured}, drawn {drawn}");
        }
    }
}
