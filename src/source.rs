//! A pattern's text with those of its shelves, and places in them.

/// A stretch of the text of one of a source's files, in bytes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
pub struct Place {
    /// The file: 0 is the pattern, and its shelves count from 1.
    #[serde(default)]
    pub file: u16,
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Place {
    /// Whether nothing stands there: the place of what is not written.
    #[must_use]
    pub const fn is_nowhere(self) -> bool {
        self.end == 0
    }

    /// Whether it stands on a shelf.
    #[must_use]
    pub const fn is_shelved(self) -> bool {
        self.file > 0
    }

    /// Whether another place begins in this one.
    #[must_use]
    pub const fn holds(self, other: Self) -> bool {
        self.file == other.file && self.start <= other.start && other.start < self.end
    }
}

/// A value with the place where the pattern says it.
#[derive(Clone, Debug, PartialEq)]
pub struct At<T> {
    /// What was written.
    pub value: T,
    /// Where.
    pub place: Place,
}

impl<T> At<T> {
    /// Puts a value at a place.
    pub const fn new(value: T, place: Place) -> Self {
        Self { value, place }
    }
}

/// The text of a pattern file and its name, with the shelves that are read beside it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// The file's name as the user gave it, or `-` for standard input.
    pub name: String,
    text: String,
    line_starts: Vec<usize>,
    /// Which of a source's files it is.
    file: u16,
    shelves: Vec<Shelf>,
}

/// A shelf that is read beside a pattern.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shelf {
    /// What the pattern calls it; nothing where it does not name it.
    pub called: Option<String>,
    /// Its text, or why that cannot be read.
    pub read: Result<Source, String>,
}

impl Source {
    /// Takes a text and notes where its lines start.
    pub fn new(name: impl Into<String>, text: impl Into<String>) -> Self {
        let text = text.into();
        let after_breaks = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n').map(|(at, _)| at + 1);
        let line_starts = std::iter::once(0).chain(after_breaks).collect();
        Self { name: name.into(), text, line_starts, file: 0, shelves: Vec::new() }
    }

    /// Puts a shelf beside the pattern, after those that are there: its text, or why that cannot be read.
    /// Reading files is left to whoever calls.
    #[must_use]
    pub fn with_shelf(mut self, called: Option<String>, read: Result<Self, String>) -> Self {
        let file = u16::try_from(self.shelves.len() + 1).unwrap_or(u16::MAX);
        self.shelves.push(Shelf { called, read: read.map(|shelf| Self { file, ..shelf }) });
        self
    }

    /// The shelves beside the pattern, in their order.
    #[must_use]
    pub fn shelves(&self) -> &[Shelf] {
        &self.shelves
    }

    /// The pattern's own file, then those of the shelves that could be read.
    pub fn files(&self) -> impl Iterator<Item = &Self> {
        std::iter::once(self).chain(self.shelves.iter().filter_map(|shelf| shelf.read.as_ref().ok()))
    }

    /// The file in which a place stands.
    #[must_use]
    pub fn of(&self, place: Place) -> &Self {
        self.files().find(|file| file.file == place.file).unwrap_or(self)
    }

    /// Which of a source's files it is: 0 is the pattern.
    #[must_use]
    pub const fn file(&self) -> u16 {
        self.file
    }

    /// The whole text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The text at a place; empty where the place is not in this source.
    #[must_use]
    pub fn slice(&self, place: Place) -> &str {
        self.of(place).text.get(place.start..place.end).unwrap_or_default()
    }

    /// Line and column at which a place starts, in its own file.
    #[must_use]
    pub fn start_of(&self, place: Place) -> (usize, usize) {
        self.of(place).line_column(place.start)
    }

    /// Line and column of a byte of this file, both counted from 1, the column in characters.
    #[must_use]
    pub fn line_column(&self, byte: usize) -> (usize, usize) {
        let line = self.line_starts.partition_point(|start| *start <= byte).max(1);
        let start = self.line_starts[line - 1];
        let before = self.text.get(start..byte.min(self.text.len())).unwrap_or_default();
        (line, before.chars().count() + 1)
    }

    /// The place of one character given by line and column, both counted from 1.
    #[must_use]
    pub fn place_at(&self, line: usize, column: usize) -> Place {
        let start = self.line_starts.get(line.saturating_sub(1)).copied().unwrap_or(self.text.len());
        let rest = &self.text[start..];
        let ahead = rest.char_indices().nth(column.saturating_sub(1));
        let (at, len) = ahead.map_or((rest.len(), 0), |(at, c)| (at, c.len_utf8()));
        Place { file: self.file, start: start + at, end: start + at + len }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_columns_count_characters_from_one() {
        let source = Source::new("a", "eins\nzwölf ½ x\n");
        assert_eq!(source.line_column(0), (1, 1));
        let place = source.place_at(2, 9);
        assert_eq!(source.slice(place), "x");
        assert_eq!(source.line_column(place.start), (2, 9));
        assert_eq!(source.place_at(99, 1).start, source.text().len());
    }

    #[test]
    fn a_place_on_a_shelf_is_found_in_its_own_file() {
        let shelf = |text: &str| Ok(Source::new("shelf.yaml", text));
        let source = Source::new("a.yaml", "abc\n").with_shelf(None, Err("gone".to_owned()));
        let source = source.with_shelf(Some("shelf.yaml".to_owned()), shelf("x: 1\ny: 2\n"));
        let place = Place { file: 2, start: 5, end: 9 };
        assert_eq!((source.slice(place), source.start_of(place)), ("y: 2", (2, 1)));
        assert_eq!(source.of(place).name, "shelf.yaml");
        assert!(place.is_shelved() && !Place { file: 0, ..place }.holds(place));
        assert_eq!(source.files().count(), 2);
    }
}
