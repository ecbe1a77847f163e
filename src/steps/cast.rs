//! What of the piece is shown in the drawing beside a step: the beads and findings that it handles, by index, in the order
//! in which they stand.

use crate::design::{Bead, Bit, Dangle, Design, Finding, Index, Shared, Strand, What};
use crate::pattern::FindingKind;

use super::ends::AlikeEnds;
use super::side::Side;
use super::task::{Finished, Hang, Pins, Task};

/// As many as are seen in the longest row that is drawn.
const SEEN: usize = 16;
/// Most strands that are drawn side by side.
const STRANDS: usize = 3;

/// What of the piece a drawing shows.
#[derive(Clone, Debug, Default, PartialEq)]
#[non_exhaustive]
pub struct Cast {
    /// Kinds of bead: those that are laid out, that a knot is tied round, or that strands share.
    pub kinds: Vec<Index<Bead>>,
    /// What is strung, as far as it is seen: of a strand from the end that is worked at inward, of a pin from its foot up.
    /// Where strands share something, what stands before it and after it on each, outward.
    pub rows: Vec<Vec<Bit>>,
    /// The findings.
    pub findings: Vec<Index<Finding>>,
    /// How many times the cord lies side by side.
    pub legs: u32,
    /// How many times what is wound goes round.
    pub turns: f64,
}

impl Cast {
    /// What a task's drawing shows.
    pub(super) fn of(design: &Design, task: &Task<'_>) -> Self {
        match task {
            Task::LayOut { .. } => Self { kinds: laid_out(design), ..Self::default() },
            Task::Dangle { dangle, .. } => Self::hung(dangle),
            Task::BendPin(pins, _) | Task::CutPin(pins) | Task::TurnLoop { pins, .. } => Self::pinned(design, pins),
            Task::Cover { cover, pin, .. } => Self::findings([*cover, *pin]),
            Task::CutChain { chain, .. } => Self::findings([*chain]),
            Task::Hang { what, how: Hang::InLoop(pin), side } => {
                let mut hung = Self::pinned(design, &Pins::Closure(*pin, *side));
                hung.findings.insert(0, *what);
                hung
            }
            Task::Hang { what, how, .. } => Self::findings([*what, holds(*how)]),
            Task::End(ends, _) => Self::end(ends),
            Task::String(strand, _) => Self::string(design, strand),
            Task::Measure(strands) => Self::pushed(design, strands.first().map(|at| &design.strands[*at])),
            Task::FixStops(strand, stop) => Self { rows: vec![after(strand, *stop)], ..Self::findings([*stop]) },
            Task::FixGroups(strand, _) | Task::Space(strand) => Self::pushed(design, Some(strand)),
            Task::Twist(_) => {
                Self { rows: design.strands.iter().map(from_first).take(STRANDS).collect(), ..Self::default() }
            }
            Task::Tassel(tassel) => Self::findings([*tassel]),
            Task::Cut(_) => Self {
                turns: design.strands.iter().find_map(|one| design.coil_turns(one)).unwrap_or_default(),
                ..Self::default()
            },
            Task::Check(Finished::Coiled(turns, _)) => Self { turns: *turns, ..Self::default() },
            Task::Tag | Task::LookForGaps(_) | Task::Check(_) | Task::TryLoops(_) | Task::MakeOther(_) => {
                Self::default()
            }
        }
    }

    fn findings<const N: usize>(findings: [Index<Finding>; N]) -> Self {
        Self { findings: findings.to_vec(), ..Self::default() }
    }

    /// A branch.
    fn hung(dangle: &Dangle) -> Self {
        let strung = dangle.bits.iter().rev().map(turned).take(SEEN).collect();
        Self { rows: vec![strung], findings: dangle.on.into_iter().collect(), ..Self::default() }
    }

    /// Pins, of those of branches the first sort's.
    fn pinned(design: &Design, pins: &Pins) -> Self {
        match pins {
            Pins::Closure(pin, side) => {
                let side = usize::from(*side == Side::Last);
                let own = design.closure.onto(side).iter().map(|part| part.finding);
                let parts = own.skip_while(|at| at != pin).take_while(|at| at == pin || covers(design, *at));
                Self { findings: parts.collect(), ..Self::default() }
            }
            Pins::Dangles(sorts, _) => {
                let mut all = design.strands.iter().flat_map(Strand::hung);
                all.find(|dangle| dangle.on.is_some() && dangle.on == sorts.first().copied())
                    .map(Self::hung)
                    .unwrap_or_default()
            }
        }
    }

    /// An end of the strand that the steps tell, with what it hangs on first.
    fn end(ends: &AlikeEnds<'_>) -> Self {
        let (design, strand) = (ends.design, ends.strand);
        let onto = ends.part().map(|part| part.finding);
        let met = design.met().1.into_iter().filter_map(|bit| bit.what.bead());
        let own = super::ends::end(strand, ends.side).findings.iter().copied();
        Self {
            kinds: strand.in_end_knots(design).chain(met).collect(),
            rows: both_ends(strand, ends.side),
            findings: onto.into_iter().chain(own).collect(),
            legs: strand.legs,
            ..Self::default()
        }
    }

    /// A strand as it is strung, beside the others where it shares something with them, or with what hangs in its links.
    fn string(design: &Design, strand: &Strand) -> Self {
        let shared = strand.bits().find_map(|bit| design.shared_bit(bit, strand));
        match (shared, strand.hung().next()) {
            (Some((shared, bores)), _) => Self::shared(design, strand, shared, bores.count as usize),
            (None, Some(dangle)) if super::prepare::is_chain(design, strand) => Self::hung(dangle),
            _ => Self { rows: vec![strung(design, strand)], legs: strand.legs, ..Self::default() },
        }
    }

    /// What strands share, with what is beside it on each of them.
    fn shared(design: &Design, strand: &Strand, shared: Shared, holes: usize) -> Self {
        let through: Vec<_> = design.strands.iter().filter(|one| one.bits().any(|bit| shared.is(&bit.what))).collect();
        let mut groups = through.chunks(holes);
        let group = groups.find(|group| group.iter().any(|one| std::ptr::eq(*one, strand))).unwrap_or_default();
        let (kinds, findings) = match shared {
            Shared::Bead(bead) => (vec![bead], Vec::new()),
            Shared::Bar(bar) => (Vec::new(), vec![bar]),
        };
        let rows = group.iter().take(STRANDS).flat_map(|one| beside(one, shared)).collect();
        Self { kinds, findings, rows, legs: strand.legs, ..Self::default() }
    }

    /// The first beads that are pushed together, and a crimp that keeps others.
    fn pushed(design: &Design, strand: Option<&Strand>) -> Self {
        let has_beads = |bits: &&Vec<Bit>| bits.iter().any(|bit| bit.what.bead().is_some());
        let first = strand.and_then(|strand| strand.trains.iter().map(|train| &train.bits).find(has_beads));
        let crimp = |bit: &Bit| match bit.what {
            What::Finding(at) => design.findings[at].crimp().map(|_| at),
            _ => None,
        };
        let crimp = strand.and_then(|strand| strand.bits().find_map(crimp));
        let rows = first.into_iter().map(|bits| seen(bits.iter())).collect();
        Self { rows, findings: crimp.into_iter().collect(), ..Self::default() }
    }
}

/// The kinds that the piece has.
fn laid_out(design: &Design) -> Vec<Index<Bead>> {
    let counts = design.counts();
    design.beads.indices().filter(|at| counts[*at] > 0).collect()
}

/// Whether a finding covers a pin.
fn covers(design: &Design, finding: Index<Finding>) -> bool {
    matches!(design.findings[finding].kind(), FindingKind::Cone | FindingKind::BeadCap)
}

/// In what a finding comes to hang.
const fn holds(how: Hang) -> Index<Finding> {
    match how {
        Hang::Opened { before, .. } | Hang::Unopened(before) => before,
        Hang::Between { ring, .. } => ring,
        Hang::InLoop(pin) => pin,
    }
}

/// As much as is seen of what is strung; branches and bare cord are not.
fn seen<'a>(bits: impl Iterator<Item = &'a Bit>) -> Vec<Bit> {
    let is_strung = |bit: &&Bit| !matches!(bit.what, What::Gap | What::Dangle(_));
    bits.filter(is_strung).take(SEEN).cloned().collect()
}

/// A strand's row; one with bead caps from the first of these on.
fn strung(design: &Design, strand: &Strand) -> Vec<Bit> {
    let is_cap =
        |bit: &Bit| matches!(bit.what, What::Finding(at) if design.findings[at].kind() == FindingKind::BeadCap);
    let capped = strand.bits().position(is_cap).unwrap_or_default();
    seen(strand.bits().skip(capped))
}

fn from_first(strand: &Strand) -> Vec<Bit> {
    seen(strand.bits())
}

fn from_last(strand: &Strand) -> Vec<Bit> {
    let bits: Vec<_> = strand.bits().map(turned).collect();
    seen(bits.iter().rev())
}

/// The row from the end of a side, and that from the other.
fn both_ends(strand: &Strand, side: Side) -> Vec<Vec<Bit>> {
    match side {
        Side::Both | Side::First => vec![from_first(strand), from_last(strand)],
        Side::Last => vec![from_last(strand), from_first(strand)],
    }
}

/// A bit as it is passed on the way back.
fn turned(bit: &Bit) -> Bit {
    Bit { before: bit.after, after: bit.before, turned: !bit.turned, ..bit.clone() }
}

/// What stands beside the first of something on a strand, before it and after it.
fn beside(strand: &Strand, shared: Shared) -> [Vec<Bit>; 2] {
    let bits: Vec<_> = strand.bits().collect();
    let at = bits.iter().position(|bit| shared.is(&bit.what)).unwrap_or_default();
    let before: Vec<_> = bits.iter().take(at).rev().map(|bit| turned(bit)).collect();
    [seen(before.iter()), seen(bits.into_iter().skip(at + 1))]
}

/// What comes after the first stop.
fn after(strand: &Strand, stop: Index<Finding>) -> Vec<Bit> {
    seen(strand.bits().skip_while(|bit| bit.what != What::Finding(stop)).skip(1))
}
