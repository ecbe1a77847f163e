//! The pattern's file: read, and written only where it holds what the page last saw in it.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use serde::Serialize;

use crate::cli::hash::hash;
use crate::cli::{input, output};

/// Version of a file that is not there.
pub const NONE: &str = "none";

/// The pattern's file.
#[derive(Clone)]
pub struct File {
    path: PathBuf,
    /// Held while it is written, so that of two pages that save at once one is told of the other.
    writing: Arc<Mutex<()>>,
}

/// What a file holds.
#[derive(Clone, Debug, Serialize)]
pub struct FileState {
    /// The text; nothing where there is none to read.
    pub text: Option<String>,
    /// Tells it from every other text.
    pub version: String,
    /// Why it cannot be read; empty where it can, or is not there yet.
    pub trouble: String,
}

/// Why a text was not saved.
pub enum Unsaved {
    /// Another program changed the file: what it holds now.
    Changed(FileState),
    /// It cannot be written.
    Trouble(String),
}

impl File {
    pub fn new(path: PathBuf) -> Self {
        Self { path, writing: Arc::default() }
    }

    pub fn path(&self) -> &Path {
        &self.path
    }

    /// As the maker named it.
    pub fn name(&self) -> String {
        self.path.to_string_lossy().into_owned()
    }

    /// What it holds now.
    pub fn held(&self) -> FileState {
        match input::file(&self.name(), &self.path) {
            Ok(source) => FileState {
                version: hash([source.text()]),
                text: Some(source.text().to_owned()),
                trouble: String::new(),
            },
            Err(_) if self.is_missing() => FileState { text: None, version: NONE.to_owned(), trouble: String::new() },
            Err(unread) => {
                let trouble = unread.message();
                FileState { text: None, version: hash(["unread", &trouble]), trouble }
            }
        }
    }

    fn is_missing(&self) -> bool {
        self.path.symlink_metadata().is_err_and(|error| error.kind() == ErrorKind::NotFound)
    }

    /// Saves a text whole or not at all, where the file still holds the version that it was made from. Between the
    /// look at the file and the move of the new one over it another program may write: a moment that no system
    /// closes for programs that do not ask one another.
    pub fn save(&self, text: &str, made_from: &str) -> Result<FileState, Unsaved> {
        let _alone = self.writing.lock().unwrap_or_else(PoisonError::into_inner);
        if text.len() as u64 > input::LARGEST {
            return Err(Unsaved::Trouble("a pattern has at most 4 MiB: make it smaller".to_owned()));
        }
        let held = self.held();
        if held.version != made_from {
            return Err(Unsaved::Changed(held));
        }
        let saved = output::followed(&self.path).and_then(|path| output::replace(&path, text.as_bytes()));
        saved.map_err(|error| Unsaved::Trouble(format!("{}: {error}", self.path.display())))?;
        Ok(self.held())
    }
}
