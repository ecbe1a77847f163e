//! From a pattern to its design, part by part.

use crate::pattern::{self, Dict, Kind, Overhead, Pattern, Recolour};
use crate::remark::said::naming::{Naming, Thing};
use crate::remark::{Remark, near, said};
use crate::source::At;
use crate::trade::usual;
use crate::units::{Money, time};

use super::entries::Entries;
use super::finding::Finding;
use super::joins::Closure;
use super::model::{Design, Heading, Model, Price, Strand};
use super::shelf::Inventory;
use super::stated::Stated;
use super::wear::{MadeTo, Statements};
use super::{Choice, Context, assorted, bars, closure, pinned, refill, row, strand, twist, wear, wraps};

/// The design of all strands that can be resolved, and whether it is the whole piece.
pub fn build(pattern: &Pattern, choice: &Choice, context: &mut Context) -> Option<(Design, bool)> {
    let size = size(pattern, choice, context)?;
    let said = Statements::new(&choice.fit, size, pattern);
    wear::check(&choice.fit, &pattern.kind, context)?;
    let made_to = wear::made_to(pattern, size, &said, context)?;
    let shelf = articles(pattern, choice, context)?;
    wraps::check(pattern, context)?;
    twist::check(pattern, context)?;
    closure::only_above(pattern, context);
    let closure = closure::closure(pattern, &shelf, context);
    let assorted = assorted::assorted(pattern, &shelf, context);
    let (strands, whole) = strands(pattern, made_to, closure.as_ref(), &shelf, context);
    let mut model = Model {
        heading: heading(pattern, choice),
        beads: shelf.beads,
        cords: shelf.cords,
        findings: shelf.findings,
        assorted,
        strands,
        closure: closure.unwrap_or_default(),
        wear: wear::wear(pattern.kind.value, &said),
        wraps: wraps::written(pattern),
        twist: None,
        copies: copies(pattern.kind.value),
        price: pattern.price.as_ref().map(price),
    };
    model.twist = if whole { twist::twist(&model, pattern, context) } else { None };
    let design = Design::checked(model).map_err(|(flaw, model)| flaw.own_fault(&model));
    Some((context.take(design)?, whole))
}

/// How often the whole is made of a kind of piece: earrings in a pair.
pub const fn copies(kind: Kind) -> u32 {
    if matches!(kind, Kind::Earrings) { 2 } else { 1 }
}

/// The articles that the pattern uses, named as in the colours that are chosen.
fn articles(pattern: &Pattern, choice: &Choice, context: &mut Context) -> Option<Inventory> {
    let colours = colours(pattern, choice, context)?;
    check_names(pattern, context);
    let mut shelf = Inventory::fill(pattern, context);
    if let Some(colours) = colours {
        shelf.rename(colours, context);
    }
    Some(shelf)
}

/// The strands that can be resolved, joined by a closure, if that can be; and whether that is the whole piece.
fn strands(
    pattern: &Pattern,
    made_to: MadeTo,
    joined: Option<&Closure>,
    shelf: &Inventory,
    context: &mut Context,
) -> (Entries<Strand>, bool) {
    let untied = Closure::default();
    let closure = joined.unwrap_or(&untied);
    let meeting = closure::meeting(pattern, shelf, context);
    let written = pinned::strands(pattern, closure, joined.is_some(), shelf, context);
    let mut strand = |written: &At<pattern::Strand>| strand::strand(written, made_to, closure, shelf, context);
    let all: Vec<_> = written.iter().map(|written| strand(written.as_deref()?)).collect();
    let whole = all.iter().all(Option::is_some) && joined.is_some() && !context.wants(pattern);
    let mut strands: Entries<_> = all.into_iter().flatten().collect();
    hang_apart(&mut strands, closure, shelf);
    match meeting {
        Some(meeting) if whole => closure::hang_meeting(&mut strands, meeting, context),
        Some(_) => {}
        None => tie(&mut strands, pattern, closure, shelf),
    }
    bars::share_mass(&mut strands, shelf.stock());
    (strands, whole)
}

/// Joins rows bead to bead whose ends are tied to each other round a limb.
fn tie(strands: &mut [Strand], pattern: &Pattern, closure: &Closure, shelf: &Inventory) {
    if wraps::goes_round(pattern.kind.value, wraps::written(pattern)) && closure.is_empty() {
        let tied = strands.iter_mut().filter(|strand| !shelf.cords[strand.cord].is_sprung());
        tied.for_each(|strand| row::close(strand, &shelf.beads));
    }
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
fn hang_apart(strands: &mut [Strand], closure: &Closure, shelf: &Inventory) {
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
        time: pattern.time.as_deref().map(time),
        notes: pattern.notes.clone(),
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
        overhead: Stated::or(written.overhead, Overhead::Sum(Money::ZERO)),
        wholesale: Stated::or(written.wholesale.map(|factor| factor.0), usual::WHOLESALE),
        retail: Stated::or(written.retail.map(|factor| factor.0), usual::RETAIL),
    }
}
