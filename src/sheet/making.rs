//! Making: cautions, the designer's notes, and the numbered steps with small drawings.

mod around;

use std::collections::BTreeMap;

use crate::art::{self, STEP_SIZE};
use crate::design::Design;
use crate::geometry::Point;
use crate::steps::english::{self, Told, Warned};

use super::buying::tick;
use super::{Sheet, page};
use crate::paint::layout::flow::Flow;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::{Anchor, Mark, Role, Stroke};
use crate::paint::{metrics, outline, style};
use around::{Around, after};

/// Width of the column of numbers.
const NUMBER: f64 = 8.0;
/// Room for the box before what is to be checked.
const CHECK: f64 = 4.2;
/// Gap between a step's title and where it is drawn.
const TITLE_APART: f64 = 2.5;
/// Gap between two columns of steps.
const APART: f64 = 8.0;
/// Narrowest room in which steps stand in two columns.
const TWO_COLUMNS: f64 = 160.0;
/// How steps are set, usually.
const USUAL: Set = Set { between: 2.0, title: Type::STRONG, text: Type::BODY };
/// The same where it saves a page: closer, then also in smaller type.
const CLOSE: [Set; 4] =
    [Set { between: 1.0, ..USUAL }, Set { between: 0.7, ..USUAL }, SMALL, Set { between: 0.7, ..SMALL }];
const SMALL: Set = Set { between: 1.0, title: Type::SMALL_STRONG, text: Type::SMALL };
/// The same where it fills one.
const AIRY: [Set; 3] = [Set { between: 2.8, ..USUAL }, Set { between: 3.6, ..USUAL }, Set { between: 4.4, ..USUAL }];
/// Share of the last page that is to be filled.
const LEAST_LAST: f64 = 0.35;
/// Gap between columns of cautions.
const COLUMNS_GAP: f64 = 6.0;
/// Most columns of cautions, and the narrowest.
const CAUTIONS: (usize, f64) = (4, 38.0);
/// Widest lines of words: about 85 letters.
const WIDEST: f64 = 135.0;
/// Room inside the edge of the box of cautions.
const PAD: f64 = 3.0;

/// How steps are set.
#[derive(Clone, Copy)]
struct Set {
    /// Room above and below a step.
    between: f64,
    title: Type,
    text: Type,
}

/// Pours what the maker follows at the bench: set close where that saves a page, and with more air where the last page would
/// else be nearly empty.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>) {
    let steps = drawn_once(english::told(&sheet.piece.design));
    let poured = |set: &Set| poured(flow.fork(), sheet, &steps, *set);
    let usual = poured(&USUAL);
    let several = usual.count() > 1;
    let close = several.then(|| CLOSE.iter().map(poured));
    let close = close.into_iter().flatten().find(|close| close.count() < usual.count());
    let best = close.unwrap_or(usual);
    let (count, least) = (best.count(), sheet.room().height * LEAST_LAST);
    let airy = || AIRY.iter().map(poured);
    let fuller = (several && best.taken() < least).then(airy).into_iter().flatten();
    let fuller = fuller.take_while(|airy| airy.count() == count).find(|airy| airy.taken() >= least);
    flow.join(fuller.unwrap_or(best));
}

fn poured(mut flow: Flow, sheet: &Sheet<'_>, steps: &[Shown], set: Set) -> Flow {
    let design = &sheet.piece.design;
    page::begin(
        &mut flow,
        "Making",
        "Cautions, and the steps of the work in order, each with what to check.".to_owned(),
    );
    flow.add(warnings(design, flow.width()));
    notes(&mut flow, design);
    sized(&mut flow, sheet);
    flow.gap(set.between);
    let columns = if flow.width() >= TWO_COLUMNS { 2 } else { 1 };
    let width = column(flow.width(), columns, APART);
    let steps: Vec<_> = steps.iter().zip(1..).map(|(step, at)| block(at, step, width, set)).collect();
    match columns {
        1 => steps.into_iter().for_each(|step| flow.add(step)),
        _ => flow.columns(steps, APART),
    }
    flow
}

/// The cautions in a box, in as many columns as make it lowest.
fn warnings(design: &Design, width: f64) -> Block {
    let cautions = english::cautions(design);
    let room = width - 2.0 * PAD;
    let (most, narrowest) = CAUTIONS;
    let fits = |columns: &usize| *columns == 1 || column(room, *columns, COLUMNS_GAP) >= narrowest;
    let said = (1..=most).filter(fits).map(|columns| {
        let width = column(room, columns, COLUMNS_GAP);
        let each = cautions.iter().map(|caution| Block::stack([warning(caution, width), Block::gap(0.8)], 0.0));
        Block::row(balanced(each.collect(), columns).map(|side| Block { width, ..side }), COLUMNS_GAP)
    });
    let lowest = said.min_by(|one, other| one.height.total_cmp(&other.height)).unwrap_or_default();
    boxed(Block::stack([Type::STRONG.line("Before you start"), lowest], 0.8), width)
}

/// A caution, its title before its first words.
fn warning(caution: &Warned, width: f64) -> Block {
    let (strong, face) = (Type::SMALL_STRONG.coloured(style::ACCENT), Type::SMALL);
    let title = strong.line(&format!("{}. ", caution.title));
    let mut lines = metrics::wrap(caution.text, face.size, face.weight, width - title.width).into_iter();
    let first = lines.next().unwrap_or_default();
    let rest = after(caution.text, &first);
    let first = Block::row([title, face.line(&first)], 0.0);
    Block::stack([first, face.wrapped(rest, width)], 0.0).in_role(Role::Paragraph)
}

/// Blocks in order in at most so many columns, the tallest of which is as low as can be.
fn balanced(blocks: Vec<Block>, columns: usize) -> impl Iterator<Item = Block> {
    let filled = |most: f64| {
        let mut height = 0.0;
        let mut sides: Vec<Vec<Block>> = Vec::new();
        for block in &blocks {
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
    };
    let heights = |from: usize| {
        blocks[from..].iter().scan(0.0, |sum, block| {
            *sum += block.height;
            Some(*sum)
        })
    };
    let mut most: Vec<f64> = (0..blocks.len()).flat_map(heights).collect();
    most.sort_by(f64::total_cmp);
    let sides = most.into_iter().map(filled).find(|sides| sides.len() <= columns).unwrap_or_default();
    sides.into_iter().map(|side| Block::stack(side, 0.0))
}

/// A block in a box of a width.
fn boxed(block: Block, width: f64) -> Block {
    let height = block.height + 2.0 * PAD - 1.2;
    let outline = outline::rounded_rect(Point::new(0.15, 0.15), width - 0.3, height - 0.3, 1.5);
    let edge = Mark::Shape { outline, fill: None, stroke: Some(Stroke::new(style::ACCENT, 0.3)) };
    let mut marks = vec![edge];
    marks.extend(block.at(Point::new(PAD, PAD)));
    Block::new(width, height, marks)
}

fn notes(flow: &mut Flow, design: &Design) {
    let Some(notes) = &design.heading.notes else { return };
    let from = design.heading.designer.as_ref().map_or_else(|| "Notes".to_owned(), |name| format!("Notes by {name}"));
    let words = Type::BODY.paragraph(notes, flow.width().min(WIDEST));
    flow.gap(3.0);
    flow.add(Block::stack([Type::STRONG.line(&from), words], 0.0));
}

/// Whose numbers the steps give, where there are other sizes.
fn sized(flow: &mut Flow, sheet: &Sheet<'_>) {
    if sheet.piece.sizes.len() < 2 {
        return;
    }
    let size = sheet
        .piece
        .design
        .heading
        .size
        .as_ref()
        .map_or_else(|| "the base size".to_owned(), |name| format!("size {name}"));
    let words = format!(
        "All lengths and counts in the steps are those of {size}; for another size take its own from the table of sizes."
    );
    flow.gap(2.0);
    flow.add(Type::SMALL.paragraph(&words, flow.width()));
}

/// A step as it is shown.
struct Shown {
    told: Told,
    /// The step beside which its drawing stands, where that came before.
    drawn_at: Option<usize>,
}

/// Steps with each drawing where it is needed first.
fn drawn_once(steps: Vec<Told>) -> Vec<Shown> {
    let mut first = BTreeMap::new();
    let shown = |(told, number): (Told, usize)| {
        let at = told.drawing.map(|drawing| *first.entry(drawing).or_insert(number)).filter(|at| *at != number);
        let drawing = told.drawing.filter(|_| at.is_none());
        Shown { told: Told { drawing, ..told }, drawn_at: at }
    };
    steps.into_iter().zip(1..).map(shown).collect()
}

/// A step: its number, and its words with its drawing.
fn block(number: usize, step: &Shown, width: f64, set: Set) -> Block {
    let (told, between) = (told(step, width - NUMBER, set), set.between);
    let whole = told.height + 2.0 * between;
    let mut marks = vec![rule(whole, width)];
    let baseline = between + set.title.size * 0.98;
    marks.push(Type::HEADING.mark(&number.to_string(), Point::new(NUMBER - 2.6, baseline), Anchor::End));
    marks.extend(told.at(Point::new(NUMBER, between)));
    Block::new(width, whole, marks)
}

/// A step's title, text and check, round its drawing.
fn told(step: &Shown, width: f64, set: Set) -> Block {
    let drawing = step.told.drawing.map(|drawing| Block::new(STEP_SIZE.0, STEP_SIZE.1, art::step(drawing)));
    let mut around = Around::new(width, WIDEST, drawing);
    around.block(title(step, set.title, around.rooms(0.0)[0]));
    around.block(around.lines(&step.told.text, set.text, 0.0));
    if let Some(check) = &step.told.check {
        let words = around.lines(check, set.text.coloured(style::ACCENT), CHECK);
        let box_ = Block { width: CHECK, ..tick() };
        around.block(Block::row([box_, words], 0.0));
    }
    around.whole()
}

/// A step's title, and where it is drawn.
fn title(Shown { told: step, drawn_at }: &Shown, face: Type, width: f64) -> Block {
    let Some(at) = drawn_at else { return face.paragraph(&step.title, width) };
    let at = Type::SMALL.coloured(style::QUIET).line(&format!("drawn at step {at}"));
    let title = face.paragraph(&step.title, width - at.width - TITLE_APART);
    Block::middled([title, at], TITLE_APART)
}

/// The thin rule below a step.
fn rule(y: f64, width: f64) -> Mark {
    let outline = outline::line(Point::new(0.0, y), Point::new(width, y));
    Mark::Shape { outline, fill: None, stroke: Some(style::THIN_RULE) }
}
