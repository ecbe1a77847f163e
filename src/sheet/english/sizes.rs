//! The sizes of a graded pattern, in English.

/// A size as a sentence names it.
pub fn size(name: Option<&str>) -> String {
    name.map_or_else(|| "the base size".to_owned(), |name| format!("size {name}"))
}
