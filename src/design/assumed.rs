//! What is assumed of articles of which nobody says more than they must have: beads and cords by their sizes, findings by
//! their forms. Whoever knows more says it in place of that.

use crate::pattern::{CordKind, Drilled, FindingKind, Outline, Shape};
use crate::source::Place;
use crate::trade::{stiffness, usual};
use crate::units::{Length, Mass};

use super::finding::Finding;
use super::form::{
    Bar, Cap, ChainLinks, Charm, Cone, CordEnd, Crimp, Dimensions, Foot, Form, Hanger, JumpRing, KnotCover, Pin, Tassel,
};
use super::stated::Stated;
use super::stock::{Bead, Cord, Wire};

/// Density of common soda-lime glass in g/cm³ (general density tables: crown glass 2.5).
pub const GLASS: f64 = 2.5;

impl Bead {
    /// One of a shape, so long across its hole and along it; all else is what is assumed where a pattern says no more.
    #[must_use]
    pub fn new(id: &str, shape: Shape, [across, along]: [Length; 2]) -> Self {
        let mut bead = Self {
            id: id.to_owned(),
            name: id.to_owned(),
            letter: String::new(),
            shape,
            across,
            along,
            thick: thickness_through(shape, across),
            drilled: Drilled::Lengthwise,
            hole: Stated::Assumed(Length::mm(usual::HOLE.value().min(across.value() * usual::HOLE_SHARE))),
            bores: None,
            tolerance: Stated::Assumed(usual_tolerance(shape)),
            pitch: None,
            mass: Stated::Assumed(Mass::ZERO),
            material: None,
            sold: None,
            instead: Vec::new(),
            place: Place::default(),
        };
        bead.mass = Stated::Assumed(bead.mass_of(GLASS));
        bead
    }

    /// Its mass of something of this density in g/cm³.
    pub(super) fn mass_of(&self, density: f64) -> Mass {
        Mass::grams(self.volume() / 1000.0 * density)
    }
}

/// Size through the flat side; what is not flat is as thick as it is broad.
fn thickness_through(shape: Shape, across: Length) -> Stated<Length> {
    match shape {
        Shape::Square | Shape::Coin => Stated::Assumed(across * usual::FLAT_SHARE),
        _ => Stated::Stated(across),
    }
}

/// Maker's tolerance where the pattern does not say: assumptions, common practice, no source.
fn usual_tolerance(shape: Shape) -> Length {
    Length::mm(match shape {
        Shape::Seed => 0.1,
        Shape::Chip => 1.0,
        _ => 0.2,
    })
}

impl Cord {
    /// One of a kind, so thick; all else is what is assumed where a pattern says no more.
    #[must_use]
    pub fn new(id: &str, kind: CordKind, diameter: Length) -> Self {
        let wire = (kind == CordKind::Wire).then(Wire::default);
        Self {
            id: id.to_owned(),
            name: id.to_owned(),
            kind,
            is_pin: false,
            diameter,
            take_up: Stated::Assumed(diameter * usual::OVERHAND),
            strength: None,
            stiffness: wire.as_ref().map_or(Stated::Assumed(0.0), |wire| wire.stiffness(diameter)),
            wire,
            mass_per_metre: Stated::Assumed(metre(diameter, cord_density(kind))),
            needle: false,
            coil: None,
            link: None,
            sold: None,
            place: Place::default(),
        }
    }
}

impl Default for Wire {
    /// As many filaments as make it limpest, of steel.
    fn default() -> Self {
        Self { filaments: Stated::Assumed(stiffness::LIMPEST), metal: None }
    }
}

impl Wire {
    /// How stiff it is in N mm² by what it is made of, so thick.
    pub(super) fn stiffness(&self, diameter: Length) -> Stated<f64> {
        self.filaments.map(|filaments| stiffness::of(diameter, filaments, self.metal.as_deref()))
    }
}

/// What a metre of round cord so thick weighs, of this density in g/cm³.
pub fn metre(diameter: Length, density: f64) -> Mass {
    Mass::grams(std::f64::consts::PI / 4.0 * diameter.value().powi(2) * density)
}

/// Density in g/cm³ of a cord with the air between its plies: assumptions, used only where the
/// pattern gives no mass.
const fn cord_density(kind: CordKind) -> f64 {
    match kind {
        // Spring steel: 7.85 g/cm³ (handbook value, from memory).
        CordKind::MemoryWire => 7.85,
        CordKind::Wire => 4.5,
        CordKind::Chain => 3.5,
        CordKind::Thread | CordKind::Silk | CordKind::Elastic => 1.1,
        CordKind::Leather => 0.9,
    }
}

impl Finding {
    /// One of a form, of which no mass is known.
    #[must_use]
    pub fn new(id: &str, form: Form) -> Self {
        Self {
            id: id.to_owned(),
            name: id.to_owned(),
            form,
            mass: Stated::Assumed(Mass::ZERO),
            material: None,
            breakaway: false,
            comes_with: None,
            sold: None,
            place: Place::default(),
        }
    }
}

impl Dimensions {
    /// Nothing but so long.
    #[must_use]
    pub const fn new(length: Length) -> Self {
        Self { length, outside: None, inside: None, wire: None }
    }
}

impl Crimp {
    /// One of these sizes.
    #[must_use]
    pub const fn new(length: Length, outside: Length, inside: Length) -> Self {
        Self { length, outside, inside }
    }
}

impl Cone {
    /// One that narrows from its inside at the mouth to its tip.
    #[must_use]
    pub const fn new(length: Length, inside: Length, tip: Length) -> Self {
        Self { length, inside, tip, mouth: None, outside: None }
    }
}

impl Pin {
    /// A wire so long and thick, with a foot.
    #[must_use]
    pub const fn new(foot: Foot, length: Length, wire: Length) -> Self {
        Self { length, wire, foot, outside: None }
    }
}

impl ChainLinks {
    /// Links so long, of a wire of the usual share of that.
    #[must_use]
    pub fn new(link: Length) -> Self {
        Self { link, wire: Stated::Assumed(link * usual::LINK_WIRE), length: None }
    }
}

impl JumpRing {
    /// A ring of this inside that opens, of a wire of the usual share of that.
    #[must_use]
    pub fn new(inside: Length) -> Self {
        Self { inside, wire: Stated::Assumed(inside * usual::RING_WIRE), outside: None, closed: false }
    }
}

impl Bar {
    /// A bar so long with so many holes, or loops, so far apart.
    #[must_use]
    pub const fn new(length: Length, holes: u32, spacing: Length) -> Self {
        Self { length, spacing, holes, outside: None, inside: None, wire: None }
    }
}

impl Cap {
    /// Nothing but so long.
    #[must_use]
    pub const fn new(length: Length) -> Self {
        Self { length, outside: None, inside: None, mouth: None }
    }
}

impl Hanger {
    /// So long, of the usual wire.
    #[must_use]
    pub const fn new(length: Length) -> Self {
        Self { length, wire: Stated::Assumed(usual::EAR_WIRE), outside: None, inside: None }
    }
}

impl KnotCover {
    /// So long, over a knot that is tied round nothing.
    #[must_use]
    pub const fn new(length: Length) -> Self {
        Self { body: Dimensions::new(length), bead: None }
    }
}

impl CordEnd {
    /// So long, for a cord as thick as its inside.
    #[must_use]
    pub const fn new(length: Length, inside: Length) -> Self {
        Self { length, inside, outside: None, wire: None }
    }
}

impl Charm {
    /// So long, loop included, and as broad as one of its outline is drawn: by eye.
    #[must_use]
    pub fn new(length: Length, outline: Outline) -> Self {
        let share = match outline {
            Outline::Disc | Outline::Heart => 0.8,
            Outline::Star => 0.84,
            Outline::Leaf => 0.45,
            Outline::Bar => 0.22,
        };
        Self { length, breadth: Stated::Assumed(length * share), outline }
    }
}

impl Tassel {
    /// One that is bought, so long, and of the usual share of that as broad.
    #[must_use]
    pub fn new(length: Length) -> Self {
        Self { length, breadth: Stated::Assumed(length * usual::TASSEL_BREADTH), wound: None }
    }
}

impl Form {
    /// One of a kind, in sizes that such findings have in shops: common practice, no source.
    #[must_use]
    pub fn usual(kind: FindingKind) -> Self {
        let mm = Length::mm;
        let body = |length| Dimensions::new(mm(length));
        let pin = |foot| Self::Pin(Pin::new(foot, mm(25.0), mm(0.72)));
        let bar = |length| Bar::new(mm(length), 3, mm(5.0));
        match kind {
            FindingKind::Crimp => Self::Crimp(Crimp::new(mm(2.0), mm(2.0), mm(1.3))),
            FindingKind::Cone => Self::Cone(Cone { mouth: Some(mm(7.5)), ..Cone::new(mm(12.0), mm(6.0), mm(1.5)) }),
            FindingKind::EyePin => pin(Foot::Eye),
            FindingKind::HeadPin => pin(Foot::Head),
            FindingKind::Clasp => Self::Clasp(body(12.0)),
            FindingKind::Hook => Self::Hook(body(12.0)),
            FindingKind::ToggleRing => Self::ToggleRing(body(12.0)),
            FindingKind::SpringRing => Self::SpringRing(body(8.0)),
            FindingKind::BarrelHalf => Self::BarrelHalf(body(8.0)),
            FindingKind::ToggleBar => Self::ToggleBar(body(5.0)),
            FindingKind::JumpRing => {
                let wire = Stated::Stated(mm(0.8));
                Self::JumpRing(JumpRing { outside: Some(mm(5.0)), wire, ..JumpRing::new(mm(3.4)) })
            }
            FindingKind::Chain => Self::Chain(ChainLinks { wire: Stated::Stated(mm(0.7)), ..ChainLinks::new(mm(4.0)) }),
            FindingKind::SpacerBar => Self::SpacerBar(bar(2.5)),
            FindingKind::EndBar => Self::EndBar(bar(8.0)),
            FindingKind::BoxHalf => Self::BoxHalf(bar(8.0)),
            FindingKind::SlideHalf => Self::SlideHalf(bar(7.0)),
            FindingKind::EarWire => Self::EarWire(Hanger { wire: Stated::Stated(mm(0.72)), ..Hanger::new(mm(20.0)) }),
            FindingKind::BeadCap => Self::BeadCap(Cap { outside: Some(mm(6.0)), ..Cap::new(mm(3.0)) }),
            FindingKind::CrimpCover => Self::CrimpCover(Dimensions { outside: Some(mm(3.0)), ..body(3.0) }),
            FindingKind::WireGuard => Self::WireGuard(body(4.5)),
            FindingKind::CordEnd => Self::CordEnd(CordEnd { outside: Some(mm(3.0)), ..CordEnd::new(mm(9.0), mm(1.8)) }),
            FindingKind::Charm => Self::Charm(Charm::new(mm(16.0), Outline::Leaf)),
            FindingKind::Tassel => Self::Tassel(Tassel::new(mm(22.0))),
            FindingKind::SpectacleLoop => Self::SpectacleLoop(body(20.0)),
            FindingKind::Bail => Self::Bail(Hanger::new(mm(8.0))),
            FindingKind::KnotCover => Self::KnotCover(KnotCover::new(mm(8.0))),
        }
    }
}
