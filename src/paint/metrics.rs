//! How much room text takes, measured with the bundled fonts.
//!
//! Lengths in mm. Shaping is that of the renderer (kerning and ligatures included), so that a width
//! is the width drawn. What a font cannot draw counts as wide as its empty box; [`missing`] names it.

use std::ops::Range;
use std::sync::LazyLock;

use rustybuzz::{Direction, Face, GlyphBuffer, ShapePlan, UnicodeBuffer, script};

use super::advances::advance;
pub use super::advances::forget;
use super::font;
use super::fraction::{LARGER, SLASH, runs, tucks};
use super::mark::Weight;

const ELLIPSIS: char = '…';

/// A font ready for shaping, with the plans for Latin text and for figures alone, which nearly all
/// text is.
pub(super) struct Shaper {
    face: Face<'static>,
    latin: ShapePlan,
    figures: ShapePlan,
}

static REGULAR: LazyLock<Shaper> = LazyLock::new(|| Shaper::new(Weight::Regular));
static SEMIBOLD: LazyLock<Shaper> = LazyLock::new(|| Shaper::new(Weight::Semibold));

impl Shaper {
    fn new(weight: Weight) -> Self {
        #[expect(clippy::expect_used, reason = "the file is part of the program and a test opens it")]
        let face = Face::from_slice(font::file(weight), 0).expect("the bundled font opens");
        let plan = |script| ShapePlan::new(&face, Direction::LeftToRight, script, None, &[]);
        let (latin, figures) = (plan(Some(script::LATIN)), plan(None));
        Self { face, latin, figures }
    }

    pub(super) fn of(weight: Weight) -> &'static Self {
        match weight {
            Weight::Regular => &REGULAR,
            Weight::Semibold => &SEMIBOLD,
        }
    }

    /// Advance of a text in font units.
    pub(super) fn advance(&self, text: &str) -> f64 {
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        buffer.guess_segment_properties();
        let glyphs = match self.plan(&buffer) {
            Some(plan) => rustybuzz::shape_with_plan(&self.face, plan, buffer),
            None => rustybuzz::shape(&self.face, &[], buffer),
        };
        set(text, &glyphs) - tucks(text).iter().sum::<f64>() * f64::from(self.face.units_per_em())
    }

    /// The plan that is ready for a text, where there is one.
    fn plan(&self, buffer: &UnicodeBuffer) -> Option<&ShapePlan> {
        let plain = buffer.direction() == Direction::LeftToRight && buffer.language().is_none();
        match buffer.script() {
            script::LATIN if plain => Some(&self.latin),
            script::UNKNOWN if plain => Some(&self.figures),
            _ => None,
        }
    }

    /// Font units in mm at a size.
    fn millimetres(&self, units: impl Into<f64>, size: f64) -> f64 {
        units.into() * size / f64::from(self.face.units_per_em())
    }
}

/// Advance of a text's glyphs, its fractions larger.
fn set(text: &str, glyphs: &GlyphBuffer) -> f64 {
    let ends = runs(text).into_iter().scan(0, |end, (is_fraction, run)| {
        *end += run.len();
        Some((*end, if is_fraction { LARGER } else { 1.0 }))
    });
    let ends: Vec<_> = ends.collect();
    let size = |cluster: u32| ends.iter().find(|(end, _)| (cluster as usize) < *end).map_or(1.0, |(_, size)| *size);
    let each = glyphs.glyph_infos().iter().zip(glyphs.glyph_positions());
    each.map(|(glyph, position)| f64::from(position.x_advance) * size(glyph.cluster)).sum()
}

/// Width of a line of text.
#[must_use]
pub fn width(text: &str, size: f64, weight: Weight) -> f64 {
    Shaper::of(weight).millimetres(advance(text, weight), size)
}

/// From the baseline up to the top that the font reserves.
#[must_use]
pub fn ascent(size: f64, weight: Weight) -> f64 {
    let shaper = Shaper::of(weight);
    shaper.millimetres(shaper.face.ascender(), size)
}

/// From the baseline down to the bottom that the font reserves; positive.
#[must_use]
pub fn descent(size: f64, weight: Weight) -> f64 {
    let shaper = Shaper::of(weight);
    shaper.millimetres(-shaper.face.descender(), size)
}

/// Height of capital letters and lining figures.
#[must_use]
pub fn cap_height(size: f64, weight: Weight) -> f64 {
    let shaper = Shaper::of(weight);
    let units = shaper.face.capital_height().unwrap_or_else(|| shaper.face.ascender());
    shaper.millimetres(units, size)
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

    fn fits(&self, line: Range<usize>) -> bool {
        self.width(self.trimmed(line)) <= self.most
    }

    /// The lines, with a word more on the last where that would be one alone and the line before it can spare one.
    fn lines(&self) -> Vec<Range<usize>> {
        let mut lines = self.filled();
        let [.., before, last] = lines.as_mut_slice() else { return lines };
        let words = pieces(&self.text[before.clone()]);
        let is_lone = pieces(&self.text[last.clone()]).len() == 1;
        if let Some(word) = words.last().filter(|_| is_lone && words.len() > 2) {
            let start = before.start + word.start;
            if self.fits(start..last.end) {
                (*before, *last) = (self.trimmed(before.start..start), start..last.end);
            }
        }
        lines
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
        if lines.is_empty() { vec![0..0] } else { lines }
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

    /// Breaks a word where it is too wide; gives back what is left for the next line.
    fn broken(&self, word: Range<usize>, lines: &mut Vec<Range<usize>>) -> Range<usize> {
        if self.fits(word.clone()) {
            return word;
        }
        let mut start = word.start;
        for (at, sign) in self.text[word.clone()].char_indices().map(|(at, sign)| (word.start + at, sign)) {
            if !self.fits(start..at + sign.len_utf8()) {
                self.close(start..at, lines);
                start = at;
            }
        }
        start..word.end
    }
}

/// The pieces of a text that end where a line may.
fn pieces(text: &str) -> Vec<Range<usize>> {
    let (mut pieces, mut start) = (Vec::new(), 0);
    for (at, c) in text.char_indices().filter(|(_, c)| breaks_after(*c)) {
        let end = at + c.len_utf8();
        let (before, after) = (&text[..at], &text[end..]);
        let quantity = if c == ' ' { in_quantity(before, after) } else { between_figures(before, after) };
        if !quantity {
            pieces.push(start..end);
            start = end;
        }
    }
    pieces.push(start..text.len());
    pieces
}

/// Whether a hyphen or slash stands in a size or a range, as in `8/0` and `3-4`.
fn between_figures(before: &str, after: &str) -> bool {
    before.ends_with(char::is_numeric) && after.starts_with(char::is_numeric)
}

/// Whether a space stands inside a number, as in `16 ½` and `2 × 60`, or before a word too short to begin a line behind
/// one, which is most often what it counts: `60 mm`, `124 A`.
fn in_quantity(before: &str, after: &str) -> bool {
    let word = after.split([' ', ')', ',', '.', ';', ':']).next().unwrap_or_default();
    let goes_on = word.starts_with(|c: char| c.is_numeric() && !c.is_ascii_digit()) || word.contains(SLASH);
    let is_short = matches!(word.chars().count(), 1 | 2) && word.chars().all(char::is_alphabetic);
    before.ends_with('×') || before.ends_with(char::is_numeric) && (goes_on || is_short || word == "×")
}

const fn breaks_after(c: char) -> bool {
    matches!(c, ' ' | '\t' | '-' | '–' | '/' | '\u{2003}' | '\u{2002}' | '\u{2009}')
}

/// The text, shortened with an ellipsis where it is wider than `most`; empty where not even the
/// ellipsis fits.
#[must_use]
pub fn fit(text: &str, size: f64, weight: Weight, most: f64) -> String {
    let fits = |line: &str| width(line, size, weight) <= most;
    if fits(text) {
        return text.to_owned();
    }
    let ends: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
    // Each end is the start of a character, so that slices end between characters.
    let shortened = |end: usize| format!("{}{ELLIPSIS}", text[..end].trim_end());
    let kept = ends.partition_point(|end| fits(&shortened(*end)));
    kept.checked_sub(1).map_or_else(String::new, |last| shortened(ends[last]))
}

/// The characters that the font cannot draw, each once, in order of appearance. White space and
/// control characters are never among them: they draw nothing.
#[must_use]
pub fn missing(text: &str) -> Vec<char> {
    let face = &Shaper::of(Weight::Regular).face;
    let mut missing = Vec::new();
    for c in text.chars() {
        let drawn = c.is_whitespace() || c.is_control() || face.glyph_index(c).is_some();
        if !drawn && !missing.contains(&c) {
            missing.push(c);
        }
    }
    missing
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_number_stays_with_the_letter_that_it_counts() {
        let size = 3.0;
        let room = width("You have 6", size, Weight::Regular) + 0.1;
        assert_eq!(wrap("You have 6 C", size, Weight::Regular, room), ["You have", "6 C"]);
        assert_eq!(wrap("You have 6 lb", size, Weight::Regular, room), ["You have", "6 lb"]);
    }

    #[test]
    fn both_fonts_open_and_capitals_are_lower_than_the_ascent() {
        for weight in [Weight::Regular, Weight::Semibold] {
            assert!(cap_height(10.0, weight) > 6.0 && cap_height(10.0, weight) < ascent(10.0, weight));
            assert!(descent(10.0, weight) > 1.0);
        }
    }

    #[test]
    fn width_grows_with_size_and_kerns() {
        let wide = width("AVAVAV", 10.0, Weight::Regular);
        assert!((width("AVAVAV", 20.0, Weight::Regular) - 2.0 * wide).abs() < 1e-12);
        assert!(wide < 3.0 * (width("A", 10.0, Weight::Regular) + width("V", 10.0, Weight::Regular)));
    }

    #[test]
    fn lines_break_at_spaces_and_inside_words_too_long() {
        assert_eq!(wrap("reed green glass", 3.0, Weight::Regular, 8.0), ["reed", "green", "glass"]);
        assert_eq!(wrap("one\ntwo", 3.0, Weight::Regular, 80.0), ["one", "two"]);
        assert_eq!(wrap("a\u{a0}b c", 3.0, Weight::Regular, 4.0), ["a\u{a0}b", "c"]);
        assert_eq!(wrap("cut 16 ½ in, 2 × 8 mm", 3.0, Weight::Regular, 13.0), ["cut", "16 ½ in,", "2 × 8 mm"]);
        assert_eq!(wrap("cut 16 3⁄16 in", 3.0, Weight::Regular, 13.0), ["cut", "16 3⁄16 in"]);
        assert_eq!(wrap("seeds 11/0-15/0", 3.0, Weight::Regular, 13.0), ["seeds", "11/0-15/0"]);
        let lines = wrap("Donaudampfschifffahrt", 3.0, Weight::Regular, 10.0);
        assert!(lines.len() > 2);
        assert_eq!(lines.concat(), "Donaudampfschifffahrt");
    }

    #[test]
    fn a_line_is_told_by_where_it_lies() {
        let text = "reed green\r\nglass\n\nseeds ";
        let lines = lines(text, 3.0, Weight::Regular, 8.0);
        assert_eq!(lines, [0..4, 5..10, 12..17, 18..18, 19..24]);
    }

    #[test]
    fn the_last_line_is_no_word_alone() {
        let most = width("string the beads and the", 3.0, Weight::Regular) + 0.1;
        let lines = wrap("string the beads and the clasp", 3.0, Weight::Regular, most);
        assert_eq!(lines, ["string the beads and", "the clasp"]);
        let hyphened = wrap("string the beads of nylon-coated", 3.0, Weight::Regular, most);
        assert_eq!(hyphened.concat(), "string the beads ofnylon-coated");
        assert_eq!(wrap("beads clasp", 3.0, Weight::Regular, 8.0), ["beads", "clasp"]);
    }

    /// What is drawn: figures one below another in a column stand at the same places.
    #[test]
    fn figures_are_all_as_wide_as_one_another() {
        for weight in [Weight::Regular, Weight::Semibold] {
            let wide = |text: &str| width(text, 10.0, weight);
            let digits = ('0'..='9').map(String::from).collect::<Vec<_>>();
            assert!(digits.iter().all(|digit| wide(digit) == wide("0")));
            let pairs = digits.iter().flat_map(|one| digits.iter().map(move |other| format!("{one}{other}")));
            assert!(pairs.into_iter().all(|pair| (wide(&pair) - 2.0 * wide("0")).abs() < 1e-12));
        }
    }

    #[test]
    fn shortened_texts_end_in_an_ellipsis_and_fit() {
        let text = "nylon-coated steel wire";
        assert_eq!(fit(text, 3.0, Weight::Regular, 100.0), text);
        let short = fit(text, 3.0, Weight::Regular, 15.0);
        assert!(short.ends_with(ELLIPSIS) && width(&short, 3.0, Weight::Regular) <= 15.0);
        assert_eq!(fit(text, 3.0, Weight::Regular, 0.1), "");
    }

    #[test]
    fn characters_without_a_glyph_are_named_once() {
        assert_eq!(missing("½ in Ω Ж × 珠 珠 \n"), ['珠']);
    }

    proptest! {
        #[test]
        fn wrapping_loses_no_character_and_keeps_to_the_width(text in "[a-zA-Z ½/\\-]{0,60}", most in 1.0..60.0_f64) {
            let lines = wrap(&text, 3.0, Weight::Regular, most);
            let dense = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            prop_assert_eq!(dense(&lines.concat()), dense(&text));
            for line in lines {
                prop_assert!(width(line, 3.0, Weight::Regular) <= most || line.chars().count() == 1, "{}", line);
            }
        }
    }
}
