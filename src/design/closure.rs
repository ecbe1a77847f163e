//! The closure: what joins the strands' ends and how much it lengthens the piece.
//!
//! Gathered strands hang from the eye of a pin. The pin goes out through the cone's tip, where a
//! plain loop closes it. Inside the cone, which narrows evenly from `inside` at its mouth to `tip`,
//! the eye comes to lie where the cone is as wide as the eye; from there to the tip is what the
//! cone adds to the piece.

use crate::pattern::{self, ClosurePart, FindingKind, Kind, Open, Parts, Settle};
use crate::remark::Remark;
use crate::remark::said::closure as said;
use crate::source::{At, Place};
use crate::trade::usual;
use crate::units::Length;

use super::Context;
use super::entries::Index;
use super::finding::Finding;
use super::form::{Foot, Form};
use super::joins::{Closure, Joins, Part, WornOpen};
use super::model::{Bit, Dangle, Phrase, Strand, What};
use super::row::{self, Strung};
use super::shaping;
use super::shelf::Inventory;
use super::spot::{self, Spot};
use super::stated::Stated;

/// Resolves the closure.
pub fn closure(pattern: &pattern::Pattern, shelf: &Inventory, context: &mut Context) -> Option<Closure> {
    let Some(written) = &pattern.closure else { return Some(Closure::default()) };
    let closure = match &written.value.both_ends {
        Some(_) if pattern.kind.place.is_nowhere() => None,
        Some(both) if meets(pattern.kind.value) => {
            alone(both, &written.value, context).map(|()| Closure { joins: Joins::Nothing, place: both.place })
        }
        Some(both) => looped(both, &written.value, pattern.kind.value, shelf, context),
        None if written.value.open.is_some() => open(written, pattern, shelf, context),
        None => sided(written, pattern.kind.value, shelf, context),
    };
    tailless(&written.value, context);
    closure.filter(|_| !context.holes.spoil(written.place))
}

/// An earring hangs from its left side alone: refuses what would join its lower ends, for there is nothing to
/// join them to.
pub fn only_above(pattern: &pattern::Pattern, context: &mut Context) {
    let Some(closure) = pattern.closure.as_ref().filter(|_| pattern.kind.value == Kind::Earrings) else { return };
    let sides = [("right", &closure.value.right), ("each side", &closure.value.each_side)];
    for (key, parts) in sides.into_iter().filter(|_| closure.value.both_ends.is_none()) {
        let Some(first) = parts.iter().flatten().next() else { continue };
        context.remarks.push(Remark::new(said::Closure::NothingBelow { key }).at(first.place));
    }
}

/// Whether the ends of a piece of a kind may meet, so that it is closed for good.
const fn meets(kind: Kind) -> bool {
    matches!(kind, Kind::Necklace | Kind::Bracelet | Kind::Anklet)
}

/// Refuses what stands beside `both ends`.
fn alone(both: &At<Parts>, written: &pattern::Closure, context: &mut Context) -> Option<()> {
    if written.open.is_none() && !written.has_sides() {
        return Some(());
    }
    context.refuse(Remark::new(said::Closure::BothEndsAlone).at(both.place))
}

/// Refuses a tail where no end goes through the other.
fn tailless(written: &pattern::Closure, context: &mut Context) {
    let through = written.open.as_ref().is_some_and(|open| open.value == Open::Through);
    let idle = written.tail.as_ref().filter(|_| !through);
    context.remarks.extend(idle.map(|tail| Remark::new(said::Closure::Tail).at(tail.place)));
}

/// What an open necklace ends in.
fn open(
    written: &At<pattern::Closure>,
    pattern: &pattern::Pattern,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<Closure> {
    let (how, kind) = (written.value.open.as_ref()?, &pattern.kind);
    if how.value == Open::Through && pattern.strands.value.len() > 1 {
        return context.refuse(Remark::new(said::Closure::ThroughOfOne).at(how.place));
    }
    if kind.value != Kind::Necklace && !kind.place.is_nowhere() {
        return context.refuse(Remark::new(said::Closure::Open { kind: kind.value.word() }).at(how.place));
    }
    let each = written.value.each_side.as_deref().unwrap_or_default();
    let left = parts(each, written.value.left.as_deref(), Spot::Open, shelf, context);
    let right = parts(each, written.value.right.as_deref(), Spot::Open, shelf, context);
    let (left, right) = (left?, right?);
    let worn = match how.value {
        Open::Hanging => WornOpen::Hanging,
        Open::Through => WornOpen::Through(Stated::or(written.value.tail.as_ref().map(|tail| tail.value), usual::TAIL)),
    };
    let goes_through =
        |part: &Part| matches!(shelf.findings[part.finding].kind(), FindingKind::JumpRing | FindingKind::ToggleRing);
    if how.value == Open::Through && !left.last().is_some_and(goes_through) {
        return context.refuse(Remark::new(said::Closure::NoRing).at(how.place));
    }
    Some(Closure { joins: Joins::Open([left, right], worn), place: written.place })
}

/// What both ends of a strand go through where they meet, and what hangs there, from the top down.
pub fn meeting(pattern: &pattern::Pattern, shelf: &Inventory, context: &mut Context) -> Option<At<Dangle>> {
    let both = pattern.closure.as_ref()?.value.both_ends.as_ref().filter(|_| meets(pattern.kind.value))?;
    let strung: Vec<_> = both.value.iter().map(|part| met(part, shelf, context)).collect();
    let strung: Vec<_> = strung.into_iter().collect::<Option<_>>()?;
    let bits = row::bits(&strung, &shelf.beads);
    let drop = bits.iter().map(Bit::length).sum();
    Some(At::new(Dangle { on: None, bits, drop }, both.place))
}

/// A bead, or a finding that hangs there.
fn met(part: &At<ClosurePart>, shelf: &Inventory, context: &mut Context) -> Option<Strung> {
    let id = &part.value.id;
    if let Some(length) = &part.value.length {
        return context.refuse(no_length(&id.value, length.place));
    }
    if let Some(bead) = shelf.bead(&id.value) {
        return Some(Strung::bead(bead, &shelf.beads).at(part.place));
    }
    let finding = spot::finding(id, Spot::Meeting, shelf, context)?;
    Some(Strung::finding(finding, &shelf.findings).at(part.place))
}

/// Hangs what the ends meet in at the last end of a piece's only strand, where it takes no cord.
pub fn hang_meeting(strands: &mut [Strand], meeting: At<Dangle>, context: &mut Context) {
    let place = meeting.place;
    let packed =
        |strand: &Strand| strand.settle == Settle::Fill && strand.ends.iter().all(|end| end.findings.is_empty());
    let (chart, train) = match strands {
        [strand] if packed(strand) => (&mut strand.chart, strand.trains.last_mut()),
        _ => return context.remarks.push(Remark::new(said::Closure::BothEndsOfOne).at(place)),
    };
    chart.push(Phrase::Dangle(None, meeting.value.bits.iter().filter_map(phrase).collect()));
    let mass = meeting.value.bits.iter().map(|bit| bit.mass).sum();
    if let Some(train) = train {
        let what = What::Dangle(meeting.value);
        train.bits.push(Bit { what, before: 0.0, after: 0.0, mass, turned: false, place });
    }
}

/// A bead or finding as the maker says it.
const fn phrase(bit: &Bit) -> Option<Phrase> {
    match bit.what {
        What::Bead(bead) => Some(Phrase::Run(1, bead)),
        What::Finding(finding) => Some(Phrase::Finding(finding)),
        _ => None,
    }
}

/// Both ends on the same findings: the strand is a loop.
fn looped(
    both: &At<Parts>,
    written: &pattern::Closure,
    kind: Kind,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<Closure> {
    if kind != Kind::Earrings {
        return context.refuse(Remark::new(said::Closure::BothEndsApart { kind: kind.word() }).at(both.place));
    }
    alone(both, written, context)?;
    let left = parts(&both.value, None, Spot::BothEnds, shelf, context)?;
    Some(Closure { joins: Joins::BothEnds(left), place: both.place })
}

/// A first and a last ends' side that hook together; of earrings the first alone.
fn sided(written: &At<pattern::Closure>, kind: Kind, shelf: &Inventory, context: &mut Context) -> Option<Closure> {
    let each = written.value.each_side.as_deref().unwrap_or_default();
    let left = parts(each, written.value.left.as_deref(), Spot::Side, shelf, context);
    let right = parts(each, written.value.right.as_deref(), Spot::Side, shelf, context);
    let (mut left, mut right) = (left?, right?);
    let hooks = |parts: &[Part]| parts.last().is_some_and(|part| shelf.findings[part.finding].kind().hooks());
    let (left_hooks, right_hooks) = (hooks(&left), hooks(&right));
    shorten(&mut left, right_hooks, shelf);
    shorten(&mut right, left_hooks, shelf);
    let joins = if kind == Kind::Earrings && right.is_empty() && !left.is_empty() {
        Joins::Above(left)
    } else {
        Joins::sides(left, right)
    };
    Some(Closure { joins, place: written.place })
}

/// An outermost chain that a clasp hooks into is an extender: at its shortest one link is used.
fn shorten(parts: &mut [Part], clasp_opposite: bool, shelf: &Inventory) {
    if let Some(part) = parts.last_mut().filter(|_| clasp_opposite)
        && let Some(chain) = shelf.findings[part.finding].chain()
    {
        part.least = chain.link.min(part.reach);
    }
}

fn parts(
    each: &[At<ClosurePart>],
    side: Option<&[At<ClosurePart>]>,
    spot: Spot,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<Vec<Part>> {
    let written: Vec<_> = each.iter().chain(side.unwrap_or_default()).collect();
    let found: Vec<_> = written.iter().map(|part| spot::finding(&part.value.id, spot, shelf, context)).collect();
    let indices: Vec<_> = found.into_iter().collect::<Option<_>>()?;
    let part = |(at, index): (usize, &Index<Finding>)| {
        let finding = &shelf.findings[*index];
        let before = at.checked_sub(1).map(|before| &shelf.findings[indices[before]]);
        let cut = chain_length(written[at], finding, context)?;
        let reach = cut.unwrap_or_else(|| reach(finding, before));
        Some(Part { cut, ..Part::new(*index, reach) })
    };
    indices.iter().enumerate().map(part).collect()
}

/// How much a finding lengthens the piece.
fn reach(finding: &Finding, before: Option<&Finding>) -> Length {
    match &finding.form {
        Form::Pin(pin) if pin.foot == Foot::Eye => (*pin.eye() - pin.wire) * 2.0,
        Form::Cone(cone) => match before.and_then(Finding::pin) {
            Some(pin) => cone.depth_of(*pin.eye()),
            None => cone.length,
        },
        Form::JumpRing(ring) => ring.inside,
        _ => finding.along(),
    }
}

/// How much chain a part takes; nothing for what is not chain. A part that is refused has no answer.
fn chain_length(part: &At<ClosurePart>, finding: &Finding, context: &mut Context) -> Option<Option<Length>> {
    match (&part.value.length, finding.chain()) {
        (Some(length), Some(chain)) => {
            let fits = shaping::countable(&finding.id, chain, length.value, length.place, context);
            fits.then_some(Some(length.value))
        }
        (None, Some(_)) => {
            context.refuse(Remark::new(said::Closure::NoLength { id: finding.id.clone() }).at(part.place))
        }
        (Some(length), None) => context.refuse(no_length(&finding.id, length.place)),
        (None, None) => Some(None),
    }
}

fn no_length(id: &str, place: Place) -> Remark {
    Remark::new(said::Closure::Length { id: id.to_owned() }).at(place)
}
