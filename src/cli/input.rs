//! Reading pattern files.

use std::fs::File;
use std::io::{Read, stdin};

use festoon::design::Choice;
use festoon::remark::{Code, Remark, has_errors};
use festoon::source::Source;
use festoon::{Piece, piece};

use super::{Failure, report};

/// Largest file that is read.
const LARGEST: u64 = 4 * 1024 * 1024;

/// Why a pattern's text could not be read.
pub enum Unread {
    /// The file is at fault.
    Trouble(String),
    /// What it holds is no text of that size.
    NotText(Remark),
}

/// Reads a pattern's text; `-` is standard input. What is no text of that size has been reported.
pub fn source(path: &str, messages: &report::Messages) -> Result<Source, Failure> {
    text(path).map_err(|unread| match unread {
        Unread::Trouble(message) => Failure::Trouble(message),
        Unread::NotText(remark) => {
            report::remarks(&[remark], &Source::new(path, ""), messages);
            Failure::Pattern
        }
    })
}

/// Reads a pattern's text; `-` is standard input.
pub fn text(path: &str) -> Result<Source, Unread> {
    let bytes = if path == "-" { capped(stdin().lock()) } else { File::open(path).and_then(capped) };
    let bytes = bytes.map_err(|error| Unread::Trouble(format!("{path}: {}", reason(&error))))?;
    let text = if bytes.len() as u64 > LARGEST {
        Err("is larger than 4 MiB")
    } else {
        String::from_utf8(bytes).map_err(|_| "is not text in UTF-8")
    };
    text.map(|text| Source::new(path, text)).map_err(|reason| {
        let remark = Remark::new(Code::NotText, format!("{path} {reason}"));
        Unread::NotText(remark.help("give a pattern, a YAML text file"))
    })
}

fn capped(file: impl Read) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    file.take(LARGEST + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn reason(error: &std::io::Error) -> String {
    match error.kind() {
        std::io::ErrorKind::NotFound => "there is no such file".to_owned(),
        std::io::ErrorKind::PermissionDenied => "this file may not be read".to_owned(),
        std::io::ErrorKind::IsADirectory => "this is a folder, not a pattern file".to_owned(),
        _ => error.to_string(),
    }
}

/// Reads, resolves and hangs a pattern, and reports every remark.
pub fn load(
    path: &str,
    choice: &Choice,
    span: Option<f64>,
    messages: &report::Messages,
) -> Result<(Piece, Vec<Remark>, Source), Failure> {
    let source = source(path, messages)?;
    let (piece, remarks) = resolved(&source, choice, span, messages)?;
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
