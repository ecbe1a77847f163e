//! A listing as text, Markdown and JSON.

use super::{Content, Listing, NamedFact};
use crate::remark::escape::{escaped, in_json, on_a_line};

/// The listing for a plain box of text: headings on lines of their own, one thing a line.
#[must_use]
pub fn text(listing: &Listing) -> String {
    let mut text = format!("{}\n\n{}\n", on_a_line(&listing.title), opening(listing));
    for (heading, lines) in sections(listing) {
        text += &format!("\n{heading}\n");
        text.extend(lines.iter().map(|line| format!("- {line}\n")));
    }
    text
}

/// The listing in Markdown (CommonMark 0.31): what the pattern says is text, whatever signs it holds.
#[must_use]
pub fn markdown(listing: &Listing) -> String {
    let mut text = format!("# {}\n\n{}\n", literal(&on_a_line(&listing.title)), literal(&opening(listing)));
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

/// What it is, and the pattern's own sentence.
fn opening(listing: &Listing) -> String {
    let mut is = listing.is.clone();
    if let Some(first) = is.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    let by = listing.designer.iter().map(|designer| format!(" Designed by {designer}."));
    let summary = listing.summary.iter().map(|summary| format!(" {summary}"));
    on_a_line(&std::iter::once(format!("{is}.")).chain(summary).chain(by).collect::<String>())
}

/// What there is to say, under its headings.
fn sections(listing: &Listing) -> Vec<(&'static str, Vec<String>)> {
    let facts = |facts: &[NamedFact]| facts.iter().map(|fact| format!("{}: {}", fact.name, fact.value)).collect();
    let some = |text: &Option<String>| text.iter().flat_map(|text| text.lines()).map(str::to_owned).collect();
    let all = [
        ("What is in it", listing.contents.iter().map(content).collect()),
        ("Lengths, laid", facts(&listing.laid)),
        ("Lengths, worn", facts(&listing.worn)),
        ("Materials, as the maker declares them", listing.materials.clone()),
        ("Sizes", facts(&listing.sizes)),
        ("Colourways", listing.colourways.clone()),
        ("Care", some(&listing.care)),
        ("The picture in words", vec![listing.alt.clone()]),
    ];
    let lines =
        |lines: Vec<String>| lines.iter().map(|line| on_a_line(line.trim())).filter(|line| !line.is_empty()).collect();
    let told = all.into_iter().map(|(heading, said)| (heading, lines(said)));
    told.filter(|(_, lines): &(_, Vec<String>)| !lines.is_empty()).collect()
}

fn content(content: &Content) -> String {
    let count = content.count.map(|count| format!("{count} × ")).unwrap_or_default();
    format!("{count}{} ({})", content.name, content.is)
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
