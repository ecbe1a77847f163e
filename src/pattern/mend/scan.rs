//! Looking for slips line by line, by the little of YAML that patterns use: keys with values, lists with
//! dashes, brackets, quotes, comments.

use crate::remark::said::slip::{Slip, closer};
use crate::source::Place;

use super::value::{self, Signs};
use super::{Correction, FoundSlip};

/// Keys of two words and more, which a missing colon or comma would cut short.
const LONG_KEYS: &[&str] = &["neck base", "each side", "both ends", "breadth to depth", "chest tilt"];

/// Every slip of a text, in the order of its lines.
pub fn slips(text: &str) -> Vec<FoundSlip> {
    let mut scan = Scan::default();
    let mut start = 0;
    for line in text.split_inclusive('\n') {
        scan.line(start, line.trim_end_matches(['\n', '\r']));
        start += line.len();
    }
    scan.close_all(text.trim_end().len());
    scan.found
}

/// A bracket that is open.
struct OpenBracket {
    bracket: char,
    at: usize,
    /// Whether a key's value is being written: a group's entry behind its colon.
    in_value: bool,
    /// Where the last thing written in it began.
    entry: usize,
}

/// What the line before left behind.
#[derive(Default)]
struct Before {
    /// How deep it is indented, behind its dashes.
    depth: usize,
    /// Whether it ends in a colon, so that the next may be indented deeper.
    opens: bool,
    tabs: usize,
    /// Where what it says ends, before its comment.
    end: usize,
}

#[derive(Default)]
struct Scan {
    found: Vec<FoundSlip>,
    brackets: Vec<OpenBracket>,
    /// Depth of the line in which the first open bracket stands.
    bracket_depth: usize,
    /// How deep the groups are indented in which the line stands.
    depths: Vec<usize>,
    /// Depth of the key whose text goes on over the lines below it.
    long_text: Option<usize>,
    before: Before,
}

impl Scan {
    fn note(&mut self, slip: Slip, place: std::ops::Range<usize>, cut: std::ops::Range<usize>, put: impl Into<String>) {
        let place = Place { file: 0, start: place.start, end: place.end };
        self.found.push(FoundSlip { slip, place, edit: Correction { cut, put: put.into() } });
    }

    fn line(&mut self, start: usize, line: &str) {
        let body = line.trim_start();
        let depth = line.len() - body.len();
        if self.long_text.is_some_and(|key| body.is_empty() || depth > key) || body.is_empty() || body.starts_with('#')
        {
            return;
        }
        self.long_text = None;
        if line.starts_with("---") || line.starts_with("...") {
            return self.document(start, line);
        }
        let depth = self.untabbed(start, line, depth);
        if !self.brackets.is_empty()
            && depth <= self.bracket_depth
            && (body.starts_with("- ") || key_end(body).is_some())
        {
            self.close_all(self.before.end);
        }
        let at = start + line.len() - body.len();
        if self.brackets.is_empty() { self.block(at, depth, body) } else { self.flow(at, body) }
    }

    /// A line of dashes or dots divides files; at the top it may stand.
    fn document(&mut self, start: usize, line: &str) {
        if self.before.end > 0 {
            self.note(Slip::Document, start..start + line.len(), start..start + line.len(), "");
        }
    }

    /// The depth of a line as it is meant, where tabs indent it.
    fn untabbed(&mut self, start: usize, line: &str, depth: usize) -> usize {
        let tabs = line[..depth].matches('\t').count();
        let meant = match self.before.tabs {
            _ if tabs == 0 => depth,
            0 => self.before.depth + if self.before.opens { 2 } else { 0 },
            before => (self.before.depth + 2 * tabs).saturating_sub(2 * before),
        };
        if tabs > 0 {
            self.note(Slip::Tab { more: 0 }, start..start + depth, start..start + depth, " ".repeat(meant));
        }
        self.before.tabs = tabs;
        meant
    }

    /// A line outside of brackets.
    fn block(&mut self, at: usize, depth: usize, body: &str) {
        let goes_on =
            depth > self.before.depth && !self.before.opens && key_end(body).is_none() && !body.starts_with("- ");
        if goes_on {
            // The text of the line before goes on.
            self.before.end = at + body.len();
            return;
        }
        let depth = self.indented(at, depth);
        let (mut at, mut depth, mut body) = (at, depth, body);
        while let Some(rest) = self.dash(at, body) {
            let step = body.len() - rest.len();
            (at, depth, body) = (at + step, depth + step.max(2), rest);
            self.depths.push(depth);
        }
        self.bracket_depth = depth;
        self.before = Before { depth, opens: true, end: at + body.len(), ..self.before };
        if !body.is_empty() && !body.starts_with('#') {
            self.entry(at, body);
        }
    }

    /// Holds a line against the groups that are open, and gives the depth that is meant.
    fn indented(&mut self, at: usize, depth: usize) -> usize {
        let mut closed = None;
        while self.depths.last().is_some_and(|last| *last > depth) {
            closed = self.depths.pop();
        }
        let last = self.depths.last().copied();
        let meant = match (last, closed) {
            (Some(last), _) if last == depth => depth,
            (None, None) => depth,
            (_, None) if self.before.opens => depth,
            (Some(last), None) => last,
            (_, Some(closed)) => closed,
        };
        if meant != depth {
            self.note(Slip::Indent, at..at + 1, at - depth..at, " ".repeat(meant));
        }
        if self.depths.last() != Some(&meant) {
            self.depths.push(meant);
        }
        meant
    }

    /// What stands behind a list's dash.
    fn dash<'t>(&mut self, at: usize, body: &'t str) -> Option<&'t str> {
        let rest = body.strip_prefix('-')?;
        if rest.is_empty() || rest.starts_with(' ') {
            return Some(rest.trim_start());
        }
        let touches = rest.starts_with(|c: char| c.is_alphabetic() || c == '{' || c == '[');
        touches.then(|| {
            self.note(Slip::NoDashSpace, at..at + 1, at + 1..at + 1, " ");
            rest
        })
    }

    /// A key with its value, or an entry of a list.
    fn entry(&mut self, at: usize, body: &str) {
        if body.starts_with(['[', '{', '"', '\'']) {
            return self.value(at, body);
        }
        match key_end(body) {
            Some(colon) => {
                let rest = &body[colon + 1..];
                let value = rest.trim_start();
                self.value(at + body.len() - value.len(), value);
            }
            None => self.keyless(at, body),
        }
    }

    /// A line without a key: a list's entry, or a key whose colon is forgotten.
    fn keyless(&mut self, at: usize, body: &str) {
        let said = body.split(" #").next().unwrap_or(body).trim_end();
        self.before.opens = false;
        let long = LONG_KEYS.iter().find(|key| said.starts_with(**key)).map(|key| key.len());
        let letters = said.find(|c: char| !c.is_alphanumeric() && c != '_' && c != '-').unwrap_or(said.len());
        let key = long.unwrap_or(letters);
        let (word, rest) = (said[..key].to_owned(), &said[key..]);
        let value = rest.trim_start();
        let behind = at + key;
        match value.chars().next() {
            _ if word.is_empty() || word.starts_with(|c: char| c.is_ascii_digit()) => {}
            Some(':') => {
                self.note(Slip::NoColonSpace(word), at..behind + 1, behind..behind + rest.len() - value.len() + 1, ": ")
            }
            Some('=') => self.note(Slip::Equals(word), at..behind, behind..behind + rest.len() - value.len() + 1, ": "),
            Some(_) => self.note(Slip::NoColon(word), at..behind, behind..behind, ":"),
            None => {
                self.before.opens = true;
                self.note(Slip::NoColon(word), at..behind, behind..behind, ":");
            }
        }
        if let (Some(_), false) = (value.chars().next(), word_is_count(said)) {
            let value = value.trim_start_matches([':', '=']).trim_start();
            self.value(at + said.len() - value.len(), value);
        }
    }

    /// A value outside of brackets, to the end of its line.
    fn value(&mut self, at: usize, value: &str) {
        self.before.opens = value.is_empty() || value.starts_with("# ");
        self.before.end = at + value::said(value).len();
        if value.starts_with(['|', '>']) {
            self.long_text = Some(self.before.depth);
            return;
        }
        if value.starts_with(['[', '{']) {
            return self.flow(at, value);
        }
        for (slip, place, cut, put) in value::faults(value, self.before.depth) {
            self.note(slip, at + place.start..at + place.end, at + cut.start..at + cut.end, put);
        }
    }

    /// What stands in brackets, to the end of its line.
    fn flow(&mut self, at: usize, line: &str) {
        let mut text = Signs::new(line);
        while let Some((byte, sign)) = text.next() {
            if !self.sign(at, line, (byte, sign), &mut text) {
                break;
            }
            if self.brackets.is_empty() {
                let rest = line[byte + sign.len_utf8()..].trim_start();
                self.before.end = at + byte + sign.len_utf8();
                return self.behind(at + line.len() - rest.len(), rest);
            }
        }
        self.before.end = at + text.said().trim_end().len();
        self.before.opens = false;
    }

    /// A sign in brackets; whether it begins no comment.
    fn sign(&mut self, at: usize, line: &str, (byte, sign): (usize, char), text: &mut Signs<'_>) -> bool {
        let here = at + byte;
        match sign {
            '#' if text.begins_comment(byte) => {
                let Some(length) = value::bare_colour(&line[byte..]) else { return false };
                self.colour(here, &line[byte..byte + length]);
                text.skip(byte + length);
            }
            '"' | '\'' if text.begins_value(byte) => self.quoted(at, byte, text),
            '[' | '{' => self.brackets.push(OpenBracket { bracket: sign, at: here, in_value: false, entry: here + 1 }),
            ']' | '}' => self.shut(here, sign),
            ',' | ';' => self.comma(here, sign, &line[byte + 1..]),
            ':' if line[byte + 1..].starts_with([' ', '[', '{', '"']) || byte + 1 == line.len() => {
                self.colon(at, byte, line);
            }
            _ => {}
        }
        true
    }

    /// A colour without its quotation marks, which begins a comment.
    fn colour(&mut self, at: usize, colour: &str) {
        let all = at..at + colour.len();
        self.note(Slip::BareColour, all.clone(), all, format!("\"{colour}\""));
    }

    /// What stands behind the last closing bracket.
    fn behind(&mut self, at: usize, rest: &str) {
        self.before.opens = false;
        if let Some(closing) = rest.chars().next().filter(|c| matches!(c, ']' | '}')) {
            self.note(Slip::ExtraCloser(closing), at..at + 1, at..at + 1, "");
            self.behind(at + 1, &rest[1..]);
        }
    }

    fn quoted(&mut self, at: usize, byte: usize, text: &mut Signs<'_>) {
        match value::quote_end(text.line, byte) {
            Some(end) => text.skip(end),
            None => {
                let end = value::quote_meant(text.line, byte);
                let quote = &text.line[byte..=byte];
                self.note(Slip::OpenQuote, at + byte..at + end, at + end..at + end, quote);
                text.skip(end);
            }
        }
    }

    fn shut(&mut self, here: usize, sign: char) {
        let Some(open) = self.brackets.pop() else { return };
        let wanted = closer(open.bracket);
        if wanted == sign {
            return;
        }
        // The bracket before it may be the one that is meant.
        if self.brackets.last().is_some_and(|outer| closer(outer.bracket) == sign) {
            self.note(Slip::Unclosed(open.bracket), open.at..open.at + 1, here..here, wanted);
            self.brackets.pop();
        } else {
            self.note(Slip::WrongCloser(sign, wanted), here..here + 1, here..here + 1, wanted);
        }
    }

    fn comma(&mut self, here: usize, sign: char, rest: &str) {
        if sign == ';' {
            self.note(Slip::Semicolon, here..here + 1, here..here + 1, ",");
        }
        if rest.trim_start().starts_with(',') {
            self.note(Slip::TwoCommas, here..here + 1, here..here + 1, "");
        }
        if let Some(open) = self.brackets.last_mut() {
            (open.in_value, open.entry) = (false, here + 1);
        }
    }

    /// A colon in a group: the second of an entry lacks a comma before its key.
    fn colon(&mut self, at: usize, byte: usize, line: &str) {
        let Some(open) = self.brackets.last_mut() else { return };
        if !open.in_value {
            (open.in_value, open.entry) = (true, at + byte + 1);
            return;
        }
        let from = open.entry.saturating_sub(at).min(byte);
        let before = line[from..byte].trim_end();
        open.entry = at + byte + 1;
        let word = before.rfind(' ').map_or(0, |space| space + 1);
        let long = LONG_KEYS.iter().find(|key| before.ends_with(**key)).map(|key| before.len() - key.len());
        let word = long.unwrap_or(word);
        let start = at + from + word;
        let gap = before[..word].len() - before[..word].trim_end().len();
        if open.bracket == '{' && !before.contains(['[', '{']) {
            self.note(Slip::NoComma(before[word..].to_owned()), start..at + byte, start - gap..start, ", ");
        }
    }

    /// Closes all brackets that are open where something else begins.
    fn close_all(&mut self, end: usize) {
        while let Some(open) = self.brackets.pop() {
            self.note(Slip::Unclosed(open.bracket), open.at..open.at + 1, end..end, closer(open.bracket));
        }
    }
}

/// Where a key's colon stands in a line, outside of quotes and brackets.
fn key_end(body: &str) -> Option<usize> {
    let mut text = Signs::new(body);
    while let Some((byte, sign)) = text.next() {
        match sign {
            '"' | '\'' if text.begins_value(byte) => text.skip(value::quote_end(body, byte).unwrap_or(body.len())),
            '[' | '{' | ',' => return None,
            '#' if text.begins_comment(byte) => return None,
            ':' if body[byte + 1..].starts_with([' ', '\t']) || byte + 1 == body.len() => return Some(byte),
            _ => {}
        }
    }
    None
}

/// Whether a list's entry is just so many of something.
fn word_is_count(said: &str) -> bool {
    said.starts_with(|c: char| c.is_ascii_digit())
}
