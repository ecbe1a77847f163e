//! The value behind a key's colon: its quotes, its comment, and what is wrong with it.

use std::ops::Range;

use crate::remark::said::slip::Slip;

/// A line's signs one by one.
pub struct Signs<'a> {
    /// The line.
    pub line: &'a str,
    next: usize,
    comment: Option<usize>,
}

impl<'a> Signs<'a> {
    pub const fn new(line: &'a str) -> Self {
        Self { line, next: 0, comment: None }
    }

    /// The next sign and where it stands.
    pub fn next(&mut self) -> Option<(usize, char)> {
        let at = self.next;
        let sign = self.line.get(at..)?.chars().next()?;
        self.next = at + sign.len_utf8();
        Some((at, sign))
    }

    /// Goes on at a byte.
    pub fn skip(&mut self, to: usize) {
        self.next = to;
        self.comment = None;
    }

    /// Whether a comment begins at a `#`.
    pub fn begins_comment(&mut self, byte: usize) -> bool {
        let begins = self.line[..byte].chars().next_back().is_none_or(|before| before.is_whitespace() || before == ',');
        if begins {
            self.comment = Some(byte);
        }
        begins
    }

    /// Whether a quote opens a text, rather than standing in one.
    pub fn begins_value(&self, byte: usize) -> bool {
        self.line[..byte].trim_end().chars().next_back().is_none_or(|before| ":,[{-".contains(before))
    }

    /// The line without its comment, as far as it was looked at.
    pub fn said(&self) -> &'a str {
        &self.line[..self.comment.unwrap_or(self.line.len())]
    }
}

/// A slip, where it stands, what to take out and what to put there.
pub type ValueMend = (Slip, Range<usize>, Range<usize>, String);

/// A value without the comment behind it.
pub fn said(value: &str) -> &str {
    let from = quote_end(value, 0).unwrap_or_default();
    let comment = value[from..].find(" #").map_or(value.len(), |at| from + at);
    value[..comment].trim_end()
}

/// What is wrong with a value that stands on its line alone, in a group of such depth.
pub fn faults(value: &str, depth: usize) -> Vec<ValueMend> {
    if let Some(length) = bare_colour(value) {
        return vec![(Slip::BareColour, 0..length, 0..length, format!("\"{}\"", &value[..length]))];
    }
    let whole = 0..said(value).len();
    let text = &value[whole.clone()];
    let fault = match text.chars().next() {
        Some(quote @ ('"' | '\'')) => quoted(value, quote),
        Some('&') if !text.starts_with("& ") => None,
        Some(sign @ ('%' | '@' | '`' | '*' | '&' | '!')) => Some((Slip::FirstSign(sign), 0..1, whole, in_quotes(text))),
        _ => text.find(": ").map(|colon| second_colon(text, colon, depth)),
    };
    fault.into_iter().collect()
}

/// What is wrong with a text in quotes.
fn quoted(value: &str, quote: char) -> Option<ValueMend> {
    match quote_end(value, 0) {
        None => {
            let end = bare_colour(&value[1..]).map_or(value.trim_end().len(), |length| 1 + length);
            Some((Slip::OpenQuote, 0..end, end..end, quote.to_string()))
        }
        Some(end) => {
            let rest = value[end..].trim_start();
            let said = value.split(" #").next().unwrap_or(value).trim_end();
            let inside = said.trim_matches(quote);
            (!rest.is_empty() && !rest.starts_with('#'))
                .then(|| (Slip::BehindQuote, 0..said.len(), 0..said.len(), in_quotes(inside)))
        }
    }
}

/// A colon in a text, or a second key behind the value of the first.
fn second_colon(text: &str, colon: usize, depth: usize) -> ValueMend {
    let start = text[..colon].rfind(' ').map_or(0, |space| space + 1);
    let key = &text[start..colon];
    if start > 0
        && key.chars().all(|c| c.is_ascii_lowercase())
        && text[..start].starts_with(|c: char| c.is_ascii_digit() || c == '"')
    {
        let gap = start - 1..start;
        return (Slip::SecondKey(key.to_owned()), start..colon + 1, gap, format!("\n{}", " ".repeat(depth)));
    }
    (Slip::ColonInText, colon..colon + 1, 0..text.len(), in_quotes(text))
}

fn in_quotes(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
}

/// How long a colour is that stands without quotes at the start.
pub fn bare_colour(value: &str) -> Option<usize> {
    let digits = value.strip_prefix('#')?;
    let length = digits.find(|c: char| !c.is_ascii_hexdigit()).unwrap_or(digits.len());
    let ends = digits[length..].chars().next().is_none_or(|next| next.is_whitespace() || ",}]".contains(next));
    (matches!(length, 3 | 6 | 8) && ends).then_some(length + 1)
}

/// One past the quote that closes the one at a byte, on the same line.
pub fn quote_end(line: &str, byte: usize) -> Option<usize> {
    let quote = line.get(byte..)?.chars().next().filter(|c| matches!(c, '"' | '\''))?;
    let mut escaped = false;
    for (at, sign) in line[byte + 1..].char_indices() {
        match sign {
            _ if escaped => escaped = false,
            '\\' if quote == '"' => escaped = true,
            _ if sign == quote => return Some(byte + 1 + at + 1),
            _ => {}
        }
    }
    None
}

/// Where the quote at a byte within brackets is meant to be closed, which it is not: behind a colour, before
/// the next entry or bracket, or at the line's end.
pub fn quote_meant(line: &str, byte: usize) -> usize {
    let inside = &line[byte + 1..];
    let end = match bare_colour(inside) {
        Some(length) => length,
        None => inside.find([',', '}', ']']).unwrap_or(inside.trim_end().len()),
    };
    byte + 1 + end
}
