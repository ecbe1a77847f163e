//! The shipped patterns, read and hung in each of their variants.

use std::fs;
use std::path::{Path, PathBuf};

use festoon::Piece;
use festoon::design::Choice;
use festoon::pattern::{Pattern, read};
use festoon::remark::{Remark, has_errors};
use festoon::source::Source;

use super::shelved::shelved;

/// A pattern file.
pub struct Shipped {
    /// Its file name without ending.
    pub name: String,
    pub source: Source,
    pub pattern: Pattern,
}

/// Every pattern in `patterns/`, by name.
pub fn shipped() -> Vec<Shipped> {
    files("patterns").iter().map(|path| load(path)).collect()
}

/// The shipped pattern of a name.
pub fn named(name: &str) -> Shipped {
    load(&root().join("patterns").join(format!("{name}.yaml")))
}

/// The YAML files of a folder of the project, by name.
pub fn files(folder: &str) -> Vec<PathBuf> {
    let entries = fs::read_dir(root().join(folder)).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = entries.filter(|path| path.extension().is_some_and(|ending| ending == "yaml")).collect();
    files.sort();
    assert!(!files.is_empty(), "no pattern in {folder}");
    files
}

pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn load(path: &Path) -> Shipped {
    let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
    let source = shelved(&format!("patterns/{name}.yaml"));
    let (pattern, remarks) = read(&source);
    assert_eq!(remarks, [], "{name}");
    Shipped { name, source, pattern: pattern.unwrap() }
}

impl Shipped {
    /// The pattern as written, each of its sizes, and each of its colourways.
    pub fn choices(&self) -> Vec<Choice> {
        let sizes = self.pattern.sizes.iter().flatten().map(|size| size.name.value.clone());
        let sizes = sizes.map(|size| Choice { size: Some(size), ..Choice::default() });
        let ways = self.pattern.colourways.iter().flat_map(|ways| ways.ids());
        let ways = ways.map(|way| Choice { colourway: Some(way.to_owned()), ..Choice::default() });
        std::iter::once(Choice::default()).chain(sizes).chain(ways).collect()
    }

    /// One variant hung, with all that is said about it.
    pub fn piece(&self, choice: &Choice) -> (Piece, Vec<Remark>) {
        let (piece, remarks) = festoon::piece(&self.source, choice, None);
        assert!(!has_errors(&remarks), "{} {choice:?}: {remarks:#?}", self.name);
        (piece.unwrap(), remarks)
    }

    /// The size of a name.
    pub fn sized(&self, size: &str) -> Piece {
        self.piece(&Choice { size: Some(size.to_owned()), ..Choice::default() }).0
    }

    /// The comment that the file opens with.
    pub fn opening(&self) -> String {
        let lines = self.source.text().lines().map_while(|line| line.strip_prefix('#'));
        lines.map(str::trim).collect::<Vec<_>>().join(" ")
    }
}
