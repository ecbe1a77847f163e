//! Remarks as a maker reads them: what, where, why, and what to do, with a short look at the line.

use std::fmt::Write;

use unicode_width::UnicodeWidthStr;

use super::escape::{escaped, on_a_line};
use super::few::few;
use super::render::summary;
use super::{Level, Remark, english};
use crate::english::capital;
use crate::source::{Place, Source};

/// A part of a pattern: where it stands, and what it is.
pub type Landmark = (Place, PatternPart);

/// What a part of a pattern is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PatternPart {
    /// What stands under a key of the whole pattern.
    Key(String),
    /// What has an id, in the group of a key.
    Entry {
        /// The group's key.
        group: String,
        /// Its own id.
        id: String,
    },
    /// A strand of this name.
    Strand(String),
    /// A strand without a name: which it is, from 1.
    Nameless(usize),
}

/// Columns of text that are filled.
const WIDTH: usize = 76;
/// Signs of a line that are shown before and behind the place.
const AROUND: usize = 24;
/// Signs of a place that are shown.
const MARKED: usize = 24;

/// The remarks, errors first and each level from top to bottom, the first 50 of each code, then how many there are of
/// each level; nothing for no remarks.
#[must_use]
pub fn plain(remarks: &[Remark], source: &Source, parts: &[Landmark], colour: bool) -> String {
    let mut sorted: Vec<_> = remarks.iter().collect();
    sorted.sort_by_key(|remark| (remark.level(), remark.place));
    let (few, more) = few(sorted);
    let told: String = few.into_iter().map(|remark| one(remark, source, parts, colour) + "\n").collect();
    if remarks.is_empty() { told } else { told + &more + &summary(remarks) + "\n" }
}

fn one(remark: &Remark, source: &Source, parts: &[Landmark], colour: bool) -> String {
    let source = remark.file(source);
    let mut text = format!("{}: {}\n", tinted(remark.level(), colour), on_a_line(&remark.headline()));
    let (code, place) = (remark.code(), place(remark, source, parts));
    let rows = [place, code.reason().to_owned(), escaped(&remark.help()), english::more(code)];
    for (name, said) in english::ROWS.iter().zip(rows).filter(|(_, said)| !said.is_empty()) {
        let lines = wrapped(&said).join(&format!("\n{:11}", ""));
        let _ = writeln!(text, "  {name:<9}{lines}");
    }
    text + &remark.place.map(|place| look(place, source)).unwrap_or_default()
}

/// The level, begun with a capital.
fn tinted(level: Level, colour: bool) -> String {
    let tint = match level {
        Level::Error => 31,
        Level::Warning => 33,
        Level::Advice => 36,
    };
    let word = capital(level.word());
    if colour { format!("\u{1b}[1;{tint}m{word}\u{1b}[0m") } else { word }
}

/// `bead reed, line 7 of saltmarsh.yaml`.
fn place(remark: &Remark, source: &Source, parts: &[Landmark]) -> String {
    let name = on_a_line(&source.name);
    let name = if name == "-" { english::READ.to_owned() } else { name };
    let Some(place) = remark.place else { return name };
    let line = source.line_column(place.start).0;
    let part = parts.iter().rfind(|(part, _)| part.holds(place)).map(|(_, part)| on_a_line(&english::part(part)));
    english::place(part.as_deref(), line, &name)
}

/// The line of a place, cut short about it, and marks below.
fn look(place: Place, source: &Source) -> String {
    let (line, column) = source.line_column(place.start);
    let start = source.place_at(line, 1).start;
    let signs: Vec<char> = source.text()[start..].lines().next().unwrap_or_default().chars().collect();
    let at = (column - 1).min(signs.len());
    let length = source.slice(place).lines().next().unwrap_or_default().chars().count().clamp(1, MARKED);
    let indent = signs.iter().take_while(|sign| sign.is_whitespace()).count();
    let from = at.saturating_sub(AROUND).max(indent.min(at));
    let to = (at + length + AROUND).min(signs.len());
    let shown = |signs: &[char]| on_a_line(&signs.iter().collect::<String>().replace('\t', " "));
    let [start, marked, end] =
        [&signs[from..at], &signs[at..to.min(at + length)], &signs[to.min(at + length)..to]].map(shown);
    let (before, behind) = (if from > indent { "…" } else { "" }, if to < signs.len() { "…" } else { "" });
    let start = format!("{line:>7} | {before}{start}");
    let (pad, marks) = (" ".repeat(start.width()), "^".repeat(marked.width().max(1)));
    format!("{start}{marked}{end}{behind}\n{pad}{marks}\n")
}

/// A text in lines of a width, broken between words.
fn wrapped(text: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        let last = lines.last().map_or(0, |line| line.width());
        if last > 0 && last + 1 + word.width() > WIDTH {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            *line += if line.is_empty() { "" } else { " " };
            *line += word;
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::remark::Code;
    use crate::remark::said::language::Language;
    use crate::remark::said::naming::{Naming, Thing};
    use crate::units::Length;

    const TEXT: &str = "festoon: 1\nbeads:\n  reed: { shape: round, size: 6, hole: 1 mm, colour: \"#5d7f5b\" }\n";

    fn told(of: &str, colour: bool) -> String {
        let start = TEXT.find(of).unwrap();
        let remark =
            Remark::new(Language::NoQuantity { text: "6".to_owned(), why: Length::parse("6").unwrap_err().into() })
                .at(Place { file: 0, start, end: start + of.len() });
        let parts = [(
            Place { file: 0, start: 20, end: TEXT.len() },
            PatternPart::Entry { group: "beads".to_owned(), id: "reed".to_owned() },
        )];
        plain(&[remark], &Source::new("gull.yaml", TEXT), &parts, colour)
    }

    #[test]
    fn what_where_why_do_this() {
        assert_eq!(
            told("6,", false),
            "Error: `6` has no unit\n\
             \x20 where    bead reed, line 3 of gull.yaml\n\
             \x20 why      A quantity is a number with its unit, as a bare number could be inches or\n\
             \x20          millimetres, and a colour is six hex digits.\n\
             \x20 do this  say which unit: 6 mm, 6 cm, 6 m, 6 in, 6 ft, 6 yd\n\
             \x20 more     festoon explain bad-quantity\n\
             \x20     3 | …: { shape: round, size: 6, hole: 1 mm, colour: \"#5…\n\
             \x20                                  ^^\n\n\
             1 error\n"
        );
        assert!(told("6,", true).starts_with("\u{1b}[1;31mError\u{1b}[0m: "));
    }

    /// A sign of Unicode's East Asian Width "wide" takes two columns, a combining accent none (Unicode Standard Annex 11).
    #[test]
    fn marks_stand_below_what_they_mark_behind_wide_signs() {
        let text = "title: 珠 cafe\u{301} x: 6\n";
        let start = text.find('6').unwrap();
        let told = look(Place { file: 0, start, end: start + 1 }, &Source::new("gull.yaml", text));
        assert_eq!(told, format!("      1 | {text}{}^\n", " ".repeat(10 + "title: ..".len() + " cafe x: ".len())));
    }

    #[test]
    fn errors_come_first_and_then_the_lines_in_order() {
        let at = |start| Place { file: 0, start, end: start + 1 };
        let remarks = [
            Remark::new(Naming::Unused { thing: Thing::Bead, id: "b".to_owned() }).at(at(3)),
            Remark::new(Language::MissingKey { key: "c" }).at(at(14)),
            Remark::new(Language::MissingKey { key: "a" }).at(at(2)),
        ];
        let told = plain(&remarks, &Source::new("gull.yaml", TEXT), &[], false);
        let heads: Vec<_> = told.lines().filter(|line| line.contains(": ") && !line.starts_with(' ')).collect();
        assert_eq!(
            heads,
            ["Error: `a` is not written", "Error: `c` is not written", "Warning: the bead `b` is not used"]
        );
        assert_eq!(plain(&[], &Source::new("gull.yaml", TEXT), &[], true), "");
    }

    #[test]
    fn no_place_and_no_text_makes_it_panic_or_acts_on_a_terminal() {
        for text in ["", "\n", "ä½𝄞\t\u{202e}x\r\n\u{1F4FF}", "x: \u{1b}[31m", &"ü".repeat(500), &"q\n".repeat(50)]
        {
            let source = Source::new("-", text);
            for start in 0..text.len().min(60) + 3 {
                for end in [0, start, start + 7, usize::MAX] {
                    let remark = Remark::new(Language::KeyTwice { key: "ß\u{1b}[0m".to_owned() }).at(Place {
                        file: 0,
                        start,
                        end,
                    });
                    assert!(!plain(&[remark], &source, &[], false).contains(['\u{1b}', '\u{202e}']));
                }
            }
        }
    }

    #[test]
    fn every_reason_is_one_short_sentence_without_a_programmers_words() {
        for code in Code::ALL {
            let reason = code.reason();
            assert!(reason.ends_with(['.', ':']) && reason.len() <= 230, "{}: {reason}", code.name());
            for word in ["token", "scalar", "mapping", "sequence", "parse", "syntax", "YAML", "string"] {
                assert!(
                    !reason.split(|c: char| !c.is_alphanumeric()).any(|said| said == word),
                    "{}: {reason}",
                    code.name()
                );
            }
        }
    }
}
