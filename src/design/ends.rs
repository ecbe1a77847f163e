//! How a strand's ends are closed, and what that takes of its cord.
//!
//! A knot in a doubled cord is tied in both legs together. Both lie in a tube of twice their diameter, so
//! that each takes up at most what one cord of that thickness would.

use crate::pattern::{self, CordKind, FindingKind};
use crate::remark::Remark;
use crate::remark::said::strand as said;
use crate::trade::usual;
use crate::units::Length;

use super::Context;
use super::entries::{Entries, Index};
use super::finding::Finding;
use super::joins::Closure;
use super::model::End;
use super::shelf::Inventory;
use super::spot::{self, Spot};
use super::stated::Stated;
use super::stock::Cord;

/// The end that the findings of a strand's `ends` make, a knot in it not yet tied.
pub fn end(
    strand: &pattern::Strand,
    cord: Option<Index<Cord>>,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<End> {
    let ids = strand.ends.as_ref().map_or(&[][..], |ends| ends.ids());
    // A loop is turned of memory wire; of other cord it is a finding.
    let sprung = cord.is_some_and(|cord| shelf.cords[cord].is_sprung());
    let named = ids.iter().filter(|id| id.value != "knot" && !(sprung && id.value == "loop"));
    let found: Vec<_> = named.map(|id| spot::finding(id, Spot::Ends, shelf, context)).collect();
    let findings: Vec<_> = found.into_iter().collect::<Option<_>>()?;
    spot::check_crimped(ids, shelf, context);
    let is = |kind| findings.iter().find(|index| shelf.findings[**index].kind() == kind);
    let length = |kind| is(kind).and_then(|at| shelf.findings[*at].length());
    let bight = match is(FindingKind::WireGuard) {
        Some(_) => length(FindingKind::WireGuard),
        None => is(FindingKind::Crimp).map(|_| usual::BIGHT),
    };
    let over =
        length(FindingKind::CrimpCover).zip(length(FindingKind::Crimp)).map(|(cover, crimp)| overhang(cover, crimp));
    let along = findings.iter().map(|index| taken(&shelf.findings[*index])).sum();
    let takes = bight.unwrap_or_default() + along + over.unwrap_or_default();
    Some(End::new(findings, bight, takes))
}

/// How far a cover about the middle of a crimp reaches beyond it on either side.
fn overhang(cover: Length, crimp: Length) -> Length {
    ((cover - crimp) * 0.5).max(Length::ZERO)
}

/// Cord that an end's finding covers: a cover sits over the crimp, a guard in the loop.
fn taken(finding: &Finding) -> Length {
    match finding.kind() {
        FindingKind::CrimpCover | FindingKind::WireGuard => Length::ZERO,
        _ => finding.along(),
    }
}

/// Both ends of a strand of so many legs, each knot of which takes up so much cord; a doubled cord is hitched at the
/// first one. Cord that is tied to something takes a loop and the knot.
pub fn both(
    end: End,
    cord: &Cord,
    legs: u32,
    take_up: Length,
    closure: &Closure,
    findings: &Entries<Finding>,
) -> [End; 2] {
    let knot = end.is_knotted(findings).then(|| take_up * usual::DOUBLE_OVERHAND);
    let end = End { take_up: knot, ..end };
    let is_tied = end.findings.is_empty() && cord.is_limp();
    let [first, last] = [0, 1].map(|side: usize| match is_tied && closure.holds(side) {
        true => tied(cord, legs, end.take_up),
        false => end.clone(),
    });
    [if legs > 1 { hitch(cord) } else { first }, last]
}

/// The end at which cord is tied, all legs together, in a loop and a knot that takes up so much.
fn tied(cord: &Cord, legs: u32, take_up: Option<Length>) -> End {
    let width = cord.diameter * f64::from(legs);
    let bight = width * usual::TIED;
    End { take_up, ..End::new(Vec::new(), Some(bight), bight + width * usual::KNOT_WIDTH) }
}

/// The end at which a doubled cord's fold is hitched.
fn hitch(cord: &Cord) -> End {
    let takes = cord.diameter * usual::HITCH;
    End::new(Vec::new(), Some(takes), takes)
}

/// Cord that one overhand knot takes up, all legs together: each as much as a cord as thick as all.
pub fn take_up(cord: &Cord, legs: u32) -> Stated<Length> {
    if cord.is_limp() { cord.take_up.map(|one| one * f64::from(legs * legs)) } else { Stated::Stated(Length::ZERO) }
}

/// Extra cord for each end; none for chain, whose end links are hung whole, and of memory wire what a turned loop takes.
pub fn allowance(strand: &pattern::Strand, cord: &Cord, is_glued: bool, context: &mut Context) -> Stated<Length> {
    match (&strand.allowance, cord.kind) {
        (written, CordKind::Chain) => {
            let idle = || said::Strand::Allowance { strand: strand.name.value.clone() };
            context.remarks.extend(written.iter().map(|at| Remark::new(idle()).at(at.place)));
            Stated::Stated(Length::ZERO)
        }
        (Some(written), _) => Stated::Stated(written.value),
        (None, CordKind::MemoryWire) if is_glued => Stated::Stated(Length::ZERO),
        (None, CordKind::MemoryWire) => Stated::Assumed(usual::turned(cord.diameter)),
        (None, _) => Stated::Assumed(usual::ALLOWANCE),
    }
}

impl End {
    /// Whether nothing but a knot holds it.
    #[must_use]
    pub fn is_knotted(&self, findings: &Entries<Finding>) -> bool {
        let holds = |at: &Index<Finding>| matches!(findings[*at].kind(), FindingKind::Crimp | FindingKind::CordEnd);
        !self.findings.iter().any(holds)
    }
}
