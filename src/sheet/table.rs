//! Tables: columns as wide as their contents need, cells that wrap, thin rules between rows, in mm.

use super::layout::{Block, Side, text_line};
use super::mark::{Anchor, Mark};
use super::metrics;
use super::style::{QUIET, SMALL, Type};
use crate::geometry::Point;

/// Between columns.
const GAP: f64 = 4.0;
/// Above and below a row's contents.
const PAD: f64 = 0.8;

/// How a column's cells stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// With their decimal points one below the other; whole numbers end where those stand.
    Number,
}

/// A column.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What stands above it.
    pub heading: String,
    /// How its cells stand.
    pub align: Align,
    /// Its share of the width left over; a column with none keeps to its contents.
    pub share: f64,
}

impl Column {
    /// Makes a column.
    pub fn new(heading: impl Into<String>, align: Align, share: f64) -> Self {
        Self { heading: heading.into(), align, share }
    }
}

/// What stands in a cell.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Words, which wrap.
    Text(String),
    /// A drawing of fixed size.
    Drawing(Block),
}

impl<T: Into<String>> From<T> for Cell {
    fn from(text: T) -> Self {
        Self::Text(text.into())
    }
}

/// A table. Rows may have fewer cells than there are columns; cells beyond the columns are not drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows, each with its cells.
    pub rows: Vec<Vec<Cell>>,
    /// How its text is set.
    pub face: Type,
}

/// A table set to a width: pieces to place one below the other.
#[derive(Clone, Debug, PartialEq)]
pub struct SetTable {
    /// The headings with a rule below; repeated on every page.
    pub header: Block,
    /// The rows, each with a rule below.
    pub rows: Vec<Block>,
}

impl Table {
    /// A table with no rows yet.
    #[must_use]
    pub const fn new(columns: Vec<Column>) -> Self {
        Self { columns, rows: Vec::new(), face: SMALL }
    }

    /// Sets the table to a width.
    #[must_use]
    pub fn set(&self, width: f64) -> SetTable {
        let widths = self.widths(width);
        let tails = self.tails();
        let heading = |column: &Column| Cell::Text(column.heading.clone());
        let headings: Vec<Cell> = self.columns.iter().map(heading).collect();
        let quiet = self.face.bold().in_colour(QUIET);
        let header = self.row(&headings, &widths, &vec![0.0; tails.len()], quiet, width);
        let rows = self.rows.iter().map(|row| self.row(row, &widths, &tails, self.face, width)).collect();
        SetTable { header, rows }
    }

    /// The whole table as one block.
    #[must_use]
    pub fn block(&self, width: f64) -> Block {
        let SetTable { header, rows } = self.set(width);
        Block::stack(std::iter::once(header).chain(rows).collect(), 0.0)
    }

    fn row(&self, cells: &[Cell], widths: &[f64], tails: &[f64], face: Type, width: f64) -> Block {
        let set = |((cell, width), (tail, column)): ((&Cell, &f64), (&f64, &Column))| {
            set_cell(cell, *width, column.align, *tail, face)
        };
        let columns = tails.iter().zip(&self.columns);
        let blocks: Vec<Block> = cells.iter().zip(widths).zip(columns).map(set).collect();
        let height = blocks.iter().map(|block| block.height).fold(face.leading, f64::max);
        let has_drawing = cells.iter().any(|cell| matches!(cell, Cell::Drawing(_)));
        let mut marks = Vec::new();
        let mut x = 0.0;
        for (block, width) in blocks.into_iter().zip(widths) {
            // Beside a drawing, words stand level with its middle; else first lines are level.
            let y = if has_drawing { (height - block.height) / 2.0 } else { 0.0 };
            marks.extend(block.placed(Point::new(x, y + PAD)));
            x += width + GAP;
        }
        let full = height + 2.0 * PAD;
        marks.extend(Block::rule(width).placed(Point::new(0.0, full)));
        Block::new(width, full, marks)
    }

    /// Width of each column.
    fn widths(&self, width: f64) -> Vec<f64> {
        let gaps = GAP * self.columns.len().saturating_sub(1) as f64;
        let room = (width - gaps).max(0.0);
        let natural: Vec<f64> = (0..self.columns.len()).map(|column| self.widest(column, line_width)).collect();
        let least: Vec<f64> = (0..self.columns.len()).map(|column| self.widest(column, word_width)).collect();
        let shares: Vec<f64> = self.columns.iter().map(|column| column.share).collect();
        let spare = room - natural.iter().sum::<f64>();
        if spare >= 0.0 {
            return grown(&natural, &shares, spare);
        }
        let flexible: Vec<f64> =
            least.iter().zip(&natural).zip(&shares).map(|((l, n), s)| if *s > 0.0 { *l } else { *n }).collect();
        let firm = shrunk(&natural, &flexible, room);
        let all = shrunk(&firm, &least, room);
        shrunk(&all, &vec![0.0; all.len()], room)
    }

    fn widest(&self, column: usize, measure: fn(&str, Type) -> f64) -> f64 {
        let Column { heading, align, .. } = &self.columns[column];
        let tail = self.tail(column);
        let cell = |cell: &Cell| match cell {
            Cell::Text(text) if *align == Align::Number => {
                measure(text, self.face) - tail_width(text, self.face) + tail
            }
            Cell::Text(text) => measure(text, self.face),
            Cell::Drawing(block) => block.width,
        };
        let heading = measure(heading, self.face.bold());
        self.rows.iter().filter_map(|row| row.get(column)).map(cell).fold(heading, f64::max)
    }

    // Callers number the columns from 0 to their count, so that `self.columns[column]` is there.

    /// What stands right of the decimal points, at its widest, of each column.
    fn tails(&self) -> Vec<f64> {
        (0..self.columns.len()).map(|column| self.tail(column)).collect()
    }

    fn tail(&self, column: usize) -> f64 {
        let text = |cell: &Cell| match cell {
            Cell::Text(text) => tail_width(text, self.face),
            Cell::Drawing(_) => 0.0,
        };
        let is_number = self.columns[column].align == Align::Number;
        let cells = self.rows.iter().filter_map(|row| row.get(column)).filter(|_| is_number);
        cells.map(text).fold(0.0, f64::max)
    }
}

fn line_width(text: &str, face: Type) -> f64 {
    // A hair more than measured, so that a line never wraps for a rounding of its own width.
    text.lines().map(|line| metrics::width(line, face.size, face.weight) + 1e-6).fold(0.0, f64::max)
}

fn word_width(text: &str, face: Type) -> f64 {
    text.split(' ').map(|word| line_width(word, face)).fold(0.0, f64::max)
}

/// Width of a number from its decimal point on.
fn tail_width(text: &str, face: Type) -> f64 {
    text.find('.').map_or(0.0, |point| metrics::width(&text[point..], face.size, face.weight))
}

/// Widths with what is to spare dealt out by share; where no column takes any, it stays at the right.
fn grown(widths: &[f64], shares: &[f64], spare: f64) -> Vec<f64> {
    let all: f64 = shares.iter().sum();
    let more = |share: &f64| if all > 0.0 { spare * share / all } else { 0.0 };
    widths.iter().zip(shares).map(|(width, share)| width + more(share)).collect()
}

/// Widths brought down towards the least, each by the same part of what it can give, as far as needed.
fn shrunk(widths: &[f64], least: &[f64], room: f64) -> Vec<f64> {
    let excess = widths.iter().sum::<f64>() - room;
    let give: f64 = widths.iter().zip(least).map(|(width, least)| (width - least).max(0.0)).sum();
    if excess <= 0.0 || give <= 0.0 {
        return widths.to_vec();
    }
    let part = (excess / give).min(1.0);
    widths.iter().zip(least).map(|(width, least)| width - (width - least).max(0.0) * part).collect()
}

fn set_cell(cell: &Cell, width: f64, align: Align, tail: f64, face: Type) -> Block {
    match (cell, align) {
        (Cell::Drawing(block), _) => block.clone(),
        (Cell::Text(text), Align::Left) => Block::aligned(text, face, width, Side::Left),
        (Cell::Text(text), Align::Right) => Block::aligned(text, face, width, Side::Right),
        (Cell::Text(text), Align::Number) => number(text, width, tail, face),
    }
}

/// A number with its decimal point where the column's is; wrapped to the right if it is too wide.
fn number(text: &str, width: f64, tail: f64, face: Type) -> Block {
    let own_tail = tail_width(text, face);
    let right = width - tail + own_tail;
    if metrics::width(text, face.size, face.weight) > right {
        return Block::aligned(text, face, width, Side::Right);
    }
    let at = Point::new(right, super::layout::baseline(face));
    let marks: Vec<Mark> = vec![text_line(text, face, at, Anchor::End)];
    Block::new(width, face.leading, marks)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn table(names: &[&str]) -> Table {
        let columns = vec![
            Column::new("Name", Align::Left, 1.0),
            Column::new("Count", Align::Number, 0.0),
            Column::new("Note", Align::Left, 2.0),
        ];
        let row = |name: &&str| vec![(*name).into(), "12.5".into(), "two strands of glass".into()];
        Table { columns, rows: names.iter().map(row).collect(), face: SMALL }
    }

    fn texts(block: &Block) -> Vec<(String, Point)> {
        let text = |mark: &Mark| match mark {
            Mark::Text(text) => Some((text.text.clone(), text.at)),
            _ => None,
        };
        block.marks.iter().filter_map(text).collect()
    }

    #[test]
    fn left_over_width_goes_by_share() {
        let table = table(&["reed", "mist"]);
        let (narrow, wide) = (table.widths(100.0), table.widths(130.0));
        assert!((narrow.iter().sum::<f64>() + 2.0 * GAP - 100.0).abs() < 1e-9);
        assert!((wide[0] - narrow[0] - 10.0).abs() < 1e-9);
        assert!((wide[1] - narrow[1]).abs() < 1e-9);
    }

    #[test]
    fn decimal_points_stand_one_below_the_other() {
        let mut table = Table::new(vec![Column::new("Mass", Align::Number, 0.0)]);
        table.rows = ["1.25", "104.5", "7"].iter().map(|text| vec![(*text).into()]).collect();
        let points: Vec<f64> = table
            .set(60.0)
            .rows
            .iter()
            .map(|row| {
                let (text, at) = texts(row).remove(0);
                at.x - tail_width(&text, SMALL)
            })
            .collect();
        assert!((points[0] - points[1]).abs() < 1e-9 && (points[1] - points[2]).abs() < 1e-9, "{points:?}");
        let row = &table.set(60.0).rows[1];
        let (text, at) = texts(row).remove(0);
        assert!(at.x - metrics::width(&text, SMALL.size, SMALL.weight) >= -1e-9);
    }

    #[test]
    fn cells_wrap_where_there_is_no_room() {
        let set = table(&["a name that goes on and on for quite a while"]).set(50.0);
        assert!(set.rows[0].height > 2.0 * SMALL.leading);
        let joined = texts(&set.rows[0]).into_iter().map(|(text, _)| text).collect::<Vec<_>>().join(" ");
        assert!(joined.contains("quite"));
    }

    proptest! {
        #[test]
        fn a_table_never_runs_over_its_width(name in "[a-z ]{0,40}", width in 20.0..200.0_f64) {
            let widths = table(&[&name]).widths(width);
            prop_assert!(widths.iter().sum::<f64>() + 2.0 * GAP <= width + 1e-6, "{widths:?}");
        }
    }
}
