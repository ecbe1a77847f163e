//! The design: a pattern resolved into beads, lengths and findings.
//!
//! [`resolve`] looks up every name, solves the counts that `fill` leaves open and sets the beads
//! in their rows. Its result has no open question but where sliding beads come to rest.

mod alike;
mod article;
mod assorted;
mod bars;
mod closure;
mod colourway;
mod entries;
mod expand;
mod expect;
mod filling;
mod finding;
mod folded;
mod form;
mod knots;
mod limits;
mod measure;
mod model;
mod opening;
mod pack;
mod pinned;
mod profile;
mod refill;
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
mod twist;
mod wear;
mod wraps;

use crate::pattern::{self, Dict, Holes, Kind, Overhead, Pattern, Recolour};
use crate::remark::said::naming::{Naming, Thing};
use crate::remark::{Remark, has_errors, near, once, said};
use crate::source::At;
use crate::units::Money;

pub use assorted::{Assorted, Held, Pack};
pub use bars::{Bores, Passage, Shared, Sharer, Sharers};
pub use colourway::{Colourway, colourways};
pub use entries::{Entries, Index, nth};
pub use finding::Finding;
pub use form::*;
pub use measure::{Bias, TOLD_SLACK};
pub use model::*;
pub use round::{Stock, parts as closing_parts};
pub use row::taken_by;
pub use shelf::check as check_shelf;
pub use spring::Spring;
pub use stated::Stated;
pub use stock::*;
pub use twist::Twist;
pub use wear::{Basis, Build, Fit, limb};

use shelf::Shelf;
use wear::Said;

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

    /// Every size and every colourway that the pattern names, each with what it is called.
    #[must_use]
    pub fn variants(&self) -> Vec<(String, Choice)> {
        let sizes = self.size_names().into_iter();
        let sizes = sizes.map(|name| (format!("size {name}"), Choice { size: Some(name), ..Choice::default() }));
        let ways = self.colourway_names().into_iter();
        let ways =
            ways.map(|name| (format!("colourway {name}"), Choice { colourway: Some(name), ..Choice::default() }));
        sizes.chain(ways).collect()
    }
}

/// One of the sizes of a graded pattern.
#[derive(Clone, Debug)]
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
    if !has_errors(&context.remarks) && !holes.any() {
        context.remarks.extend(shelf::unused(pattern));
    }
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

/// The design of all strands that can be resolved, and whether it is the whole piece.
fn build(pattern: &Pattern, choice: &Choice, context: &mut Context) -> Option<(Design, bool)> {
    let size = size(pattern, choice, context)?;
    let said = Said::new(&choice.fit, size, pattern);
    wear::check(&choice.fit, &pattern.kind, context)?;
    let made_to = wear::made_to(pattern, size, &said, context)?;
    let colours = colours(pattern, choice, context)?;
    check_names(pattern, context);
    let mut shelf = Shelf::fill(pattern, context);
    if let Some(colours) = colours {
        shelf.recolour(colours, context);
    }
    wraps::check(pattern, context)?;
    twist::check(pattern, context)?;
    closure::only_above(pattern, context);
    let closure = closure::closure(pattern, &shelf, context);
    let closed = closure.is_some();
    let assorted = assorted::assorted(pattern, &shelf, context);
    let closure = closure.unwrap_or_default();
    let meeting = closure::meeting(pattern, &shelf, context);
    let written = pinned::strands(pattern, &closure, closed, &shelf, context);
    let mut strand = |written: &At<pattern::Strand>| strand::strand(written, made_to, &closure, &shelf, context);
    let strands: Vec<_> = written.iter().map(|written| strand(written.as_ref()?)).collect();
    let whole = strands.iter().all(Option::is_some) && closed && !context.wants(pattern);
    let mut strands: Vec<_> = strands.into_iter().flatten().collect();
    hang_apart(&mut strands, &closure, &shelf);
    let is_ring = matches!(pattern.kind.value, Kind::Bracelet | Kind::Anklet) || wraps::written(pattern) > 1.0;
    match meeting {
        Some(meeting) if whole => closure::hang_meeting(&mut strands, meeting, context),
        None if is_ring && closure.is_empty() => {
            let tied = strands.iter_mut().filter(|strand| !shelf.cords[strand.cord].is_sprung());
            tied.for_each(|strand| row::close(strand, &shelf.beads));
        }
        _ => {}
    }
    bars::share_mass(&mut strands, Stock { beads: &shelf.beads, findings: &shelf.findings });
    let mut design = Design {
        heading: heading(pattern, choice),
        beads: shelf.beads,
        cords: shelf.cords,
        findings: shelf.findings,
        assorted,
        strands,
        closure,
        wear: wear::wear(pattern.kind.value, &said),
        wraps: wraps::written(pattern),
        twist: None,
        copies: if pattern.kind.value == Kind::Earrings { 2 } else { 1 },
        price: pattern.price.as_ref().map(price),
    };
    design.twist = if whole { twist::twist(&design, pattern, context) } else { None };
    Some((design, whole))
}

/// The size that is chosen, where one is.
fn size<'a>(pattern: &'a Pattern, choice: &Choice, context: &mut Context) -> Option<Option<&'a pattern::Size>> {
    let Some(name) = &choice.size else { return Some(None) };
    let sizes = pattern.sizes.as_deref().unwrap_or_default();
    match sizes.iter().find(|size| size.name.value == *name) {
        Some(size) => Some(Some(size)),
        None => context.refuse(no_variant(Thing::Size, name, &mut sizes.iter().map(|size| size.name.value.as_str()))),
    }
}

fn colours<'a>(pattern: &'a Pattern, choice: &Choice, context: &mut Context) -> Option<Option<&'a Dict<Recolour>>> {
    let Some(name) = &choice.colourway else { return Some(None) };
    let ways = pattern.colourways.as_ref();
    match ways.and_then(|ways| ways.get(name)) {
        Some(colours) => Some(Some(colours)),
        None => context.refuse(no_variant(Thing::Colourway, name, &mut ways.iter().flat_map(|ways| ways.ids()))),
    }
}

fn no_variant(thing: Thing, name: &str, known: &mut dyn Iterator<Item = &str>) -> Remark {
    let known: Vec<_> = known.map(str::to_owned).collect();
    let meant = near(name, known.iter().map(String::as_str));
    Remark::new(Naming::NoVariant { thing, name: name.to_owned(), known, meant })
}

fn check_names(pattern: &Pattern, context: &mut Context) {
    let strands = &pattern.strands;
    if strands.value.is_empty() && !strands.place.is_nowhere() && !context.holes.spoil(strands.place) {
        context.remarks.push(Remark::new(said::strand::Strand::None).at(strands.place));
    }
    named_once(Thing::Strand, strands.value.iter().map(|strand| &strand.value.name), context);
    let idle = |size: &&pattern::Size| size.change.is_none() && size.wear.is_none() && !size.name.place.is_nowhere();
    let says_nothing = |size: &pattern::Size| {
        Remark::new(said::variant::Variant::IdleSize { size: size.name.value.clone() }).at(size.name.place)
    };
    context.remarks.extend(pattern.sizes.iter().flatten().filter(idle).map(says_nothing));
    named_once(Thing::Size, pattern.sizes.iter().flatten().map(|size| &size.name), context);
}

fn named_once<'a>(thing: Thing, names: impl Iterator<Item = &'a At<String>>, context: &mut Context) {
    let mut known = Vec::new();
    for name in names {
        if known.contains(&&name.value) && !name.place.is_nowhere() {
            context.remarks.push(Remark::new(Naming::Twice { thing, name: name.value.clone() }).at(name.place));
        }
        known.push(&name.value);
    }
}

/// An end bar or a clasp with loops holds the strands apart by its spacing.
fn hang_apart(strands: &mut [Strand], closure: &Closure, shelf: &Shelf) {
    let findings = closure.left().iter().map(|part| &shelf.findings[part.finding]);
    let spacing = findings.filter_map(Finding::comb).find(|comb| comb.holes > 1).map(|comb| comb.spacing);
    refill::hang_apart(strands, spacing.unwrap_or_default());
}

fn heading(pattern: &Pattern, choice: &Choice) -> Heading {
    Heading {
        title: pattern.title.value.clone(),
        summary: pattern.summary.clone(),
        kind: pattern.kind.value,
        designer: pattern.designer.clone(),
        permissions: pattern.permissions.clone(),
        care: pattern.care.clone(),
        skill: pattern.skill,
        time: pattern.time.clone(),
        notes: pattern.notes.clone(),
        units: pattern.units.unwrap_or_default(),
        currency: pattern.currency.clone(),
        size: choice.size.clone(),
        colourway: choice.colourway.clone(),
        variants: 1 + pattern.variants().len() as u32,
    }
}

fn price(written: &At<crate::pattern::Price>) -> Price {
    let At { value: written, place } = written;
    Price {
        place: *place,
        hours: written.labour.0,
        rate: written.rate,
        overhead: written.overhead.unwrap_or(Overhead::Sum(Money::ZERO)),
        wholesale: written.wholesale.map_or(2.0, |factor| factor.0),
        retail: written.retail.map_or(2.5, |factor| factor.0),
    }
}
