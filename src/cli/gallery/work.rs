//! The work on one pattern: its pictures and sheets in every colourway.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::export::{self, About, Effort};
use festoon::gallery::{Entry, Shot};
use festoon::picture::{self, Ground};
use festoon::remark::{Remark, has_errors};
use festoon::sheet::{self, Style};
use festoon::source::Source;
use festoon::{Piece, pattern};

use super::record::{self, Record, hash, refresh};
use super::{Fault, Made, Options};
use crate::cli::input::{self, Unread};
use crate::cli::names;

/// Pixels of a small picture's longer side.
const SMALL: u32 = 560;

/// What a pattern's folder in the gallery is called.
pub fn name(path: &Path) -> String {
    names::without_yaml(&path.file_name().unwrap_or_default().to_string_lossy()).to_owned()
}

/// Makes what a pattern's page shows, unless it was made from the same before. A pattern that cannot
/// be made keeps the page it has; one that makes the program panic takes no other with it.
pub fn make(path: &Path, options: &Options) -> Made {
    let name = name(path);
    let folder = options.pieces().join(&name);
    let known = Record::read(&folder, &name).unwrap_or_default();
    let trial = catch_unwind(AssertUnwindSafe(|| attempt(path, &name, &folder, &known, options)));
    let fault = || "this is a fault of festoon: please report it with the pattern";
    trial.unwrap_or_else(|_| Err(Fault::Trouble(format!("{}: {}", path.display(), fault())))).unwrap_or_else(|fault| {
        let kept = known.entry.filter(|entry| is_whole(&folder, entry)).map(Box::new);
        Made::Failed { fault, kept }
    })
}

/// At most one picture is in memory at a time.
fn attempt(path: &Path, name: &str, folder: &Path, known: &Record, options: &Options) -> Result<Made, Fault> {
    let trouble = |reason: String| Fault::Trouble(reason);
    if name == "." || name == ".." {
        return Err(trouble(format!("{}: no folder can be called so: rename it", path.display())));
    }
    let source = read(path)?;
    let pieces = match pieces(&source) {
        Ok(pieces) => pieces.into_iter().map(|piece| options.looks.of(piece)).collect::<Vec<_>>(),
        Err(remarks) => return Err(Fault::Broken(source, remarks)),
    };
    let entry = Entry::new(name, &pieces, options.looks.style().proportion, options.with_prices);
    let entry = entry.ok_or_else(|| trouble(format!("{}: nothing to show", path.display())))?;
    let hash = hash([options.asked().as_str(), source.text()]);
    let is_new = known.made_from != hash || !is_whole(folder, &entry);
    record::tidy(folder);
    if is_new {
        record::claim(folder, &files(&entry), options.force).map_err(trouble)?;
        let begun = Record { folder: name.to_owned(), made_from: String::new(), entry: known.entry.clone() };
        begun.write(folder).map_err(trouble)?;
        draw_all(folder, &entry, &pieces, options).map_err(trouble)?;
        record::prune(folder, |file| files(&entry).iter().any(|made| made == file));
        let whole = Record { made_from: hash.clone(), entry: Some(entry.clone()), ..begun };
        whole.write(folder).map_err(trouble)?;
    }
    Ok(Made::Page { path: path.to_owned(), entry: Box::new(entry), hash, is_new })
}

fn read(path: &Path) -> Result<Source, Fault> {
    input::text(&path.to_string_lossy()).map_err(|unread| match unread {
        Unread::Trouble(message) => Fault::Trouble(message),
        Unread::NotText(remark) => Fault::Broken(Source::new(path.to_string_lossy(), ""), vec![remark]),
    })
}

/// The files of a pattern's folder.
fn files(entry: &Entry) -> Vec<String> {
    entry.files().chain(["index.html".to_owned()]).collect()
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

fn draw_all(folder: &Path, entry: &Entry, pieces: &[Piece], options: &Options) -> Result<(), String> {
    for (piece, shot) in pieces.iter().zip(&entry.shots) {
        draw(folder, shot, piece, options)?;
    }
    Ok(())
}

/// Picture, small picture and sheet of one colourway.
fn draw(folder: &Path, shot: &Shot, piece: &Piece, options: &Options) -> Result<(), String> {
    let style = options.looks.style();
    let page = picture::picture(std::slice::from_ref(piece), &style);
    let export = if style.ground == Ground::Transparent { export::transparent_png } else { export::png };
    for (file, pixels) in [(shot.picture(), options.looks.pixels), (shot.thumbnail(), SMALL)] {
        let drawn = export(&page, picture::resolution(&page, pixels), Effort::File);
        refresh(&folder.join(file), &drawn.map_err(|error| error.to_string())?)?;
    }
    let looks = Style { paper: options.paper, ink: Ink::Colour, prices: options.with_prices };
    let heading = &piece.design.heading;
    let author = heading.designer.clone().unwrap_or_default();
    let about = About { title: heading.title.clone(), author, ..About::default() };
    let sheet = export::pdf(sheet::pages(piece, &looks), &about).map_err(|error| error.to_string())?;
    refresh(&folder.join(shot.sheet()), &sheet)
}
