//! What an editor is told, in English.

use crate::english::singular;

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

/// What is called what a group defines under an id: `bead reed`.
pub fn entry(group: &str, id: &str) -> String {
    format!("{} {id}", singular(group))
}

/// What an id of a group stands for: a bead, and on which shelf, where it is not the pattern's own.
pub fn id(group: &str, shelf: Option<&str>) -> String {
    let sort = singular(group);
    shelf.map_or_else(|| sort.to_owned(), |shelf| format!("{sort} on {shelf}"))
}
