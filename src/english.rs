//! Forms of English that all who put things into words share: articles, plurals, lists, how often.

use crate::units::{eighths, grouped};

/// A noun with its indefinite article: `an eye pin`.
#[must_use]
pub fn a(noun: &str) -> String {
    let vowel = noun.starts_with(['a', 'e', 'i', 'o', 'u', 'A', 'E', 'I', 'O', 'U']);
    format!("{} {noun}", if vowel { "an" } else { "a" })
}

/// `bead` of one, `beads` of others.
#[must_use]
pub fn plural(number: u64, noun: &str) -> String {
    format!("{noun}{}", if number == 1 { "" } else { "s" })
}

/// `1 bead`, `2 beads`.
#[must_use]
pub fn count(number: u64, noun: &str) -> String {
    format!("{} {}", grouped(number), plural(number, noun))
}

/// How often, to the nearest eighth: `once`, `3 times`, `3 ½ times`.
#[must_use]
pub fn times(turns: f64) -> String {
    if turns == 1.0 { "once".to_owned() } else { format!("{} times", eighths(turns)) }
}

/// `inner`, `inner and outer`, `inner, middle and outer`.
#[must_use]
pub fn list<T: AsRef<str>>(items: &[T]) -> String {
    match items {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [most @ .., last] => {
            let most: Vec<_> = most.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", most.join(", "), last.as_ref())
        }
    }
}
