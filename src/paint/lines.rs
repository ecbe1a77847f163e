//! Text broken into lines.

use std::ops::Range;

use super::fraction::SLASH;
use super::mark::Weight;
use super::metrics::width;

/// Width in mm of the widest part of a text that a line does not break.
#[must_use]
pub fn widest(text: &str, size: f64, weight: Weight) -> f64 {
    let parts = text.lines().flat_map(|line| pieces(line).into_iter().map(move |piece| &line[piece]));
    parts.map(|part| width(part.trim_end(), size, weight)).fold(0.0, f64::max)
}

/// The lines of a text that are no wider than `most`: it breaks at white space, which the break swallows, after a
/// hyphen or slash, at a line break in the text, and inside a word where that alone is too wide. A
/// character wider than `most` stands on a line of its own. No-break spaces do not break, nor do the
/// spaces inside a number and before a short word behind it.
#[must_use]
pub fn wrap(text: &str, size: f64, weight: Weight, most: f64) -> Vec<&str> {
    lines(text, size, weight, most).into_iter().map(|line| &text[line]).collect()
}

/// The same, each line by where it lies in the text.
#[must_use]
pub fn lines(text: &str, size: f64, weight: Weight, most: f64) -> Vec<Range<usize>> {
    let mut start = 0;
    let paragraphs = text.split_inclusive('\n').flat_map(|text| {
        let from = start;
        start += text.len();
        let lines = Paragraph { text: text.trim_end_matches(['\r', '\n']), size, weight, most }.lines();
        lines.into_iter().map(move |line| from + line.start..from + line.end)
    });
    paragraphs.collect()
}

/// How much narrower or broader, in mm, a line may be than the sum of its words, which are kerned with the spaces
/// between them.
const KERNED: f64 = 0.5;

/// Share of the room that a last line takes at least, if the line before it keeps so much that it still looks full.
const LAST: f64 = 0.15;
const FULL: f64 = 0.85;
/// The same where the last line is a single word.
const LAST_WORD: f64 = 0.2;
const FULL_BEFORE_WORD: f64 = 0.7;

/// A text without a line break of its own, and the room of its lines. Lines and words of it are told by where they lie.
struct Paragraph<'t> {
    text: &'t str,
    size: f64,
    weight: Weight,
    most: f64,
}

impl Paragraph<'_> {
    fn width(&self, part: Range<usize>) -> f64 {
        width(&self.text[part], self.size, self.weight)
    }

    /// A line without the white space at its end.
    fn trimmed(&self, line: Range<usize>) -> Range<usize> {
        line.start..line.start + self.text[line].trim_end().len()
    }

    /// The share of the room that a line takes.
    fn share(&self, line: Range<usize>) -> f64 {
        self.width(self.trimmed(line)) / self.most
    }

    fn fits(&self, line: Range<usize>) -> bool {
        self.width(self.trimmed(line)) <= self.most
    }

    /// The lines, with more words on a last one that would be very short, as far as the line before it can spare them.
    fn lines(&self) -> Vec<Range<usize>> {
        let mut lines = self.filled();
        let [.., before, last] = lines.as_mut_slice() else { return lines };
        while self.share(last.clone()) < self.bounds(last)[0]
            && let Some((kept, longer)) = self.moved(before, last)
            && self.share(kept.clone()) >= self.bounds(last)[1]
        {
            (*before, *last) = (kept, longer);
        }
        lines
    }

    /// The shares that a last line takes at least, and that the line before it keeps.
    fn bounds(&self, last: &Range<usize>) -> [f64; 2] {
        let is_word = pieces(&self.text[last.clone()]).len() == 1;
        if is_word { [LAST_WORD, FULL_BEFORE_WORD] } else { [LAST, FULL] }
    }

    /// Two lines that end the text, with the last word of the one moved to the other.
    fn moved(&self, before: &Range<usize>, last: &Range<usize>) -> Option<(Range<usize>, Range<usize>)> {
        let start = before.start + pieces(&self.text[before.clone()]).last()?.start;
        Some((self.trimmed(before.start..start), start..last.end))
    }

    /// Lines as full as they can be.
    fn filled(&self) -> Vec<Range<usize>> {
        let pieces = pieces(self.text);
        let (mut lines, mut line, mut rest) = (Vec::new(), 0..0, pieces.as_slice());
        while !rest.is_empty() {
            let [surely, perhaps] = [-KERNED, KERNED].map(|more| self.roughly(line.clone(), rest, self.most + more));
            let fits = |count: &usize| self.fits(line.start..rest[count - 1].end);
            let count = (surely + 1..=perhaps).rev().find(fits).unwrap_or(surely);
            let (on_it, after) = rest.split_at(count);
            line.end = on_it.last().map_or(line.end, |piece| piece.end);
            rest = after;
            if let Some((piece, after)) = rest.split_first() {
                self.close(line, &mut lines);
                line = self.broken(piece.clone(), &mut lines);
                rest = after;
            }
        }
        self.close(line, &mut lines);
        if lines.is_empty() {
            lines.push(0..0);
        }
        lines
    }

    /// How many pieces a line has room for by the sum of its words. The same words come again and again, so
    /// that their widths are known where a whole line's would have to be measured.
    fn roughly(&self, line: Range<usize>, pieces: &[Range<usize>], most: f64) -> usize {
        let mut taken = self.width(line);
        let fits = |piece: &&Range<usize>| {
            let word = self.trimmed((*piece).clone());
            let end = taken + self.width(word.clone());
            taken = end + self.width(word.end..piece.end);
            end <= most
        };
        pieces.iter().take_while(fits).count()
    }

    /// Ends a line, unless nothing but white space stands on it.
    fn close(&self, line: Range<usize>, lines: &mut Vec<Range<usize>>) {
        let line = self.trimmed(line);
        if !line.is_empty() {
            lines.push(line);
        }
    }

    /// Breaks a word where it is too wide, at spaces if it has any; gives back what is left for the next line.
    fn broken(&self, word: Range<usize>, lines: &mut Vec<Range<usize>>) -> Range<usize> {
        if self.fits(word.clone()) {
            return word;
        }
        let is_space = |sign: char| matches!(sign, ' ' | '\u{a0}');
        let has_spaces = self.text[word.clone()].trim_end().contains(is_space);
        let ends = self.text[word.clone()].char_indices().map(|(at, sign)| (word.start + at + sign.len_utf8(), sign));
        let ends = ends.filter(|(end, sign)| !has_spaces || is_space(*sign) || *end == word.end);
        let mut line = word.start..word.start;
        for (end, _) in ends {
            if !self.fits(line.start..end) {
                self.close(line.clone(), lines);
                let part = line.end..end;
                line = if has_spaces { self.broken(part, lines) } else { part };
            }
            line.end = end;
        }
        line
    }
}

/// The pieces of a text that end where a line may.
fn pieces(text: &str) -> Vec<Range<usize>> {
    let (mut pieces, mut start) = (Vec::new(), 0);
    for (at, c) in text.char_indices().filter(|(_, c)| breaks_after(*c)) {
        let end = at + c.len_utf8();
        if !is_held(&text[..at], c, &text[end..]) {
            pieces.push(start..end);
            start = end;
        }
    }
    if start < text.len() {
        pieces.push(start..text.len());
    }
    pieces
}

/// Whether a line may not end behind a sign, after which lines break elsewhere.
fn is_held(before: &str, sign: char, after: &str) -> bool {
    let is_quantity = match sign {
        ' ' => in_quantity(before, after) || in_bracket(before, after),
        _ => between_figures(before, after),
    };
    is_quantity || after.starts_with('\u{a0}')
}

/// Whether a hyphen or slash stands in a size or a range, as in `8/0` and `3-4`.
fn between_figures(before: &str, after: &str) -> bool {
    before.ends_with(char::is_numeric) && after.starts_with(char::is_numeric)
}

/// A word that begins with a figure.
fn is_number(word: &str) -> bool {
    word.starts_with(|c: char| c.is_numeric())
}

/// A number, or the name of a place with one: `5`, `S4`.
fn ends_in_number(word: &str) -> bool {
    is_number(word) || word.ends_with(char::is_numeric)
}

/// A word as short as a unit or a letter behind a number: `60 mm`, `124 A`.
fn is_short(word: &str) -> bool {
    matches!(word.chars().count(), 1 | 2) && word.chars().all(char::is_alphabetic)
}

/// A word short enough to stay with the number before it, which most often counts it: `53 knots`, `9 times`.
fn is_counted(word: &str) -> bool {
    matches!(word.chars().count(), 1..=5) && word.chars().all(char::is_alphabetic)
}

/// Whether a space stands in brackets that hold nothing but numbers and short words, as in `(451 to 507 mm)`.
fn in_bracket(before: &str, after: &str) -> bool {
    let Some((_, from)) = before.rsplit_once('(') else { return false };
    let Some((to, _)) = after.split_once(')') else { return false };
    from.split(' ').chain(to.split(' ')).all(|word| is_number(word) || is_short(word))
}

/// Whether a space stands inside a number, as in `16 ½`, `2 × 60` and `5 ft 9 in`, or before a short word behind one.
fn in_quantity(before: &str, after: &str) -> bool {
    let mut words = after.split([' ', ')', ',', '.', ';', ':']);
    let (word, next) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let is_fraction = |word: &str| is_number(word) && !word.starts_with(|c: char| c.is_ascii_digit());
    let goes_on = is_fraction(word) || word.contains(SLASH);
    let counted = before.ends_with(char::is_numeric) && (goes_on || is_counted(word) || word == "×");
    let mut back = before.rsplit([' ', '(']);
    let in_parts = back.next().is_some_and(is_short) && back.next().is_some_and(ends_in_number);
    counted || before.ends_with('×') || in_parts && is_number(word) && (is_short(next) || is_fraction(next))
}

const fn breaks_after(c: char) -> bool {
    matches!(c, ' ' | '\t' | '-' | '–' | '/' | '\u{2003}' | '\u{2002}' | '\u{2009}')
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn wrapped(text: &str, most: f64) -> Vec<&str> {
        wrap(text, 3.0, Weight::Regular, most)
    }

    /// The room that a line takes, and a little more.
    fn room(line: &str) -> f64 {
        width(line, 3.0, Weight::Regular) + 0.1
    }

    #[test]
    fn lines_break_at_spaces_and_inside_words_too_long() {
        assert_eq!(wrapped("reed green glass", 8.0), ["reed", "green", "glass"]);
        assert_eq!(wrapped("one\ntwo", 80.0), ["one", "two"]);
        assert_eq!(wrapped("a\u{a0}b c", 4.0), ["a\u{a0}b", "c"]);
        let lines = wrapped("Donaudampfschifffahrt", 10.0);
        assert!(lines.len() > 2);
        assert_eq!(lines.concat(), "Donaudampfschifffahrt");
    }

    #[test]
    fn a_number_never_parts_from_its_unit_nor_from_what_it_counts() {
        assert_eq!(wrapped("cut 16 ½ in, 2 × 8 mm", 13.0), ["cut", "16 ½ in,", "2 × 8 mm"]);
        assert_eq!(wrapped("cut 16 3⁄16 in", 13.0), ["cut", "16 3⁄16 in"]);
        assert_eq!(wrapped("cut 5 ft 9 ½ in", 16.0), ["cut", "5 ft 9 ½ in"]);
        assert_eq!(wrapped("seeds 11/0-15/0", 13.0), ["seeds", "11/0-15/0"]);
        assert_eq!(wrapped("You have 6 C", room("You have 6")), ["You have", "6 C"]);
        assert_eq!(wrapped("String these 53 knots.", room("String these 53")), ["String these", "53 knots."]);
        assert_eq!(
            wrapped("hold the stop S4 at 390 mm", room("hold the stop S4 at")),
            ["hold the stop", "S4 at 390 mm"]
        );
        assert_eq!(wrapped("You have 6 lb", room("You have 6")), ["You have", "6 lb"]);
    }

    #[test]
    fn a_bracket_of_numbers_holds_together() {
        assert_eq!(wrapped("7 in (451 to 507 mm)", 24.0), ["7 in", "(451 to 507 mm)"]);
        assert_eq!(wrapped("glass (the larger one)", 17.0), ["glass (the", "larger one)"]);
    }

    #[test]
    fn a_line_is_told_by_where_it_lies() {
        let text = "reed green\r\nglass\n\nseeds ";
        let lines = lines(text, 3.0, Weight::Regular, 8.0);
        assert_eq!(lines, [0..4, 5..10, 12..17, 18..18, 19..24]);
    }

    #[test]
    fn no_short_word_is_the_last_line_where_the_line_before_stays_full() {
        let first = "string the beads in their order, put a stopper on the";
        assert_eq!(
            wrapped(&format!("{first} end"), room(first)),
            ["string the beads in their order, put a stopper on", "the end"]
        );
        assert_eq!(
            wrapped("each kind by its letter, and count them", room("each kind by its letter, and count"))[1],
            "count them"
        );
        assert_eq!(wrapped(&format!("{first} counterbalance"), room(first)), [first, "counterbalance"]);
        let hyphened = "string the beads that are strung on the mid-";
        assert_eq!(
            wrapped(&format!("{hyphened}end"), room(hyphened)),
            ["string the beads that are strung on the", "mid-end"]
        );
        let short = "Leave a tail of so much beyond";
        assert_eq!(wrapped(&format!("{short} it."), room(short))[1], "beyond it.");
        assert_eq!(wrapped("beads clasp", 8.0), ["beads", "clasp"]);
    }

    proptest! {
        #[test]
        fn wrapping_loses_no_character_and_keeps_to_the_width(text in "[a-zA-Z ½/\\-]{0,60}", most in 1.0..60.0_f64) {
            let lines = wrapped(&text, most);
            let dense = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            prop_assert_eq!(dense(&lines.concat()), dense(&text));
            for line in lines {
                prop_assert!(width(line, 3.0, Weight::Regular) <= most || line.chars().count() == 1, "{}", line);
            }
        }
    }
}
