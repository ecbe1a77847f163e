//! Word charts set with their letters in semibold.

use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::metrics;

/// Sets a chart in lines of a width, a block a line. Letters are those that follow a number: `5A`.
pub fn set(text: &str, face: Type, width: f64) -> Vec<Block> {
    // Measured in the wider weight, so that every line fits whichever of its words are letters.
    let strong = face.bold();
    let lines = metrics::wrap(text, strong.size, strong.weight, width);
    lines.iter().map(|line| self::line(line, face)).collect()
}

fn line(text: &str, face: Type) -> Block {
    let parts = parts(text).into_iter().map(|(part, is_letter)| if is_letter { face.bold() } else { face }.line(part));
    Block::row(parts, 0.0)
}

/// The text in parts, with whether each is a bead's letter.
fn parts(text: &str) -> Vec<(&str, bool)> {
    let mut parts = Vec::new();
    let mut from = 0;
    let bytes = text.as_bytes();
    let is = |at: usize, class: fn(&u8) -> bool| bytes.get(at).is_some_and(class);
    let mut at = 1;
    while at < bytes.len() {
        if is(at, u8::is_ascii_uppercase) && is(at - 1, u8::is_ascii_digit) {
            let end = (at..bytes.len()).find(|at| !is(*at, u8::is_ascii_uppercase)).unwrap_or(bytes.len());
            parts.push((&text[from..at], false));
            parts.push((&text[at..end], true));
            (from, at) = (end, end);
        }
        at += 1;
    }
    parts.push((&text[from..], false));
    parts.retain(|(part, _)| !part.is_empty());
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_are_those_after_numbers() {
        let letters =
            |text| parts(text).into_iter().filter(|(_, letter)| *letter).map(|(part, _)| part).collect::<Vec<_>>();
        assert_eq!(letters("5A 12AB, 11 times, then [3C (1 Spacer)]"), ["A", "AB", "C"]);
        assert_eq!(letters("5A"), ["A"]);
        assert!(letters("½ in").is_empty());
    }

    #[test]
    fn parts_are_the_whole_text() {
        let text = "½ 5A 1B, 11 times, then 5A";
        assert_eq!(parts(text).iter().map(|(part, _)| *part).collect::<String>(), text);
    }
}
