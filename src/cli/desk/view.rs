//! Views of a piece: on the neck, its rows, the sheet's pages, materials, steps.

use axum::response::Response;
use serde::Serialize;

use festoon::Piece;
use festoon::bench;
use festoon::export;
use festoon::picture::{self, Ground, Proportion};

use super::answer::{json, refused};
use super::ask::Question;
use super::{Desk, html};

/// Width in mm in which rows are drawn.
const ROWS_WIDTH: f64 = 180.0;

/// A view: a drawing, or words in HTML.
#[derive(Default, Serialize)]
struct View {
    svg: Option<String>,
    html: Option<String>,
    about: String,
    /// How many pages there are, where the view is one of several.
    pages: usize,
}

/// Answers with a view by its name.
pub fn view(name: &str, asked: &Question, desk: &Desk) -> Response {
    let drawn = asked.drawn(desk);
    let Some(piece) = &drawn.piece else { return refused("the text has errors: mend them, and this is drawn again") };
    let view = match name {
        "neck" => worn(piece),
        "rows" => drawing(&bench::rows(piece, ROWS_WIDTH, asked.ink())),
        "sheet" => page(piece, asked, desk),
        "materials" => words(html::to_buy(piece)),
        "steps" => words(html::making(piece)),
        _ => return refused("there is no such view"),
    };
    json(view)
}

fn words(html: maud::Markup) -> View {
    View { html: Some(html.into_string()), ..View::default() }
}

fn drawing(page: &festoon::paint::mark::Page) -> View {
    View { svg: Some(export::svg(page)), about: page.description.clone(), pages: 1, ..View::default() }
}

/// The piece on a display bust; one that is not worn round the neck on plain ground.
fn worn(piece: &Piece) -> View {
    let setting = picture::Setting { ground: Ground::Neck, proportion: Proportion::Square, caption: false };
    drawing(&picture::picture(std::slice::from_ref(piece), &setting))
}

/// A page of the sheet.
fn page(piece: &Piece, asked: &Question, desk: &Desk) -> View {
    let pages = festoon::pages(piece, &asked.style(desk));
    let at = asked.at.min(pages.len().saturating_sub(1));
    pages.get(at).map_or_else(View::default, |page| View { pages: pages.len(), ..drawing(page) })
}
