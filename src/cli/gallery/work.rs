//! The work on one pattern: its pictures and sheets in every colourway.

use std::path::{Path, PathBuf};

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::export::{self, About, Effort};
use festoon::gallery::{Entry, Shot};
use festoon::picture::{self, Ground};
use festoon::remark::{Remark, has_errors};
use festoon::sheet::{self, Style};
use festoon::source::Source;
use festoon::{Piece, pattern};

use super::manifest::{Manifest, hash};
use super::{Made, Options};
use crate::cli::input::{self, Unread};
use crate::cli::{Failure, output};

/// Pixels of a small picture's longer side.
const SMALL: u32 = 560;

/// A pattern's folder in the gallery.
pub fn folder(out: &Path, name: &str) -> PathBuf {
    out.join("pieces").join(name)
}

/// Makes what a pattern's page shows, unless it was made from the same before. At most one picture
/// is in memory at a time.
pub fn make(path: &Path, options: &Options, known: &Manifest) -> Made {
    let source = match input::text(&path.to_string_lossy()) {
        Ok(source) => source,
        Err(Unread::Trouble(message)) => return Made::Trouble(message),
        Err(Unread::NotText(remark)) => return Made::Broken(Source::new(path.to_string_lossy(), ""), vec![remark]),
    };
    let pieces = match pieces(&source) {
        Ok(pieces) => pieces.into_iter().map(|piece| options.looks.of(piece)).collect::<Vec<_>>(),
        Err(remarks) => return Made::Broken(source, remarks),
    };
    let name = path.file_stem().unwrap_or_default().to_string_lossy();
    let style = options.looks.style();
    let Some(entry) = Entry::new(&name, &pieces, style.proportion, options.with_prices) else {
        return Made::Trouble(format!("{}: nothing to show", path.display()));
    };
    let asked = format!("{:?} {:?} {}", options.looks, options.paper, options.with_prices);
    let hash = hash([env!("CARGO_PKG_VERSION"), &asked, source.text()]);
    let folder = folder(&options.output, &name);
    let is_new = known.patterns.get(&*name) != Some(&hash) || !is_whole(&folder, &entry);
    let drawn = if is_new { draw_all(&folder, &entry, &pieces, options) } else { Ok(()) };
    match drawn {
        Ok(()) => Made::Page { path: path.to_owned(), entry, hash, is_new },
        Err(Failure::Trouble(message)) => Made::Trouble(message),
        Err(Failure::Pattern) => Made::Trouble(format!("{}: could not be drawn", path.display())),
    }
}

/// The piece in its own colours and then in every colourway, or what is wrong with it.
fn pieces(source: &Source) -> Result<Vec<Piece>, Vec<Remark>> {
    let ways = pattern::read(source).0.and_then(|pattern| pattern.colourways);
    let names = ways.iter().flat_map(|ways| ways.ids()).map(|name| Some(name.to_owned()));
    let one = |colourway: Option<String>| {
        let (piece, remarks) = festoon::piece(source, &Choice { colourway, ..Choice::default() }, None);
        piece.filter(|_| !has_errors(&remarks)).ok_or(remarks)
    };
    std::iter::once(None).chain(names).map(one).collect()
}

/// The piece of a file in its own colours.
pub fn piece(path: &Path) -> Option<Piece> {
    let source = input::text(&path.to_string_lossy()).ok()?;
    festoon::piece(&source, &Choice::default(), None).0
}

/// Whether all files of an entry are there.
fn is_whole(folder: &Path, entry: &Entry) -> bool {
    entry.files().all(|file| folder.join(file).exists())
}

fn draw_all(folder: &Path, entry: &Entry, pieces: &[Piece], options: &Options) -> Result<(), Failure> {
    for (piece, shot) in pieces.iter().zip(&entry.shots) {
        draw(folder, shot, piece, options)?;
    }
    Ok(())
}

/// Picture, small picture and sheet of one colourway.
fn draw(folder: &Path, shot: &Shot, piece: &Piece, options: &Options) -> Result<(), Failure> {
    let style = options.looks.style();
    let page = picture::picture(std::slice::from_ref(piece), &style);
    let export = if style.ground == Ground::Transparent { export::transparent_png } else { export::png };
    for (file, pixels) in [(shot.picture(), options.looks.pixels), (shot.thumbnail(), SMALL)] {
        let drawn = export(&page, picture::resolution(&page, pixels), Effort::File);
        output::replace(&folder.join(file), &drawn.map_err(Failure::trouble)?).map_err(Failure::trouble)?;
    }
    let looks = Style { paper: options.paper, ink: Ink::Colour, prices: options.with_prices };
    let heading = &piece.design.heading;
    let author = heading.designer.clone().unwrap_or_default();
    let about = About { title: heading.title.clone(), author, ..About::default() };
    let sheet = export::pdf(sheet::pages(piece, &looks), &about).map_err(Failure::trouble)?;
    output::replace(&folder.join(shot.sheet()), &sheet).map_err(Failure::trouble)
}
