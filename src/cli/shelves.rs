//! Reading the shelves that a pattern names.
//!
//! A pattern may come from anywhere, and reads no other file of a machine than those that stand with it: below
//! its folder, or `shelf.yaml` in a folder above. What else it names must be named on the command line too.

use std::fs;
use std::path::{Path, PathBuf};

use clap::Args;

use festoon::pattern;
use festoon::source::Source;

use super::input::{self, Unread};
use super::{names, output};

/// The shelf that stands in a folder for all the folders below it.
const COMMON: &str = "shelf.yaml";

/// Shelves that are named on the command line.
#[derive(Args, Clone, Debug, Default)]
pub struct ShelfOptions {
    /// A shelf beside those that the pattern names; from anywhere
    #[arg(long = "shelf", value_name = "FILE")]
    named: Vec<PathBuf>,
}

impl ShelfOptions {
    /// A pattern with its shelves: those that it names, then those of the command line.
    pub fn beside(&self, source: Source) -> Result<Source, Unread> {
        let (source, missing) = self.gathered(source);
        missing.map_or(Ok(source), Err)
    }

    /// The same without those of the command line that cannot be read now.
    pub fn beside_now(&self, source: Source) -> Source {
        self.gathered(source).0
    }

    /// A pattern with its shelves, and why the first one of the command line cannot be read, of those that cannot.
    fn gathered(&self, source: Source) -> (Source, Option<Unread>) {
        let (mut source, mut taken) = self.with_its_own(source);
        let mut missing = None;
        for path in &self.named {
            match unnamed(path, &mut taken) {
                Ok(None) => {}
                Ok(Some(shelf)) => source = source.with_shelf(None, Ok(shelf)),
                Err(unread) => missing = missing.or(Some(unread)),
            }
        }
        (source, missing)
    }

    /// A pattern with the shelves that it names, and where those really stand.
    fn with_its_own(&self, source: Source) -> (Source, Vec<PathBuf>) {
        let folder = output::folder(Path::new(&source.name)).to_owned();
        let names = pattern::shelves(&source);
        let mut taken = Vec::new();
        let mut source = source;
        for name in names {
            let path = folder.join(&name.value);
            let read = self.allowed(&folder, &path).and_then(|there| {
                taken.push(there.clone());
                text(&path, &there)
            });
            source = source.with_shelf(Some(name.value), read);
        }
        (source, taken)
    }

    /// The files of shelves that patterns of a folder may name so, and of those of the command line.
    pub fn files(&self, folder: &Path, names: &[String]) -> Vec<PathBuf> {
        let home = folder.canonicalize().unwrap_or_else(|_| folder.to_owned());
        let is_near = |path: &PathBuf| {
            let there = output::folder(path).canonicalize();
            there.is_ok_and(|there| there.starts_with(&home) || home.starts_with(there))
        };
        let called = names.iter().map(|name| folder.join(name)).filter(is_near);
        called.chain(self.named.iter().cloned()).collect()
    }

    /// What those files hold, or why they are not read.
    pub fn texts(&self, folder: &Path, names: &[String]) -> Vec<Result<String, String>> {
        let called = names.iter().map(|name| folder.join(name)).map(|path| (self.allowed(folder, &path), path));
        let named = self.named.iter().map(|path| (found(path), path.clone()));
        let read = |(there, path): (Result<PathBuf, String>, PathBuf)| Ok(text(&path, &there?)?.text().to_owned());
        called.chain(named).map(read).collect()
    }

    /// Where a shelf really stands, if a pattern of this folder may read it.
    fn allowed(&self, folder: &Path, path: &Path) -> Result<PathBuf, String> {
        let there = found(path)?;
        let home = folder.canonicalize().map_err(|error| input::reason(&error))?;
        let is_common = || there.file_name().is_some_and(|name| name == COMMON);
        let is_above = || there.parent().is_some_and(|parent| home.starts_with(parent));
        let is_named = || self.named.iter().filter_map(|named| found(named).ok()).any(|named| named == there);
        if there.starts_with(&home) || is_common() && is_above() || is_named() {
            Ok(there)
        } else {
            Err("it stands outside the pattern's folder".to_owned())
        }
    }
}

/// A shelf of the command line; nothing where it is taken already.
fn unnamed(path: &Path, taken: &mut Vec<PathBuf>) -> Result<Option<Source>, Unread> {
    let trouble = |reason: String| Unread::Trouble(format!("{}: {reason}", path.display()));
    let there = found(path).map_err(trouble)?;
    if taken.contains(&there) {
        return Ok(None);
    }
    let shelf = text(path, &there).map_err(trouble)?;
    taken.push(there);
    Ok(Some(shelf))
}

/// The file that a path leads to through all links; its name says that it is YAML.
fn found(path: &Path) -> Result<PathBuf, String> {
    let there = fs::canonicalize(path).map_err(|error| input::reason(&error))?;
    if names::is_yaml(&there) { Ok(there) } else { Err("a shelf's file ends in .yaml".to_owned()) }
}

fn text(path: &Path, there: &Path) -> Result<Source, String> {
    let shown = path.strip_prefix(".").unwrap_or(path).display().to_string();
    input::file(&shown, there).map_err(|unread| match unread {
        Unread::Trouble(message) => message,
        Unread::NotText(remark) => remark.headline(),
    })
}
