//! What is done before stringing: lay out, cut, and hang the branches on their pins.

use std::collections::BTreeSet;

use super::task::{Above, CutNote, Hold, Pins, Task};
use super::tools::has_cord;
use super::{Drawing, Step, pin};
use crate::design::{Dangle, Design, Finding, Foot, Index, Strand};
use crate::pattern::{CordKind, FindingKind};

/// Lay the beads out by letter and count them, where there are any.
pub fn lay_out(design: &Design) -> Option<Step<'_>> {
    let knotted = design.strands.iter().map(|strand| strand.in_end_knots(design).count() as u64).sum();
    let counts = design.counts();
    let has_beads = counts.iter().any(|count| *count > 0);
    has_beads.then(|| Step::new(Task::LayOut { counts, knotted }).drawing(Drawing::LaidOut))
}

/// Cut each strand's cord, and tell the pieces apart.
pub fn cut(design: &Design) -> Vec<Step<'_>> {
    let has = |kind| has_cord(design, kind);
    let is_cut = |strand: &Strand, cord| strand.cord == cord;
    let strung = design.cords.indices().filter(|cord| !design.cords[*cord].is_pin);
    let cords = strung.filter(|cord| design.strands.iter().any(|strand| is_cut(strand, *cord)));
    let takes_up = |strand: &&Strand| strand.trial().is_some();
    let of = |cord| design.strands.iter().filter(move |strand| is_cut(strand, cord));
    let tried = cords.clone().filter_map(|cord| of(cord).find(takes_up));
    let mut cuts: Vec<_> = has(CordKind::Elastic).then_some(CutNote::Stretch).into_iter().collect();
    cuts.extend(cords.clone().filter(|cord| design.cords[*cord].needle).map(CutNote::OwnNeedle));
    cuts.extend(tried.map(CutNote::Trial));
    cuts.extend(wound(design).map(CutNote::Tassel));
    cuts.extend(design.strands.iter().filter(takes_up).map(CutNote::Knots));
    cuts.extend(cords.map(CutNote::Pieces));
    let sprung = |strand: &&Strand| design.cords[strand.cord].is_sprung();
    cuts.extend(design.strands.iter().filter(sprung).map(CutNote::Coil));
    cuts.extend(design.twist.as_ref().map(|_| CutNote::Twisted));
    cuts.extend((has(CordKind::Wire) || has(CordKind::MemoryWire) || has(CordKind::Chain)).then_some(CutNote::Flying));
    let pieces = design.strands.iter().filter(|strand| !strand.is_on_pin(design)).count();
    let drawing = match () {
        () if has(CordKind::Chain) => Drawing::Chain,
        () if has(CordKind::MemoryWire) => Drawing::CutCoil,
        () => Drawing::CutToLength,
    };
    let cut = (pieces > 0).then(|| Step::new(Task::Cut(cuts)).drawing(drawing));
    // Pieces that look alike are told apart by tags.
    let tag = (pieces > 1).then(|| Step::new(Task::Tag).drawing(Drawing::Tag));
    cut.into_iter().chain(tag).collect()
}

/// Make the tassels that are wound of the piece's own cord.
pub fn tassels(design: &Design) -> Vec<Step<'_>> {
    wound(design).map(|at| Step::new(Task::Tassel(at)).drawing(Drawing::Tassel)).collect()
}

/// The tassels that are wound of the piece's own cord.
fn wound(design: &Design) -> impl Iterator<Item = Index<Finding>> {
    design.findings.indices().filter(|at| design.findings[*at].tassel().is_some_and(|tassel| tassel.wound.is_some()))
}

/// Make the branches, each kind once with how many of it. A ring that hangs in a link of chain is opened once, for
/// what it holds and for its link, when the chain is hung with them.
pub fn dangles(design: &Design) -> Vec<Step<'_>> {
    let mut kinds: Vec<(&Dangle, u64)> = Vec::new();
    for dangle in every_dangle(design) {
        match kinds.iter_mut().find(|(kind, _)| same(kind, dangle)) {
            Some((_, times)) => *times += 1,
            None => kinds.push((dangle, 1)),
        }
    }
    let mut steps: Vec<_> = kinds.iter().map(|(dangle, times)| make(design, dangle, *times)).collect();
    steps.extend(close(design, &kinds));
    steps
}

/// Every branch that hangs on a finding.
fn every_dangle(design: &Design) -> impl Iterator<Item = &Dangle> {
    design.strands.iter().flat_map(|strand| strand.hung().filter(|dangle| !hangs_by_ring(design, strand, dangle)))
}

/// Whether a branch hangs in a link of chain by a ring.
fn hangs_by_ring(design: &Design, strand: &Strand, dangle: &Dangle) -> bool {
    is_chain(design, strand) && hold(design, dangle) == Hold::Ring
}

/// Whether something is held so in the links of a strand of chain.
pub fn in_links(design: &Design, strand: &Strand, is: fn(Hold) -> bool) -> bool {
    is_chain(design, strand) && strand.hung().any(|dangle| is(hold(design, dangle)))
}

/// Whether a strand is of chain.
pub fn is_chain(design: &Design, strand: &Strand) -> bool {
    design.cords[strand.cord].kind == CordKind::Chain
}

fn same(a: &Dangle, b: &Dangle) -> bool {
    a.on == b.on && a.bits.iter().map(|bit| &bit.what).eq(b.bits.iter().map(|bit| &bit.what))
}

/// What is put on one kind of branch.
fn make<'d>(design: &Design, dangle: &'d Dangle, times: u64) -> Step<'d> {
    let hold = hold(design, dangle);
    let step = Step::new(Task::Dangle { dangle, hold, times });
    match hold {
        Hold::Ring | Hold::Chain(_) => step.drawing(Drawing::OpenLink),
        Hold::Bail => step.drawing(Drawing::Bail),
        Hold::Pin(foot, _) => step.drawing(Drawing::OnPin(foot == Foot::Eye)),
    }
}

/// What holds a branch.
fn hold(design: &Design, dangle: &Dangle) -> Hold {
    let Some(on) = dangle.on.map(|on| &design.findings[on]) else { return Hold::Ring };
    match (on.kind(), on.pin()) {
        (FindingKind::Bail, _) => Hold::Bail,
        (FindingKind::Chain, _) => dangle.on.map_or(Hold::Ring, Hold::Chain),
        (_, Some(pin)) => Hold::Pin(pin.foot, dangle.bits.last().and_then(|bit| bit.what.bead())),
        _ => Hold::Ring,
    }
}

/// Close all pins that branches hang on; where they hang in the links of a chain, only when they do.
fn close<'d>(design: &Design, kinds: &[(&Dangle, u64)]) -> Vec<Step<'d>> {
    let pins = || {
        kinds.iter().filter_map(|(dangle, times)| Some((dangle.on.filter(|on| design.findings[*on].is_pin())?, times)))
    };
    let sorts: BTreeSet<_> = pins().map(|(on, _)| on).collect();
    if sorts.is_empty() {
        return Vec::new();
    }
    let pins = Pins::Dangles(sorts.into_iter().collect(), pins().map(|(_, times)| times).sum());
    let open = hangs_open(design);
    let [bend, cut, turn] = pin::close(pins, Above::Beads, open);
    vec![bend, cut, turn.drawing(Drawing::Dangle(open))]
}

/// Whether pins are closed only when they hang: in links of chain, or as whole strands in what does not open for them.
fn hangs_open(design: &Design) -> bool {
    let ring = design.closure.left().first().is_some_and(|part| design.findings[part.finding].is_open_ring());
    design.strands.iter().any(|strand| is_chain(design, strand) && !(ring && strand.is_on_pin(design)))
}

/// The pins' sizes by their sorts, for what their loops take.
pub fn sorts<'d>(design: &'d Design, pins: &Pins) -> Vec<&'d Finding> {
    match pins {
        Pins::Closure(pin, _) => vec![&design.findings[*pin]],
        Pins::Dangles(sorts, _) => sorts.iter().map(|sort| &design.findings[*sort]).collect(),
    }
}
