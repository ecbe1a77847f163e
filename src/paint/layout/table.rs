//! Tables: columns as wide as their contents, cells that wrap, thin rules, repeated headings. Lengths are mm of paper.

use crate::geometry::Point;
use crate::paint::mark::{Mark, Role};
use crate::paint::{outline, style};

use super::Block;
use super::text::Type;

/// Room between columns, in mm.
const COLUMN_GAP: f64 = 4.0;
/// Least width in mm in which words are wrapped.
const LEAST_WRAPPED: f64 = 12.0;
/// Room in mm between words and what more is said in their line.
const MORE_GAP: f64 = 2.2;
/// Room in mm between a small drawing and the words beside it.
const MARK_GAP: f64 = 1.2;
/// Room in mm above and below a row's contents.
const ROW_PAD: f64 = 0.55;
/// Share of a table that columns that wrap have at least, where the others take it all.
const LEAST_WRAPPING: f64 = 0.2;
/// What a column is wider than its words, in mm, so that no rounding wraps them.
const SPARE: f64 = 0.01;

/// Where a column's cells stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// At the left.
    Left,
    /// In the middle.
    Middle,
    /// At the right, as numbers do.
    Right,
}

impl Align {
    /// The share of what room is left beside something that stands before it.
    const fn share(self) -> f64 {
        match self {
            Self::Left => 0.0,
            Self::Middle => 0.5,
            Self::Right => 1.0,
        }
    }
}

/// A column.
#[derive(Clone, Debug)]
pub struct Column {
    heading: String,
    align: Align,
    wraps: bool,
}

impl Column {
    /// A column as wide as its widest cell.
    #[must_use]
    pub fn new(heading: &str, align: Align) -> Self {
        Self { heading: heading.to_owned(), align, wraps: false }
    }

    /// A column that takes the room that the others leave, its texts wrapped: the names of the rows.
    #[must_use]
    pub fn wrapping(heading: &str) -> Self {
        Self { heading: heading.to_owned(), align: Align::Left, wraps: true }
    }

    /// What its cell is in a row.
    fn role(&self, row: &Role) -> Role {
        if self.wraps && *row == Role::Row { Role::RowName } else { Role::Cell }
    }
}

/// What stands in a cell.
#[derive(Clone, Debug)]
pub enum Cell {
    /// Words in a type.
    Text(String, Type),
    /// Words, and more in tiny type: beside them where there is room for it, else below.
    Double(String, String),
    /// A small drawing, and words beside it.
    Marked(Block, String),
    /// A drawing.
    Drawing(Block),
}

impl Cell {
    /// Words in the type of tables.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into(), Type::SMALL)
    }

    /// Words that are looked for.
    pub fn strong(text: impl Into<String>) -> Self {
        Self::Text(text.into(), Type::SMALL_STRONG)
    }

    /// Width without wrapping.
    fn width(&self) -> f64 {
        match self {
            Self::Text(text, face) => face.width(text),
            Self::Double(text, more) => Type::SMALL.width(text) + MORE_GAP + Type::TINY.width(more),
            Self::Marked(mark, text) => mark.width + MARK_GAP + Type::SMALL.width(text),
            Self::Drawing(block) => block.width,
        }
    }

    /// Width below which it is not wrapped but broken.
    fn least(&self) -> f64 {
        match self {
            Self::Text(text, face) => face.widest(text),
            Self::Double(text, more) => Type::SMALL.widest(text).max(Type::TINY.widest(more)),
            Self::Marked(mark, text) => mark.width + MARK_GAP + Type::SMALL.widest(text),
            Self::Drawing(block) => block.width,
        }
    }

    fn block(&self, width: f64, align: Align) -> Block {
        match self {
            Self::Text(text, face) => face.aligned(text, width, align.share()).in_role(Role::Paragraph),
            Self::Double(text, more) if self.width() <= width => {
                let lower = Type::SMALL.baseline() - Type::TINY.baseline();
                let more = Block::stack([Block::gap(lower), Type::TINY.line(more)], 0.0);
                Block::row([Type::SMALL.line(text), more], MORE_GAP)
            }
            Self::Double(text, more) => {
                Block::stack([Type::SMALL.paragraph(text, width), Type::TINY.paragraph(more, width)], 0.0)
            }
            Self::Marked(mark, text) => {
                let above = Block::gap((Type::SMALL.line_height() - mark.height) / 2.0);
                let words = Type::SMALL.paragraph(text, width - mark.width - MARK_GAP);
                Block::row([Block::stack([above, mark.clone()], 0.0), words], MARK_GAP)
            }
            Self::Drawing(block) => block.clone(),
        }
    }
}

/// A table.
#[derive(Clone, Debug)]
pub struct Table {
    columns: Vec<Column>,
    rows: Vec<Vec<Cell>>,
}

/// A table set to a width: its heading and its rows.
#[derive(Clone, Debug)]
pub struct SetTable {
    /// The headings with the rule below them; absent where no column has one.
    pub heading: Option<Block>,
    /// The rows, each with the rule below it.
    pub rows: Vec<Block>,
}

impl Table {
    /// A table without rows.
    #[must_use]
    pub const fn new(columns: Vec<Column>) -> Self {
        Self { columns, rows: Vec::new() }
    }

    /// Adds a row, a cell a column.
    pub fn push(&mut self, cells: Vec<Cell>) {
        self.rows.push(cells);
    }

    /// Sets the table to a width.
    #[must_use]
    pub fn set(&self, width: f64) -> SetTable {
        let columns = self.widths(width);
        let heading = self.columns.iter().any(|column| !column.heading.is_empty()).then(|| {
            let quiet = Type::TINY;
            let cells = self.columns.iter().map(|column| Cell::Text(column.heading.clone(), quiet)).collect::<Vec<_>>();
            self.row(&cells, &columns, width, Role::Headings)
        });
        let rows = self.rows.iter().map(|cells| self.row(cells, &columns, width, Role::Row)).collect();
        SetTable { heading, rows }
    }

    /// Sets the table as wide as its texts are without wrapping, so that a row's cells stand near one
    /// another, but to a width at the most.
    #[must_use]
    pub fn snug(&self, most: f64) -> SetTable {
        let gaps = COLUMN_GAP * self.columns.len().saturating_sub(1) as f64;
        let natural = (0..self.columns.len()).map(|at| self.natural_width(at)).sum::<f64>() + gaps;
        self.set(natural.min(most))
    }

    /// Whether all columns that do not wrap have their width, and something is left for those that do.
    #[must_use]
    pub fn fits(&self, width: f64) -> bool {
        let least = |at: usize| if self.columns[at].wraps { LEAST_WRAPPED } else { self.natural_width(at) };
        let gaps = COLUMN_GAP * self.columns.len().saturating_sub(1) as f64;
        (0..self.columns.len()).map(least).sum::<f64>() + gaps <= width
    }

    /// Widths of the columns: as their cells need; wrapping columns share what is left. Where there is too little, all give
    /// of what they are wider than their longest words.
    fn widths(&self, width: f64) -> Vec<f64> {
        let natural: Vec<f64> = (0..self.columns.len()).map(|at| self.natural_width(at)).collect();
        let gaps = COLUMN_GAP * (self.columns.len().saturating_sub(1)) as f64;
        let wraps = |at: &usize| self.columns[*at].wraps;
        let fixed: f64 = (0..natural.len()).filter(|at| !wraps(at)).map(|at| natural[at]).sum();
        let wrapping: f64 = (0..natural.len()).filter(wraps).map(|at| natural[at]).sum();
        let least: f64 = (0..natural.len()).filter(wraps).map(|at| self.least_width(at)).sum();
        let room = (width - gaps - fixed).max(wrapping.min(width * LEAST_WRAPPING)).max(least);
        let share =
            |at: usize| if wraps(&at) { natural[at] / wrapping.max(style::ROUNDED) * room } else { natural[at] };
        let widths: Vec<f64> = (0..natural.len()).map(share).collect();
        self.squeezed(&widths, width - gaps)
    }

    /// Widths that a room allows: none is less than its column's longest word, or else those that wrap break words,
    /// or else all do.
    fn squeezed(&self, widths: &[f64], room: f64) -> Vec<f64> {
        let least: Vec<f64> = (0..widths.len()).map(|at| self.least_width(at).min(widths[at])).collect();
        let broken = |(column, least): (&Column, &f64)| if column.wraps { least.min(LEAST_WRAPPED) } else { *least };
        let broken: Vec<f64> = self.columns.iter().zip(&least).map(broken).collect();
        let widths = between(&between(widths, &least, room), &broken, room);
        let squeeze = (room / widths.iter().sum::<f64>()).min(1.0);
        widths.into_iter().map(|width| width * squeeze).collect()
    }

    fn natural_width(&self, at: usize) -> f64 {
        self.widest(at, Type::TINY.width(&self.columns[at].heading), Cell::width)
    }

    fn least_width(&self, at: usize) -> f64 {
        self.widest(at, Type::TINY.widest(&self.columns[at].heading), Cell::least)
    }

    /// The widest of a column's heading and cells.
    fn widest(&self, at: usize, heading: f64, width: fn(&Cell) -> f64) -> f64 {
        self.rows.iter().filter_map(|row| row.get(at)).map(width).fold(heading, f64::max) + SPARE
    }

    fn row(&self, cells: &[Cell], columns: &[f64], width: f64, role: Role) -> Block {
        let blocks = cells.iter().zip(&self.columns).zip(columns);
        let blocks: Vec<_> = blocks.map(|((cell, column), width)| cell.block(*width, column.align)).collect();
        let height = blocks.iter().map(|block| block.height).fold(0.0, f64::max);
        let (mut marks, mut left) = (Vec::new(), 0.0);
        for ((block, column), set) in blocks.into_iter().zip(&self.columns).zip(columns) {
            let corner =
                Point::new(left + column.align.share() * (set - block.width), ROW_PAD + (height - block.height) / 2.0);
            marks.extend(block.in_role(column.role(&role)).at(corner));
            left += set + COLUMN_GAP;
        }
        let bottom = height + 2.0 * ROW_PAD;
        marks.push(rule(bottom, width, &role));
        Block::new(width, bottom, marks).in_role(role)
    }
}

/// Widths from the most to the least of which each gives the same share, so that together they have room.
fn between(most: &[f64], least: &[f64], room: f64) -> Vec<f64> {
    let [all, bare] = [most, least].map(|widths| widths.iter().sum::<f64>());
    let given = ((all - room) / (all - bare).max(style::ROUNDED)).clamp(0.0, 1.0);
    most.iter().zip(least).map(|(most, least)| most - given * (most - least)).collect()
}

/// The rule below a row.
fn rule(y: f64, width: f64, row: &Role) -> Mark {
    let stroke = if *row == Role::Headings { style::INK_RULE } else { style::THIN_RULE };
    let outline = outline::line(Point::new(0.0, y), Point::new(width, y));
    Mark::Shape { outline, fill: None, stroke: Some(stroke) }
}

impl SetTable {
    /// Its width.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.rows.iter().map(|row| row.width).fold(0.0, f64::max)
    }

    /// Its height in one piece.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.heading.iter().chain(&self.rows).map(|row| row.height).sum()
    }

    /// The whole table in one block.
    #[must_use]
    pub fn block(self) -> Block {
        Block::stack(self.heading.into_iter().chain(self.rows), 0.0)
    }
}
