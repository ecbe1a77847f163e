//! Whether the two sides of a closure close onto one another, and whether its findings can be joined.

use super::bead;
use crate::design::{Design, Finding, Lot, Part, Strand, WornOpen};
use crate::drape::fall;
use crate::pattern::{CordKind, FindingKind};
use crate::remark::Remark;
use crate::remark::said::closing::{Closing, ClosureSide};
use crate::units::Length;

/// Remarks about the closure.
pub fn check(design: &Design) -> Vec<Remark> {
    let closure = &design.closure;
    let shut = [closure.left(), closure.right()].into_iter().filter_map(|parts| cannot_open(parts, design));
    let remarks = unjoined(design).into_iter().chain(one_sided(design)).chain(mismatched(design));
    remarks.chain(twice(design)).chain(narrow(design)).chain(shut).collect()
}

/// Ends that are not tied to each other need findings to join them.
fn unjoined(design: &Design) -> Option<Remark> {
    let closed = |strand: &&Strand| {
        let has_findings = strand.ends.iter().any(|end| !end.findings.is_empty());
        has_findings || design.cords[strand.cord].kind == CordKind::Chain
    };
    let tied = design.closure.is_empty() && design.sprung().is_none();
    let strand = design.strands.iter().find(closed).filter(|_| tied)?;
    Some(Remark::new(Closing::Unjoined { strand: strand.name.clone() }).at(strand.place))
}

/// What closes a piece needs something on the other side.
fn one_sided(design: &Design) -> Option<Remark> {
    let closure = &design.closure;
    if closure.open().is_some() {
        return None;
    }
    let (bare, other) = match (closure.left().last(), closure.right().last()) {
        (None, Some(part)) => (ClosureSide::Left, part),
        (Some(part), None) if !closure.loops() => (ClosureSide::Right, part),
        _ => return None,
    };
    let finding = &design.findings[other.finding];
    let said = || Closing::OneSided { finding: finding.name.clone(), bare };
    finding.kind().is_clasp().then(|| Remark::new(said()).at(closure.place))
}

/// What hangs below the ring through which the last end goes must pass it.
fn narrow(design: &Design) -> Option<Remark> {
    let Some(WornOpen::Through(tail)) = design.closure.open() else { return None };
    let ring = &design.findings[design.closure.left().last()?.finding];
    let inside = ring.inside()?;
    let below = |strand: &Strand| (strand.finished - *tail).value() + fall::beyond(design);
    let passing = design.strands.iter().flat_map(|strand| strand.below(below(strand)));
    let beads = passing.filter_map(bead).map(|at| (&design.beads[at].name, design.beads[at].across));
    let findings = design.closure.right().iter().map(|part| &design.findings[part.finding]);
    let all = beads.chain(findings.filter_map(|finding| Some((&finding.name, breadth(finding)?))));
    let (what, wide) =
        all.filter(|(_, wide)| *wide > inside).max_by(|(_, a), (_, b)| a.value().total_cmp(&b.value()))?;
    let said = Closing::RingNarrow { ring: ring.name.clone(), what: what.clone(), inside, wide };
    Some(Remark::new(said).at(ring.place))
}

/// How broad a finding is that is to go through a ring, where that is known; a tassel is pressed together.
fn breadth(finding: &Finding) -> Option<Length> {
    finding.across().filter(|_| finding.tassel().is_none())
}

/// Half of a clasp closes onto its other half alone, with as many loops; a toggle's ring takes a hook as well.
fn mismatched(design: &Design) -> Option<Remark> {
    let closure = Some(&design.closure).filter(|closure| closure.open().is_none())?;
    let [one, other] = [closure.left(), closure.right()].map(|parts| Some(&design.findings[parts.last()?.finding]));
    let (one, other) = (one?, other?);
    let alone = |half: &Finding, other: &Finding| {
        let hooked = half.kind() == FindingKind::ToggleRing && other.kind().hooks();
        half.kind().counterpart().is_some_and(|counterpart| counterpart != other.kind() && !hooked)
    };
    let hooks = one.kind().hooks() && other.kind().hooks();
    let loops = |finding: &Finding| finding.comb().filter(|_| finding.kind().is_clasp()).map(|comb| comb.holes);
    (hooks || alone(one, other) || alone(other, one) || loops(one) != loops(other)).then(|| {
        let findings = [one, other].map(|finding| finding.name.clone());
        Remark::new(Closing::NotOntoOneAnother { findings, hooks }).at(closure.place)
    })
}

/// A clasp is bought whole: where one half stands on both sides, two clasps are.
fn twice(design: &Design) -> Option<Remark> {
    let closure = Some(&design.closure).filter(|closure| closure.open().is_none())?;
    let [one, other] = [closure.left(), closure.right()].map(|parts| parts.last().map(|part| part.finding));
    let half = Some(&design.findings[one?]).filter(|half| one == other && half.kind().counterpart().is_some())?;
    // Halves that come in packs are counted one by one.
    let counted = matches!(half.sold.as_ref().map(|sold| &sold.lot), Some(Lot::Pack(_)));
    (!counted && half.kind().counterpart() == Some(half.kind())).then(|| {
        let (clasp, id, kind) = (half.name.clone(), half.id.clone(), half.kind().word());
        Remark::new(Closing::ClaspTwice { clasp, id, kind }).at(closure.place)
    })
}

/// Two findings are joined by whichever of them opens; the loop of a cord end is solid.
fn cannot_open(parts: &[Part], design: &Design) -> Option<Remark> {
    let opens = |at: usize| design.part_opens(parts, at);
    let name = |at: usize| design.findings[parts[at].finding].name.as_str();
    let glued = cord_end(design).filter(|_| !parts.is_empty() && !opens(0)).map(|cord_end| (cord_end, name(0)));
    let apart = (1..parts.len()).find(|at| !opens(at - 1) && !opens(*at)).map(|at| (name(at - 1), name(at)));
    let (before, after) = glued.or(apart)?;
    let said = Closing::NoOpening { before: before.to_owned(), after: after.to_owned() };
    Some(Remark::new(said).at(design.closure.place))
}

/// The name of a cord end that closes a strand.
fn cord_end(design: &Design) -> Option<&str> {
    let findings = design.strands.iter().flat_map(|strand| &strand.ends).flat_map(|end| &end.findings);
    let mut findings = findings.map(|at| &design.findings[*at]);
    findings.find(|finding| finding.kind() == FindingKind::CordEnd).map(|finding| finding.name.as_str())
}
