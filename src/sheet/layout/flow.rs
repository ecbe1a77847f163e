//! Pouring blocks into pages.

use crate::geometry::Point;
use crate::sheet::mark::Mark;

use super::table::SetTable;
use super::{Block, Rect};

/// Pours blocks into pages of one size, from top to bottom.
pub struct Flow {
    room: Rect,
    pages: Vec<Vec<Mark>>,
    top: f64,
    /// Headings that wait for what they stand above.
    waiting: Vec<Block>,
}

impl Flow {
    /// Starts on a new page with that room.
    #[must_use]
    pub fn new(room: Rect) -> Self {
        Self { room, pages: vec![Vec::new()], top: room.top, waiting: Vec::new() }
    }

    /// Room that is left on the page.
    #[must_use]
    pub fn left(&self) -> f64 {
        let waiting: f64 = self.waiting.iter().map(|block| block.height).sum();
        self.room.bottom() - self.top - waiting
    }

    /// Width of the pages' room.
    #[must_use]
    pub const fn width(&self) -> f64 {
        self.room.width
    }

    /// Adds a heading, which stays with what comes next.
    pub fn heading(&mut self, block: Block) {
        self.waiting.push(block);
    }

    /// Adds a block, on a new page where this one has no room for it.
    pub fn add(&mut self, block: Block) {
        if block.height > self.left() && !self.at_top() {
            self.turn();
        }
        for waiting in std::mem::take(&mut self.waiting) {
            self.place(waiting);
        }
        self.place(block);
    }

    /// Adds empty room, which a page's end swallows.
    pub fn gap(&mut self, height: f64) {
        if !self.at_top() {
            self.top = (self.top + height).min(self.room.bottom());
        }
    }

    /// Adds a table; its headings stand again on every page that it runs on to.
    pub fn table(&mut self, table: SetTable) {
        let headed =
            |block: Block, heading: Option<&Block>| Block::stack(heading.cloned().into_iter().chain([block]), 0.0);
        for (index, row) in table.rows.into_iter().enumerate() {
            let turns = row.height > self.left() && !self.at_top();
            if turns {
                self.turn();
            }
            self.add(headed(row, table.heading.as_ref().filter(|_| index == 0 || turns)));
        }
    }

    /// Goes on on a new page.
    pub fn turn(&mut self) {
        self.pages.push(Vec::new());
        self.top = self.room.top;
    }

    /// The pages' marks.
    #[must_use]
    pub fn into_pages(mut self) -> Vec<Vec<Mark>> {
        for waiting in std::mem::take(&mut self.waiting) {
            self.place(waiting);
        }
        self.pages.retain(|page| !page.is_empty());
        self.pages
    }

    fn at_top(&self) -> bool {
        self.top <= self.room.top
    }

    fn place(&mut self, block: Block) {
        let corner = Point::new(self.room.left, self.top);
        self.top += block.height;
        if let Some(page) = self.pages.last_mut() {
            page.extend(block.at(corner));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::layout::text::Type;

    #[test]
    fn a_full_page_turns_and_a_heading_goes_with_its_text() {
        let mut flow = Flow::new(Rect::new(0.0, 0.0, 50.0, 20.0));
        let block = || Block::new(10.0, 9.0, Type::SMALL.line("x").marks);
        flow.add(block());
        flow.heading(Block::new(10.0, 4.0, Type::SMALL.line("y").marks));
        flow.add(block());
        let pages = flow.into_pages();
        assert_eq!(pages.iter().map(Vec::len).collect::<Vec<_>>(), [1, 2]);
    }
}
