//! Rows that are worked out from a rule, as indices of beads in the order in which they are strung.

pub mod fade;
pub mod grades;
pub mod mix;

use crate::pattern::{Fade, Graduate, Random, Row, Times};
use crate::remark::Remark;
use crate::remark::said::rows::Rows;
use crate::source::{At, Place};

use super::Context;
use super::entries::{Entries, Index};
use super::list::Given;
use super::model::Phrase;
use super::stock::Bead;

use grades::Grades;

/// Most counts that are looked at beyond one that is too long: beads 20 times as long as others make no row.
const MOST_WAVERING: u32 = 40;

/// From what a row follows, its beads known. Of how many beads it is, or of sizes in which step, is said beside it.
#[derive(Clone)]
pub enum Rule<'a> {
    /// Beads in no order, in the order in which the pattern writes them.
    Mix(&'a Random, Vec<Index<Bead>>),
    /// From one bead to another.
    Fade(Index<Bead>, Index<Bead>),
    /// Sizes that grow to the middle.
    Grades(Grades<'a>),
}

impl Rule<'_> {
    /// The beads of a row of so many, or of that step.
    pub fn beads(&self, step: u32) -> Vec<Index<Bead>> {
        match self {
            Self::Mix(random, beads) => mix::order(random, step).into_iter().map(|kind| beads[kind]).collect(),
            Self::Fade(from, to) => {
                fade::turns(step).into_iter().map(|turned| if turned { *to } else { *from }).collect()
            }
            Self::Grades(grades) => grades.row(step),
        }
    }

    /// How many beads that are.
    pub fn count(&self, step: u32) -> u64 {
        match self {
            Self::Mix(..) | Self::Fade(..) => u64::from(step),
            Self::Grades(grades) => grades.count(step),
        }
    }

    /// How many entries of a list it is worth: a row that follows no repeat as many as it has beads.
    pub fn written(&self, step: u32) -> u64 {
        if matches!(self, Self::Grades(_)) { 1 } else { u64::from(step) }
    }

    /// Whether a row that fills its strand can be made of so many beads.
    pub fn stands(&self, beads: u32) -> bool {
        match self {
            Self::Mix(random, _) => mix::stands(random, beads),
            Self::Fade(..) => beads > 1,
            Self::Grades(_) => true,
        }
    }

    /// How many counts beyond one that is too long may be short enough again. Of n beads in K kinds that are l long
    /// each count is less than one off its share, so that the row is at most K (longest - shortest) / 2 off n times the
    /// mean: what is too long by one count is too long by all that are K x longest / shortest larger. Steps of a
    /// graduated row are in the order of their lengths.
    pub fn wavers(&self, beads: &Entries<Bead>) -> u32 {
        let kinds = match self {
            Self::Mix(_, kinds) => kinds.as_slice(),
            Self::Fade(from, to) => &[*from, *to],
            Self::Grades(_) => return 0,
        };
        let lengths = || kinds.iter().map(|at| beads[*at].along.value());
        let ratio = lengths().fold(0.0, f64::max) / lengths().fold(f64::INFINITY, f64::min);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count")]
        let counts = (kinds.len() as f64 * ratio).ceil() as u32;
        counts.min(MOST_WAVERING)
    }

    /// The row as the maker says it: a graduated one by its sizes, the others bead by bead.
    pub fn phrase(&self, step: u32) -> Phrase {
        let beads = self.beads(step);
        match self {
            Self::Grades(_) => {
                let (side, middle) = (beads.len() / 2, beads.len() % 2);
                Phrase::Mirror(runs(&beads[..side]), runs(&beads[side..side + middle]))
            }
            Self::Mix(..) | Self::Fade(..) => Phrase::Ordered(runs(&beads)),
        }
    }
}

fn runs(beads: &[Index<Bead>]) -> Vec<Phrase> {
    // A row holds no more beads than a piece, which is a `u32`.
    let run = |run: &[Index<Bead>]| Phrase::Run(u32::try_from(run.len()).unwrap_or(u32::MAX), run[0]);
    beads.chunk_by(PartialEq::eq).map(run).collect()
}

/// The rule of a row, and how many beads or which step it says; none of one that fills its strand. Leaves a remark for
/// each bead that the pattern does not define, and where no row can be made.
pub fn lower<'a>(
    row: &'a Row,
    place: Place,
    given: Given<'a>,
    context: &mut Context,
) -> Option<(Rule<'a>, Option<u32>)> {
    let named: Vec<_> = row.beads().into_iter().map(|id| given.shelf.find_bead(id, context)).collect();
    context.refuse_if(wrong(row, place).filter(|_| !context.holes.spoil(place)))?;
    let beads = named.into_iter().collect::<Option<Vec<_>>>()?;
    match (row, beads.as_slice()) {
        (Row::Random(random), _) => Some((Rule::Mix(random, beads), counted(random.random.value))),
        (Row::Fade(fade), [from, to]) => Some((Rule::Fade(*from, *to), counted(fade.fade.value))),
        (Row::Graduate(graduate), [_, ..]) => graduated(graduate, beads, given, context),
        (Row::Fade(_) | Row::Graduate(_), _) => None,
    }
}

const fn counted(times: Times) -> Option<u32> {
    match times {
        Times::Count(count) => Some(count),
        Times::Fill => None,
    }
}

fn wrong(row: &Row, place: Place) -> Option<Remark> {
    match row {
        Row::Random(random) => mix::wrong(random),
        Row::Fade(fade) => fade_wrong(fade),
        Row::Graduate(graduate) => graduate.graduate.is_empty().then(|| Remark::new(Rows::NoGrades).at(place)),
    }
}

fn fade_wrong(fade: &Fade) -> Option<Remark> {
    let id = fade.from.value.clone();
    let wrong = match fade.fade.value {
        _ if id == fade.to.value => Rows::FadeToItself { id },
        Times::Count(1) => Rows::FadeOfOne { id },
        _ => return None,
    };
    Some(Remark::new(wrong).at(fade.fade.place))
}

/// A graduated row, in the longest step that its own length has room for, where it says one.
fn graduated<'a>(
    graduate: &'a Graduate,
    beads: Vec<Index<Bead>>,
    given: Given<'a>,
    context: &mut Context,
) -> Option<(Rule<'a>, Option<u32>)> {
    let grades = Grades::new(beads, given);
    let Some(At { value: length, place }) = &graduate.length else { return Some((Rule::Grades(grades), None)) };
    match grades.longest(*length) {
        Some(step) => Some((Rule::Grades(grades), Some(step))),
        None => context.refuse(Remark::new(Rows::GradesTooLong { least: grades.least() }).at(*place)),
    }
}
