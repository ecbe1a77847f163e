//! Files to take away: what the commands write, byte for byte.

use axum::http::{HeaderValue, header};
use axum::response::{IntoResponse, Response};

use festoon::Piece;
use festoon::export::{self, Effort};
use festoon::picture::{self, Ground, Proportion};

use super::Desk;
use super::answer::refused;
use super::ask::Question;
use crate::cli::{names, pages};

/// Resolution of a page as PNG, as the command draws it unless told.
const DPI: f64 = 300.0;
/// Pixels of a picture's longer side, as the command draws it unless told.
const PIXELS: u32 = 2000;

/// A file: its kind of media, the end of its name, and its bytes.
type Taken = Result<(&'static str, String, Vec<u8>), String>;

/// Answers with a file by what it is.
pub fn take(what: &str, asked: &Question, desk: &Desk) -> Response {
    let drawn = asked.drawn(desk);
    let Some(piece) = &drawn.piece else { return refused("the text has errors: mend them first") };
    let taken = match what {
        "pdf" => pdf(piece, asked, desk),
        "png" | "svg" => page(piece, asked, desk, what),
        "picture" => shot(piece),
        _ => return refused("there is no such file"),
    };
    match taken {
        Ok((kind, ending, bytes)) => {
            let name = names::stem(&desk.file.name(), &asked.variant(desk), "sheet") + &ending;
            (headers(kind, &name), bytes).into_response()
        }
        Err(why) => refused(why),
    }
}

/// The kind of media, and the file's name for the page to give it.
fn headers(kind: &'static str, name: &str) -> [(header::HeaderName, HeaderValue); 2] {
    let encoded = festoon::gallery::address(name);
    let disposition = HeaderValue::try_from(format!("attachment; filename*=UTF-8''{encoded}"));
    let unnamed = HeaderValue::from_static("attachment");
    [
        (header::CONTENT_TYPE, HeaderValue::from_static(kind)),
        (header::CONTENT_DISPOSITION, disposition.unwrap_or(unnamed)),
    ]
}

fn pdf(piece: &Piece, asked: &Question, desk: &Desk) -> Taken {
    let drawn = festoon::pages(piece, &asked.style(desk));
    let bytes = export::pdf(drawn, &pages::about(piece)).map_err(|error| error.to_string())?;
    Ok(("application/pdf", ".pdf".to_owned(), bytes))
}

/// One page, numbered as the command numbers it.
fn page(piece: &Piece, asked: &Question, desk: &Desk, format: &str) -> Taken {
    let drawn = festoon::pages(piece, &asked.style(desk));
    let at = asked.at.min(drawn.len().saturating_sub(1));
    let page = drawn.get(at).ok_or("there is no such page")?;
    let ending = if drawn.len() > 1 { format!("-{}.{format}", at + 1) } else { format!(".{format}") };
    if format == "svg" {
        return Ok(("image/svg+xml", ending, export::svg(page).into_bytes()));
    }
    let bytes = export::png(page, DPI, Effort::File).map_err(|error| error.to_string())?;
    Ok(("image/png", ending, bytes))
}

/// The picture for a catalogue page.
fn shot(piece: &Piece) -> Taken {
    let setting =
        picture::Setting { ground: Ground::Plain(Ground::PAPER), proportion: Proportion::Square, caption: false };
    let page = picture::picture(std::slice::from_ref(piece), &setting);
    let bytes = export::png(&page, picture::resolution(&page, PIXELS), Effort::File);
    Ok(("image/png", ".png".to_owned(), bytes.map_err(|error| error.to_string())?))
}
