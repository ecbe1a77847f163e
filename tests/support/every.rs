//! Every page that can be drawn of a piece.

use festoon::Piece;
use festoon::bench::{self, bench};
use festoon::gallery::{self, Exhibit};
use festoon::materials::{Batch, Kit, Order};
use festoon::paint::mark::Page;
use festoon::picture::{self, Setting};
use festoon::sheet::{self, Style};
use festoon::trade::paper::Paper;

/// Width of rows on the bench, in mm: such as a window has.
const WINDOW: f64 = 240.0;

/// All but the sheet itself of a piece, which is the first: its card, booklet and proof, labels for two bags, the picture of all
/// its colourways, a gallery's contact sheet and the drawings of the page at which it is designed.
pub fn besides_the_sheet(pieces: &[Piece], style: &Style, setting: &Setting) -> Vec<Page> {
    let piece = &pieces[0];
    let half = Style { paper: Paper::A5, ..style.clone() };
    let drawn = bench(piece, style.ink).page;
    [
        sheet::card(piece, style),
        sheet::booklet(festoon::pages(piece, &half), Paper::A4),
        // A proof of too many pages is refused.
        sheet::proof(piece, style).unwrap_or_default(),
        labels(piece, style),
        vec![picture::picture(pieces, setting), contact(pieces, style, setting)],
        vec![bench::plain(drawn.clone()), drawn, bench::rows(piece, WINDOW, style.ink)],
    ]
    .concat()
}

fn labels(piece: &Piece, style: &Style) -> Vec<Page> {
    let batch = Batch { design: &piece.design, palette: &piece.palette, name: "", pieces: 2, bagged: true };
    sheet::labels(&[Kit::new(&batch, &Order::default())], piece.telling.units, style)
}

fn contact(pieces: &[Piece], style: &Style, setting: &Setting) -> Page {
    let exhibit = Exhibit::new("piece", pieces, setting.proportion, style.prices).expect("of a piece");
    gallery::contact("Pieces", &[(pieces[0].clone(), &exhibit)], 1, 1, style.paper)
}
