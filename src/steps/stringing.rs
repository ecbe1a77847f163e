//! Stringing: the row of each strand, its length, and the places of what does not slide.

use super::ends::keeps_tail;
use super::posts::{self, Keeps, Posts, stop};
use super::prepare::hangs_by_ring;
use super::task::{Beside, Task};
use super::tools::{Needle, needle};
use super::{Drawing, Step};
use crate::design::{Bit, Dangle, Design, Finding, Index, Strand, What};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::units::Length;

/// String and measure each strand.
pub fn strands(design: &Design) -> Vec<Step<'_>> {
    design.strands.iter().flat_map(|strand| of_strand(design, strand)).collect()
}

fn of_strand<'d>(design: &'d Design, strand: &'d Strand) -> Vec<Step<'d>> {
    if strand.bits().next().is_none() {
        return Vec::new();
    }
    let is_bead = |bit: &Bit| matches!(bit.what, What::Bead(_));
    let measured = design.cords[strand.cord].kind != CordKind::Chain && strand.bits().any(is_bead);
    let mut tasks = vec![Task::String(strand, besides(design, strand))];
    tasks.extend(measured.then_some(Task::Measure(strand)));
    tasks.extend(first_stop(design, strand).map(|finding| Task::FixStops(strand, finding)));
    tasks.extend(spreads(design, strand).then_some(Task::Space(strand)));
    tasks.extend(holding_crimp(design, strand).map(Task::FixGroups));
    tasks.into_iter().map(|task| Step { drawing: drawing(design, strand, &task), task }).collect()
}

/// What to draw: bars that strands share, or else the knots between beads; the ruler; a crimp that stops.
fn drawing(design: &Design, strand: &Strand, task: &Task<'_>) -> Option<Drawing> {
    match task {
        Task::String(..) => {
            let shares = passes(design, strand).map(|_| Drawing::bar(design.strands.len()));
            let ring = strand.hung().any(|dangle| hangs_by_ring(design, strand, dangle));
            shares.or_else(|| knotted(strand).map(|_| Drawing::KnotLed)).or_else(|| ring.then_some(Drawing::OpenLink))
        }
        Task::Measure(_) => Some(Drawing::Measure),
        Task::FixStops(..) => Some(Drawing::Stop),
        _ => None,
    }
}

/// What else is done, or known, while a strand is strung.
fn besides(design: &Design, strand: &Strand) -> Vec<Beside> {
    let bars = passes(design, strand);
    let [own, bought] = [Needle::Own, Needle::Bought].map(|which| needle(design, strand) == Some(which));
    let choices = [
        (own, Beside::OwnNeedle),
        (bought && strand.legs == 1, Beside::Needle),
        (bought && strand.legs > 1, Beside::NeedleOnBoth),
        (strand.legs > 1, Beside::BothLegs),
        (bars == Some(Pass::First), Beside::FirstThroughBars),
        (bars == Some(Pass::Next), Beside::NextThroughBars),
        (has_caps(design, strand), Beside::Caps),
        (hangs(strand), Beside::Dangles),
        (keeps_tail(design, strand), Beside::OverTail),
        (hangs_pins(design, strand), Beside::RollLoops),
        (strand.hung().any(|dangle| hangs_by_ring(design, strand, dangle)), Beside::OpenRings),
        (hangs_bails(design, strand), Beside::Bails),
        (design.cords[strand.cord].kind != CordKind::Chain, Beside::Stopper),
    ];
    let said = choices.into_iter().filter(|(applies, _)| *applies).map(|(_, beside)| beside);
    knotted(strand).into_iter().chain(said).collect()
}

/// How the knots among a strand's beads are told: before every bead, or where the chart says them.
fn knotted(strand: &Strand) -> Option<Beside> {
    let length = |knot: &Bit| Length::mm(knot.length());
    let silent = posts::silent_knot(strand).map(|knot| Beside::Knots(length(knot)));
    silent.or_else(|| posts::written_knot(strand).map(|knot| Beside::WrittenKnots(length(knot))))
}

/// Which hole of the bars that it shares a strand goes through.
#[derive(PartialEq, Eq)]
enum Pass {
    First,
    Next,
}

/// The pass of a strand through bars that hold it beside others.
fn passes(design: &Design, strand: &Strand) -> Option<Pass> {
    let hole = design.findings.indices().find_map(|at| design.hole(at, strand))?;
    Some(if hole == 1 { Pass::First } else { Pass::Next })
}

fn has_caps(design: &Design, strand: &Strand) -> bool {
    let is_cap =
        |bit: &Bit| matches!(bit.what, What::Finding(at) if design.findings[at].kind() == FindingKind::BeadCap);
    strand.bits().any(is_cap)
}

fn hangs(strand: &Strand) -> bool {
    strand.hung().next().is_some()
}

/// Whether branches on pins hang in the links of a chain.
fn hangs_pins(design: &Design, strand: &Strand) -> bool {
    let on_pin = |dangle: &Dangle| dangle.on.is_some_and(|on| design.findings[on].is_pin());
    design.cords[strand.cord].kind == CordKind::Chain && strand.dangles().any(on_pin)
}

/// Whether branches on bails hang from a chain.
fn hangs_bails(design: &Design, strand: &Strand) -> bool {
    let on_bail = |dangle: &Dangle| dangle.on.is_some_and(|on| design.findings[on].kind() == FindingKind::Bail);
    design.cords[strand.cord].kind == CordKind::Chain && strand.dangles().any(on_bail)
}

fn first_stop(design: &Design, strand: &Strand) -> Option<Index<Finding>> {
    strand.trains.iter().find_map(|train| stop(design, strand, train)).map(|(finding, _)| finding)
}

/// Whether groups are spread along the cord.
fn spreads(design: &Design, strand: &Strand) -> bool {
    strand.settle == Settle::Spread && Posts::new(design, strand).of(Keeps::Group).next().is_some()
}

/// The crimps that hold groups, of which this is the first.
fn holding_crimp(design: &Design, strand: &Strand) -> Option<Index<Finding>> {
    let groups = strand.trains.iter().filter(|train| stop(design, strand, train).is_none());
    let findings = groups.flat_map(|train| &train.bits).filter_map(|bit| match bit.what {
        What::Finding(at) => Some(at),
        _ => None,
    });
    findings.into_iter().find(|at| design.findings[*at].crimp().is_some())
}
