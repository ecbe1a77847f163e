//! Text broken into lines.

use super::fraction::SLASH;
use super::mark::Weight;
use super::metrics::width;

/// Width of the widest part of a text that a line does not break.
#[must_use]
pub fn widest(text: &str, size: f64, weight: Weight) -> f64 {
    text.lines().flat_map(pieces).map(|piece| width(piece.trim_end(), size, weight)).fold(0.0, f64::max)
}

/// Breaks a text into lines no wider than `most`: at white space, which the break swallows, after a
/// hyphen or slash, at a line break in the text, and inside a word where that alone is too wide. A
/// character wider than `most` stands on a line of its own. No-break spaces do not break, nor do the
/// spaces inside a quantity.
#[must_use]
pub fn wrap(text: &str, size: f64, weight: Weight, most: f64) -> Vec<String> {
    text.lines().flat_map(|line| wrap_line(line, size, weight, most)).collect()
}

/// How much narrower or broader, in mm, a line may be than the sum of its words, which are kerned with the spaces
/// between them.
const KERNED: f64 = 0.5;

fn wrap_line(text: &str, size: f64, weight: Weight, most: f64) -> Vec<String> {
    let share = |line: &str| width(line.trim_end(), size, weight) / most;
    kept_company(filled(text, size, weight, most), text, &share)
}

/// Share of a line that the last has at least, where it would be a word alone, and that the line before it keeps.
const COMPANY: f64 = 0.3;
const SPARING: f64 = 0.6;

/// The lines with more words on the last, where that would be one alone and the line before it can spare some.
fn kept_company(mut lines: Vec<String>, text: &str, share: &dyn Fn(&str) -> f64) -> Vec<String> {
    let [.., before, last] = lines.as_mut_slice() else { return lines };
    let mut is_lone = pieces(last).len() == 1;
    let may_be_short = is_lone;
    while (is_lone || may_be_short && share(last) < COMPANY)
        && let Some((kept, longer)) = moved(before, last, text)
        && share(&longer) <= 1.0
        && (is_lone || share(&kept) >= SPARING)
    {
        (*before, *last, is_lone) = (kept, longer, false);
    }
    lines
}

/// Two lines that end a text with the last word of the one moved to the other.
fn moved(before: &str, last: &str, text: &str) -> Option<(String, String)> {
    let words = pieces(before);
    let (word, kept) = words.split_last().filter(|(_, kept)| kept.len() > 1)?;
    let longer = [format!("{word} {last}"), format!("{word}{last}")];
    let longer = longer.into_iter().find(|longer| text.trim_end().ends_with(longer))?;
    Some((kept.concat().trim_end().to_owned(), longer))
}

/// Lines as full as they can be.
fn filled(text: &str, size: f64, weight: Weight, most: f64) -> Vec<String> {
    let fits = |line: &str| width(line.trim_end(), size, weight) <= most;
    let pieces = pieces(text);
    let (mut lines, mut line, mut rest) = (Vec::new(), String::new(), pieces.as_slice());
    while !rest.is_empty() {
        let longer = |count: usize| format!("{line}{}", rest[..count].concat());
        let [surely, perhaps] = [most - KERNED, most + KERNED].map(|most| roughly(&line, rest, size, weight, most));
        let count = (surely + 1..=perhaps).rev().find(|count| fits(&longer(*count))).unwrap_or(surely);
        line = longer(count);
        rest = &rest[count..];
        if let Some((piece, after)) = rest.split_first() {
            close(&mut lines, &mut line);
            line = break_word(piece, &fits, &mut lines);
            rest = after;
        }
    }
    close(&mut lines, &mut line);
    if lines.is_empty() { vec![String::new()] } else { lines }
}

/// How many pieces a line has room for by the sum of its words. The same words come again and again, so
/// that their widths are known where a whole line's would have to be measured.
fn roughly(line: &str, pieces: &[&str], size: f64, weight: Weight, most: f64) -> usize {
    let measure = |text: &str| width(text, size, weight);
    let mut taken = measure(line);
    let fits = |piece: &&&str| {
        let (word, space) = piece.split_at(piece.trim_end().len());
        let end = taken + measure(word);
        taken = end + measure(space);
        end <= most
    };
    pieces.iter().take_while(fits).count()
}

/// Ends a line, unless nothing but white space stands on it.
fn close(lines: &mut Vec<String>, line: &mut String) {
    let done = std::mem::take(line);
    if !done.trim_end().is_empty() {
        lines.push(done.trim_end().to_owned());
    }
}

/// Breaks a word where it is too wide, at spaces if it has any; gives back what is left for the next line.
fn break_word(word: &str, fits: &dyn Fn(&str) -> bool, lines: &mut Vec<String>) -> String {
    if fits(word) {
        return word.to_owned();
    }
    let parts: Vec<&str> = word.split_inclusive([' ', '\u{a0}']).collect();
    if let [part] = parts.as_slice() {
        return broken(part.chars().map(String::from), fits, lines);
    }
    let mut line = String::new();
    for part in parts {
        if fits(&format!("{line}{part}")) {
            line.push_str(part);
        } else {
            close(lines, &mut line);
            line = break_word(part, fits, lines);
        }
    }
    line
}

/// Lines of as many parts as fit; gives back the last.
fn broken(parts: impl Iterator<Item = String>, fits: &dyn Fn(&str) -> bool, lines: &mut Vec<String>) -> String {
    parts.fold(String::new(), |mut line, part| {
        if !fits(&format!("{line}{part}")) {
            close(lines, &mut line);
        }
        line + &part
    })
}

/// The text in pieces that end where a line may.
fn pieces(text: &str) -> Vec<&str> {
    let mut pieces = Vec::new();
    let mut start = 0;
    for (at, c) in text.char_indices().filter(|(_, c)| breaks_after(*c)) {
        let end = at + c.len_utf8();
        let (before, after) = (&text[..at], &text[end..]);
        let quantity = if c == ' ' { in_quantity(before, after) } else { between_figures(before, after) };
        if !quantity && !after.starts_with('\u{a0}') {
            pieces.push(&text[start..end]);
            start = end;
        }
    }
    pieces.push(&text[start..]);
    pieces
}

/// Whether a hyphen or slash stands in a size or a range, as in `8/0` and `3-4`.
fn between_figures(before: &str, after: &str) -> bool {
    before.ends_with(char::is_numeric) && after.starts_with(char::is_numeric)
}

/// Units behind numbers.
const UNITS: [&str; 6] = ["in", "mm", "ft", "m", "g", "N"];

/// Whether a space stands in brackets that hold nothing but a quantity or a range, as in `(451 to 507 mm)`.
fn in_bracket(before: &str, after: &str) -> bool {
    let Some((_, from)) = before.rsplit_once('(') else { return false };
    let Some((to, _)) = after.split_once(')') else { return false };
    let mut words = from.split(' ').chain(to.split(' '));
    words.all(|word| word == "to" || UNITS.contains(&word) || word.starts_with(|c: char| c.is_numeric()))
}

/// Whether a space stands inside a quantity, as in `16 ½ in`, `5 ft 9 in`, `2 × 60 mm` and `124 A`, so many of a bead.
fn in_quantity(before: &str, after: &str) -> bool {
    let word = after.split([' ', ')', ',', '.', ';', ':']).next().unwrap_or_default();
    let goes_on = word.starts_with(|c: char| c.is_numeric() && !c.is_ascii_digit()) || word.contains(SLASH);
    let is_letter = matches!(word.len(), 1 | 2) && word.chars().all(|c| c.is_ascii_uppercase());
    let counted = before.ends_with(char::is_numeric) && (goes_on || word == "×" || is_letter || UNITS.contains(&word));
    let in_feet = before.ends_with(" ft") && after.starts_with(|c: char| c.is_numeric());
    counted || in_feet || before.ends_with('×') || in_bracket(before, after)
}

const fn breaks_after(c: char) -> bool {
    matches!(c, ' ' | '\t' | '-' | '–' | '/' | '\u{2003}' | '\u{2002}' | '\u{2009}')
}
