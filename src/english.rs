//! Forms of English that all who put things into words share: articles, plurals, lists, how often.

use crate::units::{eighths, grouped};

/// A noun with its indefinite article: `an eye pin`.
#[must_use]
pub fn a(noun: &str) -> String {
    let vowel = noun.starts_with(['a', 'e', 'i', 'o', 'u', 'A', 'E', 'I', 'O', 'U']);
    format!("{} {noun}", if vowel { "an" } else { "a" })
}

/// `bead` of one, `beads` of others; `spacer bars with three holes`.
#[must_use]
pub fn plural(number: u64, noun: &str) -> String {
    if number == 1 {
        return noun.to_owned();
    }
    let at = [" with ", " of ", " for "].iter().filter_map(|word| noun.find(word)).min().unwrap_or(noun.len());
    let (head, rest) = noun.split_at(at);
    let hisses = || ["s", "x", "z", "ch", "sh"].iter().any(|end| head.ends_with(end));
    match head.strip_suffix("half") {
        Some(before) => format!("{before}halves{rest}"),
        None => format!("{head}{}{rest}", if hisses() { "es" } else { "s" }),
    }
}

/// `bead` of `beads`: what one of a pattern's groups is called; `assorted` and what else has no plural's ending is its own.
#[must_use]
pub fn singular(group: &str) -> &str {
    group.strip_suffix('s').unwrap_or(group)
}

/// `1 bead`, `2 beads`.
#[must_use]
pub fn count(number: u64, noun: &str) -> String {
    format!("{} {}", grouped(number), plural(number, noun))
}

/// Words begun with a capital, as a sentence is.
#[must_use]
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect()
}

/// `is` of one, `are` of others.
#[must_use]
pub const fn be(number: usize) -> &'static str {
    if number == 1 { "is" } else { "are" }
}

/// `once`, `twice`, `3 times`.
#[must_use]
pub fn often(number: u64) -> String {
    match number {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        _ => count(number, "time"),
    }
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

/// `inner`, `inner or outer`, `inner, middle or outer`.
#[must_use]
pub fn any<T: AsRef<str>>(items: &[T]) -> String {
    match items {
        [others @ .., one, last] => {
            commas(others.iter().map(AsRef::as_ref).chain([format!("{} or {}", one.as_ref(), last.as_ref()).as_str()]))
        }
        _ => commas(items),
    }
}

/// Items that are none's last: `inner, middle, outer`.
#[must_use]
pub fn commas(items: impl IntoIterator<Item = impl AsRef<str>>) -> String {
    let mut items = items.into_iter();
    let first = items.next().map(|item| item.as_ref().to_owned()).unwrap_or_default();
    items.fold(first, |all, item| all + ", " + item.as_ref())
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
    use super::{any, be, capital, commas, count, list, often};

    #[test]
    fn what_a_name_is_of_has_the_plural() {
        let two =
            ["bead", "spacer bar with three holes", "half of a clasp", "glass", "1 thing"].map(|noun| count(2, noun));
        assert_eq!(
            two,
            ["2 beads", "2 spacer bars with three holes", "2 halves of a clasp", "2 glasses", "2 1 things"]
        );
    }

    #[test]
    fn a_sentence_begins_with_a_capital() {
        assert_eq!(["", "a necklace", "élan"].map(capital), ["", "A necklace", "Élan"]);
    }

    #[test]
    fn a_list_has_commas_and_one_and() {
        assert_eq!([&[][..], &["inner"], &["inner", "outer"]].map(commas), ["", "inner", "inner, outer"]);
        let lists = [&[][..], &["inner"], &["inner", "outer"], &["inner", "middle", "outer"]].map(list);
        assert_eq!(lists, ["", "inner", "inner and outer", "inner, middle and outer"]);
        let any = [&[][..], &["inner"], &["inner", "outer"], &["inner", "middle", "outer"]].map(any);
        assert_eq!(any, ["", "inner", "inner or outer", "inner, middle or outer"]);
    }

    #[test]
    fn one_is_told_from_several() {
        assert_eq!([be(1), be(2)], ["is", "are"]);
        assert_eq!([1, 2, 3, 12].map(often), ["once", "twice", "3 times", "12 times"]);
    }
}
