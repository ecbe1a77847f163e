//! Where a place stands among a text's keys, whether or not the text can be read.
//!
//! A small part of YAML is enough: keys by their indentation, dashes, groups and lists in brackets, quotes and
//! comments. What is odd is passed over, never refused.

use crate::source::{Place, Source};

/// A key and the keys that it stands under, from the top; lists leave no trace.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyPath {
    /// The keys above it.
    pub path: Vec<String>,
    /// The key.
    pub key: String,
    /// Where it stands.
    pub place: Place,
}

/// Whether a key or a value stands at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// A key of a group.
    Key,
    /// The value of the path's last key, or one of its list.
    Value,
    /// The beginning of a list's entry, a value or a group's first key.
    Either,
    /// A note for people.
    Comment,
}

/// A place among a text's keys.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyPlace {
    /// The keys above it; for a value with its own key.
    pub path: Vec<String>,
    /// What stands there.
    pub role: Standing,
    /// The word that stands there, without quotes and a run's count; empty where none does.
    pub word: Place,
}

/// Signs that part words in brackets.
const PARTING: &[char] = &['[', ']', '{', '}', ','];

/// A text's keys, in order.
pub fn keys(text: &str) -> Vec<KeyPath> {
    let mut scanner = Scanner::new(text);
    scanner.run(text.len());
    scanner.keys
}

/// Every key of a pattern and its shelves, the pattern's own first.
pub fn keys_of(source: &Source) -> impl Iterator<Item = KeyPath> {
    let of = |file: &Source| {
        let at = |key: KeyPath| KeyPath { place: Place { file: file.file(), ..key.place }, ..key };
        keys(file.text()).into_iter().map(at).collect::<Vec<_>>()
    };
    source.files().flat_map(of)
}

/// What stands at a byte.
pub fn spot(text: &str, at: usize) -> KeyPlace {
    let at = (0..=at.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
    let start = word_start(text, at);
    let mut scanner = Scanner::new(text);
    scanner.run(start);
    scanner.spot(Place { file: 0, start, end: word_end(text, at) })
}

/// Where the word about a byte begins: behind a sign that parts words, a dash or a run's count.
fn word_start(text: &str, at: usize) -> usize {
    let line = text[..at].rfind('\n').map_or(0, |at| at + 1);
    let before = &text[line..at];
    let parted = before.rfind(PARTING).map_or(0, |at| at + 1);
    let colon = before.rfind(": ").map_or(0, |at| at + 2);
    let from = parted.max(colon);
    let mut rest = before[from..].trim_start();
    while let Some(behind) = rest.strip_prefix("- ") {
        rest = behind.trim_start();
    }
    rest = rest.trim_start_matches(['"', '\'']);
    let bare = rest.trim_start_matches(|sign: char| sign.is_ascii_digit());
    if bare.len() < rest.len()
        && let Some(id) = bare.strip_prefix(' ')
    {
        rest = id.trim_start();
    }
    at - rest.len()
}

fn word_end(text: &str, at: usize) -> usize {
    let rest = &text[at..];
    let line = rest.find('\n').unwrap_or(rest.len());
    let stop = rest[..line].find(PARTING).unwrap_or(line);
    let stop = rest[..stop].find(": ").map_or(stop, |at| at.min(stop));
    let stop = rest[..stop].find(" #").map_or(stop, |at| at.min(stop));
    at + rest[..stop].trim_end().trim_end_matches([':', '"', '\'']).len()
}

/// A group or list in brackets.
struct Bracket {
    is_group: bool,
    /// The key whose value is read.
    key: Option<String>,
}

/// Walks through a text, keeping the keys above the place it has come to.
struct Scanner<'a> {
    text: &'a str,
    /// Keys by the columns they stand in, from the top.
    block: Vec<(usize, String)>,
    brackets: Vec<Bracket>,
    /// Whether the line that is read has its key behind it.
    valued: bool,
    /// Whether the line that is read begins with a dash.
    dashed: bool,
    in_comment: bool,
    keys: Vec<KeyPath>,
}

impl<'a> Scanner<'a> {
    const fn new(text: &'a str) -> Self {
        Self {
            text,
            block: Vec::new(),
            brackets: Vec::new(),
            valued: false,
            dashed: false,
            in_comment: false,
            keys: Vec::new(),
        }
    }

    /// Reads to a byte, which may stand in a line.
    fn run(&mut self, end: usize) {
        let mut start = 0;
        for line in self.text.split_inclusive('\n') {
            if start > end {
                break;
            }
            let stop = (start + line.len()).min(end);
            let whole = start + line.len() <= end;
            self.line(start, stop);
            start += line.len();
            if !whole {
                break;
            }
        }
        if self.text[..end].ends_with('\n') && end == self.text.len() {
            self.line(end, end);
        }
    }

    /// Reads a line as far as a byte.
    fn line(&mut self, start: usize, stop: usize) {
        (self.valued, self.dashed, self.in_comment) = (false, false, false);
        let mut at = start;
        if self.brackets.is_empty() {
            at = self.indented(start, stop);
        }
        self.inline(at, stop);
    }

    /// Reads indentation, dashes and the line's own key; says where the rest begins.
    fn indented(&mut self, start: usize, stop: usize) -> usize {
        let line = &self.text[start..stop];
        let mut content = line.trim_start_matches(' ');
        if content.starts_with('#')
            || content.trim().is_empty()
                && stop < self.text.len()
                && self.text[stop..].starts_with('\n')
                && !line.ends_with(' ')
                && !line.is_empty()
        {
            return stop - content.len();
        }
        while let Some(rest) = content.strip_prefix("- ") {
            self.dashed = true;
            content = rest.trim_start_matches(' ');
        }
        let column = line.len() - content.len();
        if !line.trim_end_matches(['\n', '\r']).is_empty() || stop == start {
            self.block.retain(|(indent, _)| *indent < column.max(usize::from(self.dashed)));
        }
        let from = stop - content.len();
        let Some((key, behind)) = block_key(content) else { return from };
        self.found(key, from);
        self.block.push((column, key.trim_matches(['"', '\'']).to_owned()));
        self.valued = true;
        from + behind
    }

    /// Reads what stands in a line: brackets, quotes, keys in brackets, a comment.
    fn inline(&mut self, from: usize, stop: usize) {
        let (mut word, mut quote) = (from, None);
        let rest = &self.text[from..stop];
        for (offset, sign) in rest.char_indices() {
            let at = from + offset;
            match quote {
                Some(open) => quote = Some(open).filter(|open| sign != *open),
                None if matches!(sign, '"' | '\'') && self.text[word..at].trim().is_empty() => quote = Some(sign),
                None if sign == '#' && (at == from || self.text[..at].ends_with([' ', '\n'])) => {
                    self.in_comment = true;
                    return;
                }
                None if self.ends_word(sign, word, at) => word = at + 1,
                None => {}
            }
        }
    }

    /// Reads a sign that ends the word before it; whether it is one.
    fn ends_word(&mut self, sign: char, word: usize, at: usize) -> bool {
        match sign {
            '[' | '{' => self.brackets.push(Bracket { is_group: sign == '{', key: None }),
            ']' | '}' => self.brackets.truncate(self.brackets.len().saturating_sub(1)),
            ',' => self.brackets.last_mut().into_iter().for_each(|bracket| bracket.key = None),
            ':' if self.text[at + 1..].starts_with([' ', '\n']) => self.bracket_key(word, at),
            _ => return false,
        }
        true
    }

    fn bracket_key(&mut self, word: usize, at: usize) {
        if self.brackets.last().is_none_or(|bracket| !bracket.is_group) {
            return;
        }
        let written = &self.text[word..at];
        let key = written.trim();
        self.found(key, word + written.len() - written.trim_start().len());
        if let Some(bracket) = self.brackets.last_mut() {
            bracket.key = Some(key.trim_matches(['"', '\'']).to_owned());
        }
    }

    fn found(&mut self, key: &str, start: usize) {
        let place = Place { file: 0, start, end: start + key.len() };
        self.keys.push(KeyPath { path: self.path(), key: key.trim_matches(['"', '\'']).to_owned(), place });
    }

    fn path(&self) -> Vec<String> {
        let block = self.block.iter().map(|(_, key)| key.clone());
        block.chain(self.brackets.iter().filter_map(|bracket| bracket.key.clone())).collect()
    }

    fn spot(&self, word: Place) -> KeyPlace {
        let role = match self.brackets.last() {
            _ if self.in_comment => Standing::Comment,
            Some(Bracket { is_group: true, key: None }) => Standing::Key,
            Some(_) => Standing::Value,
            None if self.valued => Standing::Value,
            None if self.dashed => Standing::Either,
            None => Standing::Key,
        };
        KeyPlace { path: self.path(), role, word }
    }
}

/// A line's own key, and where what follows its colon begins.
fn block_key(content: &str) -> Option<(&str, usize)> {
    if content.starts_with(['[', '{', '#']) {
        return None;
    }
    let bare = content.trim_end_matches(['\n', '\r']);
    let at = bare.find(": ").or_else(|| bare.ends_with(':').then(|| bare.len() - 1))?;
    let is_key = !bare[..at].contains(['[', '{', ',']) && !bare[..at].contains(" #");
    is_key.then_some((&bare[..at], at + 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "festoon: 1
beads:
  reed:   # green: a note
    shape: round
  mist: { shape: bicone, size: 4 mm, sold: { by: each } }
strands:
  - name: one
    cord: wire
    beads:
      - { repeat: 3, of: [4 mist, reed] }
      - 2 reed
    each side: [hook,
      ring]
";

    fn at(before: &str, behind: &str) -> KeyPlace {
        let start = TEXT.find(&format!("{before}{behind}")).unwrap_or_else(|| panic!("{before}|{behind}"));
        spot(TEXT, start + before.len())
    }

    #[test]
    fn places_know_the_keys_above_them() {
        let check = |before: &str, behind: &str, path: &[&str], role: Standing, word: &str| {
            let spot = at(before, behind);
            let found = (spot.path.iter().map(String::as_str).collect::<Vec<_>>(), spot.role);
            assert_eq!(found, (path.to_vec(), role), "{before}|{behind}");
            assert_eq!(&TEXT[spot.word.start..spot.word.end], word, "{before}|{behind}");
        };
        check("shape: ro", "und", &["beads", "reed", "shape"], Standing::Value, "round");
        check("    sha", "pe: round", &["beads", "reed"], Standing::Key, "shape");
        check("mist: { sha", "pe: bi", &["beads", "mist"], Standing::Key, "shape");
        check("shape: bi", "cone", &["beads", "mist", "shape"], Standing::Value, "bicone");
        check("sold: { by: ea", "ch", &["beads", "mist", "sold", "by"], Standing::Value, "each");
        check("cord: wi", "re", &["strands", "cord"], Standing::Value, "wire");
        check("of: [4 mi", "st", &["strands", "beads", "of"], Standing::Value, "mist");
        check("{ rep", "eat: 3", &["strands", "beads"], Standing::Key, "repeat");
        check("- 2 re", "ed", &["strands", "beads"], Standing::Either, "reed");
        check("- na", "me: one", &["strands"], Standing::Either, "name");
        check("      ri", "ng]", &["strands", "each side"], Standing::Value, "ring");
        check("fest", "oon: 1", &[], Standing::Key, "festoon");
        assert_eq!(at("green: a ", "note").role, Standing::Comment);
    }

    #[test]
    fn keys_are_found_with_their_paths() {
        let keys = keys(TEXT);
        let under = |path: &[&str]| -> Vec<&str> {
            keys.iter().filter(|key| key.path == path).map(|key| key.key.as_str()).collect()
        };
        assert_eq!(under(&["beads"]), ["reed", "mist"]);
        assert_eq!(under(&["strands"]), ["name", "cord", "beads", "each side"]);
        assert!(keys.iter().all(|key| TEXT[key.place.start..key.place.end] == key.key));
    }

    #[test]
    fn new_lines_stand_under_the_keys_that_their_column_says() {
        let end = |text: &str| spot(text, text.len());
        assert_eq!(end("beads:\n  reed:\n    ").path, ["beads", "reed"]);
        assert_eq!(end("beads:\n  reed:\n    size: 4 mm\n  ").path, ["beads"]);
        assert_eq!(end("beads:\n  reed: { size: 4 mm }\n").path, Vec::<String>::new());
        assert_eq!(end("beads:\n  reed: { size: 4 mm, ").role, Standing::Key);
        assert_eq!(end("strands:\n  - cord: ").path, ["strands", "cord"]);
    }

    #[test]
    fn any_text_and_place_can_be_scanned() {
        for text in ["", "\n", "-", "- - [", "a: [}{,: \"", "\"", "ü: ½\n  - { ß: '", "#", "a:\n#", ":", ": "] {
            for at in 0..=text.len() + 1 {
                let spot = spot(text, at);
                assert!(text.get(spot.word.start..spot.word.end).is_some(), "{text:?} at {at}: {spot:?}");
            }
            keys(text);
        }
    }
}
