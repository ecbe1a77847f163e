//! The closure: what joins the strands' ends and how much it lengthens the piece.
//!
//! Gathered strands hang from the eye of a pin. The pin goes out through the cone's tip, where a
//! plain loop closes it. Inside the cone, which narrows evenly from `inside` at its mouth to `tip`,
//! the eye comes to lie where the cone is as wide as the eye; from there to the tip is what the
//! cone adds to the piece.

use crate::pattern::{self, ClosurePart, Kind};
use crate::remark::{Code, Remark};
use crate::source::At;
use crate::units::Length;

use super::Context;
use super::entries::Index;
use super::finding::Finding;
use super::form::{Foot, Form};
use super::model::{Closure, Joins, Part};
use super::shaping;
use super::shelf::Shelf;
use super::spot::{self, Spot};

/// Resolves the closure.
pub fn closure(pattern: &pattern::Pattern, shelf: &Shelf, context: &mut Context) -> Option<Closure> {
    let Some(written) = &pattern.closure else { return Some(Closure::default()) };
    let closure = match &written.value.both_ends {
        Some(_) if pattern.kind.place.is_nowhere() => None,
        Some(both) => looped(both, &written.value, pattern.kind.value, shelf, context),
        None => sided(written, pattern.kind.value, shelf, context),
    };
    closure.filter(|_| !context.holes.spoil(written.place))
}

/// An earring hangs from its left side alone: refuses what would join its lower ends, for there is nothing to
/// join them to.
pub fn only_above(pattern: &pattern::Pattern, context: &mut Context) {
    let Some(closure) = pattern.closure.as_ref().filter(|_| pattern.kind.value == Kind::Earrings) else { return };
    let sides = [("right", &closure.value.right), ("each side", &closure.value.each_side)];
    for (key, parts) in sides.into_iter().filter(|_| closure.value.both_ends.is_none()) {
        let Some(first) = parts.iter().flatten().next() else { continue };
        let headline = format!("an earring hangs from its `left:`, and `{key}:` joins nothing below");
        let help = "write what it hangs from in `left:`, and what hangs at its foot as a dangle";
        context.remarks.push(Remark::new(Code::Misplaced, headline).at(first.place).help(help));
    }
}

/// Both ends on the same findings: the strand is a loop.
fn looped(
    both: &At<Vec<At<ClosurePart>>>,
    written: &pattern::Closure,
    kind: Kind,
    shelf: &Shelf,
    context: &mut Context,
) -> Option<Closure> {
    let sides = [&written.each_side, &written.left, &written.right];
    if kind != Kind::Earrings || sides.into_iter().any(Option::is_some) {
        let headline = "`both ends` stands alone in a closure, and only in that of earrings";
        let help = "write `each side`, `left` and `right` for what has two sides";
        return context.refuse(Remark::new(Code::UnknownKey, headline).at(both.place).help(help));
    }
    let left = parts(&both.value, None, Spot::BothEnds, shelf, context)?;
    Some(Closure { joins: Joins::BothEnds(left), place: both.place })
}

/// A first and a last ends' side that hook together; of earrings the first alone.
fn sided(written: &At<pattern::Closure>, kind: Kind, shelf: &Shelf, context: &mut Context) -> Option<Closure> {
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
fn shorten(parts: &mut [Part], clasp_opposite: bool, shelf: &Shelf) {
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
    shelf: &Shelf,
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
        Some(Part { finding: *index, reach, least: reach, cut })
    };
    indices.iter().enumerate().map(part).collect()
}

/// How much a finding lengthens the piece.
fn reach(finding: &Finding, before: Option<&Finding>) -> Length {
    match &finding.form {
        Form::Pin(pin) if pin.foot == Foot::Eye => (pin.eye() - pin.wire) * 2.0,
        Form::Cone(cone) => match before.and_then(Finding::pin) {
            Some(pin) => cone.depth_of(pin.eye()),
            None => cone.length,
        },
        Form::JumpRing(ring) => ring.inside,
        _ => finding.length().unwrap_or_default(),
    }
}

/// How much chain a part takes; nothing for what is not chain. A part that is refused has no answer.
fn chain_length(part: &At<ClosurePart>, finding: &Finding, context: &mut Context) -> Option<Option<Length>> {
    match (&part.value.length, finding.chain()) {
        (Some(length), Some(chain)) => {
            let fits = shaping::countable(&finding.id, chain, length.value, length.place, context);
            fits.then_some(Some(length.value))
        }
        (None, Some(_)) => context.refuse(
            Remark::new(Code::MissingSize, format!("how much of the chain `{}`?", finding.id))
                .at(part.place)
                .help(format!("write `{{ {}: 60 mm }}`", finding.id)),
        ),
        (Some(length), None) => context.refuse(
            Remark::new(Code::WrongKind, format!("`{}` is no chain and takes no length here", finding.id))
                .at(length.place)
                .help(format!("write just `{}`", finding.id)),
        ),
        (None, None) => Some(None),
    }
}
