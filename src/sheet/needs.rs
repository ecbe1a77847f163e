//! The list of what one piece takes: short on the face, whole with what to buy on the buying page.
//! Lengths in mm on paper.

use crate::design::{Finding, Index, Size};
use crate::english::list;
use crate::materials::render::words::{left, left_over, lots, needed, said, spare};
use crate::materials::{self, Article, Buy, Line, Materials, Order, need};
use crate::pattern::FindingKind;
use crate::piece::Piece;
use crate::units::UnitStyle;

use super::english::{self, spec};
use super::legend;
use crate::art::{Ink, Stencils};
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::{Block, column};

/// Room between the two columns of the short list.
const COLUMN_GAP: f64 = 10.0;

/// What one piece takes, in two columns: letter, name, amount.
pub fn short(piece: &Piece, materials: &Materials, width: f64) -> Block {
    let lines: Vec<_> = materials.lines.iter().filter(|line| !matches!(line.article, Article::Assorted(_))).collect();
    let half = lines.len().div_ceil(2);
    let columns = lines.chunks(half.max(1)).map(|lines| {
        let columns = vec![Column::new("", Align::Left), Column::wrapping(""), Column::new("", Align::Right)];
        let mut table = Table::new(columns);
        for line in lines {
            table.push(vec![letter(piece, line), Cell::text(list(&line.names)), need(piece, materials, line)]);
        }
        table.set(column(width, 2, COLUMN_GAP)).block()
    });
    Block::row(columns, COLUMN_GAP)
}

/// What one piece takes besides beads: its drawing where it is a charm, else its colour where pages are in colour; name,
/// amount.
pub fn besides(piece: &Piece, materials: &Materials, width: f64, (ink, stencils): (Ink, &Stencils<'_>)) -> Block {
    let mut table = Table::new(vec![Column::wrapping(""), Column::new("", Align::Right)]);
    let charms = materials.lines.iter().filter_map(|line| charm(piece, line.article));
    let scale = legend::charm_scale(charms, stencils);
    for line in &materials.lines {
        let colour = match line.article {
            Article::Cord(at) => piece.palette.cord(at),
            Article::Finding(at) => piece.palette.finding(at),
            Article::Bead(_) | Article::Assorted(_) => continue,
        };
        let dot = || (ink == Ink::Colour).then(|| legend::dot(colour));
        let name = match charm(piece, line.article).map(|at| legend::charm(at, scale, stencils)).or_else(dot) {
            Some(mark) => Cell::Marked(mark, list(&line.names)),
            None => Cell::text(list(&line.names)),
        };
        table.push(vec![name, need(piece, materials, line)]);
    }
    table.set(width).block()
}

/// The charm that an article is.
fn charm(piece: &Piece, article: Article) -> Option<Index<Finding>> {
    let Article::Finding(at) = article else { return None };
    (piece.design.findings[at].kind() == FindingKind::Charm).then_some(at)
}

/// One row an article: letter, name and what to ask for, need, spare, what to buy, what is left,
/// and with prices what it costs.
pub fn table(piece: &Piece, materials: &Materials, prices: bool) -> Table {
    let right = |heading: &&str| Column::new(heading, Align::Right);
    let [material, amounts @ .., cost] = english::NEEDS_TABLE;
    let mut columns = vec![Column::new("", Align::Left), Column::wrapping(material)];
    columns.extend(amounts.iter().map(right));
    columns.extend([cost].iter().filter(|_| prices).map(right));
    let mut table = Table::new(columns);
    for line in &materials.lines {
        table.push(row(piece, (materials, line), prices));
    }
    table
}

/// What other sizes ask to buy otherwise, a sentence a size: `Size long: 2 packs of 40 of reed, not 1 pack of 40.`
pub fn other_sizes(piece: &Piece, materials: &Materials) -> Vec<String> {
    let others = piece.sizes.iter().filter(|size| !size.chosen);
    others.filter_map(|size| otherwise(size, materials, piece.telling.units)).collect()
}

fn otherwise(size: &Size, base: &Materials, units: UnitStyle) -> Option<String> {
    let other = materials::materials(size.design.as_ref()?, &Order { spare: base.spare, ..Order::default() });
    let bought = |line: &Line| line.buy.as_ref().map(|buy| lots(line, buy, units));
    let differs = |line: &&Line| {
        let same = base.lines.iter().find(|same| same.id == line.id);
        line.buy.is_some() && same.and_then(bought) != bought(line)
    };
    let differing = other.lines.iter().filter(differs);
    let packs: Vec<_> = differing.filter_map(|line| Some((line.names.as_slice(), bought(line)?))).collect();
    (!packs.is_empty()).then(|| english::other_packs(size.name.as_deref(), &packs))
}

fn row(piece: &Piece, (materials, line): (&Materials, &Line), prices: bool) -> Vec<Cell> {
    let units = piece.telling.units;
    let [buy, over] = to_buy(materials, line, units).map(Cell::text);
    let asked_for = spec::of_all(&piece.design, line.article, units);
    let mut cells = vec![
        letter(piece, line),
        Cell::Double(list(&line.names), asked_for),
        need(piece, materials, line),
        Cell::text(spare(line, units)),
        buy,
        over,
    ];
    if prices {
        cells.push(Cell::text(line.buy.as_ref().map(|buy| said(buy.bought)).unwrap_or_default()));
    }
    cells
}

/// What to buy of a line, or in what it is bought with others, and what is left over of it.
fn to_buy(materials: &Materials, line: &Line, units: UnitStyle) -> [String; 2] {
    let bought = |buy: &Buy| [lots(line, buy, units), left_over(materials, line, buy, units)];
    match (&line.within, &line.buy) {
        (Some(within), _) => [english::bought_in(within.unit), left(within)],
        (None, buy) => buy.as_ref().map(bought).unwrap_or_default(),
    }
}

fn letter(piece: &Piece, line: &Line) -> Cell {
    match line.article {
        Article::Bead(index) => Cell::strong(&piece.design.beads[index].letter),
        Article::Cord(_) | Article::Finding(_) | Article::Assorted(_) => Cell::strong(""),
    }
}

/// How much the piece takes; nothing of what several kinds are bought in, of which it takes the beads.
fn need(piece: &Piece, materials: &Materials, line: &Line) -> Cell {
    if let Article::Assorted(_) = line.article {
        return Cell::text("");
    }
    let is_set = need::companions(&piece.design, line.article).next().is_some();
    let needed = needed(materials, line, piece.telling.units);
    Cell::strong(if is_set { english::sets(&needed) } else { needed })
}
