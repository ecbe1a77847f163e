//! Remarks as text: full with snippets of the pattern, short with one line each, or JSON.

use annotate_snippets::{AnnotationKind, Group, Level as Tint, Origin, Renderer, Snippet};
use serde::Serialize;

use super::escape::{escaped, in_json, on_a_line};
use super::few::few;
use super::{Code, Level, Remark, english};
use crate::source::{Place, Source};

/// How remarks are written down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[non_exhaustive]
pub enum Notation {
    /// With the line of the pattern that is meant, and the help, for the first 50 of each code; then how many of each
    /// level.
    #[default]
    Full,
    /// `file:line:column: level[code]: headline` for each; then how many of each level.
    Short,
    /// A JSON array of [`Record`].
    Json,
}

/// A remark as other programs read it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Record {
    /// The stable kebab-case name.
    pub code: &'static str,
    /// How grave it is.
    pub level: Level,
    /// What was found.
    pub headline: String,
    /// The shelf in which it stands; absent where that is the pattern itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// Line, from 1; absent where the whole file is meant.
    pub line: Option<usize>,
    /// Column in characters, from 1.
    pub column: Option<usize>,
    /// What to change; may be empty.
    pub help: String,
}

/// The remarks as text, ending in a line break; nothing for no remarks, save in JSON.
#[must_use]
pub fn render(remarks: &[Remark], source: &Source, notation: Notation, colour: bool) -> String {
    match notation {
        Notation::Json => json(remarks, source),
        _ if remarks.is_empty() => String::new(),
        Notation::Full => full(remarks, source, colour) + &summary(remarks) + "\n",
        Notation::Short => short(remarks, source) + &summary(remarks) + "\n",
    }
}

/// The remarks as other programs read them.
#[must_use]
pub fn records(remarks: &[Remark], source: &Source) -> Vec<Record> {
    remarks.iter().map(|remark| record(remark, source)).collect()
}

/// How many remarks of each level: `2 errors, 1 warning`; empty for none.
#[must_use]
pub fn summary(remarks: &[Remark]) -> String {
    english::summary(|level| remarks.iter().filter(|remark| remark.level() == level).count())
}

fn record(remark: &Remark, source: &Source) -> Record {
    let at = remark.place.map(|place| source.start_of(place));
    let shelf = remark.place.filter(|place| place.is_shelved());
    Record {
        code: remark.code().name(),
        level: remark.level(),
        headline: remark.headline(),
        file: shelf.map(|place| source.of(place).name.clone()),
        line: at.map(|(line, _)| line),
        column: at.map(|(_, column)| column),
        help: remark.help(),
    }
}

fn json(remarks: &[Remark], source: &Source) -> String {
    // Records hold only texts and numbers, which JSON always can.
    in_json(&serde_json::to_string_pretty(&records(remarks, source)).unwrap_or_default()) + "\n"
}

fn short(remarks: &[Remark], source: &Source) -> String {
    remarks.iter().map(|remark| short_line(remark, source)).collect()
}

fn short_line(remark: &Remark, source: &Source) -> String {
    let source = remark.file(source);
    let at = remark.place.map(|place| source.line_column(place.start));
    let at = at.map(|(line, column)| format!(":{line}:{column}")).unwrap_or_default();
    let (level, code) = (remark.level().word(), remark.code().name());
    format!("{}{at}: {level}[{code}]: {}\n", on_a_line(&source.name), on_a_line(&remark.headline()))
}

fn full(remarks: &[Remark], source: &Source, colour: bool) -> String {
    let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
    let shown = |remark: &Remark| {
        let source = remark.file(source);
        let name = on_a_line(&source.name);
        renderer.render(&[report(remark, source, &name)]) + "\n\n"
    };
    let (few, more) = few(remarks);
    few.into_iter().map(shown).collect::<String>() + &more
}

fn report<'a>(remark: &'a Remark, source: &'a Source, name: &'a str) -> Group<'a> {
    let title = tint(remark.code()).primary_title(on_a_line(&remark.headline())).id(remark.code().name());
    let group = match remark.place {
        Some(place) => title.element(snippet(place, source, name)),
        None => title.element(Origin::path(name)),
    };
    let help = remark.help();
    if help.is_empty() { group } else { group.element(Tint::HELP.message(escaped(&help))) }
}

fn tint(code: Code) -> Tint<'static> {
    match code.level() {
        Level::Error => Tint::ERROR,
        Level::Warning => Tint::WARNING,
        Level::Advice => Tint::NOTE.with_name(Level::Advice.word()),
    }
}

/// Bytes that a mark covers at most, so that a long line is still cut about its start.
const LONGEST_MARK: usize = 100;

/// The line in which the place starts, with what lies in that line marked.
fn snippet<'a>(place: Place, source: &'a Source, name: &'a str) -> Snippet<'a, annotate_snippets::Annotation<'a>> {
    let (line, _) = source.line_column(place.start);
    let start = source.place_at(line, 1).start;
    let rest = source.text().get(start..).unwrap_or_default();
    let text = rest.split('\n').next().unwrap_or_default();
    let from = inside(text, place.start.saturating_sub(start));
    let to = inside(text, place.end.saturating_sub(start).min(from + LONGEST_MARK)).max(from);
    let annotation = AnnotationKind::Primary.span(from..to);
    Snippet::source(text).line_start(line).path(name).annotation(annotation)
}

/// The byte, or the nearest before it at which a character of the text starts or the text ends.
fn inside(text: &str, byte: usize) -> usize {
    (0..=byte.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::remark::said::language::Language;
    use crate::remark::said::quantity::NoQuantity;
    use proptest::prelude::*;

    const TEXT: &str = "festoon: 1\ntitle: Möwe\nbeeds:\n  a: { size: 6 }\n";

    fn source() -> Source {
        Source::new("gull.yaml", TEXT)
    }

    fn place(of: &str) -> Place {
        let start = TEXT.find(of).unwrap();
        Place { file: 0, start, end: start + of.len() }
    }

    fn remarks() -> Vec<Remark> {
        vec![
            Remark::new(Language::UnknownKey {
                key: "beeds".to_owned(),
                keys: Vec::new(),
                meant: Some("beads".to_owned()),
            })
            .at(place("beeds")),
            Remark::new(Language::NoQuantity { text: "6".to_owned(), why: NoQuantity::Whole }).at(place("6")),
            Remark::new(Language::MissingKey { key: "strands" }),
        ]
    }

    #[test]
    fn full_shows_the_line_and_the_help() {
        assert_eq!(
            render(&remarks(), &source(), Notation::Full, false),
            "error[unknown-key]: there is no key `beeds` here\n\
             \x20--> gull.yaml:3:1\n\
             \x20 |\n\
             3 | beeds:\n\
             \x20 | ^^^^^\n\
             \x20 |\n\
             \x20 = help: did you mean `beads`?\n\n\
             error[bad-quantity]: `6` is not a whole number\n\
             \x20--> gull.yaml:4:14\n\
             \x20 |\n\
             4 |   a: { size: 6 }\n\
             \x20 |              ^\n\
             \x20 |\n\
             \x20 = help: write a whole number of at least 1\n\n\
             error[missing-key]: `strands` is not written\n\
             --> gull.yaml\n\
             \x20= help: add `strands:`\n\n\
             3 errors\n"
        );
    }

    #[test]
    fn short_is_one_line_each() {
        assert_eq!(
            render(&remarks(), &source(), Notation::Short, false),
            "gull.yaml:3:1: error[unknown-key]: there is no key `beeds` here\n\
             gull.yaml:4:14: error[bad-quantity]: `6` is not a whole number\n\
             gull.yaml: error[missing-key]: `strands` is not written\n\
             3 errors\n"
        );
    }

    #[test]
    fn json_is_an_array_for_programs() {
        assert_eq!(
            render(&remarks()[..1], &source(), Notation::Json, false),
            "[\n  {\n    \"code\": \"unknown-key\",\n    \"level\": \"error\",\n    \
             \"headline\": \"there is no key `beeds` here\",\n    \"line\": 3,\n    \"column\": 1,\n    \
             \"help\": \"did you mean `beads`?\"\n  }\n]\n"
        );
        assert_eq!(render(&[], &source(), Notation::Json, false), "[]\n");
    }

    #[test]
    fn colour_only_where_asked() {
        assert!(render(&remarks(), &source(), Notation::Full, true).contains('\u{1b}'));
        assert!(!render(&remarks(), &source(), Notation::Full, false).contains('\u{1b}'));
    }

    #[test]
    fn nothing_to_say_is_nothing() {
        assert_eq!(render(&[], &source(), Notation::Full, false), "");
        assert_eq!(render(&[], &source(), Notation::Short, false), "");
        assert_eq!(summary(&[]), "");
    }

    #[test]
    fn no_place_makes_it_panic() {
        let texts =
            ["", "\n", "a", "ä½𝄞\t\u{202e}x\r\n\u{1F4FF}", "x: \u{1b}[31m", &"ü".repeat(5000), &"q\n".repeat(50)];
        for text in texts {
            let source = Source::new("-", text);
            for start in 0..text.len().min(60) + 3 {
                for end in [0, start, start + 1, start + 7, text.len(), usize::MAX] {
                    let remark = Remark::new(Language::KeyTwice { key: "ß\u{1b}[0m".to_owned() }).at(Place {
                        file: 0,
                        start,
                        end,
                    });
                    for notation in [Notation::Full, Notation::Short, Notation::Json] {
                        assert!(!render(std::slice::from_ref(&remark), &source, notation, false).contains('\u{1b}'));
                    }
                }
            }
        }
    }

    proptest! {
        #[test]
        fn any_text_and_place_can_be_shown(text in any::<String>(), start in 0_usize..200, length in 0_usize..200) {
            let source = Source::new("any.yaml", text);
            let remark = Remark::new(Language::KeyTwice { key: "look".to_owned() }).at(Place { file: 0, start, end: start + length });
            prop_assert!(render(&[remark], &source, Notation::Full, true).contains("look"));
        }
    }

    #[test]
    fn a_very_long_line_is_cut_about_the_place() {
        let text = format!("notes: {}here{}", "a ".repeat(1_000_000), " b".repeat(1_000_000));
        let start = text.find("here").unwrap();
        let source = Source::new("long.yaml", text);
        for end in [start + 4, usize::MAX] {
            let remark = Remark::new(Language::KeyTwice { key: "look".to_owned() }).at(Place { file: 0, start, end });
            let shown = render(&[remark], &source, Notation::Full, false);
            assert!(shown.contains("here") && shown.len() < 1000, "{}", shown.len());
        }
    }
}
