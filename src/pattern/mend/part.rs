//! The part of a text that is left out where nothing is known of its fault.

use std::ops::Range;

/// The smallest part about a byte that is not left out yet: the line with what is indented below it, the
/// whole group of the pattern, or all that follows.
pub fn around(text: &str, byte: usize, left_out: &[Range<usize>]) -> Range<usize> {
    let lines = lines(text);
    let before = lines.iter().rposition(|line| line.start <= byte && !text[line.clone()].trim().is_empty());
    let at = before.unwrap_or_default();
    let entry = lines[at].start..end(text, &lines, at, indent(&text[lines[at].clone()]));
    let opens =
        |line: &Range<usize>| text[line.clone()].starts_with(|c: char| !c.is_whitespace() && c != '#' && c != '-');
    let group = lines[..=at].iter().rposition(opens).unwrap_or(at);
    let whole = lines[group].start..end(text, &lines, group, 0);
    let fresh = |part: &Range<usize>| !left_out.iter().any(|other| other.start <= part.start && part.end <= other.end);
    [entry, whole, lines[group].start..text.len()].into_iter().find(fresh).unwrap_or(0..text.len())
}

/// Where what is indented deeper than a line ends.
fn end(text: &str, lines: &[Range<usize>], at: usize, depth: usize) -> usize {
    let below = lines[at + 1..].iter().take_while(|line| {
        let line = &text[(*line).clone()];
        line.trim().is_empty() || indent(line) > depth || depth == 0 && line.starts_with(['-', '#'])
    });
    below.last().map_or(lines[at].end, |last| last.end)
}

fn indent(line: &str) -> usize {
    line.len() - line.trim_start().len()
}

/// The lines with their line breaks; of an empty text, one.
fn lines(text: &str) -> Vec<Range<usize>> {
    let mut start = 0;
    let pieces = text.split_inclusive('\n').map(|line| {
        start += line.len();
        start - line.len()..start
    });
    let mut lines: Vec<_> = pieces.collect();
    if lines.is_empty() {
        lines.push(0..0);
    }
    lines
}
