//! Text from outside, made harmless for a terminal: what would move the cursor, change colours or turn
//! the reading direction is written out instead of obeyed.

/// Whether a character does something to a terminal or to the order of its neighbours: control
/// characters, and the directional ones of Unicode Standard Annex 9, section 2 (from memory).
fn acts(c: char) -> bool {
    let directs = matches!(c, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    let breaks = matches!(c, '\u{2028}' | '\u{2029}' | '\u{feff}');
    c.is_control() && c != '\n' || directs || breaks
}

/// A text with such characters as `\u{1b}`; line breaks stay.
#[must_use]
pub fn escaped(text: &str) -> String {
    written(text, |c| c.escape_unicode().to_string())
}

/// A text of one line: line breaks are written out too.
#[must_use]
pub fn on_a_line(text: &str) -> String {
    escaped(text).replace('\n', "\\u{a}")
}

/// JSON with such characters as `\u001b`, which reads the same.
#[must_use]
pub fn in_json(text: &str) -> String {
    written(text, |c| format!("\\u{:04x}", u32::from(c)))
}

fn written(text: &str, instead: impl Fn(char) -> String) -> String {
    let mut shown = String::with_capacity(text.len());
    for c in text.chars() {
        if acts(c) { shown.push_str(&instead(c)) } else { shown.push(c) }
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_acts_is_written_out_and_the_rest_stays() {
        assert_eq!(escaped("a\u{1b}[31mb\r\n\u{202e}ß🙂"), "a\\u{1b}[31mb\\u{d}\n\\u{202e}ß🙂");
        assert_eq!(on_a_line("a\nb"), "a\\u{a}b");
        assert_eq!(in_json("\"\u{7f}\u{2066}\u{9b}\"\n"), "\"\\u007f\\u2066\\u009b\"\n");
    }

    #[test]
    fn json_reads_the_same() {
        let value = serde_json::json!({ "name": "a\u{1b}\u{202e}\u{7f}\t\u{9b}ß" });
        assert_eq!(serde_json::from_str::<serde_json::Value>(&in_json(&value.to_string())).ok(), Some(value));
    }
}
