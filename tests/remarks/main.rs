//! Each remark appears where its limit is passed, and just does not where it is kept.
//!
//! A [`Case`] is a code with two patterns: one that says nothing at all, and one that differs in a
//! little and says just that. Every code has at least one.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

mod abreast;
mod fit;
mod goods;
mod language;
mod places;
mod sound;
mod twisted;
mod worn;
mod wound;

use std::collections::BTreeSet;

use festoon::remark::{Code, Level};

use sound::{made, told};

/// A code, a pattern that keeps to its limit and one that passes it.
pub struct Case {
    code: Code,
    kept: String,
    passed: String,
}

impl Case {
    /// A case from its two patterns.
    pub fn new(code: Code, kept: impl Into<String>, passed: impl Into<String>) -> Self {
        Self { code, kept: kept.into(), passed: passed.into() }
    }

    /// What is not as the case says, if anything.
    fn fault(&self) -> Option<String> {
        let said = if self.code == Code::OverHead { told } else { made };
        let (kept, passed) = (said(&self.kept).1, said(&self.passed).1);
        let name = self.code.name();
        match passed.as_slice() {
            _ if !kept.is_empty() => Some(format!("{name}, kept: {kept:#?}\n{}", start(&self.kept))),
            [one] if one.code() == self.code && !one.headline().is_empty() && !one.help().is_empty() => None,
            _ => Some(format!("{name}, passed: {passed:#?}\n{}", start(&self.passed))),
        }
    }
}

/// As much of a pattern as a reader wants to see.
fn start(text: &str) -> String {
    text.chars().take(3000).collect()
}

fn cases() -> Vec<Case> {
    [
        language::cases(),
        places::cases(),
        abreast::cases(),
        fit::cases(),
        worn::cases(),
        wound::cases(),
        twisted::cases(),
        goods::cases(),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Codes that a pattern's text cannot bring about, with the test that does.
const ELSEWHERE: &[(Code, &str)] = &[
    (Code::NotText, "bytes that are no text: tests/cli.rs feeds them to the program"),
    (Code::OtherLimb, "a measure on the command line: tests/workshop/fit.rs gives one"),
    (Code::TwoCurrencies, "a shelf beside a pattern: tests/workshop/shelf.rs reads one"),
    (Code::StashUnused, "a file of what is in hand: tests/goods/stash.rs reads one"),
    (Code::OwnFault, "a fault of the resolver: design/sound.rs makes some, and tests/fuzz.rs looks for them"),
];

#[test]
fn each_remark_appears_and_just_does_not() {
    let faults: Vec<_> = cases().iter().filter_map(Case::fault).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n\n"));
}

#[test]
fn every_code_has_its_case() {
    let shown: BTreeSet<_> = cases().iter().map(|case| case.code).collect();
    let elsewhere: BTreeSet<_> = ELSEWHERE.iter().map(|(code, _)| *code).collect();
    assert!(shown.is_disjoint(&elsewhere), "{elsewhere:?} need no excuse");
    let forgotten: Vec<_> =
        Code::ALL.iter().filter(|code| !shown.contains(code) && !elsewhere.contains(code)).collect();
    assert!(forgotten.is_empty(), "no case shows {forgotten:?}");
}

#[test]
fn every_explanation_is_in_whole_sentences() {
    for code in Code::ALL {
        let text = code.explanation();
        assert!(text.starts_with(|c: char| c.is_uppercase() || c == '`' || c == 'n'), "{}: {text}", code.name());
        assert!(text.ends_with('.') && !text.contains("  "), "{}: {text}", code.name());
        assert_eq!(Code::named(code.name()), Some(*code));
    }
}

#[test]
fn errors_are_errors() {
    for code in [Code::CordTooThick, Code::CrimpTooSmall, Code::PinTooThick, Code::PinTooShort, Code::TooShort] {
        assert_eq!(code.level(), Level::Error, "{}", code.name());
    }
}
