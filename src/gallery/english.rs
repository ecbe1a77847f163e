//! What a gallery's pages say beside what their patterns do, in English.

use crate::english;

/// The link over the search.
pub const SKIP: &str = "Skip to the patterns";
/// What stands before the search's field for words.
pub const SEARCH: &str = "Search ";
/// What stands before its choice of a kind.
pub const KIND: &str = "Kind ";
/// The first of those.
pub const ALL_KINDS: &str = "all kinds";
/// The link to the contact sheet.
pub const ON_PAPER: &str = "All patterns on paper (PDF)";
/// The link to a pattern's sheet.
pub const SHEET: &str = "Printable sheet (PDF)";
/// The heading of a pattern's colourways.
pub const OTHER_COLOURWAYS: &str = "Other colourways";
/// The name of the suggested price.
pub const PRICE: &str = "suggested price";
/// The table of beads: its title and the heads of its columns.
pub const BEADS: (&str, [&str; 2]) = ("Beads", ["bead", "how many"]);
/// The table of strands.
pub const STRANDS: (&str, [&str; 3]) = ("Strands", ["strand", "finished", "beads alone"]);
/// What the way back to the index is called.
pub const GALLERY: &str = "gallery";
/// What the ways to the patterns beside are called.
pub const NEIGHBOURS: &str = "neighbours";

/// How many patterns there are.
pub fn patterns(count: usize) -> String {
    english::count(count as u64, "pattern")
}

/// How many of them a search finds, with `#` for that number.
pub fn found(count: usize) -> String {
    format!("# of {count} patterns")
}

/// What the index is.
pub fn described(count: usize) -> String {
    format!("{} with pictures and printable sheets.", patterns(count))
}

/// How many colourways a pattern is shown in.
pub fn colourways(count: usize) -> String {
    english::count(count as u64, "colourway")
}

/// The link to a colourway's sheet.
pub fn sheet_in(colourway: &str) -> String {
    format!("printable sheet, {colourway} (PDF)")
}

/// The link to the pattern before.
pub fn before(title: &str) -> String {
    format!("Before: {title}")
}

/// The link to the one after.
pub fn next(title: &str) -> String {
    format!("Next: {title}")
}
