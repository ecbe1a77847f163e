//! A listing as text, Markdown and JSON.

use super::english::{HEADINGS, content, opening};
use super::{Listing, NamedFact};
use crate::remark::escape::{escaped, in_json, on_a_line};

/// The listing for a plain box of text: headings on lines of their own, one thing a line.
#[must_use]
pub fn text(listing: &Listing) -> String {
    let mut text = format!("{}\n\n{}\n", on_a_line(&listing.title), on_a_line(&opening(listing)));
    for (heading, lines) in sections(listing) {
        text += &format!("\n{heading}\n");
        text.extend(lines.iter().map(|line| format!("- {line}\n")));
    }
    text
}

/// The listing in Markdown (CommonMark 0.31): what the pattern says is text, whatever signs it holds.
#[must_use]
pub fn markdown(listing: &Listing) -> String {
    let mut text = format!("# {}\n\n{}\n", literal(&on_a_line(&listing.title)), literal(&on_a_line(&opening(listing))));
    for (heading, lines) in sections(listing) {
        text += &format!("\n## {heading}\n\n");
        text.extend(lines.iter().map(|line| format!("- {}\n", literal(line))));
    }
    text
}

/// The listing for programs: the fields of [`Listing`].
#[must_use]
pub fn json(listing: &Listing) -> String {
    // Texts, counts and lists of them always become JSON.
    in_json(&serde_json::to_string_pretty(listing).unwrap_or_default()) + "\n"
}

/// What there is to say, under its headings.
fn sections(listing: &Listing) -> Vec<(&'static str, Vec<String>)> {
    let facts = |facts: &[NamedFact]| facts.iter().map(|fact| format!("{}: {}", fact.name, fact.value)).collect();
    let some = |text: &Option<String>| text.iter().flat_map(|text| text.lines()).map(str::to_owned).collect();
    let all = [
        listing.contents.iter().map(content).collect(),
        facts(&listing.laid),
        facts(&listing.worn),
        listing.materials.clone(),
        facts(&listing.sizes),
        listing.colourways.clone(),
        some(&listing.care),
        vec![listing.alt.clone()],
    ];
    let lines =
        |lines: Vec<String>| lines.iter().map(|line| on_a_line(line.trim())).filter(|line| !line.is_empty()).collect();
    let told = HEADINGS.into_iter().zip(all).map(|(heading, said)| (heading, lines(said)));
    told.filter(|(_, lines): &(_, Vec<String>)| !lines.is_empty()).collect()
}

/// A text in which no sign is Markdown's: each punctuation sign of ASCII behind a backslash (CommonMark 0.31,
/// section 2.4), but for those that mean nothing inside a line.
fn literal(text: &str) -> String {
    let mut literal = String::with_capacity(text.len());
    for c in escaped(text).chars() {
        let is_plain = ".,:;'()/%?\"".contains(c);
        if c.is_ascii_punctuation() && !is_plain && c != '-' || c == '-' && literal.is_empty() {
            literal.push('\\');
        }
        literal.push(c);
    }
    literal
}
