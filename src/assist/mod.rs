//! Help while a pattern is written: what may stand at a place, what a word means, where an id is defined, and how a
//! remark is mended where that is known exactly.
//!
//! The page of `festoon design` and the language server ask the same functions. All work on a text that is not
//! finished: `scan` finds the keys about a place where no tree can be read. What keys are, mean and take comes from
//! the language's schema alone.

mod english;
mod language;
mod offer;
mod remedy;
mod scan;
mod told;
pub mod utf16;

pub use language::Keyword;
pub use offer::{Offer, Sort, offers};
pub use remedy::{Remedy, remedy};
pub use told::{Definition, definition, told};

/// The keys of a pattern's groups, each group under its name, with what each key does.
#[must_use]
pub fn keys() -> Vec<(&'static str, Vec<Keyword>)> {
    const GROUPS: [&[&str]; 10] = [
        &[],
        &["beads", ""],
        &["cords", ""],
        &["findings", ""],
        &["assorted", ""],
        &["beads", "", "sold"],
        &["strands"],
        &["strands", "beads"],
        &["closure"],
        &["wear"],
    ];
    let path = |path: &[&str]| path.iter().map(|key| (*key).to_owned()).collect::<Vec<_>>();
    english::GROUPS.into_iter().zip(GROUPS).map(|(name, at)| (name, language::keys(&path(at)))).collect()
}
