//! What stands about remarks where they are written down, in English.

use crate::english::{commas, count, singular};
use crate::remark::plain::PatternPart;
use crate::remark::{Code, Level};

/// What the rows below a headline tell: where it is, why it is said, what to do, and where there is more of it.
pub const ROWS: [&str; 4] = ["where", "why", "do this", "more"];
/// What a pattern is called that stands in no file.
pub const READ: &str = "what was read";

/// Where more is said.
pub fn more(code: Code) -> String {
    format!("festoon explain {}", code.name())
}

/// What a part of a pattern is called: `bead reed`.
pub fn part(part: &PatternPart) -> String {
    match part {
        PatternPart::Key(key) => key.clone(),
        PatternPart::Entry { group, id } => format!("{} {id}", singular(group)),
        PatternPart::Strand(name) => format!("strand {name}"),
        PatternPart::Nameless(number) => format!("strand {number}"),
    }
}

/// `bead reed, line 7 of saltmarsh.yaml`: the part is left out where there is none.
pub fn place(part: Option<&str>, line: usize, file: &str) -> String {
    let part = part.map(|part| format!("{part}, ")).unwrap_or_default();
    format!("{part}line {line} of {file}")
}

/// How many remarks there are of each level: `2 errors, 1 warning`; empty for none.
pub fn summary(of: impl Fn(Level) -> usize) -> String {
    let nouns = [(Level::Error, "error"), (Level::Warning, "warning"), (Level::Advice, "piece of advice")];
    let counts = nouns.map(|(level, noun)| (of(level) as u64, noun));
    commas(counts.into_iter().filter(|(number, _)| *number > 0).map(|(number, noun)| count(number, noun)))
}

/// That there are more remarks of a code than are shown.
pub fn left_off(code: Code, more: usize) -> String {
    format!("{more} more of {}: --messages short shows all\n", code.name())
}
