//! What an editor is told, in English.

/// What the groups of a pattern are called, in the order in which their keys are told.
pub const GROUPS: [&str; 10] = [
    "the pattern",
    "a bead",
    "a cord",
    "a finding",
    "beads bought together",
    "how an article is sold",
    "a strand",
    "an entry of a bead list",
    "the closure",
    "the wearer",
];

/// What is called that puts a text in quotes.
pub fn quote() -> String {
    "put it in quotes".to_owned()
}

/// What is called that puts the word that was meant in place of another.
pub fn write(word: &str) -> String {
    format!("write {word}")
}

/// What an id stands for: a bead, and on which shelf, where it is not the pattern's own.
pub fn id(sort: &str, shelf: Option<&str>) -> String {
    shelf.map_or_else(|| sort.to_owned(), |shelf| format!("{sort} on {shelf}"))
}
