//! The stringing pages: for each strand what to cut, the word chart, the row at actual size with
//! its ruler, and the lengths to check against.

use crate::art::Stencils;
use crate::design::{Rest, Strand, What};
use crate::geometry::Point;
use crate::steps::{self, chart};
use crate::units::Length;

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
/// Beads up to this size, in mm, are drawn in the key.
const KEY_SIZE: f64 = 14.0;

/// Draws the stringing pages.
pub fn stringing(sheet: &Sheet<'_>, stencils: &mut Stencils<'_>) -> Vec<Body> {
    let mut flow = Flow::new(sheet.room());
    let width = flow.width();
    flow.heading(intro(sheet, width));
    flow.heading(key(sheet, width, stencils));
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

/// Every bead with its letter and name, side by side.
fn key(sheet: &Sheet<'_>, width: f64, stencils: &mut Stencils<'_>) -> Block {
    let mut entries = Vec::new();
    for (index, bead) in sheet.piece.design.beads.iter().enumerate() {
        let small = bead.along.value().max(bead.across.value()).max(bead.thick.value()) <= KEY_SIZE;
        let drawing = small.then(|| super::legend::drawing(index, bead, stencils));
        let texts = [Type::STRONG.line(&bead.letter), Type::SMALL.fitted(&bead.name, width * 0.6)];
        let [letter, name] = texts;
        entries.push(Block::middled([letter].into_iter().chain(drawing).chain([name]), 1.5));
    }
    Block::stack([Block::gap(2.0), Block::wrapped(entries, 7.0, 1.0, width)], 0.0)
}

fn strand(sheet: &Sheet<'_>, index: usize, flow: &mut Flow, stencils: &mut Stencils<'_>) {
    let design = &sheet.piece.design;
    let strand = &design.strands[index];
    let width = flow.width();
    flow.heading(head(sheet, index, width));
    for line in chart_lines(&chart::text(design, strand), width) {
        flow.add(line);
    }
    flow.gap(2.0);
    let row = figure::row(sheet.piece, index, width, stencils);
    let note = note(strand, &row);
    for line in row.lines {
        flow.add(line);
        flow.gap(LINES_APART);
    }
    flow.add(checks(sheet, strand, note.as_deref(), width));
}

/// Rule, number and name, cut length; below them cord, finished length and counts.
fn head(sheet: &Sheet<'_>, index: usize, width: f64) -> Block {
    let design = &sheet.piece.design;
    let (strand, units) = (&design.strands[index], design.heading.units);
    let cut = LARGE.bold().line(&format!("Cut {}", units.ruler(strand.cut())));
    let number = if design.strands.len() > 1 { format!("{}  ", index + 1) } else { String::new() };
    let name = Type::HEADING.fitted(&format!("{number}{}", strand.name), width - cut.width - 6.0);
    let left = width - cut.width;
    let mut marks = vec![rule(width)];
    marks.extend(name.at(Point::new(0.0, 1.0)));
    let height = 1.0 + cut.height;
    marks.extend(cut.at(Point::new(left, 1.0)));
    let cord = &design.cords[strand.cord];
    let facts = format!(
        "{} of {} {}, {} for each end included. Finished {}, loop to loop. {}",
        units.ruler(strand.cut()),
        cord.name,
        cord.diameter.hundredths(),
        units.ruler(strand.allowance),
        units.ruler(strand.finished),
        steps::counts(design, strand),
    );
    let facts = Type::SMALL.paragraph(&facts, width);
    Block::stack([Block::new(width, height, marks), facts, Block::gap(1.2)], 0.0)
}

fn rule(width: f64) -> Mark {
    let line = outline::line(Point::ORIGIN, Point::new(width, 0.0));
    Mark::Shape { outline: line, fill: None, stroke: Some(style::INK_RULE) }
}

/// The word chart, in large type unless it is long.
fn chart_lines(text: &str, width: f64) -> Vec<Block> {
    let large = words::set(text, LARGE, width);
    if large.len() <= LARGE_LINES { large } else { words::set(text, Type::BODY, width) }
}

/// What the row does not show as it is.
fn note(strand: &Strand, row: &Row) -> Option<String> {
    let slides = |strand: &Strand| strand.trains.iter().any(|train| matches!(train.rest, Rest::Free(..)));
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
    if strand.trains.len() > 1 && slides(strand) {
        notes.push("Some of the beads slide: the ruler shows where they rest when the piece hangs.");
    }
    (!notes.is_empty()).then(|| notes.join(" "))
}

/// The lengths to check against.
fn checks(sheet: &Sheet<'_>, strand: &Strand, note: Option<&str>, width: f64) -> Block {
    let design = &sheet.piece.design;
    let units = design.heading.units;
    let mut blocks = Vec::new();
    if strand.bits().any(|bit| matches!(bit.what, What::Bead(_))) {
        blocks.push(Type::STRONG.paragraph(&steps::measures(design, strand), width));
        let worst = strand.worst_spread(design);
        let worst = if worst > Length::ZERO {
            format!("At worst, with every bead off by its whole tolerance, {} more or less. ", units.ruler(worst))
        } else {
            String::new()
        };
        let bare = format!(
            "{worst}Bare cord left: {}. Finished, loop to loop: {}.",
            units.ruler(strand.bare()),
            units.ruler(strand.finished)
        );
        blocks.push(Type::TINY.paragraph(&bare, width));
    }
    blocks.extend(note.map(|note| Type::TINY.paragraph(note, width)));
    Block::stack(blocks, 0.4)
}
