//! A pattern beside the shelves that it names.

use festoon::pattern::shelves;
use festoon::source::Source;

/// Puts the shelves that a pattern names beside it, by their names; one that has no text is not there.
pub fn beside(source: Source, text_of: impl Fn(&str) -> Option<String>) -> Source {
    shelves(&source).into_iter().fold(source, |source, name| match text_of(&name.value) {
        Some(text) => {
            let shelf = Source::new(&name.value, text);
            source.with_shelf(Some(name.value), Ok(shelf))
        }
        None => source,
    })
}
