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

/// Share of a line that the last has at least, where it would be a word alone, and that the line before it keeps.
const COMPANY: f64 = 0.3;
const SPARING: f64 = 0.6;

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

    /// The lines, with more words on the last, where that would be one alone and the line before it can spare some.
    fn lines(&self) -> Vec<Range<usize>> {
        let mut lines = self.filled();
        let [.., before, last] = lines.as_mut_slice() else { return lines };
        let mut is_lone = pieces(&self.text[last.clone()]).len() == 1;
        let may_be_short = is_lone;
        while (is_lone || may_be_short && self.share(last.clone()) < COMPANY)
            && let Some((kept, longer)) = self.moved(before, last)
            && (is_lone || self.share(kept.clone()) >= SPARING)
        {
            (*before, *last, is_lone) = (kept, longer, false);
        }
        lines
    }

    /// Two lines that end the text, with the last word of the one moved to the other, if that has room for it.
    fn moved(&self, before: &Range<usize>, last: &Range<usize>) -> Option<(Range<usize>, Range<usize>)> {
        let words = pieces(&self.text[before.clone()]);
        let word = words.last().filter(|_| words.len() > 2)?;
        let start = before.start + word.start;
        self.fits(start..last.end).then(|| (self.trimmed(before.start..start), start..last.end))
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
        let (before, after) = (&text[..at], &text[end..]);
        let quantity = if c == ' ' { in_quantity(before, after) } else { between_figures(before, after) };
        if !quantity && !after.starts_with('\u{a0}') {
            pieces.push(start..end);
            start = end;
        }
    }
    if start < text.len() {
        pieces.push(start..text.len());
    }
    pieces
}

/// Whether a hyphen or slash stands in a size or a range, as in `8/0` and `3-4`.
fn between_figures(before: &str, after: &str) -> bool {
    before.ends_with(char::is_numeric) && after.starts_with(char::is_numeric)
}

/// A word that begins with a figure.
fn is_number(word: &str) -> bool {
    word.starts_with(|c: char| c.is_numeric())
}

/// A word too short to begin a line behind a number, which is most often what that counts: `60 mm`, `124 A`.
fn is_short(word: &str) -> bool {
    matches!(word.chars().count(), 1 | 2) && word.chars().all(char::is_alphabetic)
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
    let counted = before.ends_with(char::is_numeric) && (goes_on || is_short(word) || word == "×");
    let mut back = before.rsplit([' ', '(']);
    let in_parts = back.next().is_some_and(is_short) && back.next().is_some_and(is_number);
    counted
        || before.ends_with('×')
        || in_parts && is_number(word) && (is_short(next) || is_fraction(next))
        || in_bracket(before, after)
}

const fn breaks_after(c: char) -> bool {
    matches!(c, ' ' | '\t' | '-' | '–' | '/' | '\u{2003}' | '\u{2002}' | '\u{2009}')
}
