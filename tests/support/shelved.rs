//! A shipped pattern with the shelves that it names.

use std::fs;
use std::path::Path;

use festoon::pattern::shelves;
use festoon::source::Source;

/// Reads a pattern of the project, such as `patterns/ebb.yaml`, and its shelves from beside it.
pub fn shelved(file: &str) -> Source {
    let read = |file: &str| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(file);
        Source::new(file, fs::read_to_string(path).expect("a file of the project"))
    };
    let source = read(file);
    let (folder, _) = file.rsplit_once('/').expect("a file in a folder");
    shelves(&source).into_iter().fold(source, |source, name| {
        let shelf = read(&format!("{folder}/{}", name.value));
        source.with_shelf(Some(name.value), Ok(shelf))
    })
}
