//! Which word a maker may have meant, and its article.

use strsim::osa_distance;

use super::english::meant_or;

/// The help line for an unknown word: the candidate that was meant, or else what `otherwise` says.
pub fn suggest<'a>(
    word: &str,
    candidates: impl IntoIterator<Item = &'a str>,
    otherwise: impl FnOnce() -> String,
) -> String {
    meant_or(did_you_mean(word, candidates), otherwise)
}

/// [`did_you_mean`], to be kept.
pub fn near<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<String> {
    did_you_mean(word, candidates).map(str::to_owned)
}

/// The candidate nearest to a mistyped word, where one is near enough: at most one slip in a word of
/// up to four letters, two in up to eight, three beyond. A slip is a letter too many, too few,
/// wrong or swapped with its neighbour (Damerau-Levenshtein distance, optimal string alignment).
/// Case does not count. Of equally near candidates the first wins. Else the candidate of several words that
/// alone begins with it.
pub fn did_you_mean<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let candidates: Vec<_> = candidates.into_iter().collect();
    nearest(word, &candidates).or_else(|| begun(word, &candidates))
}

/// The candidate of several words of which the first is the one that stands there, where there is one such.
fn begun<'a>(word: &str, candidates: &[&'a str]) -> Option<&'a str> {
    let begins = |candidate: &&&str| candidate.split_once(' ').is_some_and(|(first, _)| first == word);
    let mut begun = candidates.iter().filter(begins);
    begun.next().filter(|_| begun.next().is_none()).copied()
}

fn nearest<'a>(word: &str, candidates: &[&'a str]) -> Option<&'a str> {
    let word = letters(word);
    let allowed = match word.chars().count() {
        0..=1 => 0,
        2..=4 => 1,
        5..=8 => 2,
        _ => 3,
    };
    let near = candidates.iter().map(|candidate| (osa_distance(&word, &letters(candidate)), *candidate));
    near.filter(|(slips, _)| *slips <= allowed).min_by_key(|(slips, _)| *slips).map(|(_, candidate)| candidate)
}

/// A word's letters that count: longer words are nobody's slip for one of the language's.
fn letters(word: &str) -> String {
    word.chars().flat_map(char::to_lowercase).take(80).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHAPES: [&str; 6] = ["round", "rondelle", "oval", "bicone", "cube", "tube"];

    #[test]
    fn slips_of_every_kind() {
        for (slip, meant) in
            [("rond", "round"), ("roundd", "round"), ("ruond", "round"), ("bycone", "bicone"), ("CUBE", "cube")]
        {
            assert_eq!(did_you_mean(slip, SHAPES), Some(meant), "{slip}");
        }
    }

    #[test]
    fn a_help_line_names_the_word_that_is_near() {
        assert_eq!(suggest("rond", SHAPES, String::new), "did you mean `round`?");
        assert_eq!(suggest("hexagon", SHAPES, || "look it up".to_owned()), "look it up");
    }

    #[test]
    fn a_first_word_is_enough_where_it_says_which() {
        let keys = ["neck base", "wrist", "body", "body height"];
        assert_eq!(did_you_mean("neck", keys), Some("neck base"));
        assert_eq!(did_you_mean("body", ["body height", "body weight"]), None);
    }

    #[test]
    fn far_words_are_not_guessed() {
        for word in ["", "x", "hexagon", "ov", "\u{1F4FF}\u{1F4FF}"] {
            assert_eq!(did_you_mean(word, SHAPES), None, "{word}");
        }
    }
}
