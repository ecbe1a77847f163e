//! Reading pattern files.

use std::fs::{self, File};
use std::io::{self, Read, stdin};
use std::path::Path;

use festoon::design::Choice;
use festoon::remark::said::language::Language;
use festoon::remark::{Remark, has_errors};
use festoon::source::Source;
use festoon::{Piece, piece};

use super::shelves::ShelfOptions;
use super::{Failure, VariantOptions, report};

/// Largest file that is read.
pub const LARGEST: u64 = 4 * 1024 * 1024;

/// Why a pattern's text could not be read.
pub enum Unread {
    /// The file is at fault.
    Trouble(String),
    /// What it holds is no text of that size.
    NotText(Remark),
}

impl Unread {
    /// Why, in a line.
    pub fn message(self) -> String {
        match self {
            Self::Trouble(message) => message,
            Self::NotText(remark) => format!("{}: {}", remark.headline(), remark.help()),
        }
    }
}

/// Reads a text; `-` is standard input. What is no text of that size has been reported.
pub fn source(path: &str, messages: &report::Messages) -> Result<Source, Failure> {
    reported(path, text(path), messages)
}

/// Reads a pattern with its shelves; `-` is standard input. What is no text of that size has been reported.
pub fn pattern(path: &str, shelves: &ShelfOptions, messages: &report::Messages) -> Result<Source, Failure> {
    reported(path, shelved(path, shelves), messages)
}

/// Reads a pattern with its shelves; `-` is standard input.
pub fn shelved(path: &str, shelves: &ShelfOptions) -> Result<Source, Unread> {
    text(path).and_then(|source| shelves.beside(source))
}

fn reported(path: &str, read: Result<Source, Unread>, messages: &report::Messages) -> Result<Source, Failure> {
    read.map_err(|unread| match unread {
        Unread::Trouble(message) => Failure::Trouble(message),
        Unread::NotText(remark) => {
            report::remarks(&[remark], &Source::new(path, ""), messages);
            Failure::Pattern
        }
    })
}

/// Reads a text; `-` is standard input.
pub fn text(path: &str) -> Result<Source, Unread> {
    if path == "-" { understood(path, capped(stdin().lock())) } else { file(path, Path::new(path)) }
}

/// Reads a file's text under a name.
pub fn file(name: &str, path: &Path) -> Result<Source, Unread> {
    understood(name, opened(path).and_then(capped))
}

fn understood(name: &str, bytes: io::Result<Vec<u8>>) -> Result<Source, Unread> {
    let bytes = bytes.map_err(|error| Unread::Trouble(format!("{name}: {}", reason(&error))))?;
    let file = name.to_owned();
    let text = if bytes.len() as u64 > LARGEST {
        Err(Language::TooLarge { file })
    } else {
        String::from_utf8(bytes).map_err(|_| Language::NotUtf8 { file })
    };
    text.map(|text| Source::new(name, text)).map_err(|wrong| Unread::NotText(Remark::new(wrong)))
}

/// Opens a pattern; a file that standard output would be written over is refused.
fn opened(path: &Path) -> io::Result<impl Read> {
    let file = ending(path)?;
    let output = same_file::Handle::stdout();
    if output.is_ok_and(|output| same_file::Handle::from_path(path).is_ok_and(|read| read == output)) {
        return Err(io::Error::other("this file is also standard output; send that to another"));
    }
    Ok(file)
}

/// Opens a file that can be read to its end. A pipe or device, which may never end or never begin, is refused
/// unopened; nothing is read of a file that says it is empty, which some of the system's do that never end.
pub fn ending(path: &Path) -> io::Result<impl Read> {
    let kind = fs::metadata(path)?;
    if kind.is_dir() {
        return Err(io::ErrorKind::IsADirectory.into());
    }
    if !kind.is_file() {
        return Err(io::Error::other("this is a pipe or a device, not a file; `-` reads standard input"));
    }
    let file = File::open(path)?;
    let most = if file.metadata()?.len() == 0 { 0 } else { u64::MAX };
    Ok(file.take(most))
}

fn capped(file: impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    file.take(LARGEST + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// Why a file could not be read, in words.
pub fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "there is no such file".to_owned(),
        io::ErrorKind::PermissionDenied => "this file may not be read".to_owned(),
        io::ErrorKind::IsADirectory => "this is a folder, not a pattern file".to_owned(),
        _ => error.to_string(),
    }
}

/// Reads, resolves and hangs a pattern, and reports every remark.
pub fn load(
    path: &str,
    variant: &VariantOptions,
    span: Option<f64>,
    messages: &report::Messages,
) -> Result<(Piece, Vec<Remark>, Source), Failure> {
    let source = pattern(path, &variant.shelves, messages)?;
    let (piece, remarks) = resolved(&source, &variant.choice(), span, messages)?;
    Ok((piece, remarks, source))
}

/// Resolves and hangs a pattern whose text was read, and reports every remark.
pub fn resolved(
    source: &Source,
    choice: &Choice,
    span: Option<f64>,
    messages: &report::Messages,
) -> Result<(Piece, Vec<Remark>), Failure> {
    let (piece, remarks) = piece(source, choice, span);
    report::remarks(&remarks, source, messages);
    match piece.filter(|_| !has_errors(&remarks)) {
        Some(piece) => Ok((piece, remarks)),
        None => Err(Failure::Pattern),
    }
}
