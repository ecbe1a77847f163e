//! Joining the strands: cones over the gathered ends, loops, chains and clasps.
//!
//! The closure's parts are told outward from the strands. What both sides have alike is told once.
//! What hangs from a ring, bar or clasp is hung there before the strands, so that no ring is opened
//! under them; what hangs from a pin can only follow when the pin's eye is covered. Rings are opened
//! sideways so that they keep their round (common practice, no source).

use super::ends::{beside_end, closings, is_hung};
use super::prepare::FLYING;
use super::side::{Side, on_both};
use super::words::{a, list};
use super::{Drawing, Step, pin};
use crate::design::{Design, Finding, Index, Part};
use crate::pattern::FindingKind;

/// What is done before the first strand hangs on the closure.
pub fn ready(design: &Design) -> Vec<Step> {
    let mut steps = told(design, false);
    steps.extend(gaps(design));
    steps
}

/// Join the strands' ends to what follows them.
pub fn join(design: &Design) -> Vec<Step> {
    told(design, true)
}

/// The steps of the sides that are joined after the strands are closed, or of those before.
fn told(design: &Design, late: bool) -> Vec<Step> {
    let kept = |parts: &'_ [Part]| if is_late(design, parts) == late { parts.to_vec() } else { Vec::new() };
    let (left, right) = (kept(design.closure.left()), kept(design.closure.right()));
    let alike = match left.iter().zip(&right).take_while(|(a, b)| a == b).count() {
        // One side goes on where the other ends: they are not closed alike.
        all if left.len() != right.len() && all == left.len().min(right.len()) => 0,
        alike => alike,
    };
    let mut steps: Vec<_> = (0..alike).flat_map(|at| part(design, &left, at, Side::Both)).collect();
    for (parts, side) in [(&left, Side::First), (&right, Side::Last)] {
        steps.extend((alike..parts.len()).flat_map(|at| part(design, parts, at, side)));
    }
    steps
}

/// Whether a side waits for its strands: a pin for its cone, a ring for what is hung in it.
fn is_late(design: &Design, parts: &[Part]) -> bool {
    is_hung(design) || parts.first().is_some_and(|part| design.findings[part.finding].is_pin())
}

/// Look for gaps where a wire or thread could slip out.
fn gaps(design: &Design) -> Option<Step> {
    let word = design.cords[design.strands.first()?.cord].kind.word();
    let firsts = [design.closure.left().first(), design.closure.right().first()].into_iter().flatten();
    let mut rings: Vec<_> = firsts.filter_map(|part| gap(design, part.finding)).collect();
    rings.dedup();
    let text = format!("See that {} shut. Squeeze any gap together with chain-nose pliers.", is_or_are(&rings));
    let step = Step::new("Look for gaps", text).check(format!("No {word} can slip out."));
    (!rings.is_empty() && !is_hung(design)).then_some(step)
}

fn is_or_are(things: &[String]) -> String {
    format!("{} {}", list(things), if things.len() == 1 { "is" } else { "are" })
}

/// Where a finding that strands hang on may gape.
fn gap(design: &Design, finding: Index<Finding>) -> Option<String> {
    let side = if on_both(design, finding) { Side::Both } else { Side::First };
    let name = side.the(design, finding);
    match design.findings[finding].kind() {
        FindingKind::EyePin => Some(format!("the eye of {name}")),
        FindingKind::EarWire => Some(format!("the ring of {name}")),
        FindingKind::JumpRing if design.findings[finding].opens() => Some(name),
        _ => None,
    }
}

const fn covers(kind: FindingKind) -> bool {
    matches!(kind, FindingKind::Cone | FindingKind::BeadCap)
}

/// The steps that a part of one side takes.
fn part(design: &Design, parts: &[Part], at: usize, side: Side) -> Vec<Step> {
    let kind = |part: &Part| design.findings[part.finding].kind();
    let pin = parts[..=at].iter().find(|part| design.findings[part.finding].is_pin());
    let mut steps = match pin {
        Some(pin) if covers(kind(&parts[at])) => vec![cover(design, &parts[at], pin, side)],
        _ => hung(design, parts, at, side),
    };
    let next = parts.get(at + 1);
    let closes = design.findings[parts[at].finding].is_pin() || covers(kind(&parts[at]));
    if let (Some(pin), true, false) = (pin, closes, next.is_some_and(|next| covers(kind(next)))) {
        let above = &design.findings[parts[at].finding];
        let above = if above.is_pin() { "eye" } else { above.name.as_str() };
        let (name, sort) = (side.the(design, pin.finding), &design.findings[pin.finding]);
        steps.extend(pin::close(design.heading.units, &[sort], &name, above, next.is_some()));
    }
    steps
}

fn cover(design: &Design, cone: &Part, pin: &Part, side: Side) -> Step {
    let name = &design.findings[cone.finding].name;
    let text = format!(
        "Slide {} down the wire of {}, wide end first, until it covers the {}s.",
        a(name),
        side.the(design, pin.finding),
        closings(design).join("s and ")
    );
    let check = format!("No {} shows.", closings(design).join(" or "));
    Step::new(format!("Put on the {name}"), text).check(check).drawing(Drawing::cone(design.strands.len()))
}

/// The steps that hang a part on the one before it.
fn hung(design: &Design, parts: &[Part], at: usize, side: Side) -> Vec<Step> {
    let mut steps = Vec::new();
    steps.extend(cut(design, &parts[at], side));
    let before = at.checked_sub(1).and_then(|before| parts.get(before));
    let hung_already = (at == 1 && beside_end(design, parts).is_some()) || joins(design, parts, at, side);
    let pin = parts[..at].iter().find(|part| design.findings[part.finding].is_pin());
    match (before, pin) {
        _ if hung_already || design.findings[parts[at].finding].is_pin() => {}
        (Some(before), Some(pin)) if is_closed_pin(design, before) => {
            steps.push(in_loop(design, &parts[at], pin, side));
        }
        (Some(before), _) if at > 1 && joins(design, parts, at - 1, side) => {
            steps.push(in_ring(design, [&parts[at - 2], before, &parts[at]], side));
        }
        (Some(before), _) => steps.push(hang(design, &parts[at], before, side)),
        (None, _) => {}
    }
    steps
}

/// Whether a part is a ring that is opened only once, for what stands on both sides of it.
fn joins(design: &Design, parts: &[Part], at: usize, side: Side) -> bool {
    let sides = [design.closure.left(), design.closure.right()];
    let goes_on = parts.len() > at + 1 && (side != Side::Both || sides.iter().all(|parts| parts.len() > at + 1));
    let is_ring = |at: usize| design.findings[parts[at].finding].is_open_ring();
    let stands = at > 0 && !is_closed_pin(design, &parts[at - 1]) && !is_ring(at - 1);
    goes_on && stands && is_ring(at) && beside_end(design, parts).is_none()
}

/// Hang two findings in the ring between them.
fn in_ring(design: &Design, [inner, ring, outer]: [&Part; 3], side: Side) -> Step {
    let text = format!(
        "Open {} sideways, like a door. Hang {} and {} in it and close it the same way.{}",
        side.the(design, ring.finding),
        self::ring(design, inner, side),
        hanging(design, outer, side),
        which_side(design, ring, side)
    );
    Step::new(hang_title(design, outer), text).check("No gap shows where the ring closes.").drawing(Drawing::OpenLink)
}

/// Whether a pin's loop follows this part.
fn is_closed_pin(design: &Design, part: &Part) -> bool {
    let finding = &design.findings[part.finding];
    finding.is_pin() || covers(finding.kind())
}

/// Cut a piece of chain, told in links: whole ones, as near to its length as they come.
fn cut(design: &Design, part: &Part, side: Side) -> Option<Step> {
    let (finding, length) = (&design.findings[part.finding], part.cut?);
    let each = if side == Side::Both { "two pieces of " } else { "" };
    let links = finding.chain()?.links(length);
    let links = links.map_or_else(|| "whole links".to_owned(), |links| format!("about {links:.0} links"));
    let length = design.heading.units.ruler(length);
    let text = format!("Cut {each}{length} of {}, {links}, through the link beyond the last. {FLYING}", finding.name);
    let counted = if side == Side::Both { "Each piece has" } else { "The piece has" };
    Some(Step::new("Cut the chain", text).check(format!("{counted} {links}, and both end links are whole.")))
}

/// Hang a finding on the one before it, by whichever of the two has a ring that opens.
fn hang(design: &Design, part: &Part, before: &Part, side: Side) -> Step {
    let finding = |part: &Part| &design.findings[part.finding];
    let Some((opens, hangs)) = opener(design, part, before) else { return unopened(design, [before, part], side) };
    let text = format!(
        "Open {} sideways, like a door. Hang {} in it and close it the same way.{}",
        ring(design, opens, side),
        hanging(design, hangs, side),
        which_side(design, before, side)
    );
    let what = if finding(opens).kind() == FindingKind::Chain { "link" } else { "ring" };
    let step = Step::new(hang_title(design, part), text).check(format!("No gap shows where the {what} closes."));
    step.drawing(Drawing::OpenLink)
}

/// Which of two findings is opened, and which hangs in it: a ring or link rather than what else opens, and of
/// two rings the one nearer the strands. Nothing where neither opens.
fn opener<'a>(design: &Design, part: &'a Part, before: &'a Part) -> Option<(&'a Part, &'a Part)> {
    let finding = |part: &Part| &design.findings[part.finding];
    let opens_easily = finding(part).is_open_ring() || finding(part).kind() == FindingKind::Chain;
    match (finding(part).opens(), finding(before).opens()) {
        (true, _) if opens_easily && !finding(before).is_open_ring() => Some((part, before)),
        (_, true) => Some((before, part)),
        (true, false) => Some((part, before)),
        (false, false) => None,
    }
}

/// Two findings that do not open, which the rules warn of.
fn unopened(design: &Design, [before, part]: [&Part; 2], side: Side) -> Step {
    let [before, what] = [before, part].map(|part| hanging(design, part, side));
    let text = format!("Neither {what} nor {before} opens: join them with a jump ring of your own.");
    Step::new(hang_title(design, part), text).check("No gap shows where the ring closes.")
}

fn hang_title(design: &Design, part: &Part) -> String {
    let finding = &design.findings[part.finding];
    if finding.kind() == FindingKind::Chain {
        "Hang the chain".to_owned()
    } else {
        format!("Hang the {}", finding.name)
    }
}

fn hanging(design: &Design, part: &Part, side: Side) -> String {
    let finding = &design.findings[part.finding];
    match (finding.kind(), side) {
        (FindingKind::Chain, _) => format!("the end link of {}", side.the(design, part.finding)),
        (_, Side::Both) => a(&finding.name),
        _ => side.the(design, part.finding),
    }
}

/// Two findings alike are told apart by the ends that will hang there.
fn which_side(design: &Design, part: &Part, side: Side) -> String {
    match side {
        Side::First | Side::Last if on_both(design, part.finding) => {
            format!(" This is the side of the {} ends.", side.end())
        }
        _ => String::new(),
    }
}

/// Hang a finding in a pin's loop, which was left open for it.
fn in_loop(design: &Design, part: &Part, pin: &Part, side: Side) -> Step {
    let finding = &design.findings[part.finding];
    let what = match finding.kind() {
        FindingKind::Chain => format!("an end link of the {}", finding.name),
        FindingKind::JumpRing => a(&finding.name),
        _ => format!("the ring of {}", side.the(design, part.finding)),
    };
    let text = format!(
        "Hang {what} in the loop of {}, and roll the loop shut. It carries the whole piece.{}",
        side.the(design, pin.finding),
        which_side(design, pin, side)
    );
    Step::new(hang_title(design, part), text)
        .check("The loop is shut tight: no gap shows, and a pull does not open it.")
}

/// The part of a finding that opens.
fn ring(design: &Design, part: &Part, side: Side) -> String {
    let name = side.the(design, part.finding);
    match design.findings[part.finding].kind() {
        FindingKind::JumpRing => name,
        FindingKind::Chain => format!("the end link of {name}"),
        _ => format!("the ring of {name}"),
    }
}
