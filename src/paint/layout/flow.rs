//! Pouring blocks into pages. Lengths are mm of paper.

use crate::geometry::Point;
use crate::paint::mark::Mark;
use crate::paint::style;

use super::table::SetTable;
use super::{Block, Rect, column};

/// Room in mm above a section that begins below another, usually and where all stands close.
const SECTIONS_APART: [f64; 2] = [6.0, 4.0];
/// Share of a page that must be left for a section to begin on it.
const LEAST_LEFT: f64 = 0.2;

/// Tables up to this share of a page are not broken.
const UNBROKEN: f64 = 0.4;

/// A part of a sheet, which may run over several pages or share one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// What it is for: Stringing, Making, …
    pub name: &'static str,
    /// What it shows, in a sentence, for those who cannot see it.
    pub description: String,
}

/// A page as it was poured.
#[derive(Debug, Default)]
pub struct Poured {
    /// The sections that stand on it.
    pub sections: Vec<Section>,
    /// The scales of its drawings, each with what is drawn to it.
    pub scales: Vec<String>,
    /// Whether one of those is actual size, or something is stamped so.
    pub at_actual_size: bool,
    /// What is drawn.
    pub marks: Vec<Mark>,
}

/// Pours blocks into pages of one size, from top to bottom.
pub struct Flow {
    room: Rect,
    pages: Vec<Poured>,
    section: Option<Section>,
    top: f64,
    is_snug: bool,
    /// Whether what it pours is drawn to no scale.
    sketches: bool,
    /// Headings that wait for what they stand above.
    waiting: Vec<Block>,
}

impl Flow {
    /// Starts on a new page with that room.
    #[must_use]
    pub fn new(room: Rect) -> Self {
        Self {
            room,
            pages: vec![Poured::default()],
            section: None,
            top: room.top,
            is_snug: false,
            sketches: false,
            waiting: Vec::new(),
        }
    }

    /// The same with drawings to no scale, though some may happen to be at actual size.
    #[must_use]
    pub fn sketching(self) -> Self {
        Self { sketches: true, ..self }
    }

    /// The same with what it pours closer together.
    #[must_use]
    pub fn snug(self) -> Self {
        Self { is_snug: true, ..self }
    }

    /// A usual room, or one where all stands close.
    #[must_use]
    pub fn room(&self, [usual, close]: [f64; 2]) -> f64 {
        if self.is_snug { close } else { usual }
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

    /// Begins a section, on a new page where little of this one is left.
    pub fn begin(&mut self, section: Section) {
        if self.left() < self.room.height * LEAST_LEFT {
            self.turn();
        }
        self.gap(self.room(SECTIONS_APART));
        self.section = Some(section);
    }

    /// Notes on the page the scale of what was just added, in words, and whether it is actual size.
    pub fn scaled(&mut self, scale: String, actual: bool) {
        let Some(page) = self.pages.last_mut() else { return };
        page.at_actual_size |= actual;
        if !page.scales.contains(&scale) {
            page.scales.push(scale);
        }
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

    /// Adds a table: a short one whole; of a long one the headings stand again on every page that it
    /// runs on to.
    pub fn table(&mut self, table: SetTable) {
        let height = table.height();
        if height > self.left() && height <= self.room.height * UNBROKEN && !self.at_top() {
            self.turn();
        }
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

    /// Adds blocks in two columns, read down the first and then down the second; where they end, both are
    /// as long as the blocks let them.
    pub fn columns(&mut self, mut rest: Vec<Block>, apart: f64) {
        let width = column(self.width(), 2, apart);
        while !rest.is_empty() {
            let height = even(&rest).filter(|height| *height <= self.left()).unwrap_or_else(|| self.left());
            let first = fitting(&rest, height).max(usize::from(self.at_top()));
            if first > 0 {
                let counts = [first, fitting(&rest[first..], height)];
                let here = counts.map(|count| Block { width, ..Block::stack(rest.drain(..count), 0.0) });
                self.add(Block::row(here, apart));
            }
            if !rest.is_empty() {
                self.turn();
            }
        }
    }

    /// A flow that goes on where this one is, to be joined to it or dropped.
    #[must_use]
    pub fn fork(&self) -> Self {
        Self { pages: vec![Poured::default()], section: None, waiting: Vec::new(), ..*self }
    }

    /// Goes on with what a fork of it has poured.
    pub fn join(&mut self, fork: Self) {
        let mut pages = fork.pages.into_iter();
        if let (Some(last), Some(first)) = (self.pages.last_mut(), pages.next()) {
            last.sections.extend(first.sections);
            last.scales.extend(first.scales);
            last.at_actual_size |= first.at_actual_size;
            last.marks.extend(first.marks);
        }
        self.pages.extend(pages);
        self.waiting.extend(fork.waiting);
        (self.section, self.top) = (fork.section, fork.top);
    }

    /// How many pages it takes so far.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.pages.len()
    }

    /// How much of its last page is taken.
    #[must_use]
    pub const fn taken(&self) -> f64 {
        self.top - self.room.top
    }

    /// Whether such a share of its last page is taken.
    #[must_use]
    pub fn fills(&self, share: f64) -> bool {
        self.taken() >= self.room.height * share
    }

    /// Goes on on a new page.
    pub fn turn(&mut self) {
        self.pages.push(Poured::default());
        self.top = self.room.top;
    }

    /// The pages.
    #[must_use]
    pub fn into_pages(mut self) -> Vec<Poured> {
        for waiting in std::mem::take(&mut self.waiting) {
            self.place(waiting);
        }
        self.pages.retain(|page| !page.marks.is_empty());
        self.pages
    }

    fn at_top(&self) -> bool {
        self.top <= self.room.top
    }

    fn place(&mut self, block: Block) {
        let corner = Point::new(self.room.left, self.top);
        self.top += block.height;
        if let Some(page) = self.pages.last_mut() {
            let unsaid = self.section.iter().filter(|section| !page.sections.contains(section));
            page.sections.extend(unsaid.cloned().collect::<Vec<_>>());
            page.at_actual_size |= !self.sketches && stamps_at_actual_size(&block.marks);
            page.marks.extend(block.at(corner));
        }
    }
}

/// Whether something is stamped at actual size.
#[must_use]
pub fn stamps_at_actual_size(marks: &[Mark]) -> bool {
    marks.iter().any(|mark| match mark {
        Mark::Stamp { scale, along, .. } => *scale == 1.0 && *along == 1.0,
        held => stamps_at_actual_size(held.inner()),
    })
}

/// How many of the first blocks stand in a height.
fn fitting(blocks: &[Block], height: f64) -> usize {
    let ends = blocks.iter().scan(0.0, |end, block| {
        *end += block.height;
        Some(*end)
    });
    ends.take_while(|end| *end <= height + style::ROUNDED).count()
}

/// The least height in which blocks stand in two columns; nothing where there are none.
fn even(blocks: &[Block]) -> Option<f64> {
    let height = |blocks: &[Block]| blocks.iter().map(|block| block.height).sum::<f64>();
    let split = |at: usize| height(&blocks[..at]).max(height(&blocks[at..]));
    (1..=blocks.len()).map(split).reduce(f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paint::layout::text::Type;

    #[test]
    fn a_full_page_turns_and_a_heading_goes_with_its_text() {
        let mut flow = Flow::new(Rect::new(0.0, 0.0, 50.0, 20.0));
        let block = || Block::new(10.0, 9.0, Type::SMALL.line("x").marks);
        flow.add(block());
        flow.heading(Block::new(10.0, 4.0, Type::SMALL.line("y").marks));
        flow.add(block());
        let pages = flow.into_pages();
        assert_eq!(pages.iter().map(|page| page.marks.len()).collect::<Vec<_>>(), [1, 2]);
    }

    /// The names of the sections on each page, of two of which the first takes a height.
    fn sections(height: f64) -> Vec<Vec<&'static str>> {
        let mut flow = Flow::new(Rect::new(0.0, 0.0, 50.0, 100.0));
        for (name, height) in [("one", height), ("two", 10.0)] {
            flow.begin(Section { name, description: String::new() });
            flow.add(Block::new(10.0, height, Type::SMALL.line("x").marks));
        }
        let names = |page: Poured| page.sections.iter().map(|section| section.name).collect();
        flow.into_pages().into_iter().map(names).collect()
    }

    #[test]
    fn a_section_begins_where_enough_of_a_page_is_left() {
        assert_eq!(sections(80.0), [vec!["one", "two"]]);
        assert_eq!(sections(80.1), [vec!["one"], vec!["two"]]);
    }

    #[test]
    fn columns_are_read_down_and_evened_where_they_end() {
        let tops = |heights: &[f64], above: f64| {
            let mut flow = Flow::new(Rect::new(0.0, 0.0, 50.0, 100.0));
            flow.add(Block::gap(above));
            let block = |height: &f64| Block { height: *height, ..Type::SMALL.line("x") };
            flow.columns(heights.iter().map(block).collect(), 10.0);
            let at =
                |mark: &Mark| if let Mark::Text(text) = mark { (text.at.x, text.at.y.round()) } else { (0.0, 0.0) };
            let pages = flow.into_pages().into_iter();
            pages.map(|page| page.marks.iter().map(at).collect::<Vec<_>>()).collect::<Vec<_>>()
        };
        let [first, second] = [0.0, 30.0];
        let down = Type::SMALL.baseline();
        let at = |x: f64, y: f64| (x, (y + down).round());
        // 20 and 30 beside 40: no other split is lower.
        assert_eq!(tops(&[20.0, 30.0, 40.0], 0.0), [[at(first, 0.0), at(first, 20.0), at(second, 0.0)]]);
        // Both columns are filled to the page's end before it turns.
        let long = tops(&[60.0, 60.0, 60.0], 30.0);
        assert_eq!(long, [vec![at(first, 30.0), at(second, 30.0)], vec![at(first, 0.0)]]);
        // What is higher than a page stands there all the same.
        assert_eq!(tops(&[120.0], 0.0), [[at(first, 0.0)]]);
    }

    #[test]
    fn a_short_table_stays_whole_and_a_long_one_does_not() {
        let rows = |count: usize, height: f64| {
            let mut flow = Flow::new(Rect::new(0.0, 0.0, 50.0, 100.0));
            let block = Block::new(10.0, height, Type::SMALL.line("x").marks);
            flow.add(Block { height: 70.0, ..block.clone() });
            flow.table(SetTable { heading: None, rows: vec![block; count] });
            flow.into_pages().iter().map(|page| page.marks.len()).collect::<Vec<_>>()
        };
        assert_eq!(rows(4, 10.0), [1, 4]);
        assert_eq!(rows(5, 10.0), [4, 2]);
    }
}
