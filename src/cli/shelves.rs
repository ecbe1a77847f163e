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
pub struct Shelves {
    /// A shelf beside those that the pattern names; from anywhere
    #[arg(long = "shelf", value_name = "FILE")]
    named: Vec<PathBuf>,
}

impl Shelves {
    /// A pattern with its shelves: those that it names, then those of the command line.
    pub fn beside(&self, source: Source) -> Result<Source, Unread> {
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
        for path in &self.named {
            let there = found(path).map_err(|reason| Unread::Trouble(format!("{}: {reason}", path.display())))?;
            if !taken.contains(&there) {
                let shelf =
                    text(path, &there).map_err(|reason| Unread::Trouble(format!("{}: {reason}", path.display())))?;
                source = source.with_shelf(None, Ok(shelf));
                taken.push(there);
            }
        }
        Ok(source)
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

/// The file that a path leads to through all links; its name says that it is YAML.
fn found(path: &Path) -> Result<PathBuf, String> {
    let there = fs::canonicalize(path).map_err(|error| input::reason(&error))?;
    if names::is_yaml(&there) { Ok(there) } else { Err("a shelf's file ends in .yaml".to_owned()) }
}

fn text(path: &Path, there: &Path) -> Result<Source, String> {
    let shown = path.strip_prefix(".").unwrap_or(path).display().to_string();
    input::file(&shown, there).map_err(|unread| match unread {
        Unread::Trouble(message) => message,
        Unread::NotText(remark) => remark.headline,
    })
}
