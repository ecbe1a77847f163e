//! Findings: what each does, with the sizes that its kind has.

use crate::paint::mark::Rgb;
use crate::pattern::{FindingKind, Outline};
use crate::source::Place;
use crate::trade::usual;
use crate::units::{Length, Mass};

use super::entries::Index;
use super::stated::Stated;
use super::stock::{Bead, Sold};

/// A finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// What it does, with the sizes that its kind has.
    pub form: Form,
    /// Mass of one, or of one metre of chain.
    pub mass: Mass,
    /// What it is made of, as the pattern says.
    pub material: Option<String>,
    /// Its colour.
    pub colour: Rgb,
    /// Whether it opens by itself when pulled.
    pub breakaway: bool,
    /// Id of the finding with which it is sold as one thing.
    pub comes_with: Option<String>,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Where the pattern defines it.
    pub place: Place,
}

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
    Clasp(Body),
    /// A clasp that is a ring with a sprung bolt.
    SpringRing(Body),
    /// A clasp of bent wire.
    Hook(Body),
    /// The ring of a toggle clasp.
    ToggleRing(Body),
    /// The bar of a toggle clasp.
    ToggleBar(Body),
    /// Half of a clasp whose halves screw, snap or hold together by magnets.
    BarrelHalf(Body),
    /// Chain, sold by length.
    Chain(Chain),
    /// A ring of wire.
    JumpRing(Ring),
    /// A bar with holes, along the way.
    SpacerBar(Bar),
    /// A bar with loops that strands end on.
    EndBar(Bar),
    /// A cup that sits on a bead's end.
    BeadCap(Cap),
    /// A hollow ball that hides a crimp.
    CrimpCover(Body),
    /// A horseshoe in the loop.
    WireGuard(Body),
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
    /// A loop that grips an arm of a pair of spectacles.
    SpectacleLoop(Body),
}

/// The sizes of what has a length and little else that matters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
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
pub struct Chain {
    /// Length of one link, outside.
    pub link: Length,
    /// Diameter of its wire.
    pub wire: Stated<Length>,
    /// Length of each piece that is strung or that carries a branch, where stated; the closure says its own.
    pub length: Option<Length>,
}

/// The sizes of a jump ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Inside diameter.
    pub inside: Length,
    /// Diameter of its wire.
    pub wire: Stated<Length>,
    /// Outside diameter, where stated.
    pub outside: Option<Length>,
    /// Whether it is soldered shut.
    pub closed: bool,
}

/// The sizes of a bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Along the cord.
    pub length: Length,
    /// Distance between its holes.
    pub spacing: Length,
    /// How many holes it has.
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
pub struct KnotCover {
    /// Its sizes.
    pub body: Body,
    /// The bead that the knot in it is tied round.
    pub bead: Option<Index<Bead>>,
}

/// The sizes of a cord end.
#[derive(Clone, Copy, Debug, PartialEq)]
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
pub struct Charm {
    /// From the top of its loop down.
    pub length: Length,
    /// How broad it is.
    pub breadth: Stated<Length>,
    /// Its outline.
    pub outline: Outline,
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
            Self::SpectacleLoop(_) => FindingKind::SpectacleLoop,
        }
    }

    /// Its sizes, where its kind has the usual ones.
    const fn body(&self) -> Option<&Body> {
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

impl Finding {
    /// What kind of finding it is.
    #[must_use]
    pub const fn kind(&self) -> FindingKind {
        self.form.kind()
    }

    /// Mass of one; of chain, which is weighed by the metre, that of its piece.
    #[must_use]
    pub fn mass_of_one(&self) -> Mass {
        match &self.form {
            Form::Chain(chain) => self.mass * (chain.length.unwrap_or_default().value() / 1000.0),
            _ => self.mass,
        }
    }

    /// Length along the piece; of a pin, the length of its wire. A ring has none, and chain one only where its
    /// pieces are all alike.
    #[must_use]
    pub fn length(&self) -> Option<Length> {
        match &self.form {
            Form::Crimp(crimp) => Some(crimp.length),
            Form::Cone(cone) => Some(cone.length),
            Form::Pin(pin) => Some(pin.length),
            Form::Chain(chain) => chain.length,
            Form::JumpRing(_) => None,
            Form::SpacerBar(bar) | Form::EndBar(bar) => Some(bar.length),
            Form::BeadCap(cap) => Some(cap.length),
            Form::Bail(hanger) | Form::EarWire(hanger) => Some(hanger.length),
            Form::CordEnd(end) => Some(end.length),
            Form::Charm(charm) => Some(charm.length),
            other => other.body().map(|body| body.length),
        }
    }

    /// Outside diameter or width, where it is stated; of a crimp always.
    #[must_use]
    pub fn outside(&self) -> Option<Length> {
        match &self.form {
            Form::Crimp(crimp) => Some(crimp.outside),
            Form::Cone(cone) => cone.outside,
            Form::Pin(pin) => pin.outside,
            Form::Chain(_) => None,
            Form::JumpRing(ring) => ring.outside,
            Form::SpacerBar(bar) | Form::EndBar(bar) => bar.outside,
            Form::BeadCap(cap) => cap.outside,
            Form::Bail(hanger) | Form::EarWire(hanger) => hanger.outside,
            Form::CordEnd(end) => end.outside,
            Form::Charm(charm) => Some(*charm.breadth),
            other => other.body().and_then(|body| body.outside),
        }
    }

    /// Inside diameter, where it is stated; of a crimp, cone, ring or cord end always.
    #[must_use]
    pub fn inside(&self) -> Option<Length> {
        match &self.form {
            Form::Crimp(crimp) => Some(crimp.inside),
            Form::Cone(cone) => Some(cone.inside),
            Form::Pin(_) | Form::Chain(_) => None,
            Form::JumpRing(ring) => Some(ring.inside),
            Form::SpacerBar(bar) | Form::EndBar(bar) => bar.inside,
            Form::BeadCap(cap) => cap.inside,
            Form::Bail(hanger) | Form::EarWire(hanger) => hanger.inside,
            Form::CordEnd(end) => Some(end.inside),
            other => other.body().and_then(|body| body.inside),
        }
    }

    /// Outside diameter of its wide end, where a cone or cap states it.
    #[must_use]
    pub const fn mouth(&self) -> Option<Length> {
        match &self.form {
            Form::Cone(cone) => cone.mouth,
            Form::BeadCap(cap) => cap.mouth,
            _ => None,
        }
    }

    /// Diameter of its wire, where its kind has one or the pattern states one.
    #[must_use]
    pub fn wire(&self) -> Option<Stated<Length>> {
        match &self.form {
            Form::Pin(pin) => Some(Stated::Stated(pin.wire)),
            Form::Chain(Chain { wire, .. })
            | Form::JumpRing(Ring { wire, .. })
            | Form::Bail(Hanger { wire, .. })
            | Form::EarWire(Hanger { wire, .. }) => Some(*wire),
            Form::SpacerBar(Bar { wire, .. })
            | Form::EndBar(Bar { wire, .. })
            | Form::CordEnd(CordEnd { wire, .. }) => wire.map(Stated::Stated),
            other => other.body().and_then(|body| body.wire).map(Stated::Stated),
        }
    }

    /// Width of the rim that a cap draws over its bead, where it states one.
    #[must_use]
    pub fn rim(&self) -> Option<Length> {
        let Form::BeadCap(cap) = &self.form else { return None };
        [cap.mouth, cap.outside].into_iter().flatten().reduce(Length::max)
    }

    /// Its sizes as a crimp.
    #[must_use]
    pub const fn crimp(&self) -> Option<&Crimp> {
        if let Form::Crimp(crimp) = &self.form { Some(crimp) } else { None }
    }

    /// Its sizes as a pin: a wire with an end that holds.
    #[must_use]
    pub const fn pin(&self) -> Option<&Pin> {
        if let Form::Pin(pin) = &self.form { Some(pin) } else { None }
    }

    /// Its sizes as a cone.
    #[must_use]
    pub const fn cone(&self) -> Option<&Cone> {
        if let Form::Cone(cone) = &self.form { Some(cone) } else { None }
    }

    /// Its sizes as chain.
    #[must_use]
    pub const fn chain(&self) -> Option<&Chain> {
        if let Form::Chain(chain) = &self.form { Some(chain) } else { None }
    }

    /// Its sizes as a jump ring.
    #[must_use]
    pub const fn ring(&self) -> Option<&Ring> {
        if let Form::JumpRing(ring) = &self.form { Some(ring) } else { None }
    }

    /// Its sizes as a bar, at the strands' ends or along the way.
    #[must_use]
    pub const fn bar(&self) -> Option<&Bar> {
        if let Form::SpacerBar(bar) | Form::EndBar(bar) = &self.form { Some(bar) } else { None }
    }

    /// The bead that the knot in it is tied round.
    #[must_use]
    pub const fn knotted_bead(&self) -> Option<Index<Bead>> {
        if let Form::KnotCover(cover) = &self.form { cover.bead } else { None }
    }

    /// Whether it hangs by a loop of its own.
    #[must_use]
    pub const fn is_charm(&self) -> bool {
        matches!(self.form, Form::Charm(_))
    }

    /// Whether it is a pin.
    #[must_use]
    pub const fn is_pin(&self) -> bool {
        self.pin().is_some()
    }

    /// How thick it lies on the skin: as its wire, or else as it is broad. What the pattern does not say is the
    /// usual share of its length, an assumption.
    #[must_use]
    pub fn thickness(&self) -> Length {
        let wire = |body: &Body, share: f64| body.wire.unwrap_or(body.length * share);
        let broad = |body: &Body, share: f64| body.outside.unwrap_or(body.length * share);
        match &self.form {
            Form::Hook(body) => wire(body, usual::HOOK_WIRE),
            Form::ToggleRing(body) => wire(body, usual::TOGGLE_WIRE),
            Form::ToggleBar(body) => wire(body, usual::TOGGLE_ROD),
            Form::SpringRing(body) => wire(body, usual::SPRING_TUBE),
            Form::WireGuard(body) => wire(body, usual::GUARD_TUBE),
            Form::SpectacleLoop(body) => wire(body, usual::SPECTACLE_WIRE),
            Form::Clasp(body) => wire(body, usual::CLASP_THICK),
            Form::KnotCover(cover) => broad(&cover.body, usual::COVER_BREADTH),
            Form::CordEnd(end) => end.outside.unwrap_or(end.length * usual::CORD_END_BREADTH),
            Form::BarrelHalf(body) => broad(body, usual::BARREL_BREADTH),
            Form::CrimpCover(body) => broad(body, 1.0),
            Form::EndBar(bar) | Form::SpacerBar(bar) => bar.outside.unwrap_or(bar.length),
            Form::Pin(pin) => pin.wire,
            Form::JumpRing(Ring { wire, .. }) | Form::Chain(Chain { wire, .. }) => **wire,
            Form::Bail(hanger) | Form::EarWire(hanger) => *hanger.wire,
            Form::Crimp(_) | Form::BeadCap(_) | Form::Cone(_) => self.across(),
            Form::Charm(_) => usual::PLATE,
        }
    }

    /// The largest of its stated diameters; nothing where none is stated.
    #[must_use]
    pub fn across(&self) -> Length {
        [self.outside(), self.mouth(), self.inside()].into_iter().flatten().fold(Length::ZERO, Length::max)
    }

    /// How far below the cord what hangs on it begins: the loop of a pin, else the ring, bail or chain.
    #[must_use]
    pub fn hangs(&self) -> Length {
        match &self.form {
            Form::Pin(pin) => pin.eye(),
            _ => [self.length(), self.inside()].into_iter().flatten().fold(Length::ZERO, Length::max),
        }
    }

    /// What of it is below all that hangs on it: a pin's foot.
    #[must_use]
    pub fn foot(&self) -> Length {
        self.pin().map_or(Length::ZERO, Pin::foot_length)
    }
}

impl Chain {
    /// How many links a length of it has: each lengthens it by its own length less two thicknesses of its
    /// wire, which lie in its neighbours. Nothing where the wire leaves nothing open in a link.
    #[must_use]
    pub fn links(&self, length: Length) -> Option<f64> {
        let both = *self.wire * 2.0;
        let pitch = (self.link - both).value();
        (pitch > 0.0).then(|| libm::round((length - both).value() / pitch).max(1.0))
    }
}

impl Pin {
    /// Outside diameter of its eye, and of the plain loop made at its other end. What a head pin states is its
    /// head's.
    #[must_use]
    pub fn eye(&self) -> Length {
        self.outside.filter(|_| self.foot == Foot::Eye).unwrap_or(usual::EYE)
    }

    /// Wire that the plain loop takes.
    #[must_use]
    pub fn loop_wire(&self) -> Length {
        usual::loop_wire(self.eye(), self.wire)
    }

    /// Length of its eye, or of its head, which is as thick as its wire.
    fn foot_length(&self) -> Length {
        match self.foot {
            Foot::Eye => self.eye(),
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

impl Bar {
    /// From the first of its holes to the last, and half their distance beyond on each side.
    #[must_use]
    pub fn breadth(&self) -> Length {
        self.spacing * f64::from(self.holes)
    }
}
