//! The cautions, on the cover where it has room for them, else before the steps. Lengths in mm on paper.

use crate::design::Design;
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::{Mark, Role, Stroke};
use crate::paint::{metrics, outline, style};
use crate::sheet::english::heading;
use crate::sheet::said::Subheading;
use crate::steps::english::{self, Warned};

use super::around::parted;

/// Gap between columns of cautions.
const COLUMNS_GAP: f64 = 6.0;
/// Most columns of cautions, and the narrowest.
const CAUTIONS: (usize, f64) = (4, 38.0);
/// Room in mm inside the edge of their box, and how much less of it there is at its foot, below the last one's own.
const PAD: f64 = 3.0;
const LESS_BELOW: f64 = 1.2;
/// Width in mm of that edge, and the radius of its corners.
const EDGE: f64 = 0.3;
const CORNER: f64 = 1.5;
/// Room in mm below each, and below their heading.
const CAUTIONS_APART: f64 = 0.8;

/// The cautions in a box, in as many columns as make it lowest.
pub fn boxed(design: &Design, width: f64) -> Block {
    let cautions = english::cautions(design);
    let room = width - 2.0 * PAD;
    let (most, narrowest) = CAUTIONS;
    let fits = |columns: &usize| *columns == 1 || column(room, *columns, COLUMNS_GAP) >= narrowest;
    let said = (1..=most).filter(fits).map(|columns| {
        let width = column(room, columns, COLUMNS_GAP);
        let each =
            cautions.iter().map(|caution| Block::stack([warning(caution, width), Block::gap(CAUTIONS_APART)], 0.0));
        Block::row(balanced(&each.collect::<Vec<_>>(), columns).map(|side| Block { width, ..side }), COLUMNS_GAP)
    });
    let lowest = said.min_by(|one, other| one.height.total_cmp(&other.height)).unwrap_or_default();
    edged(Block::stack([Type::STRONG.line(&heading(Subheading::Cautions)), lowest], CAUTIONS_APART), width)
}

/// A caution, its title before its first words.
fn warning(caution: &Warned, width: f64) -> Block {
    let (strong, face) = (Type::SMALL_STRONG.coloured(style::ACCENT), Type::SMALL);
    let title = strong.line(&format!("{}. ", caution.title));
    let mut lines = metrics::lines(caution.text, face.size, face.weight, width - title.width);
    lines.truncate(1);
    let (first, rest) = parted(caution.text, &lines);
    let first = Block::row(std::iter::once(title).chain(first.into_iter().map(|line| face.line(line))), 0.0);
    Block::stack([first, face.wrapped(rest, width)], 0.0).in_role(Role::Paragraph)
}

/// Blocks in order in at most so many columns, the tallest of which is as low as can be.
fn balanced(blocks: &[Block], columns: usize) -> impl Iterator<Item = Block> {
    let heights = |from: usize| {
        blocks[from..].iter().scan(0.0, |sum, block| {
            *sum += block.height;
            Some(*sum)
        })
    };
    let mut most: Vec<f64> = (0..blocks.len()).flat_map(heights).collect();
    most.sort_by(f64::total_cmp);
    let sides = most.into_iter().map(|most| filled(blocks, most)).find(|sides| sides.len() <= columns);
    sides.unwrap_or_default().into_iter().map(|side| Block::stack(side, 0.0))
}

/// Blocks in order in columns that are no taller than so much.
fn filled(blocks: &[Block], most: f64) -> Vec<Vec<Block>> {
    let mut height = 0.0;
    let mut sides: Vec<Vec<Block>> = Vec::new();
    for block in blocks {
        height += block.height;
        match sides.last_mut().filter(|_| height <= most) {
            Some(side) => side.push(block.clone()),
            None => {
                height = block.height;
                sides.push(vec![block.clone()]);
            }
        }
    }
    sides
}

/// A block in a box of a width.
fn edged(block: Block, width: f64) -> Block {
    let height = block.height + 2.0 * PAD - LESS_BELOW;
    let outline = outline::rounded_rect(Point::new(EDGE / 2.0, EDGE / 2.0), width - EDGE, height - EDGE, CORNER);
    let edge = Mark::Shape { outline, fill: None, stroke: Some(Stroke::new(style::ACCENT, EDGE)) };
    let mut marks = vec![edge];
    marks.extend(block.at(Point::new(PAD, PAD)));
    Block::new(width, height, marks)
}
