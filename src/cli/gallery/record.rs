//! What a gallery knows of a folder: which files in it are its own, and what they were made from.
//!
//! A file is the gallery's own where its bytes are what the record says was written there. The record
//! is written before each file, with the hash of what is about to stand there, and again after the
//! last, saying what all were made from. So a run that is killed leaves no file that is taken for what
//! it is not, and none that the next run would not know again.
//!
//! A record that cannot be understood tells of no file that it is the gallery's own. All are drawn anew, and those
//! that stand there just so become its own again; of others nobody knows whose they are.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io::Read;
use std::path::{Component, Path, PathBuf};

use serde::{Deserialize, Serialize};

use festoon::gallery::Exhibit;

use crate::cli::hash::{hash, hash_of_file};
use crate::cli::{input, output};

/// The record's file.
pub const RECORD: &str = "festoon.json";
/// Largest record that is read, in bytes.
const LARGEST: u64 = 16 * 1024 * 1024;

/// What is known of one folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct FolderRecord {
    /// The folder's name; nothing for the gallery's own. A copy of the folder is not the gallery's.
    folder: String,
    /// A hash of what its files were made from; nothing while they are not whole.
    pub made_from: String,
    /// What its page says.
    pub entry: Option<Exhibit>,
    /// Hashes of what was written to each file; while it is written, of what stood there and what shall.
    files: BTreeMap<String, BTreeSet<String>>,
    /// A hash of all this.
    seal: String,
}

impl FolderRecord {
    /// The record of a folder, where it has one that can be understood and is its own.
    pub fn read(folder: &Path, name: &str) -> Option<Self> {
        let record: Self = serde_json::from_str(&text(&folder.join(RECORD))?).ok()?;
        (record.seal == record.sealed() && record.is_of(name)).then_some(record)
    }

    /// Whether it is of a folder of this name, and of files in it.
    fn is_of(&self, name: &str) -> bool {
        let is_entry = |entry: &Exhibit| entry.folder == name && entry.files().all(|file| is_below(&file));
        self.folder == name && self.files.keys().all(|file| is_below(file)) && self.entry.iter().all(is_entry)
    }

    /// The hash of everything but itself.
    fn sealed(&self) -> String {
        let bare = Self { seal: String::new(), ..self.clone() };
        // Records hold texts alone, which always become JSON.
        hash([serde_json::to_vec(&bare).unwrap_or_default()])
    }

    fn knows(&self, file: &str, hash: &str) -> bool {
        self.files.get(file).is_some_and(|known| known.contains(hash))
    }
}

/// The text of a small file.
pub fn text(path: &Path) -> Option<String> {
    let mut text = String::new();
    input::ending(path).ok()?.take(LARGEST).read_to_string(&mut text).ok()?;
    Some(text)
}

/// A folder that a gallery writes to.
pub struct Folder {
    path: PathBuf,
    /// What is known of it.
    pub record: FolderRecord,
    /// Whether its files are the gallery's own whatever they hold.
    force: bool,
    /// Whether there is a record that cannot be understood.
    is_lost: bool,
}

impl Folder {
    /// Opens a folder, which may not be there yet.
    pub fn open(path: PathBuf, name: &str, force: bool) -> Self {
        let known = FolderRecord::read(&path, name);
        let is_lost = known.is_none() && path.join(RECORD).exists();
        let record = known.unwrap_or_else(|| FolderRecord { folder: name.to_owned(), ..FolderRecord::default() });
        Self { path, record, force, is_lost }
    }

    /// Makes sure that files of these names are the gallery's to write. Where the record is lost, that shows only
    /// once they are drawn.
    pub fn claim<'a>(&self, files: impl IntoIterator<Item = &'a str>) -> Result<(), String> {
        if self.is_lost {
            return Ok(());
        }
        files.into_iter().try_for_each(|file| self.own(file, hash_of_file(&self.path.join(file)).as_deref()))
    }

    /// Makes sure that a file, whose bytes have this hash, is the gallery's to write.
    fn own(&self, file: &str, hash: Option<&str>) -> Result<(), String> {
        let path = self.path.join(file);
        let is_own = self.force || hash.is_some_and(|hash| self.record.knows(file, hash));
        if is_own || path.symlink_metadata().is_err() {
            return Ok(());
        }
        let whose = if self.is_lost { "may not be" } else { "is not" };
        Err(format!("{} {whose} the gallery's own: --force writes over it", path.display()))
    }

    /// Writes a file unless it is there just so. A link in its place is replaced, and its target left.
    pub fn write(&mut self, file: &str, bytes: &[u8]) -> Result<(), String> {
        let path = self.path.join(file);
        let (old, new) = (hash_of_file(&path), hash([bytes]));
        if old.as_ref() != Some(&new) || is_link(&path) {
            self.own(file, old.as_deref())?;
            self.record.files.insert(file.to_owned(), old.into_iter().chain([new.clone()]).collect());
            self.save()?;
            replace(&path, bytes)?;
        }
        self.record.files.insert(file.to_owned(), BTreeSet::from([new]));
        Ok(())
    }

    /// Says that nothing is whole until the folder is closed.
    pub fn begin(&mut self) -> Result<(), String> {
        self.record.made_from.clear();
        self.save()
    }

    /// Says what all files were made from.
    pub fn close(&mut self, made_from: String, entry: Option<Exhibit>) -> Result<(), String> {
        (self.record.made_from, self.record.entry) = (made_from, entry);
        self.save()
    }

    /// Writes the record.
    pub fn save(&mut self) -> Result<(), String> {
        self.record.seal = self.record.sealed();
        let text = serde_json::to_string_pretty(&self.record).map_err(|error| error.to_string())? + "\n";
        let path = self.path.join(RECORD);
        if hash_of_file(&path) == Some(hash([&text])) { Ok(()) } else { replace(&path, text.as_bytes()) }
    }

    /// Removes the files that the gallery wrote and does not make any more.
    pub fn prune(&mut self, is_made: impl Fn(&str) -> bool) {
        let path = &self.path;
        self.record.files.retain(|file, known| {
            let is_own =
                |place: &Path| !is_link(place) && hash_of_file(place).is_some_and(|hash| known.contains(&hash));
            let place = path.join(file);
            if !is_made(file) && is_own(&place) {
                // What cannot be removed now is no harm.
                let _ = fs::remove_file(&place);
            }
            is_made(file)
        });
    }
}

fn replace(path: &Path, bytes: &[u8]) -> Result<(), String> {
    output::replace(path, bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// Refuses a link in a folder's place.
pub fn refuse_link(folder: &Path) -> Result<(), String> {
    if is_link(folder) {
        return Err(format!("{} is a link: a gallery writes to folders of its own", folder.display()));
    }
    Ok(())
}

/// Removes the folders of patterns that are gone: of each the files that the gallery wrote, and the
/// folder where this leaves it empty. Links are not followed.
pub fn sweep(pieces: &Path, is_kept: impl Fn(&str) -> bool) {
    for folder in fs::read_dir(pieces).into_iter().flatten().flatten() {
        let name = folder.file_name().to_string_lossy().into_owned();
        let path = folder.path();
        if is_link(&path) || is_kept(&name) || FolderRecord::read(&path, &name).is_none() {
            continue;
        }
        Folder::open(path.clone(), &name, false).prune(|_| false);
        tidy(&path);
        // What cannot be removed now is found again by the next run; only an empty folder goes.
        let _ = fs::remove_file(path.join(RECORD));
        let _ = fs::remove_dir(&path);
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

/// Whether a path leads to no place outside a folder.
fn is_below(path: &str) -> bool {
    Path::new(path).components().all(|part| matches!(part, Component::Normal(_)))
}

fn is_link(path: &Path) -> bool {
    path.symlink_metadata().is_ok_and(|there| there.is_symlink())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn records_speak_of_their_own_folder_alone() {
        assert!(["index.html", "fonts/a.ttf", "picture-1.png"].into_iter().all(is_below));
        assert!(!["/etc/x", "../x", "picture/../../x.png"].into_iter().any(is_below));
    }
}
