//! A pattern of the project with the shelves that it names.

use std::fs;
use std::path::Path;

use festoon::source::Source;

use crate::beside::beside;

/// Reads a pattern of the project, such as `patterns/ebb.yaml`, and its shelves from beside it.
pub fn shelved(file: &str) -> Source {
    let read = |file: &str| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(file);
        fs::read_to_string(path).expect("a file of the project")
    };
    let (folder, _) = file.rsplit_once('/').expect("a file in a folder");
    beside(Source::new(file, read(file)), |name| Some(read(&format!("{folder}/{name}"))))
}
