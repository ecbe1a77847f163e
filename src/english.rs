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

/// What stands behind a value that the pattern does not say.
#[must_use]
pub const fn assumed(is_assumed: bool) -> &'static str {
    if is_assumed { " (assumed)" } else { "" }
}

/// `inner`, `inner and outer`, `inner, middle and outer`.
#[must_use]
pub fn list<T: AsRef<str>>(items: &[T]) -> String {
    items.iter().enumerate().flat_map(|(at, item)| [before(at, items.len()), item.as_ref()]).collect()
}

/// What stands before an item of a list of so many.
#[must_use]
pub const fn before(at: usize, of: usize) -> &'static str {
    match at {
        0 => "",
        last if last + 1 == of => " and ",
        _ => ", ",
    }
}

#[cfg(test)]
mod tests {
    use super::list;

    #[test]
    fn a_list_has_commas_and_one_and() {
        let lists = [&[][..], &["inner"], &["inner", "outer"], &["inner", "middle", "outer"]].map(list);
        assert_eq!(lists, ["", "inner", "inner and outer", "inner, middle and outer"]);
    }
}
