//! How much ink a face page takes: the share of its pixels that are not white at 300 dpi, and how dark
//! the page is on the whole, where 100 % is all black.

mod support;

use festoon::art::Ink;
use festoon::export::{Effort, png};
use festoon::pages;
use festoon::sheet::Style;
use festoon::trade::paper::Paper;

#[expect(clippy::print_stdout, reason = "the shares are to be read")]
fn main() {
    let piece = support::piece(500);
    for ink in Ink::ALL {
        let style = Style { paper: Paper::A4, ink: *ink, prices: false };
        let face = pages(&piece, &style).swap_remove(0);
        let file = png(&face, 300.0, Effort::Preview).expect("a page that can be drawn");
        let (inked, dark) = shares(&file);
        println!("face page in {:8} {:4.1} % not white, {:4.1} % dark", ink.word(), inked * 100.0, dark * 100.0);
    }
}

/// Share of the pixels that are not white, and mean darkness of all.
fn shares(file: &[u8]) -> (f64, f64) {
    let mut reader = ::png::Decoder::new(std::io::Cursor::new(file)).read_info().expect("a PNG");
    let mut data = vec![0; reader.output_buffer_size().expect("a size")];
    reader.next_frame(&mut data).expect("a picture");
    let pixels = data.len() / 3;
    let inked = data.chunks_exact(3).filter(|pixel| *pixel != [255; 3]).count();
    let dark: u64 = data.iter().map(|channel| u64::from(255 - channel)).sum();
    (inked as f64 / pixels as f64, dark as f64 / (data.len() as f64 * 255.0))
}
