//! Advances of texts in font units, added up from those of their pairs.
//!
//! In the bundled fonts a character of Latin text stands where the one before it ends, but for the kerning of the two:
//! a text is as wide as what each of its characters adds behind the one before it, and only pairs need be shaped, each
//! once. Pages measure the same pairs again and again as they wrap, align and place words. Tests hold the sums
//! against the shaper. Words with other characters (fractions, dashes) or ligatures, where more than a neighbour counts,
//! are shaped whole; so are texts with letters of another script.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::mark::Weight;
use super::metrics::Shaper;

/// Characters that are measured in pairs: those of Latin-1, which are the first of all.
const PLAIN: usize = 256;
/// Most words of a weight whose advance is kept.
const MOST_WORDS: usize = 4096;

/// What has been measured of one weight.
struct WeightAdvances {
    /// What a character adds where it comes first, at its number; what it adds behind another, at the other's number
    /// and one, times [`PLAIN`], and its own.
    added: Vec<Option<f64>>,
    words: BTreeMap<String, f64>,
}

impl WeightAdvances {
    const NOTHING: Self = Self { added: Vec::new(), words: BTreeMap::new() };
}

thread_local! {
    static KNOWN: RefCell<[WeightAdvances; 2]> = const { RefCell::new([WeightAdvances::NOTHING; 2]) };
}

/// Advance of a text, in units of its font, of which an em has so many.
pub fn advance(text: &str, weight: Weight) -> f64 {
    let shaper = Shaper::of(weight);
    KNOWN.with_borrow_mut(|[regular, semibold]| {
        let known = if weight == Weight::Regular { regular } else { semibold };
        let mut measure = Measure { shaper, known };
        if text.contains(is_of_another_script) { measure.word(text) } else { measure.text(text) }
    })
}

/// Forgets all that was measured, so that a benchmark measures what a first page takes.
pub fn forget() {
    KNOWN.with_borrow_mut(|known| *known = [WeightAdvances::NOTHING; 2]);
}

struct Measure<'a> {
    shaper: &'static Shaper,
    known: &'a mut WeightAdvances,
}

impl Measure<'_> {
    /// A word that is not plain is shaped with the spaces about it, for it is kerned with them.
    fn text(&mut self, text: &str) -> f64 {
        let Some(other) = not_plain(text) else { return self.plain(text) };
        let start = text[..other].rfind(' ').unwrap_or(0);
        let end = text[other..].find(' ').map_or(text.len(), |space| other + space);
        let space = |at: usize| if text[at..].starts_with(' ') { " " } else { "" };
        let (before, after) = (space(start), space(end));
        let word = &text[start..end + after.len()];
        let alone = self.word(word) - self.plain(before) - self.plain(after);
        self.plain(&text[..start + before.len()]) + alone + self.text(&text[end..])
    }

    fn plain(&mut self, text: &str) -> f64 {
        let behind = std::iter::once(None).chain(text.chars().map(Some));
        behind.zip(text.chars()).map(|(behind, c)| self.added(behind, c)).sum()
    }

    /// What a character adds behind another, or where it comes first.
    fn added(&mut self, behind: Option<char>, c: char) -> f64 {
        let at = behind.map_or(0, |behind| behind as usize + 1) * PLAIN + c as usize;
        self.known.added.resize((PLAIN + 1) * PLAIN, None);
        if let Some(added) = self.known.added[at] {
            return added;
        }
        let added = match behind {
            Some(behind) => self.shaper.advance(&format!("{behind}{c}")) - self.added(None, behind),
            None => self.shaper.advance(&c.to_string()),
        };
        *self.known.added[at].insert(added)
    }

    fn word(&mut self, word: &str) -> f64 {
        if let Some(advance) = self.known.words.get(word) {
            return *advance;
        }
        if self.known.words.len() >= MOST_WORDS {
            self.known.words.clear();
        }
        let advance = self.shaper.advance(word);
        self.known.words.insert(word.to_owned(), advance);
        advance
    }
}

/// Whether a letter is of another script: the shaper takes a text's first letters for the script of all of it.
fn is_of_another_script(c: char) -> bool {
    !is_plain(c) && c.is_alphabetic()
}

/// Where a text first is not plain: at another character, or where letters may grow together into one.
fn not_plain(text: &str) -> Option<usize> {
    let joined = || text.match_indices('f').find(|(at, _)| text[at + 1..].starts_with(['f', 'i', 'j', 'l', 't']));
    let other = text.find(|c| !is_plain(c));
    joined().map(|(at, _)| at).into_iter().chain(other).min()
}

const fn is_plain(c: char) -> bool {
    (c as usize) < PLAIN
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn known_texts_are_as_wide_as_new_ones_in_either_weight() {
        let advances = || [Weight::Regular, Weight::Semibold].map(|weight| advance("AV reed 3⁄16", weight));
        forget();
        let new = advances();
        assert_eq!(new, advances());
        assert!(new[0] < new[1]);
        assert!((0..=MOST_WORDS).all(|at| advance(&format!("–{at}"), Weight::Regular) > 0.0));
        assert_eq!(new, advances());
    }

    #[test]
    fn three_letters_are_as_wide_as_the_shaper_sets_them() {
        let letters = || ('a'..='z').chain(['A', 'T', 'V', ' ', '1', '.']);
        let pairs: Vec<[char; 2]> = letters().flat_map(|one| letters().map(move |two| [one, two])).collect();
        for weight in [Weight::Regular, Weight::Semibold] {
            for text in pairs.iter().flat_map(|[one, two]| letters().map(move |three| format!("{one}{two}{three}"))) {
                assert!((advance(&text, weight) - Shaper::of(weight).advance(&text)).abs() < 1e-6, "{text:?}");
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2_000))]

        /// The shaper is what the renderer uses, which is a library of others.
        #[test]
        fn texts_are_as_wide_as_the_shaper_sets_them(text in "([ -~]{0,12}|[ fijltTVAWY'.,\\-–⁄0-9é½×°“”…\u{a0}]{0,12}|[0-9]{0,3} [0-9]{1,2}⁄[0-9]{1,2} in){0,4}") {
            for weight in [Weight::Regular, Weight::Semibold] {
                prop_assert!((advance(&text, weight) - Shaper::of(weight).advance(&text)).abs() < 1e-6, "{:?}", text);
            }
        }
    }
}
