//! What a gallery knows of a folder: that it is its own, and what the files in it were made from.
//!
//! The record is written before the first file, saying that nothing is whole, and again after the
//! last, saying what all were made from. So a run that is killed leaves no file that is taken for
//! what it is not, and a record that cannot be understood costs a drawing and no more.

use std::fs::{self, File};
use std::path::Path;

use serde::{Deserialize, Serialize};

use festoon::gallery::Entry;

use crate::cli::output;

/// The record's file.
pub const RECORD: &str = "festoon.json";

/// What is known of one folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Record {
    /// The folder's name; nothing for the gallery's own. A copy of the folder is not the gallery's.
    pub folder: String,
    /// A hash of what its files were made from; nothing while they are not whole.
    pub made_from: String,
    /// What its page says.
    pub entry: Option<Entry>,
}

impl Record {
    /// The record of a folder, where it has one that can be understood and is its own.
    pub fn read(folder: &Path, name: &str) -> Option<Self> {
        let text = fs::read_to_string(folder.join(RECORD)).ok()?;
        let record: Self = serde_json::from_str(&text).ok()?;
        let is_sound = |entry: &Entry| entry.folder == name && entry.files().all(|file| is_piece_file(&file));
        (record.folder == name && record.entry.iter().all(is_sound)).then_some(record)
    }

    /// Writes the record of a folder.
    pub fn write(&self, folder: &Path) -> Result<(), String> {
        let text = serde_json::to_string_pretty(self).map_err(|error| error.to_string())? + "\n";
        refresh(&folder.join(RECORD), text.as_bytes())
    }
}

/// Makes sure that a folder is no link, and that files of these names in it are the gallery's to
/// write, unless it is forced.
pub fn claim(folder: &Path, files: &[String], force: bool) -> Result<(), String> {
    if is_link(folder) {
        return Err(format!("{} is a link: a gallery writes to folders of its own", folder.display()));
    }
    owned(folder, files, force)
}

/// Makes sure that files of these names in a folder are the gallery's to write, unless it is forced.
pub fn owned(folder: &Path, files: &[String], force: bool) -> Result<(), String> {
    let foreign = || files.iter().map(|file| folder.join(file)).find(|path| path.symlink_metadata().is_ok());
    match foreign().filter(|_| !force && !folder.join(RECORD).exists()) {
        Some(path) => Err(format!("{} is not the gallery's own: --force writes over it", path.display())),
        None => Ok(()),
    }
}

/// Writes a file unless it is there just so. A link in its place is replaced, and its target left.
pub fn refresh(path: &Path, bytes: &[u8]) -> Result<(), String> {
    if !is_link(path) && fs::read(path).is_ok_and(|old| old == bytes) {
        return Ok(());
    }
    output::replace(path, bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// Removes the folders of patterns that are gone: of each the files that a gallery writes, and the
/// folder where this leaves it empty. Links are not followed.
pub fn sweep(pieces: &Path, is_kept: impl Fn(&str) -> bool) {
    for folder in fs::read_dir(pieces).into_iter().flatten().flatten() {
        let name = folder.file_name().to_string_lossy().into_owned();
        let path = folder.path();
        if is_link(&path) || is_kept(&name) || Record::read(&path, &name).is_none() {
            continue;
        }
        prune(&path, |_| false);
        // What cannot be removed now is found again by the next run; only an empty folder goes.
        let _ = fs::remove_file(path.join(RECORD));
        let _ = fs::remove_dir(&path);
    }
}

/// Removes from a folder the files that a gallery wrote and does not make any more.
pub fn prune(folder: &Path, is_made: impl Fn(&str) -> bool) {
    for file in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = file.file_name().to_string_lossy().into_owned();
        if is_piece_file(&name) && !is_made(&name) && !is_link(&file.path()) {
            let _ = fs::remove_file(file.path());
        }
    }
}

/// Removes from a folder the unfinished files of runs that were killed: nobody holds them locked.
pub fn tidy(folder: &Path) {
    let [prefix, suffix] = output::PART;
    for file in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = file.file_name().to_string_lossy().into_owned();
        let is_part = name.starts_with(prefix) && name.ends_with(suffix) && !is_link(&file.path());
        let is_left = || File::open(file.path()).is_ok_and(|part| part.try_lock().is_ok());
        if is_part && file.file_type().is_ok_and(|kind| kind.is_file()) && is_left() {
            let _ = fs::remove_file(file.path());
        }
    }
}

/// Whether a name is one that a gallery gives to the files of a pattern.
fn is_piece_file(name: &str) -> bool {
    let kinds = [("picture", ".png"), ("small", ".png"), ("sheet", ".pdf")];
    let is_numbered = |middle: &str| {
        middle.is_empty() || middle.strip_prefix('-').is_some_and(|number| number.parse::<u32>().is_ok())
    };
    let is_kind =
        |(start, end)| name.strip_prefix(start).and_then(|rest| rest.strip_suffix(end)).is_some_and(is_numbered);
    name == "index.html" || kinds.into_iter().any(is_kind)
}

fn is_link(path: &Path) -> bool {
    path.symlink_metadata().is_ok_and(|there| there.is_symlink())
}

/// A hash of texts and their borders: FNV-1a with 128 bits (Fowler, Noll, Vo and Eastlake, RFC 9923).
pub fn hash<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    const BASIS: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;
    // No text holds a zero byte's place: 0xff never stands in UTF-8.
    let bytes = texts.into_iter().flat_map(|text| text.bytes().chain([0xff]));
    let sum = bytes.fold(BASIS, |sum, byte| (sum ^ u128::from(byte)).wrapping_mul(PRIME));
    format!("{sum:032x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hashes_tell_texts_and_their_borders_apart() {
        assert_ne!(hash(["ab", "c"]), hash(["a", "bc"]));
        assert_eq!(hash(["ab"]), hash(["ab"]));
        assert_eq!(hash([]), "6c62272e07bb014262b821756295c58d");
    }

    #[test]
    fn only_names_that_a_gallery_gives_are_its_own() {
        assert!(["index.html", "picture.png", "small-12.png", "sheet-1.pdf"].into_iter().all(is_piece_file));
        let others = ["whelk.yaml", "picture-.png", "picture.pdf", "small-a.png", "sheet-1.pdf.bak", RECORD];
        assert!(!others.into_iter().any(is_piece_file));
    }
}
