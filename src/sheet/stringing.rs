//! The stringing pages: for each strand what to cut, the word chart, the row at actual size with
//! its ruler, and the lengths to check against.

use crate::art::Stencils;
use crate::design::{Bit, Rest, Strand, What};
use crate::geometry::Point;
use crate::steps::{self, chart};
use crate::units::{Length, UnitStyle};

use super::figure::{self, Row};
use super::layout::Block;
use super::layout::flow::Flow;
use super::layout::text::Type;
use super::mark::Mark;
use super::page::Body;
use super::{Sheet, outline, style, words};

/// Room between strands.
const STRANDS_APART: f64 = 7.0;
/// Room between the lines of a row.
const LINES_APART: f64 = 4.0;
/// Most lines of a word chart that is set in large type.
const LARGE_LINES: usize = 6;
/// The chart's large type, to be read from the bench.
const LARGE: Type = Type { colour: style::INK, weight: Type::BODY.weight, ..Type::HEADING };
/// Bare cord before the row, below which it starts at the end.
const LEAST_BARE: Length = Length::mm(1.0);
/// Beads up to this size, in mm, are drawn in the key.
const KEY_SIZE: f64 = 14.0;

/// Draws the stringing pages.
pub fn stringing(sheet: &Sheet<'_>, stencils: &mut Stencils<'_>) -> Vec<Body> {
    let mut flow = Flow::new(sheet.room());
    let width = flow.width();
    flow.add(intro(sheet, width));
    flow.gap(3.0);
    for row in key(sheet, width, stencils) {
        flow.add(row);
        flow.gap(1.0);
    }
    for index in 0..sheet.piece.design.strands.len() {
        flow.gap(STRANDS_APART);
        strand(sheet, index, &mut flow, stencils);
    }
    let names: Vec<_> = sheet.piece.design.strands.iter().map(|strand| strand.name.as_str()).collect();
    let body = |marks| Body {
        name: "Stringing",
        description: format!("The beads of the strands {} in a row, at actual size with a ruler.", names.join(", ")),
        marks,
        scale: "rows at actual size (1 : 1)".to_owned(),
    };
    flow.into_pages().into_iter().map(body).collect()
}

fn intro(sheet: &Sheet<'_>, width: f64) -> Block {
    let pair = if sheet.piece.design.copies > 1 {
        format!(" Make {} of everything on this page.", sheet.piece.design.copies)
    } else {
        String::new()
    };
    let text = format!(
        "Beads and rulers are drawn at actual size when printed at 100 %. Letters say which bead, with how many of it come one after another; the small figures above the beads count them in tens; the ruler starts at the first bead.{pair}"
    );
    Block::stack([Type::TITLE.line("Stringing"), Type::SMALL.paragraph(&text, width)], 0.8)
}

/// Every bead with its letter and name, in rows.
fn key(sheet: &Sheet<'_>, width: f64, stencils: &mut Stencils<'_>) -> Vec<Block> {
    let mut entries = Vec::new();
    for (index, bead) in sheet.piece.design.beads.iter().enumerate() {
        let small = bead.along.value().max(bead.across.value()).max(bead.thick.value()) <= KEY_SIZE;
        let drawing = small.then(|| super::legend::drawing(index, bead, stencils));
        let texts = [Type::STRONG.line(&bead.letter), Type::SMALL.fitted(&bead.name, width * 0.6)];
        let [letter, name] = texts;
        entries.push(Block::middled([letter].into_iter().chain(drawing).chain([name]), 1.5));
    }
    Block::rows(entries, 7.0, width)
}

fn strand(sheet: &Sheet<'_>, index: usize, flow: &mut Flow, stencils: &mut Stencils<'_>) {
    let design = &sheet.piece.design;
    let strand = &design.strands[index];
    let width = flow.width();
    let row = figure::row(sheet.piece, index, width, stencils);
    let checks = checks(sheet, strand, &notes(sheet, index, &row), width);
    let mut opening = vec![head(sheet, index, width)];
    opening.extend(chart_lines(&chart::text(design, strand), width));
    opening.push(Block::stack([Type::SMALL.paragraph(&steps::counts(design, strand), width), Block::gap(2.0)], 0.0));
    let mut lines = row.lines.into_iter();
    let first = lines.next().unwrap_or_default();
    open(flow, opening, first, sheet.room().height);
    for block in lines.chain([checks]) {
        flow.gap(LINES_APART);
        if block.height > flow.left() {
            flow.turn();
            flow.add(continued(&title(sheet, index), width));
        }
        flow.add(block);
    }
}

/// Adds a strand's opening, which stays with the first line of its row where a page has room for
/// both.
fn open(flow: &mut Flow, opening: Vec<Block>, first: Block, page: f64) {
    let height: f64 = opening.iter().map(|block| block.height).sum();
    let together = height + first.height <= page;
    for block in opening {
        if together { flow.heading(block) } else { flow.add(block) }
    }
    flow.add(first);
}

/// Rule, number and name, cut length; below them cord, finished length and counts.
fn head(sheet: &Sheet<'_>, index: usize, width: f64) -> Block {
    let design = &sheet.piece.design;
    let (strand, units) = (&design.strands[index], design.heading.units);
    let cut = LARGE.bold().line(&format!("Cut {}", units.ruler(strand.cut())));
    let name = Type::HEADING.fitted(&title(sheet, index), width - cut.width - 6.0);
    let left = width - cut.width;
    let mut marks = vec![rule(width)];
    marks.extend(name.at(Point::new(0.0, 1.0)));
    let height = 1.0 + cut.height;
    marks.extend(cut.at(Point::new(left, 1.0)));
    let cord = &design.cords[strand.cord];
    let facts = format!(
        "On {} {}, {} of it beyond each end. Finished {}, loop to loop.",
        cord.name,
        cord.diameter.hundredths(),
        units.ruler(strand.allowance),
        units.ruler(strand.finished),
    );
    let facts = Type::SMALL.paragraph(&facts, width);
    Block::stack([Block::new(width, height, marks), facts, Block::gap(1.2)], 0.0)
}

/// A strand's number, where there are several, and its name.
fn title(sheet: &Sheet<'_>, index: usize) -> String {
    let strands = &sheet.piece.design.strands;
    let number = if strands.len() > 1 { format!("{}  ", index + 1) } else { String::new() };
    format!("{number}{}", strands[index].name)
}

/// The heading of a strand that runs on to another page.
fn continued(title: &str, width: f64) -> Block {
    Block::stack([Type::HEADING.fitted(&format!("{title}, continued"), width), Block::gap(2.0)], 0.0)
}

fn rule(width: f64) -> Mark {
    let y = style::INK_RULE.width / 2.0;
    let line = outline::line(Point::new(0.0, y), Point::new(width, y));
    Mark::Shape { outline: line, fill: None, stroke: Some(style::INK_RULE) }
}

/// The word chart, in large type unless it is long.
fn chart_lines(text: &str, width: f64) -> Vec<Block> {
    let large = words::set(text, LARGE, width);
    if large.len() <= LARGE_LINES { large } else { words::set(text, Type::BODY, width) }
}

/// Where the row starts, and what of it is not drawn as it is.
fn notes(sheet: &Sheet<'_>, index: usize, row: &Row) -> String {
    let strand = &sheet.piece.design.strands[index];
    let slides = strand.trains.iter().any(|train| matches!(train.rest, Rest::Free(..)));
    let mut notes = Vec::new();
    if row.elided {
        notes.push("Repeats left out of the drawing are told where they stand; ruler and counts go on past them.");
    }
    if row.reduced > 0 {
        notes.push("What is too large for the page is drawn smaller, and the ruler stops there.");
    }
    if row.unlettered > 0 {
        notes.push("Runs too short for their letter have a bracket alone: read them in the words above.");
    }
    if strand.trains.len() > 1 && slides {
        notes.push("Some of the beads slide: the ruler shows where they rest when the piece hangs.");
    }
    notes.join(" ")
}

/// The lengths to check against.
fn checks(sheet: &Sheet<'_>, strand: &Strand, notes: &str, width: f64) -> Block {
    let design = &sheet.piece.design;
    let units = design.heading.units;
    let mut small =
        vec![bare(units, strand.bare()), format!("Finished, loop to loop: {}.", units.ruler(strand.finished))];
    let mut blocks = Vec::new();
    if strand.bits().any(|bit| matches!(bit.what, What::Bead(_))) {
        blocks.push(Type::STRONG.paragraph(&steps::measures(design, strand), width));
        small.insert(0, worst(units, strand.worst_spread(design)));
    }
    small.extend(start(units, strand));
    small.push(notes.to_owned());
    small.retain(|sentence| !sentence.is_empty());
    blocks.push(Type::TINY.paragraph(&small.join(" "), width));
    Block::stack(blocks, 0.4)
}

fn bare(units: UnitStyle, length: Length) -> String {
    if length < LEAST_BARE {
        "No bare cord is left.".to_owned()
    } else {
        format!("Bare cord left: {}.", units.ruler(length))
    }
}

fn worst(units: UnitStyle, spread: Length) -> String {
    if spread > Length::ZERO {
        format!("At worst, with every bead off by its whole tolerance, {} more or less.", units.ruler(spread))
    } else {
        String::new()
    }
}

/// Where the row starts, if it does not slide.
fn start(units: UnitStyle, strand: &Strand) -> Option<String> {
    let first = strand.trains.first()?;
    let Rest::At(station) = first.rest else { return None };
    let gaps = first.bits.iter().take_while(|bit| bit.what == What::Gap).map(Bit::length);
    let start = Length::mm(station + gaps.sum::<f64>());
    let bare = start > strand.ends[0].takes + LEAST_BARE;
    bare.then(|| format!("The row starts {} from the first end's loop.", units.ruler(start)))
}
