//! The work on one pattern: its pictures and sheets in every colourway.

use std::path::{Path, PathBuf};

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::export::{self, Effort};
use festoon::gallery::{Exhibit, Shot};
use festoon::picture::{self, Ground};
use festoon::remark::{Remark, has_errors};
use festoon::sheet::Style;
use festoon::source::Source;
use festoon::{Piece, design, drape, pattern};

use super::Options;
use super::record::{self, Folder, FolderRecord};
use crate::cli::hash::hash;
use crate::cli::{Failure, input, names, pages, report};

/// Pixels of a small picture's longer side.
const SMALL: u32 = 560;

/// What a pattern's folder in the gallery is called.
pub fn name(path: &Path) -> String {
    names::without_yaml(&path.file_name().unwrap_or_default().to_string_lossy()).to_owned()
}

/// The folder of a pattern in the gallery.
pub fn folder(path: &Path, options: &Options) -> PathBuf {
    options.pieces().join(name(path))
}

/// What is known of a pattern whose files are all there.
pub fn known(path: &Path, options: &Options) -> Option<(Exhibit, String)> {
    let folder = folder(path, options);
    let FolderRecord { entry, made_from, .. } = FolderRecord::read(&folder, &name(path))?;
    entry.filter(|entry| entry.files().all(|file| folder.join(file).exists())).map(|entry| (entry, made_from))
}

/// A pattern with its shelves, as far as they can be read.
pub fn text(path: &Path, options: &Options) -> Option<Source> {
    input::shelved(&path.to_string_lossy(), &options.shelves).ok()
}

/// What a pattern's files are made from: its text, those of its shelves and all that was asked.
pub fn made_from(source: &Source, options: &Options) -> String {
    let asked = options.asked();
    hash([asked.as_str()].into_iter().chain(source.files().map(Source::text)))
}

/// Draws what a pattern's page shows, and prints what is wrong with it if it cannot.
pub fn draw(path: &Path, options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    injected(path);
    let source = input::pattern(&path.to_string_lossy(), &options.shelves, messages)?;
    let choice = choice(options);
    let pieces = pieces(&source, &choice, messages)?;
    let pieces: Vec<_> = pieces.into_iter().map(|piece| options.looks.of(piece)).collect();
    let entry = Exhibit::new(&name(path), &pieces, options.looks.setting().proportion, options.with_prices);
    let entry = entry.ok_or_else(|| Failure::trouble(format!("{}: nothing to show", path.display())))?;
    draw_all(path, entry, &pieces, made_from(&source, options), options).map_err(Failure::Trouble)
}

/// Ends the process as a fault of the program would: in debug builds alone, where tests ask for it.
fn injected(path: &Path) {
    if cfg!(debug_assertions) {
        let fault = std::env::var("FESTOON_FAULT").unwrap_or_default();
        assert_ne!(fault, format!("panic {}", name(path)), "asked for by FESTOON_FAULT");
        if fault == format!("abort {}", name(path)) {
            std::process::abort();
        }
    }
}

/// The piece as it is made for whom it is asked for.
fn choice(options: &Options) -> Choice {
    Choice { fit: options.measures.fit(), ..Choice::default() }
}

/// The piece in its own colours and then in every colourway.
fn pieces(source: &Source, choice: &Choice, messages: &report::Messages) -> Result<Vec<Piece>, Failure> {
    let ways = pattern::read(source).0.and_then(|pattern| pattern.colourways);
    let names = ways.iter().flat_map(|ways| ways.ids()).map(|name| Some(name.to_owned()));
    let one = |colourway: Option<String>| {
        let (piece, remarks) = festoon::piece(source, &Choice { colourway, ..choice.clone() }, None);
        sound(piece, &remarks).ok_or_else(|| {
            report::remarks(&remarks, source, messages);
            Failure::Pattern
        })
    };
    std::iter::once(None).chain(names).map(one).collect()
}

fn sound(piece: Option<Piece>, remarks: &[Remark]) -> Option<Piece> {
    piece.filter(|_| !has_errors(remarks))
}

/// The piece of a file in its own colours, as it hangs and lies, but not as it is worn.
pub fn piece(path: &Path, options: &Options) -> Option<Piece> {
    let pattern = pattern::read(&text(path, options)?).0?;
    let design = design::resolve(&pattern, &choice(options)).0?;
    let drape = drape::hang_unworn(&design, None).ok()?;
    Some(Piece::of(&pattern, design, drape))
}

/// Draws every colourway into the pattern's folder.
fn draw_all(path: &Path, entry: Exhibit, pieces: &[Piece], made_from: String, options: &Options) -> Result<(), String> {
    let place = folder(path, options);
    record::refuse_link(&place)?;
    let files: Vec<_> = entry.files().chain(["index.html".to_owned()]).collect();
    let mut folder = Folder::open(place, &name(path), options.force);
    folder.claim(files.iter().map(String::as_str))?;
    folder.begin()?;
    for (piece, shot) in pieces.iter().zip(&entry.shots) {
        draw_shot(&mut folder, shot, piece, options)?;
    }
    folder.prune(|file| files.iter().any(|made| made == file));
    folder.close(made_from, Some(entry))
}

/// Picture, small picture and sheet of one colourway; at most one picture is in memory at a time.
fn draw_shot(folder: &mut Folder, shot: &Shot, piece: &Piece, options: &Options) -> Result<(), String> {
    let (pictures, sheet) = rayon::join(|| pictures(shot, piece, options), || sheet(piece, options));
    for (file, drawn) in pictures?.into_iter().chain([(shot.sheet(), sheet?)]) {
        folder.write(&file, &drawn)?;
    }
    Ok(())
}

/// The files of a picture, large and small.
fn pictures(shot: &Shot, piece: &Piece, options: &Options) -> Result<Vec<(String, Vec<u8>)>, String> {
    let setting = options.looks.setting();
    let page = picture::picture(std::slice::from_ref(piece), &setting);
    let export = if setting.ground == Ground::Transparent { export::transparent_png } else { export::png };
    let drawn = |(file, pixels)| {
        let drawn = export(&page, picture::resolution(&page, pixels), Effort::File);
        Ok((file, drawn.map_err(|error| error.to_string())?))
    };
    [(shot.picture(), options.looks.pixels), (shot.thumbnail(), SMALL)].into_iter().map(drawn).collect()
}

/// A sheet as PDF.
fn sheet(piece: &Piece, options: &Options) -> Result<Vec<u8>, String> {
    let looks = Style { paper: options.paper, ink: Ink::Colour, prices: options.with_prices };
    export::pdf(festoon::pages(piece, &looks), &pages::about(piece)).map_err(|error| error.to_string())
}
