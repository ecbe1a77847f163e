//! Filling pages from top to bottom: blocks are kept whole, headings stay with what follows them,
//! and a table's header comes again on every page.

use super::layout::{Block, Rect};
use super::mark::Mark;
use super::metrics;
use super::style::Type;
use super::table::{SetTable, Table};
use crate::geometry::Point;

/// Pages being filled, all with the same frame.
///
/// A block that is higher than the frame gets a page of its own and runs over its lower edge:
/// callers break what can be that high.
pub struct Flow {
    frame: Rect,
    pages: Vec<Vec<Mark>>,
    /// Where the next block starts.
    y: f64,
    /// Room to leave before the next block, unless it starts a page.
    gap: f64,
    /// Headings that wait for what they head.
    headings: Vec<Block>,
}

impl Flow {
    /// Starts on the first page, in a frame in mm on the page.
    #[must_use]
    pub fn new(frame: Rect) -> Self {
        Self { frame, pages: vec![Vec::new()], y: frame.y, gap: 0.0, headings: Vec::new() }
    }

    /// Width of the frame.
    #[must_use]
    pub const fn width(&self) -> f64 {
        self.frame.width
    }

    /// Height left on this page.
    #[must_use]
    pub fn left(&self) -> f64 {
        self.frame.bottom() - self.y - self.gap
    }

    /// Leaves room before the next block, unless that starts a page; the larger of two rooms counts.
    pub fn space(&mut self, height: f64) {
        if !self.is_at_top() {
            self.gap = self.gap.max(height);
        }
    }

    /// Adds a block, whole.
    pub fn add(&mut self, block: Block) {
        self.make_room(block.height);
        self.place(block);
    }

    /// Adds a heading, which goes on the same page as what is added next. What is never followed by
    /// anything stands at the end.
    pub fn heading(&mut self, block: Block) {
        self.headings.push(block);
    }

    /// Adds text, broken between lines where a page ends, but never with a single line of a longer
    /// text alone on a page.
    pub fn paragraph(&mut self, text: &str, face: Type) {
        let lines = metrics::wrap(text, face.size, face.weight, self.frame.width);
        let last = lines.len().saturating_sub(2);
        for (index, line) in lines.iter().enumerate() {
            let kept = if index == 0 || index == last { lines.len().min(2) } else { 1 };
            self.make_room(face.leading * kept as f64);
            self.place(Block::line(line, face));
        }
    }

    /// Adds a table as wide as the frame; its rows are kept whole.
    pub fn table(&mut self, table: &Table) {
        let SetTable { header, rows } = table.set(self.frame.width);
        let first = rows.first().map_or(0.0, |row| row.height);
        self.make_room(header.height + first);
        self.place(header.clone());
        for row in rows {
            if row.height > self.left() && self.has_more_than(&header) {
                self.break_page();
                self.place(header.clone());
            }
            self.place(row);
        }
    }

    /// Ends this page, if anything stands on it.
    pub fn break_page(&mut self) {
        if !self.is_at_top() {
            self.pages.push(Vec::new());
            self.y = self.frame.y;
            self.gap = 0.0;
        }
    }

    /// The pages' marks.
    #[must_use]
    pub fn finish(mut self) -> Vec<Vec<Mark>> {
        self.make_room(0.0);
        self.pages
    }

    fn is_at_top(&self) -> bool {
        self.y <= self.frame.y
    }

    /// Whether this page holds more than one thing of that height.
    fn has_more_than(&self, header: &Block) -> bool {
        self.y - self.frame.y > header.height + 1e-9
    }

    /// Goes to a new page unless the waiting headings and a height fit on this one, and sets the
    /// headings.
    fn make_room(&mut self, height: f64) {
        let waiting = std::mem::take(&mut self.headings);
        let heads: f64 = waiting.iter().map(|heading| heading.height).sum();
        if heads + height > self.left() + 1e-9 {
            self.break_page();
        }
        waiting.into_iter().for_each(|heading| self.place(heading));
    }

    fn place(&mut self, block: Block) {
        self.y += std::mem::take(&mut self.gap);
        let height = block.height;
        let marks = block.placed(Point::new(self.frame.x, self.y));
        if let Some(page) = self.pages.last_mut() {
            page.extend(marks);
        }
        self.y += height;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::style::{BODY, HEADING};
    use crate::sheet::table::{Align, Column};

    fn flow(height: f64) -> Flow {
        Flow::new(Rect::new(10.0, 10.0, 100.0, height))
    }

    fn texts(page: &[Mark]) -> Vec<&str> {
        let text = |mark: &'_ Mark| matches!(mark, Mark::Text(_));
        page.iter()
            .filter(|mark| text(mark))
            .map(|mark| if let Mark::Text(text) = mark { text.text.as_str() } else { "" })
            .collect()
    }

    #[test]
    fn blocks_are_kept_whole() {
        let mut flow = flow(20.0);
        for name in ["a", "b", "c"] {
            flow.add(Block { height: 9.0, ..Block::line(name, BODY) });
            flow.space(3.0);
        }
        let pages = flow.finish();
        assert_eq!(pages.len(), 3, "9 + 3 + 9 is more than 20");
    }

    #[test]
    fn a_heading_goes_with_what_follows() {
        let mut flow = flow(20.0);
        flow.add(Block { height: 11.0, ..Block::line("first", BODY) });
        flow.heading(Block::line("Heading", HEADING));
        flow.add(Block::line("text", BODY));
        let pages = flow.finish();
        assert_eq!(texts(&pages[0]), ["first"]);
        assert_eq!(texts(&pages[1]), ["Heading", "text"]);
    }

    #[test]
    fn a_heading_at_the_end_is_not_lost() {
        let mut flow = flow(20.0);
        flow.heading(Block::line("Heading", HEADING));
        assert_eq!(texts(&flow.finish()[0]), ["Heading"]);
    }

    #[test]
    fn tables_repeat_their_header_and_lose_no_row() {
        let mut table = Table::new(vec![Column::new("Name", Align::Left, 1.0)]);
        table.rows = (0..30).map(|i| vec![format!("row {i}").into()]).collect();
        let mut flow = flow(40.0);
        flow.table(&table);
        let pages = flow.finish();
        assert!(pages.len() > 3);
        for page in &pages {
            assert_eq!(texts(page)[0], "Name");
        }
        let rows: Vec<&str> = pages.iter().flat_map(|page| texts(page)).filter(|text| *text != "Name").collect();
        assert_eq!(rows.len(), 30);
    }

    #[test]
    fn long_text_breaks_between_lines_and_leaves_none_alone() {
        let words = "one two three four five six seven eight nine ten ".repeat(20);
        for height in 3..9 {
            let mut flow = flow(f64::from(height) * BODY.leading + 0.1);
            flow.paragraph(&words, BODY);
            let pages = flow.finish();
            assert!(pages.iter().all(|page| page.len() > 1), "{height}");
            assert!(pages.iter().all(|page| page.len() <= height as usize), "{height}");
            let joined = pages.iter().flat_map(|page| texts(page)).collect::<Vec<_>>().join(" ");
            assert_eq!(joined.split_whitespace().count(), 200);
        }
    }
}
