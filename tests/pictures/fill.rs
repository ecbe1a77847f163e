//! How much of its picture a piece fills.

use festoon::export::{Effort, png};
use festoon::paint::mark::Page;
use festoon::picture::{Ground, Portrait, Proportion, Setting, picture};
use festoon::sheet::Illustration;

use crate::told::shipped;

/// Dots an inch at which a millimetre is half a pixel.
const COARSE: f64 = 12.7;
/// What is darker than this in any channel is more than the faint rim of a shadow.
const RIM: u8 = 245;
const FOUR_FIFTHS: f64 = 0.8;

/// What share of its page's width and of its height a drawing without ground spans, by its dots that are darker than a shadow's
/// rim.
fn spans(page: &Page) -> [f64; 2] {
    let mut reader =
        ::png::Decoder::new(std::io::Cursor::new(png(page, COARSE, Effort::Preview).unwrap())).read_info().unwrap();
    let mut data = vec![0; reader.output_buffer_size().unwrap()];
    let frame = reader.next_frame(&mut data).unwrap();
    assert_eq!(frame.color_type, ::png::ColorType::Rgb);
    let dark = data.chunks_exact(3).enumerate().filter(|(_, dot)| dot.iter().any(|part| *part < RIM));
    let (across, down): (Vec<_>, Vec<_>) =
        dark.map(|(at, _)| (at as u32 % frame.width, at as u32 / frame.width)).unzip();
    let span = |places: &[u32], of: u32| {
        f64::from(places.iter().max().unwrap() - places.iter().min().unwrap() + 1) / f64::from(of)
    };
    [span(&across, frame.width), span(&down, frame.height)]
}

/// On every ground that is a board a piece fills four fifths of the picture, one way or the other.
#[test]
fn a_piece_fills_four_fifths_of_its_picture() {
    for piece in shipped() {
        let title = &piece.design.heading.title;
        let extent = Portrait::of(&piece).extent();
        for (proportion, ground) in
            [Proportion::Square, Proportion::Upright, Proportion::Level].into_iter().flat_map(|proportion| {
                [Ground::Plain(Ground::PAPER), Ground::Linen, Ground::Slate].map(|ground| (proportion, ground))
            })
        {
            let page = picture(std::slice::from_ref(&piece), &Setting { ground, proportion, caption: false });
            let share = (extent.width() / page.width).max(extent.height() / page.height);
            assert!((FOUR_FIFTHS..=1.0).contains(&share), "{title} fills {share} of {proportion:?} on {ground:?}");
        }
        let setting = Setting { ground: Ground::Transparent, proportion: Proportion::Square, caption: false };
        let [across, down] = spans(&picture(std::slice::from_ref(&piece), &setting));
        assert!(across.max(down) >= FOUR_FIFTHS, "{title} is drawn over {across} by {down} of its picture");
    }
}
