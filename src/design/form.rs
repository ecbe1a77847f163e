//! What findings do, with the sizes that their kinds have.

use crate::pattern::{FindingKind, Outline};
use crate::trade::usual;
use crate::units::Length;

use super::entries::Index;
use super::stated::Stated;
use super::stock::{Bead, Cord};

/// What a finding does, with the sizes that its kind has. A size that a kind always has is a length; one that
/// only some patterns state is optional.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    /// A soft tube or ring pressed shut on the cord.
    Crimp(Crimp),
    /// A hollow cone that covers gathered ends.
    Cone(Cone),
    /// A wire with an eye or a head.
    Pin(Pin),
    /// The trigger clasp.
    Clasp(Dimensions),
    /// A clasp that is a ring with a sprung bolt.
    SpringRing(Dimensions),
    /// A clasp of bent wire.
    Hook(Dimensions),
    /// The ring of a toggle clasp.
    ToggleRing(Dimensions),
    /// The bar of a toggle clasp.
    ToggleBar(Dimensions),
    /// Half of a clasp whose halves screw, snap or hold together by magnets.
    BarrelHalf(Dimensions),
    /// Half of a flat clasp with a loop for each strand.
    BoxHalf(Bar),
    /// Half of a clasp of two tubes with a loop for each strand.
    SlideHalf(Bar),
    /// Chain, sold by length.
    Chain(ChainLinks),
    /// A ring of wire.
    JumpRing(JumpRing),
    /// A bar with holes, along the way.
    SpacerBar(Bar),
    /// A bar with loops that strands end on.
    EndBar(Bar),
    /// A cup that sits on a bead's end.
    BeadCap(Cap),
    /// A hollow ball that hides a crimp.
    CrimpCover(Dimensions),
    /// A horseshoe in the loop.
    WireGuard(Dimensions),
    /// A loop that carries a pendant.
    Bail(Hanger),
    /// The hook through the ear.
    EarWire(Hanger),
    /// A hinged cup that closes over a knot.
    KnotCover(KnotCover),
    /// A cap with a loop over the end of a thick cord.
    CordEnd(CordEnd),
    /// A small shape that hangs by its loop.
    Charm(Charm),
    /// Threads that hang by a loop.
    Tassel(Tassel),
    /// A loop that grips an arm of a pair of spectacles.
    SpectacleLoop(Dimensions),
}

/// The sizes of what has a length and little else that matters.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Dimensions {
    /// Along the piece.
    pub length: Length,
    /// Outside diameter or width, where stated.
    pub outside: Option<Length>,
    /// Inside diameter, where stated.
    pub inside: Option<Length>,
    /// Diameter of its wire, where stated.
    pub wire: Option<Length>,
}

/// The sizes of a crimp.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Crimp {
    /// Along the cord.
    pub length: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Inside diameter.
    pub inside: Length,
}

/// The sizes of a cone.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Cone {
    /// From its mouth to its tip.
    pub length: Length,
    /// Inside diameter just inside its mouth.
    pub inside: Length,
    /// Inside diameter of its narrow end.
    pub tip: Length,
    /// Outside diameter of its wide end, where stated.
    pub mouth: Option<Length>,
    /// Outside diameter or width, where stated.
    pub outside: Option<Length>,
}

/// The sizes of a pin.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Pin {
    /// Length of its wire.
    pub length: Length,
    /// Diameter of its wire.
    pub wire: Length,
    /// What holds at its foot.
    pub foot: Foot,
    /// Outside diameter of its eye or head, where stated.
    pub outside: Option<Length>,
}

/// What holds at a pin's foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foot {
    /// A loop.
    Eye,
    /// A flat head.
    Head,
}

/// The sizes of chain.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct ChainLinks {
    /// Length of one link, outside.
    pub link: Length,
    /// Diameter of its wire.
    pub wire: Stated<Length>,
    /// Length of each piece that is strung or that carries a branch, where stated; the closure says its own.
    pub length: Option<Length>,
}

/// The sizes of a jump ring.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct JumpRing {
    /// Inside diameter.
    pub inside: Length,
    /// Diameter of its wire.
    pub wire: Stated<Length>,
    /// Outside diameter, where stated.
    pub outside: Option<Length>,
    /// Whether it is soldered shut.
    pub closed: bool,
}

/// The sizes of a bar, or of half a clasp with loops along it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Bar {
    /// Along the cord.
    pub length: Length,
    /// Distance between its holes or loops.
    pub spacing: Length,
    /// How many holes or loops it has.
    pub holes: u32,
    /// Outside diameter or width, where stated.
    pub outside: Option<Length>,
    /// Diameter of a hole, where stated.
    pub inside: Option<Length>,
    /// Diameter of its loops' wire, where stated.
    pub wire: Option<Length>,
}

/// The sizes of a bead cap.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Cap {
    /// Along the cord.
    pub length: Length,
    /// Outside diameter, where stated.
    pub outside: Option<Length>,
    /// Diameter of its hole, where stated.
    pub inside: Option<Length>,
    /// Outside diameter of its wide end, where stated.
    pub mouth: Option<Length>,
}

/// The sizes of what something hangs on or by.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Hanger {
    /// Along the piece.
    pub length: Length,
    /// Diameter of its wire.
    pub wire: Stated<Length>,
    /// Outside width, where stated.
    pub outside: Option<Length>,
    /// Inside diameter, where stated.
    pub inside: Option<Length>,
}

/// The sizes of a knot cover, and what the knot in it is tied round.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct KnotCover {
    /// Its sizes.
    pub body: Dimensions,
    /// The bead that the knot in it is tied round.
    pub bead: Option<Index<Bead>>,
}

/// The sizes of a cord end.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct CordEnd {
    /// Along the piece.
    pub length: Length,
    /// Inside diameter.
    pub inside: Length,
    /// Outside diameter, where stated.
    pub outside: Option<Length>,
    /// Diameter of its ring's wire, where stated.
    pub wire: Option<Length>,
}

/// The sizes of a charm.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Charm {
    /// From the top of its loop down.
    pub length: Length,
    /// How broad it is.
    pub breadth: Stated<Length>,
    /// Its outline.
    pub outline: Outline,
}

/// The sizes of a tassel, and what it is made of where it is made with the piece.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Tassel {
    /// From the top of its loop to the ends of its threads.
    pub length: Length,
    /// How broad its threads hang.
    pub breadth: Stated<Length>,
    /// The cord that it is wound of with the piece, and how many threads of it hang; nothing of one that is bought.
    pub wound: Option<(Index<Cord>, u32)>,
}

impl Form {
    /// The kind that it is a form of.
    #[must_use]
    pub const fn kind(&self) -> FindingKind {
        match self {
            Self::Crimp(_) => FindingKind::Crimp,
            Self::Cone(_) => FindingKind::Cone,
            Self::Pin(Pin { foot: Foot::Eye, .. }) => FindingKind::EyePin,
            Self::Pin(Pin { foot: Foot::Head, .. }) => FindingKind::HeadPin,
            Self::Clasp(_) => FindingKind::Clasp,
            Self::SpringRing(_) => FindingKind::SpringRing,
            Self::Hook(_) => FindingKind::Hook,
            Self::ToggleRing(_) => FindingKind::ToggleRing,
            Self::ToggleBar(_) => FindingKind::ToggleBar,
            Self::BarrelHalf(_) => FindingKind::BarrelHalf,
            Self::BoxHalf(_) => FindingKind::BoxHalf,
            Self::SlideHalf(_) => FindingKind::SlideHalf,
            Self::Chain(_) => FindingKind::Chain,
            Self::JumpRing(_) => FindingKind::JumpRing,
            Self::SpacerBar(_) => FindingKind::SpacerBar,
            Self::EndBar(_) => FindingKind::EndBar,
            Self::BeadCap(_) => FindingKind::BeadCap,
            Self::CrimpCover(_) => FindingKind::CrimpCover,
            Self::WireGuard(_) => FindingKind::WireGuard,
            Self::Bail(_) => FindingKind::Bail,
            Self::EarWire(_) => FindingKind::EarWire,
            Self::KnotCover(_) => FindingKind::KnotCover,
            Self::CordEnd(_) => FindingKind::CordEnd,
            Self::Charm(_) => FindingKind::Charm,
            Self::Tassel(_) => FindingKind::Tassel,
            Self::SpectacleLoop(_) => FindingKind::SpectacleLoop,
        }
    }

    /// Its sizes, where its kind has the usual ones.
    pub(super) const fn body(&self) -> Option<&Dimensions> {
        match self {
            Self::Clasp(body)
            | Self::SpringRing(body)
            | Self::Hook(body)
            | Self::ToggleRing(body)
            | Self::ToggleBar(body)
            | Self::BarrelHalf(body)
            | Self::CrimpCover(body)
            | Self::WireGuard(body)
            | Self::SpectacleLoop(body)
            | Self::KnotCover(KnotCover { body, .. }) => Some(body),
            _ => None,
        }
    }
}

impl ChainLinks {
    /// By how much a link lengthens it: its own length less two thicknesses of its wire, which lie in its neighbours.
    #[must_use]
    pub fn pitch(&self) -> Length {
        self.link - *self.wire * 2.0
    }

    /// How many links a length of it has. Nothing where the wire leaves nothing open in a link.
    #[must_use]
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a length is finite and a link longer than 0"
    )]
    pub fn links(&self, length: Length) -> Option<u64> {
        let pitch = self.pitch().value();
        (pitch > 0.0).then(|| libm::round((length - *self.wire * 2.0).value() / pitch).max(1.0) as u64)
    }
}

impl Pin {
    /// Outside diameter of its eye, and of the plain loop made at its other end. What a head pin states is its
    /// head's.
    #[must_use]
    pub fn eye(&self) -> Stated<Length> {
        Stated::or(self.outside.filter(|_| self.foot == Foot::Eye), usual::EYE)
    }

    /// How wide its eye, or the plain loop at its other end, is open.
    #[must_use]
    pub fn open(&self) -> Length {
        *self.eye() - self.wire * 2.0
    }

    /// Wire that the plain loop takes.
    #[must_use]
    pub fn loop_wire(&self) -> Length {
        usual::loop_wire(*self.eye(), self.wire)
    }

    /// Length of its eye, or of its head, which is as thick as its wire.
    pub(super) fn foot_length(&self) -> Length {
        match self.foot {
            Foot::Eye => *self.eye(),
            Foot::Head => self.wire,
        }
    }
}

impl Cone {
    /// How far below its tip it is as wide inside as `width`; its whole length for what is wider than its
    /// mouth.
    #[must_use]
    pub fn depth_of(&self, width: Length) -> Length {
        let opening = self.inside - self.tip;
        if opening <= Length::ZERO {
            return if width > self.tip { self.length } else { Length::ZERO };
        }
        self.length * ((width - self.tip) / opening).clamp(0.0, 1.0)
    }

    /// Inside width at a distance below its tip.
    #[must_use]
    pub fn width_at(&self, depth: Length) -> Length {
        self.tip + (self.inside - self.tip) * (depth / self.length).clamp(0.0, 1.0)
    }
}

impl JumpRing {
    /// How broad it is outside, with its wire at least.
    #[must_use]
    pub fn breadth(&self) -> Length {
        (self.inside + *self.wire * 2.0).max(self.outside.unwrap_or_default())
    }
}

impl Bar {
    /// From the first of its holes to the last, and half their distance beyond on each side.
    #[must_use]
    pub fn breadth(&self) -> Length {
        self.spacing * f64::from(self.holes)
    }
}
