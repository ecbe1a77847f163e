//! Where in a pattern each kind of finding may stand.

use crate::pattern::FindingKind;
use crate::remark::Remark;
use crate::remark::said::naming::{Naming, Thing};
use crate::remark::said::spot::Misplaced;
use crate::source::At;

use super::Context;
use super::entries::Index;
use super::finding::Finding;
use super::list::Threaded;
use super::shelf::{Inventory, Meaning, not_a};

pub use crate::remark::said::spot::Spot;

impl Spot {
    const ALL: [Self; 8] =
        [Self::Ends, Self::Side, Self::BothEnds, Self::Open, Self::Meeting, Self::Hanger, Self::Stop, Self::Strung];

    /// The kinds of finding that may stand there, which is what they are made for.
    const fn kinds(self) -> &'static [FindingKind] {
        use FindingKind::{
            Bail, BarrelHalf, BeadCap, BoxHalf, Chain, Charm, Clasp, Cone, CordEnd, Crimp, CrimpCover, EarWire, EndBar,
            EyePin, HeadPin, Hook, JumpRing, KnotCover, SlideHalf, SpacerBar, SpectacleLoop, SpringRing, Tassel,
            ToggleBar, ToggleRing, WireGuard,
        };
        match self {
            Self::Ends => &[Crimp, CrimpCover, WireGuard, KnotCover, CordEnd],
            Self::Side => &[
                EyePin,
                Cone,
                BeadCap,
                EndBar,
                JumpRing,
                Chain,
                Clasp,
                SpringRing,
                Hook,
                ToggleRing,
                ToggleBar,
                BarrelHalf,
                BoxHalf,
                SlideHalf,
                EarWire,
                SpectacleLoop,
            ],
            Self::Open => &[EyePin, Cone, BeadCap, JumpRing, Chain, ToggleRing, Charm, Tassel],
            Self::Meeting => &[BeadCap, JumpRing, Charm, Tassel],
            Self::BothEnds => &[EyePin, Cone, BeadCap, EndBar, JumpRing, Chain, EarWire],
            Self::Hanger => &[HeadPin, EyePin, Bail, JumpRing, Chain],
            Self::Stop => &[Crimp],
            Self::Strung => &[Crimp, SpacerBar, BeadCap, JumpRing, Chain, Charm, Tassel],
        }
    }
}

/// The finding of an id that stands at a spot. Leaves a remark where the pattern does not define it, or
/// where its kind has no business there.
pub fn finding(id: &At<String>, spot: Spot, shelf: &Inventory, context: &mut Context) -> Option<Index<Finding>> {
    let index = shelf.find_finding(id, context)?;
    let finding = &shelf.findings[index];
    if !spot.kinds().contains(&finding.kind()) {
        return context.refuse(misplaced(id, finding.kind(), spot));
    }
    let measured = finding.chain().is_none_or(|chain| chain.length.is_some());
    match spot {
        // What hangs in a ring goes in where it opens.
        Spot::Hanger if finding.ring().is_some_and(|ring| ring.closed) => {
            context.refuse(Remark::new(Misplaced::ClosedRing { id: id.value.clone() }).at(id.place))
        }
        // The closure says how much chain it takes; elsewhere each piece is as long as the finding says.
        Spot::Hanger | Spot::Strung if !measured => {
            context.refuse(Remark::new(Misplaced::NoLength { id: id.value.clone() }).at(id.place))
        }
        _ => Some(index),
    }
}

/// What an id among the beads means: a bead, or a finding that is strung. Leaves a remark where it means neither.
pub fn strung(id: &At<String>, shelf: &Inventory, context: &mut Context) -> Option<Threaded> {
    match shelf.means(&id.value) {
        Some(Meaning::Bead) => return shelf.bead(&id.value).map(Threaded::Bead),
        Some(Meaning::Finding) => return finding(id, Spot::Strung, shelf, context).map(Threaded::Finding),
        Some(Meaning::Cord) => context.remarks.push(not_a(Meaning::Bead, Meaning::Cord, id)),
        None if shelf.may_be_strung() => {}
        None if id.value == "knot" => context.remarks.push(Remark::new(Naming::BareKnot).at(id.place)),
        None if id.value.contains(' ') => {
            context.remarks.push(Remark::new(Naming::RunTogether { entry: id.value.clone() }).at(id.place));
        }
        None => context.unknown(Thing::Bead, id, shelf.known(Meaning::Bead).chain(shelf.known(Meaning::Finding))),
    }
    None
}

/// A cover sits on a crimp and a guard in a crimped loop: neither closes an end by itself. Leaves a
/// remark where it should.
pub fn check_crimped(ids: &[At<String>], shelf: &Inventory, context: &mut Context) {
    let kind = |id: &At<String>| shelf.finding(&id.value).map(|at| shelf.findings[at].kind());
    let needs = |id: &&At<String>| matches!(kind(id), Some(FindingKind::CrimpCover | FindingKind::WireGuard));
    let crimped = ids.iter().any(|id| kind(id) == Some(FindingKind::Crimp));
    if let Some(id) = ids.iter().find(needs).filter(|_| !crimped) {
        context.remarks.push(Remark::new(Misplaced::NoCrimp { id: id.value.clone() }).at(id.place));
    }
}

fn misplaced(id: &At<String>, kind: FindingKind, spot: Spot) -> Remark {
    let fit = Spot::ALL.into_iter().filter(|other| other.kinds().contains(&kind)).collect();
    let kinds = spot.kinds().iter().map(|kind| kind.word()).collect();
    Remark::new(Misplaced::Finding { id: id.value.clone(), kind: kind.word(), spot, fit, kinds }).at(id.place)
}
