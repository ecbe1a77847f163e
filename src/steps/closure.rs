//! Joining the strands: cones over the gathered ends, loops, chains and clasps.
//!
//! The closure's parts are told outward from the strands. What both sides have alike is told once.
//! What hangs from a ring, bar or clasp is hung there before the strands, so that no ring is opened
//! under them; what hangs from a pin can only follow when the pin's eye is covered. Rings are opened
//! sideways so that they keep their round (common practice, no source).

use super::ends::{beside_end, is_hung};
use super::side::Side;
use super::task::{Above, Hang, Pins, Task};
use super::{Drawing, Step, pin};
use crate::design::{Design, Finding, Index, Part};
use crate::pattern::FindingKind;

/// What is done before the first strand hangs on the closure.
pub fn ready(design: &Design) -> Vec<Step<'_>> {
    let mut steps = told(design, false);
    steps.extend(gaps(design));
    steps
}

/// Join the strands' ends to what follows them.
pub fn join(design: &Design) -> Vec<Step<'_>> {
    told(design, true)
}

/// The steps of the sides that are joined after the strands are closed, or of those before.
fn told<'d>(design: &'d Design, late: bool) -> Vec<Step<'d>> {
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
fn gaps(design: &Design) -> Option<Step<'_>> {
    let firsts = [design.closure.left().first(), design.closure.right().first()].into_iter().flatten();
    let mut rings: Vec<_> = firsts.map(|part| part.finding).filter(|finding| may_gape(design, *finding)).collect();
    rings.dedup();
    (!rings.is_empty() && !is_hung(design)).then(|| Step::new(Task::LookForGaps(rings)).drawing(Drawing::Gap))
}

/// Whether a finding that strands hang on may gape.
fn may_gape(design: &Design, finding: Index<Finding>) -> bool {
    let finding = &design.findings[finding];
    matches!(finding.kind(), FindingKind::EyePin | FindingKind::EarWire) || finding.is_open_ring()
}

const fn covers(kind: FindingKind) -> bool {
    matches!(kind, FindingKind::Cone | FindingKind::BeadCap)
}

/// The steps that a part of one side takes.
fn part<'d>(design: &'d Design, parts: &[Part], at: usize, side: Side) -> Vec<Step<'d>> {
    let kind = |part: &Part| design.findings[part.finding].kind();
    let pin = parts[..=at].iter().find(|part| design.findings[part.finding].is_pin());
    let mut steps = match pin {
        Some(pin) if covers(kind(&parts[at])) => vec![cover(design, &parts[at], pin, side)],
        _ => hung(design, parts, at, side),
    };
    let next = parts.get(at + 1);
    let closes = design.findings[parts[at].finding].is_pin() || covers(kind(&parts[at]));
    if let (Some(pin), true, false) = (pin, closes, next.is_some_and(|next| covers(kind(next)))) {
        let above = parts[at].finding;
        let above = if design.findings[above].is_pin() { Above::Eye } else { Above::Cover(above) };
        steps.extend(pin::close(Pins::Closure(pin.finding, side), above, next.is_some()));
    }
    steps
}

fn cover<'d>(design: &Design, cover: &Part, pin: &Part, side: Side) -> Step<'d> {
    let task = Task::Cover { cover: cover.finding, pin: pin.finding, side };
    Step::new(task).drawing(Drawing::cone(design.strands.len()))
}

/// The steps that hang a part on the one before it.
fn hung<'d>(design: &'d Design, parts: &[Part], at: usize, side: Side) -> Vec<Step<'d>> {
    let mut steps = Vec::new();
    steps.extend(cut(design, &parts[at], side));
    let before = at.checked_sub(1).and_then(|before| parts.get(before));
    let hung_already = (at == 1 && beside_end(design, parts).is_some()) || joins(design, parts, at, side);
    let pin = parts[..at].iter().find(|part| design.findings[part.finding].is_pin());
    match (before, pin) {
        _ if hung_already || design.findings[parts[at].finding].is_pin() => {}
        (Some(before), Some(pin)) if is_closed_pin(design, before) => {
            steps.push(hang(&parts[at], side, Hang::InLoop(pin.finding)).drawing(Drawing::InLoop));
        }
        (Some(before), _) if at > 1 && joins(design, parts, at - 1, side) => {
            let how = Hang::Between { ring: before.finding, inner: parts[at - 2].finding };
            steps.push(hang(&parts[at], side, how).drawing(opened(design, [before, &parts[at]])));
        }
        (Some(before), _) => steps.push(beside(design, &parts[at], before, side)),
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

/// Whether a pin's loop follows this part.
fn is_closed_pin(design: &Design, part: &Part) -> bool {
    let finding = &design.findings[part.finding];
    finding.is_pin() || covers(finding.kind())
}

/// Cut a piece of chain, told in links: whole ones, as near to its length as they come.
fn cut<'d>(design: &Design, part: &Part, side: Side) -> Option<Step<'d>> {
    let length = part.cut?;
    let links = design.findings[part.finding].chain()?.links(length);
    Some(Step::new(Task::CutChain { chain: part.finding, length, links, side }).drawing(Drawing::Chain))
}

fn hang<'d>(part: &Part, side: Side, how: Hang) -> Step<'d> {
    Step::new(Task::Hang { what: part.finding, side, how })
}

/// Hang a finding on the one before it, by whichever of the two has a ring that opens; where neither does, the
/// rules warn.
fn beside<'d>(design: &Design, part: &Part, before: &Part, side: Side) -> Step<'d> {
    let Some((opens, hangs)) = opener(design, part, before) else {
        return hang(part, side, Hang::Unopened(before.finding)).drawing(Drawing::OpenLink);
    };
    let how = Hang::Opened { opens: opens.finding, hangs: hangs.finding, before: before.finding };
    hang(part, side, how).drawing(opened(design, [opens, hangs]))
}

/// A ring opened with what is hung in it; another link, or a ring for a ring, alone.
fn opened(design: &Design, [opens, hangs]: [&Part; 2]) -> Drawing {
    let is_ring = |part: &Part| design.findings[part.finding].is_open_ring();
    if is_ring(opens) && !is_ring(hangs) { Drawing::Clasp } else { Drawing::OpenLink }
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
