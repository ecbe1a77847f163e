//! Entries of tables found by what a maker calls a material: case, hyphens, plurals and adjectives are forgiven.

/// The entry of a table that a phrase names: it holds all words of the entry's name. The one with the most words wins; among
/// those the one that is named last.
pub fn named<'t, T>(table: &'t [T], name: impl Fn(&T) -> &str, phrase: &str) -> Option<&'t T> {
    let said = words(phrase);
    let place = |word: &str| said.iter().rposition(|said| *said == singular(word));
    let fits = |entry: &&T| name(entry).split(' ').all(|word| place(word).is_some());
    let rank = |entry: &&T| (name(entry).split(' ').count(), name(entry).split(' ').filter_map(place).max());
    table.iter().filter(fits).max_by_key(rank)
}

/// The words of a phrase, in small letters and without a plural's ending.
pub fn words(phrase: &str) -> Vec<String> {
    let small = phrase.to_lowercase();
    small.split(|c: char| !c.is_alphanumeric()).map(|word| singular(word).to_owned()).collect()
}

/// The word without a plural's ending; `brass`, `glass` and `lapis` keep theirs on both sides alike.
fn singular(word: &str) -> &str {
    word.strip_suffix('s').unwrap_or(word)
}
