//! A pattern's text and places in it.

/// A stretch of a source's text, in bytes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
pub struct Place {
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

    /// Whether another place begins in this one.
    #[must_use]
    pub const fn holds(self, other: Self) -> bool {
        self.start <= other.start && other.start < self.end
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

/// The text of a pattern file and its name.
#[derive(Clone, Debug)]
pub struct Source {
    /// The file's name as the user gave it, or `-` for standard input.
    pub name: String,
    text: String,
    line_starts: Vec<usize>,
}

impl Source {
    /// Takes a text and notes where its lines start.
    pub fn new(name: impl Into<String>, text: impl Into<String>) -> Self {
        let text = text.into();
        let after_breaks = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n').map(|(at, _)| at + 1);
        let line_starts = std::iter::once(0).chain(after_breaks).collect();
        Self { name: name.into(), text, line_starts }
    }

    /// The whole text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The text at a place; empty where the place is not in this source.
    #[must_use]
    pub fn slice(&self, place: Place) -> &str {
        self.text.get(place.start..place.end).unwrap_or_default()
    }

    /// Line and column of a byte, both counted from 1, the column in characters.
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
        Place { start: start + at, end: start + at + len }
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
}
