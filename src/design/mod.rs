//! The design: a pattern resolved into beads, lengths and findings.
//!
//! [`resolve`] looks up every name, solves the counts that `fill` leaves open and sets the beads
//! in their rows. Its result has no open question but where sliding beads come to rest.

mod alike;
mod article;
mod assorted;
mod assumed;
mod bars;
mod bends;
mod build;
mod by_hand;
mod closure;
mod ends;
mod entries;
mod expect;
mod filling;
mod finding;
mod folded;
mod form;
mod joins;
mod knots;
mod lengths;
mod limits;
mod list;
mod measure;
mod model;
mod opening;
mod overfull;
mod pack;
mod pinned;
mod profile;
mod refill;
mod resting;
mod round;
mod row;
mod rows;
mod settling;
mod shaping;
mod shelf;
mod sound;
mod spot;
mod spring;
mod stated;
mod stock;
mod stops;
mod strand;
mod tassel;
mod twist;
mod wear;
mod wraps;

use crate::pattern::{Holes, Pattern};
use crate::remark::{Edition, Remark, has_errors, once};

pub use assorted::{Assorted, Held, Pack};
pub use bars::{Bores, Passage, Shared, Sharer, Sharers};
pub use entries::{Entries, Index, nth};
pub use finding::Finding;
pub use form::*;
pub use joins::*;
pub use measure::{Bias, LEAST_BARE, TOLD_LACK};
pub use model::*;
pub use round::{Stock, parts as closing_parts};
pub use row::taken_by;
pub use shelf::check as check_shelf;
pub use sound::Flaw;
pub use spring::Spring;
pub use stated::Stated;
pub use stock::*;
pub use twist::Twist;
pub use wear::{Basis, Build, Fit, limb};

use build::build;

/// Which of a pattern's variants is wanted, and for whom.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Choice {
    /// Name of a size.
    pub size: Option<String>,
    /// Name of a colourway.
    pub colourway: Option<String>,
    /// Measures of the one that it is made for.
    pub fit: Fit,
}

impl From<Edition> for Choice {
    /// The choice of that size or colourway alone.
    fn from(edition: Edition) -> Self {
        match edition {
            Edition::Size(name) => Self { size: Some(name), ..Self::default() },
            Edition::Colourway(name) => Self { colourway: Some(name), ..Self::default() },
        }
    }
}

impl Pattern {
    /// The names of its sizes.
    #[must_use]
    pub fn size_names(&self) -> Vec<String> {
        self.sizes.iter().flatten().map(|size| size.name.value.clone()).collect()
    }

    /// The names of its colourways.
    #[must_use]
    pub fn colourway_names(&self) -> Vec<String> {
        self.colourways.iter().flat_map(|ways| ways.ids()).map(str::to_owned).collect()
    }

    /// Every size and every colourway that the pattern names.
    #[must_use]
    pub fn variants(&self) -> Vec<Edition> {
        let sizes = self.size_names().into_iter().map(Edition::Size);
        sizes.chain(self.colourway_names().into_iter().map(Edition::Colourway)).collect()
    }
}

/// One of the sizes of a graded pattern.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Size {
    /// Its name; the base size has none.
    pub name: Option<String>,
    /// Whether it is the one that was asked for.
    pub chosen: bool,
    /// What it makes; absent where it cannot be made.
    pub design: Option<Design>,
}

/// Gathers remarks while a pattern is resolved.
#[derive(Default)]
struct Context {
    /// Where the pattern cannot be read.
    holes: Holes,
    /// Whether it cannot be read round what the piece goes.
    girthless: bool,
    remarks: Vec<Remark>,
    /// How many things the strands so far hold.
    strung: u64,
    /// How many findings stand among their beads.
    findings: u64,
    /// How many entries their bead lists have.
    written: u64,
    /// How many variants the pattern has: its own, its sizes and its colourways.
    variants: u64,
}

impl Context {
    /// Whether the piece lacks something because of a hole in its pattern.
    fn wants(&self, pattern: &Pattern) -> bool {
        let text = ["strands", "closure"].into_iter().any(|key| self.holes.swallow(key));
        self.girthless || self.holes.spoil(pattern.strands.place) || text
    }

    fn refuse<T>(&mut self, remark: Remark) -> Option<T> {
        self.remarks.push(remark);
        None
    }

    /// What was found, or nothing with a remark why.
    fn take<T>(&mut self, found: Result<T, Remark>) -> Option<T> {
        found.map_err(|why| self.remarks.push(why)).ok()
    }

    fn refuse_if(&mut self, wrong: Option<Remark>) -> Option<()> {
        wrong.map_or(Some(()), |remark| self.refuse(remark))
    }
}

/// Resolves a pattern. Without errors among the remarks there is a design.
#[must_use]
pub fn resolve(pattern: &Pattern, choice: &Choice) -> (Option<Design>, Vec<Remark>) {
    let Attempt { design, remarks, .. } = attempt(pattern, &Holes::default(), choice);
    (design.filter(|_| !has_errors(&remarks)), remarks)
}

/// What becomes of a pattern in which something may be wrong.
pub struct Attempt {
    /// The design, of those strands that could be resolved.
    pub design: Option<Design>,
    /// Whether that is all of the piece: its strands, what joins them and who wears it.
    pub whole: bool,
    /// What was found; what follows from holes alone is not said.
    pub remarks: Vec<Remark>,
}

/// Resolves as much of a pattern as its holes leave.
#[must_use]
pub fn attempt(pattern: &Pattern, holes: &Holes, choice: &Choice) -> Attempt {
    let variants = 1 + pattern.variants().len() as u64;
    let girthless = girthless(pattern, holes);
    let mut context = Context { holes: holes.clone(), girthless, variants, ..Context::default() };
    let (design, whole) = build(pattern, choice, &mut context).unzip();
    let whole = whole.unwrap_or_default();
    if let (Some(design), Some(expect), true) = (&design, &pattern.expect, *choice == Choice::default()) {
        expect::check(expect, pattern, design, whole, &mut context);
    }
    let sound = !has_errors(&context.remarks) && !holes.any();
    if sound {
        context.remarks.extend(shelf::unused(pattern));
    }
    // Beads of what could not be resolved, or whose shelf could not be read, are idle.
    context.remarks.extend(design.as_ref().filter(|_| sound).and_then(|design| design.idle_fault()));
    Attempt { design, whole, remarks: once(context.remarks) }
}

/// Whether a hole leaves open round what a piece goes: its kind, or who wears it.
fn girthless(pattern: &Pattern, holes: &Holes) -> bool {
    let wear = pattern.wear.as_ref().is_some_and(|wear| holes.spoil(wear.place));
    wear || pattern.kind.place.is_nowhere() || ["wear", "kind"].into_iter().any(|key| holes.swallow(key))
}

/// Every size that a pattern is made in, the base size first, with its design in a colourway; nothing
/// where the pattern names no other size. A size that cannot be made has no design.
#[must_use]
pub fn sizes(pattern: &Pattern, choice: &Choice) -> Vec<Size> {
    let named = pattern.sizes.as_deref().unwrap_or_default();
    let names = named.iter().map(|size| Some(size.name.value.clone()));
    let in_size = |name: Option<String>| {
        let of_size = Choice { size: name.clone(), ..choice.clone() };
        Size { design: resolve(pattern, &of_size).0, chosen: name == choice.size, name }
    };
    if named.is_empty() { Vec::new() } else { std::iter::once(None).chain(names).map(in_size).collect() }
}
