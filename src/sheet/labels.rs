//! Labels for kits, to print, cut apart and put in the bags: what each holds, with its spare. Lengths in mm on paper.

use std::sync::Arc;

use crate::english::list;
use crate::geometry::Point;
use crate::materials::render::words;
use crate::materials::{Bagged, Kit, Packed};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect, column};
use crate::paint::mark::{Mark, Page, Role};
use crate::paint::{outline, style};
use crate::units::UnitStyle;

use super::inked::inked;
use super::{Style, english, page};

/// Labels side by side on a page.
const COLUMNS: usize = 2;
/// White room in a label, between its edge and its words.
const PAD: f64 = 5.0;
/// Width of the column of counts.
const COUNTS: f64 = 15.0;
/// Room between counts and names.
const GAP: f64 = 2.0;
/// Room between two lines of what a bag holds.
const LINES_APART: f64 = 0.6;
/// Room in mm between head, lines and foot, and between title and variant.
const PARTS_APART: f64 = 1.5;
const TITLE_APART: f64 = 0.3;
/// Half the size of a mark to cut at.
const CORNER: f64 = 2.5;

/// A label's words.
struct BagLabel {
    kit: String,
    /// Which bag it is for.
    which: String,
    words: Block,
}

/// Pages of labels, one for each bag, with marks where to cut. What is too long for a page goes on on another label
/// for the same bag.
#[must_use]
pub fn labels(kits: &[Kit], units: UnitStyle, style: &Style) -> Vec<Page> {
    let paper = page::room(style.paper);
    let width = column(paper.width, COLUMNS, 0.0);
    let labels: Vec<_> = kits.iter().flat_map(|kit| of_kit(kit, units, width - 2.0 * PAD, paper.height)).collect();
    let tallest = labels.iter().map(|label| label.words.height).fold(0.0, f64::max) + 2.0 * PAD;
    let rows = ((paper.height / tallest).floor() as usize).max(1);
    let height = paper.height / rows as f64;
    let pages: Vec<_> = labels.chunks(COLUMNS * rows).collect();
    let count = pages.len();
    let drawn = |(at, labels): (usize, &&[BagLabel])| {
        sheet(labels, at + 1, count, Rect::new(paper.left, paper.top, width, height), style)
    };
    pages.iter().enumerate().map(drawn).collect()
}

/// The labels of a kind of bag, each as often as there are bags.
fn of_kit(kit: &Kit, units: UnitStyle, width: f64, page: f64) -> Vec<BagLabel> {
    let parts = parts(kit, units, width, page - 2.0 * PAD);
    let label = |bag: u32, (at, words): (usize, &Block)| {
        let which = english::bag(bag, kit.bags, [at + 1, parts.len()]);
        BagLabel { kit: kit.name(), which, words: words.clone() }
    };
    (1..=kit.bags)
        .flat_map(|bag| parts.iter().enumerate().map(move |part| (bag, part)))
        .map(|(bag, part)| label(bag, part))
        .collect()
}

/// What a bag holds, in as many parts as labels of a height need.
fn parts(kit: &Kit, units: UnitStyle, width: f64, height: f64) -> Vec<Block> {
    let (head, foot) = (head(kit, width), Block::gap(Type::TINY.line_height() + 1.0));
    // The line below says which bag it is for.
    let room = height - head.height - Type::TINY.line_height() - 2.0 * PARTS_APART;
    let lines = kit.packed.iter().map(|packed| line(packed, units, width)).collect();
    let whole =
        |lines: Vec<Block>| Block::stack([head.clone(), Block::stack(lines, LINES_APART), foot.clone()], PARTS_APART);
    broken(lines, room).into_iter().map(whole).collect()
}

/// Lines in order in parts that have room.
fn broken(lines: Vec<Block>, room: f64) -> Vec<Vec<Block>> {
    let mut parts: Vec<Vec<Block>> = vec![Vec::new()];
    let mut taken = 0.0;
    for line in lines {
        if taken + line.height > room && taken > 0.0 {
            parts.push(Vec::new());
            taken = 0.0;
        }
        taken += line.height + LINES_APART;
        if let Some(part) = parts.last_mut() {
            part.push(line);
        }
    }
    parts
}

fn head(kit: &Kit, width: f64) -> Block {
    let title = Type::STRONG.fitted(&kit.title, width).in_role(Role::Paragraph);
    let variant = Some(&kit.variant).filter(|variant| !variant.is_empty());
    let variant = variant.map(|variant| Type::SMALL.fitted(variant, width).in_role(Role::Paragraph));
    Block::stack(std::iter::once(title).chain(variant), TITLE_APART)
}

/// One article: how many with how many spare, or which pieces, and its name.
fn line(packed: &Packed, units: UnitStyle, width: f64) -> Block {
    let (count, more) = match &packed.held {
        Bagged::Counted(count, 0) => (count.to_string(), String::new()),
        Bagged::Counted(count, spare) => (format!("{count} + {spare}"), String::new()),
        Bagged::Cut(pieces) => (pieces.len().to_string(), format!(": {}", words::pieces(pieces, units))),
    };
    let told = Type::SMALL_STRONG.fitted(&count, COUNTS);
    let count = Block { width: COUNTS, ..told };
    let name = Type::SMALL.paragraph(&format!("{}{more}", list(&packed.names)), width - COUNTS - GAP);
    Block::row([count, name], GAP).in_role(Role::Paragraph)
}

/// A page of labels, the first of which lies in a cell.
fn sheet(labels: &[BagLabel], number: usize, count: usize, cell: Rect, style: &Style) -> Page {
    let (width, height) = style.paper.size();
    let corner = |at: usize| {
        let (row, column) = (at / COLUMNS, at % COLUMNS);
        Point::new(cell.left + cell.width * column as f64, cell.top + cell.height * row as f64)
    };
    let mut marks: Vec<_> = labels.iter().enumerate().flat_map(|(at, label)| drawn(label, corner(at), cell)).collect();
    marks.push(cuts((0..labels.len()).map(corner), cell));
    Page {
        width,
        height,
        title: english::labels_title(number, count),
        description: english::labels_shown(labels.iter().map(|label| [label.kit.as_str(), &label.which])),
        symbols: Arc::default(),
        marks: inked(marks, style.ink),
    }
}

fn drawn(label: &BagLabel, corner: Point, cell: Rect) -> Vec<Mark> {
    let words = label.words.clone().at(corner + Point::new(PAD, PAD));
    let which = Type::TINY.fitted(&label.which, cell.width - 2.0 * PAD).in_role(Role::Paragraph);
    let foot = Point::new(corner.x + PAD, corner.y + cell.height - PAD - Type::TINY.line_height());
    words.into_iter().chain(which.at(foot)).collect()
}

/// Crosses at the corners of cells.
fn cuts(corners: impl Iterator<Item = Point>, cell: Rect) -> Mark {
    let of_cell = |corner: Point| {
        let across = [0.0, cell.width].into_iter();
        across.flat_map(move |x| [0.0, cell.height].map(|y| corner + Point::new(x, y)))
    };
    let mut all: Vec<Point> = Vec::new();
    for at in corners.flat_map(of_cell) {
        if !all.iter().any(|other| other.distance(at) < CORNER) {
            all.push(at);
        }
    }
    let cross = |at: Point| {
        let arm = |dx: f64, dy: f64| outline::line(at - Point::new(dx, dy), at + Point::new(dx, dy));
        [arm(CORNER, 0.0), arm(0.0, CORNER)].concat()
    };
    let outline = all.into_iter().flat_map(cross).collect();
    Mark::ornament(vec![Mark::Shape { outline, fill: None, stroke: Some(style::INK_LINE) }])
}
