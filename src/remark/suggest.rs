//! Which word a maker may have meant, and its article.

/// A noun with its indefinite article: `an eye pin`.
pub fn a(noun: &str) -> String {
    let vowel = noun.starts_with(['a', 'e', 'i', 'o', 'u', 'A', 'E', 'I', 'O', 'U']);
    format!("{} {noun}", if vowel { "an" } else { "a" })
}

/// The help line for an unknown word: the candidate that was meant, or else what `otherwise` says.
pub fn suggest<'a>(
    word: &str,
    candidates: impl IntoIterator<Item = &'a str>,
    otherwise: impl FnOnce() -> String,
) -> String {
    did_you_mean(word, candidates).map_or_else(otherwise, |near| format!("did you mean `{near}`?"))
}

/// The candidate nearest to a mistyped word, where one is near enough: at most one slip in a word of
/// up to four letters, two in up to eight, three beyond. A slip is a letter too many, too few,
/// wrong or swapped with its neighbour (Damerau-Levenshtein distance, optimal string alignment).
/// Case does not count. Of equally near candidates the first wins.
fn did_you_mean<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word = letters(word);
    let allowed = match word.len() {
        0..=1 => 0,
        2..=4 => 1,
        5..=8 => 2,
        _ => 3,
    };
    let near = candidates.into_iter().map(|candidate| (distance(&word, &letters(candidate)), candidate));
    near.filter(|(slips, _)| *slips <= allowed).min_by_key(|(slips, _)| *slips).map(|(_, candidate)| candidate)
}

fn letters(word: &str) -> Vec<char> {
    // Longer words are nobody's slip for one of the language's.
    word.chars().flat_map(char::to_lowercase).take(80).collect()
}

/// Slips between two words; the rows hold the distances of `a`'s last two beginnings to all of `b`'s.
fn distance(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for i in 0..a.len() {
        let mut row = vec![i + 1];
        for j in 0..b.len() {
            let changed = last[j] + usize::from(a[i] != b[j]);
            let swapped = i > 0 && j > 0 && a[i] == b[j - 1] && a[i - 1] == b[j];
            let swap = if swapped { before[j - 1] + 1 } else { usize::MAX };
            row.push(changed.min(last[j + 1] + 1).min(row[j] + 1).min(swap));
        }
        before = std::mem::replace(&mut last, row);
    }
    last[b.len()]
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
    fn far_words_are_not_guessed() {
        for word in ["", "x", "hexagon", "ov", "\u{1F4FF}\u{1F4FF}"] {
            assert_eq!(did_you_mean(word, SHAPES), None, "{word}");
        }
    }

    #[test]
    fn distances() {
        let slips = |a, b| distance(&letters(a), &letters(b));
        // The textbook pair kitten and sitting is three apart; optimal string alignment puts ca and abc three apart.
        assert_eq!(slips("kitten", "sitting"), 3);
        assert_eq!(slips("ca", "abc"), 3);
        assert_eq!(slips("", "abc"), 3);
        assert_eq!(slips("ab", "ba"), 1);
    }
}
