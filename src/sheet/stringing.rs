//! Stringing: for each strand what to cut, the word chart, the row at actual size with
//! its ruler, and the lengths to check against. Lengths in mm on paper.

mod checks;
mod remedy;

use crate::art::Stencils;
use crate::design::{Bead, Bit, Design, Finding, Index, Strand, What, taken_by};
use crate::geometry::Point;
use crate::pattern::Shape;
use crate::steps::chart::TEN;
use crate::steps::english;
use crate::steps::english::chart::{self, WordChart};
use crate::steps::posts::{Datum, Keeps, Posts, datum};
use crate::units::Length;

use super::english as say;
use super::figure;
use super::said::{FooterScale, InKey, Reading, RulerStart, SectionKind, Subheading, Takes, ToCut};
use super::{Sheet, legend, page, sizes, words};
use crate::paint::layout::Block;
use crate::paint::layout::flow::Flow;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Mark, Role};
use crate::paint::{outline, style};

/// Room between strands, usually and where all stands close.
const STRANDS_APART: [f64; 2] = [4.0, 3.0];
/// Room between the lines of a row, likewise.
const LINES_APART: [f64; 2] = [2.5, 1.5];
/// Most lines of a word chart that is set in large type.
const LARGE_LINES: usize = 6;
/// The chart's large type, to be read from the bench.
const LARGE: Type = Type { colour: style::INK, weight: Type::BODY.weight, ..Type::HEADING };
/// Width and height in mm up to which a bead is drawn at actual size in the key.
const KEY_SIZE: (f64, f64) = (20.0, 12.0);
/// Room in mm between a letter, its drawing and its words, and between two entries of the key.
const BESIDE_LETTER: f64 = 1.5;
const ENTRIES_APART: f64 = 7.0;
/// The most of a line of the key that a name takes.
const MOST_NAME: f64 = 0.5;
/// Room in mm between a strand's name and its cut length, below the rule above them, and below what is said of it.
const BEFORE_CUT: f64 = 6.0;
const BELOW_RULE: f64 = 1.0;
const BELOW_HEAD: f64 = 1.2;

/// Pours all strands.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, stencils: &Stencils<'_>) {
    let names = sheet.piece.design.strands.iter().map(|strand| strand.name.as_str());
    page::begin(flow, &SectionKind::Stringing(names.collect()));
    let width = flow.width();
    flow.add(intro(sheet, width));
    flow.gap(2.0);
    for row in key(sheet, width, stencils) {
        flow.add(row);
        flow.gap(1.0);
    }
    for alike in sheet.piece.design.alike() {
        flow.gap(flow.room(STRANDS_APART));
        strands(sheet, &alike, flow, stencils);
    }
}

fn intro(sheet: &Sheet<'_>, width: f64) -> Block {
    Type::SMALL.paragraph(&say::reading(&reading(&sheet.piece.design)), width)
}

/// How the rows of a design are read.
fn reading(design: &Design) -> Reading<'_> {
    let posts: Vec<_> = design.strands.iter().map(|strand| Posts::new(design, strand)).collect();
    let stand = Keeps::ALL.into_iter().filter(|keeps| posts.iter().any(|posts| posts.of(*keeps).next().is_some()));
    let is_stopped = |strand: &Strand| Posts::new(design, strand).of(Keeps::Stop).next().is_some();
    let differ = design.strands.iter().flat_map(strung).any(|bead| takes(&design.beads[bead]).is_some());
    let are_beside = design.strands.iter().any(has_neighbours);
    Reading {
        design,
        tens: design.strands.iter().any(|strand| strung(strand).count() >= TEN),
        starts: starts(design),
        letters: stand.map(|keeps| (keeps.letter(design), keeps)).collect(),
        slides: design.strands.iter().filter(|strand| strand.slides(design)).map(is_stopped).min(),
        pair: design.copies > 1,
        twisted: design.twist.as_ref().map(|twist| twist.turns),
        takes: differ.then_some(if are_beside { Takes::Sunk } else { Takes::FromHoleToHole }),
    }
}

/// Where the rulers of a design start.
fn starts(design: &Design) -> RulerStart {
    if design.sprung().is_some() {
        RulerStart::TurnedLoop
    } else if design.strands.iter().all(|strand| datum(design, strand) == Datum::EndLink) {
        RulerStart::InEndLink
    } else {
        RulerStart::Outside
    }
}

/// The beads on a strand's cord itself.
fn strung(strand: &Strand) -> impl Iterator<Item = Index<Bead>> {
    strand.bits().filter_map(|bit| bit.what.bead())
}

/// Whether a bead lies beside another on a strand.
fn has_neighbours(strand: &Strand) -> bool {
    let is_bead = |bit: &Bit| matches!(bit.what, What::Bead(_));
    strand.bits().zip(strand.bits().skip(1)).any(|(one, next)| is_bead(one) && is_bead(next))
}

/// Every bead and strung cap with its letter or mark and its name, in rows.
fn key(sheet: &Sheet<'_>, width: f64, stencils: &Stencils<'_>) -> Vec<Block> {
    let mut entries = Vec::new();
    for (index, bead) in sheet.piece.design.beads.entries() {
        let part = reduction(bead);
        let name = Type::SMALL.fitted(&bead.name, width * MOST_NAME);
        let is_strung = sheet.piece.design.strands.iter().any(|strand| strung(strand).any(|other| other == index));
        let takes = takes(bead).filter(|_| is_strung);
        let size = say::in_key(&InKey { bead, takes, part }, sheet.units());
        let words = Block::stack([name, Type::TINY.line(&size)], 0.0);
        let letter = Type::STRONG.line(&bead.letter);
        let drawing = legend::drawing(index, bead, 1.0 / f64::from(part), stencils);
        entries.push(Block::middled([letter, drawing, words], BESIDE_LETTER).in_role(Role::Paragraph));
    }
    entries.extend(caps(sheet, width, stencils));
    Block::rows(entries, ENTRIES_APART, width)
}

/// Every strung cap with the marks that stand for it in rows.
fn caps(sheet: &Sheet<'_>, width: f64, stencils: &Stencils<'_>) -> Vec<Block> {
    let (design, units) = (&sheet.piece.design, sheet.units());
    let strung = design.strung_caps();
    let entry = |(which, index): (usize, &Index<Finding>)| {
        let finding = &design.findings[*index];
        let name = Type::SMALL.fitted(&finding.name, width * MOST_NAME);
        let size = say::cap_in_key(finding.along(), taken_by_cap(design, *index), units);
        let size = Type::TINY.line(&size);
        let mark = Type::STRONG.line(&say::cap(which, strung.len()).join(" "));
        let drawing = legend::finding(*index, finding.kind(), stencils);
        Block::middled([mark, drawing, Block::stack([name, size], 0.0)], BESIDE_LETTER).in_role(Role::Paragraph)
    };
    strung.iter().enumerate().map(entry).collect()
}

/// The least and the most that a cap takes of its cord.
fn taken_by_cap(design: &Design, cap: Index<Finding>) -> [Length; 2] {
    let is_cap = |bit: &&Bit| bit.what == What::Finding(cap);
    let taken = || design.strands.iter().flat_map(Strand::bits).filter(is_cap).map(|bit| Length::mm(bit.length()));
    [taken().reduce(Length::min), taken().reduce(Length::max)].map(Option::unwrap_or_default)
}

/// Into how many parts a bead's size goes to have room in the key.
fn reduction(bead: &Bead) -> u32 {
    let (wide, high) = KEY_SIZE;
    let parts = (bead.along.value() / wide).max(bead.across.value() / high).ceil();
    // Sizes are finite and above 0, and `as` saturates.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 1 on")]
    let parts = parts.max(1.0) as u32;
    parts
}

/// How much cord a bead takes in a row of its kind, where its size does not say it.
fn takes(bead: &Bead) -> Option<Length> {
    let size = if bead.shape == Shape::Seed { bead.across } else { bead.along };
    let takes = Length::mm(taken_by(bead, Some(bead)));
    (size.hundredths() != takes.hundredths()).then_some(takes)
}

/// Pours strands that are strung alike: one row for all of them.
fn strands(sheet: &Sheet<'_>, alike: &[Index<Strand>], flow: &mut Flow, stencils: &Stencils<'_>) {
    let width = flow.width();
    let apart = flow.room(LINES_APART);
    let row = figure::row(sheet.piece, alike[0], width, stencils);
    let checks = checks::block(sheet, alike[0], &row, width);
    let mut lines = row.lines;
    // What it measures stays with the end of the row.
    let last = Block::stack(lines.pop().into_iter().chain([checks]), apart);
    let mut blocks = lines.into_iter().chain([last]);
    open(flow, opening(sheet, alike, width), blocks.next().unwrap_or_default(), sheet.room().height);
    flow.scaled(say::scaled(FooterScale::Rows), true);
    for block in blocks {
        flow.gap(apart);
        if block.height > flow.left() {
            flow.turn();
            flow.add(continued(&sizes::title(&sheet.piece.design, alike), width));
        }
        flow.add(block);
        flow.scaled(say::scaled(FooterScale::Rows), true);
    }
}

/// What stands above a row: the head, the word chart and the counts.
fn opening(sheet: &Sheet<'_>, alike: &[Index<Strand>], width: f64) -> Vec<Block> {
    let design = &sheet.piece.design;
    let strand = &design.strands[alike[0]];
    let chart = chart_lines(&chart::whole(design, strand, sheet.units()), width);
    let counts = Type::SMALL.paragraph(&english::counts(design, strand), width);
    let counts = Block::stack([counts, Block::gap(2.0)], 0.0);
    std::iter::once(head(sheet, alike, width)).chain(chart).chain([counts]).collect()
}

/// Strands that are strung alike in words alone: what to cut, what to string, what it measures.
pub fn told(sheet: &Sheet<'_>, alike: &[Index<Strand>], width: f64) -> Block {
    let design = &sheet.piece.design;
    let strand = &design.strands[alike[0]];
    let counts = english::counts(design, strand);
    let measures = std::iter::once(counts).chain(checks::measures(design, strand, sheet.units()));
    let opening =
        [head(sheet, alike, width)].into_iter().chain(chart_lines(&chart::whole(design, strand, sheet.units()), width));
    Block::stack(opening.chain(measures.map(|words| Type::SMALL.paragraph(&words, width))), 0.0)
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
fn head(sheet: &Sheet<'_>, alike: &[Index<Strand>], width: f64) -> Block {
    let design = &sheet.piece.design;
    let (strand, units) = (&design.strands[alike[0]], sheet.units());
    let cut = if strand.is_on_pin(design) { ToCut::OnPin } else { ToCut::Cord(strand.cut()) };
    let cut = LARGE.bold().line(&say::to_cut(cut, alike.len(), units));
    let name =
        Type::HEADING.fitted(&sizes::title(design, alike), width - cut.width - BEFORE_CUT).in_role(Role::Heading(2));
    let left = width - cut.width;
    let mut marks = vec![rule(width)];
    marks.extend(name.at(Point::new(0.0, BELOW_RULE)));
    let height = BELOW_RULE + cut.height;
    marks.extend(cut.at(Point::new(left, BELOW_RULE)));
    let facts = Type::SMALL.paragraph(&say::strung_on(design, strand, units), width);
    Block::stack([Block::new(width, height, marks), facts, Block::gap(BELOW_HEAD)], 0.0)
}

/// The heading of a strand that runs on to another page.
fn continued(title: &str, width: f64) -> Block {
    let words = Type::HEADING.fitted(&say::heading(Subheading::Continued(title)), width).in_role(Role::Heading(2));
    Block::stack([words, Block::gap(2.0)], 0.0)
}

fn rule(width: f64) -> Mark {
    let y = style::INK_RULE.width / 2.0;
    let line = outline::line(Point::new(0.0, y), Point::new(width, y));
    Mark::Shape { outline: line, fill: None, stroke: Some(style::INK_RULE) }
}

/// The word chart, in large type unless it is long.
fn chart_lines(chart: &WordChart, width: f64) -> Vec<Block> {
    let large = words::set(chart, LARGE, width);
    if large.len() <= LARGE_LINES { large } else { words::set(chart, Type::BODY, width) }
}
