//! Where in a pattern each kind of finding may stand.

use crate::pattern::FindingKind;
use crate::remark::{Code, Remark};
use crate::source::At;

use super::Context;
use super::entries::Index;
use super::finding::Finding;
use super::shelf::{Article, Shelf, not_a};

/// A place in a pattern where a finding may stand.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// Among a strand's `ends`.
    Ends,
    /// On a side of the closure.
    Side,
    /// On the closure's `both ends` of an earring.
    BothEnds,
    /// On a side of an open necklace's closure.
    Open,
    /// Where both ends of a piece meet.
    Meeting,
    /// As what a branch hangs `on`.
    Hanger,
    /// As a `stop`.
    Stop,
    /// Strung on the cord, or on a branch.
    Strung,
}

impl Spot {
    const ALL: [Self; 8] =
        [Self::Ends, Self::Side, Self::BothEnds, Self::Open, Self::Meeting, Self::Hanger, Self::Stop, Self::Strung];

    /// The place in words, behind "stands".
    const fn words(self) -> &'static str {
        match self {
            Self::Ends => "among the `ends` of a strand",
            Self::Side => "on a side of the `closure`",
            Self::BothEnds => "on `both ends` of an earring",
            Self::Hanger => "as what a dangle hangs `on`",
            Self::Stop => "as a `stop`",
            Self::Strung => "among the beads",
            Self::Open => "on a side of an open `closure`",
            Self::Meeting => "where `both ends` of a piece meet",
        }
    }

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
pub fn finding(id: &At<String>, spot: Spot, shelf: &Shelf, context: &mut Context) -> Option<Index<Finding>> {
    let index = shelf.find_finding(id, context)?;
    let finding = &shelf.findings[index];
    if !spot.kinds().contains(&finding.kind()) {
        return context.refuse(misplaced(id, finding.kind(), spot));
    }
    let measured = finding.chain().is_none_or(|chain| chain.length.is_some());
    match spot {
        Spot::Hanger if finding.ring().is_some_and(|ring| ring.closed) => context.refuse(shut(id)),
        Spot::Hanger | Spot::Strung if !measured => context.refuse(no_length(id)),
        _ => Some(index),
    }
}

/// What hangs in a ring goes in where it opens.
fn shut(id: &At<String>) -> Remark {
    let headline = format!("`{}` is closed for good, and nothing can be hung in it", id.value);
    Remark::words(Code::Misplaced, headline).at(id.place).helping("hang the dangle on a jump ring that opens")
}

/// The closure says how much chain it takes; elsewhere each piece is as long as the finding says.
fn no_length(id: &At<String>) -> Remark {
    let headline = format!("how long is the piece of chain `{}` here?", id.value);
    Remark::words(Code::MissingSize, headline).at(id.place).helping(format!("add `length:` to the finding `{}`", id.value))
}

/// Checks an id among the beads: a bead, or a finding that is strung.
pub fn strung(id: &At<String>, shelf: &Shelf, context: &mut Context) {
    match shelf.means(&id.value) {
        Some(Article::Bead) => {}
        Some(Article::Finding) => {
            finding(id, Spot::Strung, shelf, context);
        }
        Some(Article::Cord) => context.remarks.push(not_a(Article::Bead, Article::Cord, id)),
        None if shelf.may_be_strung() => {}
        None if id.value == "knot" => context.remarks.push(bare_knot(id)),
        None if id.value.contains(' ') => context.remarks.push(run_together(id)),
        None => context.unknown("bead", id, shelf.known(Article::Bead).chain(shelf.known(Article::Finding))),
    }
}

/// An entry of several words, which no id has.
fn run_together(id: &At<String>) -> Remark {
    let remark = Remark::words(Code::UnknownId, format!("the pattern defines no bead `{}`", id.value)).at(id.place);
    remark.helping("write a comma between two beads, and before a bead how many: `20 reed, 3 mist`")
}

/// Among the `ends` a knot is just `knot`; here it says how much cord it takes.
fn bare_knot(id: &At<String>) -> Remark {
    let remark = Remark::words(Code::UnknownId, "the pattern defines no bead `knot`").at(id.place);
    remark.helping("write a knot with the cord that it takes up: `{ knot: 2 mm }`")
}

/// A cover sits on a crimp and a guard in a crimped loop: neither closes an end by itself. Leaves a
/// remark where it should.
pub fn check_crimped(ids: &[At<String>], shelf: &Shelf, context: &mut Context) {
    let kind = |id: &At<String>| shelf.finding(&id.value).map(|at| shelf.findings[at].kind());
    let needs = |id: &&At<String>| matches!(kind(id), Some(FindingKind::CrimpCover | FindingKind::WireGuard));
    let crimped = ids.iter().any(|id| kind(id) == Some(FindingKind::Crimp));
    if let Some(id) = ids.iter().find(needs).filter(|_| !crimped) {
        let headline = format!("`{}` goes with a crimp, and none is among these `ends`", id.value);
        let help = format!("write a crimp beside it, like `ends: [crimp, {}]`", id.value);
        context.remarks.push(Remark::words(Code::Misplaced, headline).at(id.place).helping(help));
    }
}

fn misplaced(id: &At<String>, kind: FindingKind, spot: Spot) -> Remark {
    let words = |kinds: &[FindingKind]| kinds.iter().map(|kind| kind.word()).collect::<Vec<_>>().join(", ");
    let fit: Vec<_> =
        Spot::ALL.iter().filter(|other| other.kinds().contains(&kind)).map(|other| other.words()).collect();
    let headline = format!("`{}` is a finding of kind {kind}, which does not stand {}", id.value, spot.words());
    let help =
        format!("a finding of kind {kind} stands {}; here one of kind {}", fit.join(" or "), words(spot.kinds()));
    Remark::words(Code::Misplaced, headline).at(id.place).helping(help)
}
