//! Making: cautions, the designer's notes, and the numbered steps with small drawings. Lengths in mm on paper.

mod around;
pub mod cautions;
mod whole;

use std::cell::OnceCell;
use std::collections::BTreeMap;

use crate::art::{self, Stencils};
use crate::design::{Design, Finding, Index};
use crate::geometry::Point;
use crate::steps::Drawing;
use crate::steps::english::{self, Told};

use super::buying::tick;
use super::english as say;
use super::said::{SectionKind, Subheading};
use super::{Illustration, LEAST_LAST, Sheet, page};
use crate::paint::layout::flow::Flow;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::{Anchor, Mark};
use crate::paint::{outline, style};
use around::Around;

/// Width in mm of the column of numbers, and the room in it behind them.
const NUMBER: f64 = 8.0;
const AFTER_NUMBER: f64 = 2.6;
/// Room in mm above the designer's notes, and above what is said of the sizes.
const ABOVE_NOTES: f64 = 3.0;
const ABOVE_SIZED: f64 = 2.0;
/// Room for the box before what is to be checked.
const CHECK: f64 = 4.2;
/// Gap between a step's title and where it is drawn.
const TITLE_APART: f64 = 2.5;
/// How steps are set, usually.
const USUAL: Set = Set { between: 2.0, is_small: false };
/// The same where it saves a page: closer, then also in smaller type.
const CLOSE: [Set; 5] = [
    Set { between: 1.0, ..USUAL },
    Set { between: 0.7, ..USUAL },
    SMALL,
    Set { between: 0.7, ..SMALL },
    Set { between: 0.5, ..SMALL },
];
const SMALL: Set = Set { between: 1.0, is_small: true };
/// The same where it fills one.
const AIRY: [Set; 5] = [airy(2.8), airy(3.6), airy(4.4), airy(5.2), airy(6.0)];

/// How large drawings are beside smaller type.
const SMALLER: f64 = 0.8;

/// Room above the box of cautions and below it, unless steps are set closer.
const ABOUT_BOX: f64 = 1.4;
/// Widest lines of words: about 85 letters.
const WIDEST: f64 = 135.0;

/// Steps with so much room above and below each.
const fn airy(between: f64) -> Set {
    Set { between, ..USUAL }
}

/// How steps are set.
#[derive(Clone, Copy)]
struct Set {
    /// Room above and below a step.
    between: f64,
    /// Whether in smaller type.
    is_small: bool,
}

impl Set {
    /// How large drawings are.
    const fn drawn(self) -> f64 {
        if self.is_small { SMALLER } else { 1.0 }
    }

    /// The type of titles, and of what stands below them.
    const fn types(self) -> [Type; 2] {
        if self.is_small { [Type::SMALL_STRONG, Type::SMALL] } else { [Type::STRONG, Type::BODY] }
    }
}

/// All that the maker follows, measured once however often it is poured.
pub struct Making<'a> {
    pub sheet: &'a Sheet<'a>,
    picture: &'a dyn Illustration,
    stencils: &'a Stencils<'a>,
    steps: Vec<Shown>,
    /// Their words with their drawings, in usual and in smaller type.
    told: [OnceCell<Vec<Block>>; 2],
    cautions: OnceCell<Block>,
}

impl<'a> Making<'a> {
    /// That of a sheet.
    pub fn new(sheet: &'a Sheet<'a>, picture: &'a dyn Illustration, stencils: &'a Stencils<'a>) -> Self {
        let steps = drawn_once(english::told_as_hung(&sheet.piece.design, &sheet.piece.drape, sheet.units()));
        Self { sheet, picture, stencils, steps, told: <[_; 2]>::default(), cautions: OnceCell::new() }
    }

    /// The steps in columns of a width; all that one sheet pours are as wide.
    fn blocks(&self, width: f64, set: Set) -> Vec<Block> {
        let told =
            || self.steps.iter().map(|step| told(step, self.drawing(&step.told, set), width - NUMBER, set)).collect();
        let told = self.told[usize::from(set.is_small)].get_or_init(told).iter().zip(1..);
        told.map(|(told, at)| block(at, told.clone(), width, set)).collect()
    }

    /// What is drawn beside a step.
    fn drawing(&self, step: &Told, set: Set) -> Option<Block> {
        Some(match step.drawing? {
            Drawing::Inspected(how) => {
                let whole = whole::figure(how, self.sheet.piece, self.picture, self.stencils);
                art::reduced(whole, self.stencils, set.drawn())
            }
            Drawing::OnArm => art::reduced(whole::on_arm(self.sheet.piece, self.stencils), self.stencils, set.drawn()),
            drawing => art::beside(drawing, &step.cast, self.stencils, set.drawn()),
        })
    }

    fn cautions(&self, width: f64) -> Block {
        self.cautions.get_or_init(|| cautions::boxed(&self.sheet.piece.design, width)).clone()
    }
}

/// What the maker follows at the bench, to be joined to a flow, with the cautions unless the cover has them: set close where
/// that saves a page, and with more air where the last page would else be nearly empty.
pub fn poured(flow: &Flow, making: &Making<'_>, has_cautions: bool) -> Flow {
    let poured = |set: &Set| set_so(flow.fork().sketching(), making, has_cautions, *set);
    let usual = poured(&USUAL);
    let several = usual.count() > 1;
    let close = several.then(|| CLOSE.iter().map(poured));
    let close = close.into_iter().flatten().find(|close| close.count() < usual.count());
    let best = close.unwrap_or(usual);
    let count = best.count();
    let airy = || AIRY.iter().map(poured);
    let fuller = (several && !best.fills(LEAST_LAST)).then(airy).into_iter().flatten();
    let fuller = fuller.take_while(|airy| airy.count() == count).find(|airy| airy.fills(LEAST_LAST));
    fuller.unwrap_or(best)
}

fn set_so(mut flow: Flow, making: &Making<'_>, has_cautions: bool, set: Set) -> Flow {
    let sheet = making.sheet;
    page::begin(&mut flow, &SectionKind::Making { has_cautions });
    if has_cautions {
        let about = if set.between < USUAL.between { 0.0 } else { ABOUT_BOX };
        flow.gap(about);
        flow.add(making.cautions(flow.width()));
        flow.gap(about);
    }
    notes(&mut flow, &sheet.piece.design);
    sized(&mut flow, sheet);
    flow.gap(set.between);
    let columns = if flow.width() >= page::TWO_COLUMNS { 2 } else { 1 };
    let width = column(flow.width(), columns, page::COLUMNS_APART);
    let steps = making.blocks(width, set);
    match columns {
        1 => steps.into_iter().for_each(|step| flow.add(step)),
        _ => flow.columns(steps, page::COLUMNS_APART),
    }
    flow
}

fn notes(flow: &mut Flow, design: &Design) {
    let Some(notes) = &design.heading.notes else { return };
    let from = say::heading(Subheading::Notes(design.heading.designer.as_deref()));
    let words = Type::BODY.paragraph(notes, flow.width().min(WIDEST));
    flow.gap(ABOVE_NOTES);
    flow.add(Block::stack([Type::STRONG.line(&from), words], 0.0));
}

/// Whose numbers the steps give, where there are other sizes.
fn sized(flow: &mut Flow, sheet: &Sheet<'_>) {
    if sheet.piece.sizes.len() < 2 {
        return;
    }
    let words = say::of_steps(sheet.piece.design.heading.size.as_deref());
    flow.gap(ABOVE_SIZED);
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
        let at = shown_by(&told).map(|shown| *first.entry(shown).or_insert(number)).filter(|at| *at != number);
        let drawing = told.drawing.filter(|_| at.is_none());
        Shown { told: Told { drawing, ..told }, drawn_at: at }
    };
    steps.into_iter().zip(1..).map(shown).collect()
}

/// What a step's drawing shows: the same work, on the same thing where that is what hangs.
fn shown_by(step: &Told) -> Option<(Drawing, Vec<Index<Finding>>)> {
    let drawing = step.drawing?;
    let hung = matches!(drawing, Drawing::Clasp | Drawing::InLoop).then(|| step.cast.findings.clone());
    Some((drawing, hung.unwrap_or_default()))
}

/// A step: its number, and its words with its drawing.
fn block(number: usize, told: Block, width: f64, set: Set) -> Block {
    let between = set.between;
    let whole = told.height + 2.0 * between;
    let mut marks = vec![rule(whole, width)];
    let baseline = between + set.types()[0].baseline();
    marks.push(Type::HEADING.mark(&number.to_string(), Point::new(NUMBER - AFTER_NUMBER, baseline), Anchor::End));
    marks.extend(told.at(Point::new(NUMBER, between)));
    Block::new(width, whole, marks)
}

/// A step's title, text and check, round what is drawn.
fn told(step: &Shown, drawing: Option<Block>, width: f64, set: Set) -> Block {
    let [head, face] = set.types();
    let mut around = Around::new(width, WIDEST, drawing);
    around.block(title(step, head, around.rooms(0.0)[0]));
    around.block(around.lines(&step.told.text, face, 0.0));
    if let Some(check) = &step.told.check {
        let words = around.lines(check, face.coloured(style::ACCENT), CHECK);
        let box_ = Block { width: CHECK, ..tick() };
        around.block(Block::row([box_, words], 0.0));
    }
    around.whole()
}

/// A step's title, and where it is drawn.
fn title(Shown { told: step, drawn_at }: &Shown, face: Type, width: f64) -> Block {
    let Some(at) = drawn_at else { return face.paragraph(&step.title, width) };
    let at = Type::SMALL.coloured(style::QUIET).line(&say::drawn_at(*at));
    let title = face.paragraph(&step.title, width - at.width - TITLE_APART);
    Block::middled([title, at], TITLE_APART)
}

/// The thin rule below a step.
fn rule(y: f64, width: f64) -> Mark {
    let outline = outline::line(Point::new(0.0, y), Point::new(width, y));
    Mark::Shape { outline, fill: None, stroke: Some(style::THIN_RULE) }
}
