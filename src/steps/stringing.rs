//! Stringing: the row of each strand, its length, and the places of what does not slide.

use super::posts::{self, Keeps, Posts, stop};
use super::prepare::{in_links, is_chain};
use super::side::Side;
use super::tail::{Hides, hides, is_tight};
use super::task::{Beside, Hold, InLink, Needled, Pass, Task};
use super::tools::{Needle, needle};
use super::{Drawing, Step, WithBeads};
use crate::design::{Bit, Design, Finding, Index, Shared, Strand, What};
use crate::pattern::{FindingKind, Settle};
use crate::units::Length;

/// String each strand, and measure it.
pub fn strands(design: &Design) -> Vec<Step<'_>> {
    let neighbours = |one: &Index<Strand>, next: &Index<Strand>| one.number() + 1 == next.number();
    let groups = design.alike();
    let runs: Vec<_> = groups.iter().flat_map(|group| group.chunk_by(neighbours)).collect();
    let last = |at| runs.iter().find(|run| run.last() == Some(&at)).map(|run| run.to_vec());
    design.strands.entries().flat_map(|(at, strand)| of_strand(design, strand, last(at))).collect()
}

/// The steps of a strand; where it is the last of some in a row that are alike, these are measured with it, before the next
/// is strung.
fn of_strand<'d>(design: &'d Design, strand: &'d Strand, alike: Option<Vec<Index<Strand>>>) -> Vec<Step<'d>> {
    if strand.bits().next().is_none() || strand.is_on_pin(design) {
        return Vec::new();
    }
    let is_bead = |bit: &Bit| matches!(bit.what, What::Bead(_));
    let measured = design.cords[strand.cord].is_limp() && strand.bits().any(is_bead);
    let mut tasks = vec![Task::String(strand, besides(design, strand))];
    tasks.extend(alike.filter(|_| measured).map(Task::Measure));
    tasks.extend(first_stop(design, strand).map(|finding| Task::FixStops(strand, finding)));
    tasks.extend(spreads(design, strand).then_some(Task::Space(strand)));
    tasks.extend(holding_crimp(design, strand).map(|crimp| Task::FixGroups(strand, crimp)));
    tasks.into_iter().map(|task| Step { drawing: drawing(design, strand, &task), ..Step::new(task) }).collect()
}

/// What to draw: bars that strands share, or else the knots between beads; the ruler; a crimp that stops.
fn drawing(design: &Design, strand: &Strand, task: &Task<'_>) -> Option<Drawing> {
    match task {
        Task::String(..) => {
            let bars = passes(design, strand, is_bar).map(|_| Drawing::bar(design.strands.len()));
            let shares = passes(design, strand, is_bead).map(Drawing::Bored).or(bars);
            let hung = [
                (is_ring as fn(Hold) -> bool, Drawing::Charm),
                (is_pin, Drawing::InLink),
                (is_piece, Drawing::OpenLink),
            ];
            let hung = hung.into_iter().find(|(is, _)| in_links(design, strand, *is)).map(|(_, drawing)| drawing);
            let threaded = || match needle(design, strand) {
                _ if is_chain(design, strand) => None,
                needle => Some(Drawing::Threaded(needle.is_some())),
            };
            shares.or_else(|| knotted(strand).map(|_| Drawing::KnotLed)).or(hung).or_else(threaded)
        }
        Task::Measure(_) => Some(Drawing::Measure(among(design, strand))),
        Task::FixStops(..) => Some(Drawing::Stop(strand.slides(design))),
        Task::FixGroups(..) => Some(Drawing::Group),
        Task::Space(_) => Some(Drawing::Spaced),
        _ => None,
    }
}

/// What is measured with a strand's beads.
fn among(design: &Design, strand: &Strand) -> WithBeads {
    let is_crimp = |bit: &Bit| matches!(bit.what, What::Finding(at) if design.findings[at].crimp().is_some());
    match strand.bits().next() {
        _ if strand.bits().any(|bit| bit.what == What::Knot) => WithBeads::Knots,
        Some(first) if is_crimp(first) => WithBeads::Crimps,
        _ => WithBeads::Nothing,
    }
}

/// What else is done, or known, while a strand is strung.
fn besides(design: &Design, strand: &Strand) -> Vec<Beside> {
    let knots = knotted(strand).map(|knots| (true, knots));
    let led = needles(design, strand).into_iter().chain(knots);
    let all = led.chain(passed(design, strand)).chain(hung(design, strand));
    all.filter(|(applies, _)| *applies).map(|(_, beside)| beside).collect()
}

/// The needles that it is strung with, each with whether it is.
fn needles(design: &Design, strand: &Strand) -> [(bool, Beside); 3] {
    let [own, bought] = [Needle::Own, Needle::Bought].map(|which| needle(design, strand) == Some(which));
    [
        (own, Beside::Needle(Needled::Own)),
        (bought && strand.legs == 1, Beside::Needle(Needled::LastEnd)),
        (bought && strand.legs > 1, Beside::Needle(Needled::BothEnds)),
    ]
}

/// What it goes through.
fn passed(design: &Design, strand: &Strand) -> [(bool, Beside); 7] {
    let (bars, beads) = (passes(design, strand, is_bar), passes(design, strand, is_bead));
    [
        (in_links(design, strand, |hold| hold == Hold::Bail), Beside::InLinks(InLink::Bails)),
        (strand.legs > 1, Beside::BothLegs),
        (bars == Some(Pass::First), Beside::ThroughBars(Pass::First)),
        (bars == Some(Pass::Next), Beside::ThroughBars(Pass::Next)),
        (beads == Some(Pass::First), Beside::ThroughBeads(Pass::First)),
        (beads == Some(Pass::Next), Beside::ThroughBeads(Pass::Next)),
        (has_caps(design, strand), Beside::Caps),
    ]
}

/// What hangs on it, and what is hidden or held while it is strung.
fn hung(design: &Design, strand: &Strand) -> [(bool, Beside); 8] {
    let (cord, tail) = (&design.cords[strand.cord], hides(design, strand, Side::First));
    [
        (strand.hung().next().is_some(), Beside::Dangles),
        (tail != Hides::Nowhere, Beside::OverTail(tail)),
        (is_tight(design, strand), Beside::Tight),
        (in_links(design, strand, is_pin), Beside::InLinks(InLink::RollLoops)),
        (in_links(design, strand, is_ring), Beside::InLinks(InLink::OpenRings)),
        (in_links(design, strand, is_piece), Beside::InLinks(InLink::OpenLinks)),
        (cord.is_limp(), Beside::Stopper),
        (in_links(design, strand, |_| true) && cord.link.is_none(), Beside::InLinks(InLink::Unknown)),
    ]
}

/// How the knots among a strand's beads are told: between all beads, or where the chart says them.
fn knotted(strand: &Strand) -> Option<Beside> {
    let length = |knot: &Bit| Length::mm(knot.length());
    let silent = posts::silent_knot(strand).map(|knot| Beside::Knots(length(knot)));
    silent.or_else(|| posts::written_knot(strand).map(|knot| Beside::WrittenKnots(length(knot))))
}

const fn is_bar(shared: Shared) -> bool {
    matches!(shared, Shared::Bar(_))
}

const fn is_bead(shared: Shared) -> bool {
    !is_bar(shared)
}

/// The pass of a strand through bars or beads that hold it beside others.
fn passes(design: &Design, strand: &Strand, is: fn(Shared) -> bool) -> Option<Pass> {
    let mut shared = design.stock().shared().filter(|(shared, _)| is(*shared));
    let hole = shared.find_map(|(shared, _)| design.hole(shared, strand))?;
    Some(if hole == 1 { Pass::First } else { Pass::Next })
}

fn has_caps(design: &Design, strand: &Strand) -> bool {
    let is_cap =
        |bit: &Bit| matches!(bit.what, What::Finding(at) if design.findings[at].kind() == FindingKind::BeadCap);
    strand.bits().any(is_cap)
}

fn is_ring(hold: Hold) -> bool {
    hold == Hold::Ring
}

const fn is_piece(hold: Hold) -> bool {
    matches!(hold, Hold::Chain(_))
}

const fn is_pin(hold: Hold) -> bool {
    matches!(hold, Hold::Pin(..))
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
