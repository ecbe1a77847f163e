//! What a piece is made of: beads, cords and findings, complete, and how they are sold.

use crate::paint::mark::Rgb;
use crate::pattern::{CordKind, FindingKind, Finish, Shape};
use crate::source::Place;
use crate::trade::usual;
use crate::units::{Force, Length, Mass, Money};

use super::entries::Index;

/// A bead, with all that it takes to string, weigh, draw and buy it.
#[derive(Clone, Debug)]
pub struct Bead {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// Its letter on the sheet: A, B, … Z, AA, by first use.
    pub letter: String,
    /// Outline along the hole.
    pub shape: Shape,
    /// How it takes the light.
    pub finish: Finish,
    /// Its colour.
    pub colour: Rgb,
    /// Size across the hole.
    pub across: Length,
    /// Size along the hole, end to end.
    pub along: Length,
    /// Size through the flat side, for squares and coins; else equal to `across`.
    pub thick: Length,
    /// Whether it is drilled across its tip, and so hangs from what goes through it.
    pub tip_drilled: bool,
    /// Diameter of the hole.
    pub hole: Length,
    /// Maker's tolerance on the length along the hole: plus or minus.
    pub tolerance: Length,
    /// Length of cord that one takes in a row of its own kind, where that was measured or is known
    /// from a table; overrides the geometry.
    pub pitch: Option<Length>,
    /// Mass of one.
    pub mass: Mass,
    /// What it is made of, as the pattern says.
    pub material: Option<String>,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Ids of beads that can stand in.
    pub instead: Vec<String>,
    /// Where the pattern defines it.
    pub place: Place,
}

/// A cord.
#[derive(Clone, Debug)]
pub struct Cord {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// What it is made of.
    pub kind: CordKind,
    /// Its diameter.
    pub diameter: Length,
    /// What one tight overhand knot in a single cord makes it shorter.
    pub take_up: Length,
    /// Breaking strength, where known.
    pub strength: Option<Force>,
    /// Mass of one metre.
    pub mass_per_metre: Mass,
    /// Whether it comes with its own needle.
    pub needle: bool,
    /// Its colour.
    pub colour: Rgb,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Where the pattern defines it.
    pub place: Place,
}

/// A finding. Sizes that its kind does not have are nothing.
#[derive(Clone, Debug)]
pub struct Finding {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// What it does.
    pub kind: FindingKind,
    /// Length along the piece; of a pin, the length of its wire.
    pub length: Length,
    /// Outside diameter or width.
    pub outside: Length,
    /// Inside diameter: of a crimp or ring, or of a cone just inside its mouth.
    pub inside: Length,
    /// Outside diameter of a cone's wide end.
    pub mouth: Length,
    /// Inside diameter of a cone's narrow end.
    pub tip: Length,
    /// Diameter of its wire, for pins, rings and chains.
    pub wire: Length,
    /// Length of one chain link.
    pub link: Length,
    /// Distance between the holes of a bar.
    pub spacing: Length,
    /// How many holes a bar has.
    pub holes: u32,
    /// Mass of one, or of one metre of chain.
    pub mass: Mass,
    /// What it is made of, as the pattern says.
    pub material: Option<String>,
    /// Its colour.
    pub colour: Rgb,
    /// Whether it opens by itself when pulled.
    pub breakaway: bool,
    /// Whether it is a ring that is soldered shut.
    pub closed: bool,
    /// The bead that the knot in it is tied round.
    pub bead: Option<Index<Bead>>,
    /// Id of the finding with which it is sold as one thing.
    pub comes_with: Option<String>,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Where the pattern defines it.
    pub place: Place,
}

/// How an article is sold and for how much.
#[derive(Clone, Debug, PartialEq)]
pub struct Sold {
    /// What one buys at a time.
    pub lot: Lot,
    /// Price of one lot, which may be nothing; absent where the pattern does not say.
    pub price: Option<Money>,
    /// Of whom it is bought, where the pattern says.
    pub from: Option<String>,
}

/// What one buys at a time.
#[derive(Clone, Debug, PartialEq)]
pub enum Lot {
    /// A temporary strand of this length.
    Strand(Length),
    /// So many.
    Pack(u32),
    /// A single one.
    Each,
    /// So much by mass.
    Grams(Mass),
    /// A spool or cut piece of this length.
    Length(Length),
}

impl Finding {
    /// How many links a length of chain has: each lengthens it by its own length less two thicknesses
    /// of its wire, which lie in its neighbours.
    #[must_use]
    pub fn links(&self, length: Length) -> Option<f64> {
        let pitch = (self.link - self.wire * 2.0).value();
        (pitch > 0.0).then(|| libm::round((length - self.wire * 2.0).value() / pitch).max(1.0))
    }

    /// Whether it is a pin: a wire with an end that holds.
    #[must_use]
    pub const fn is_pin(&self) -> bool {
        matches!(self.kind, FindingKind::EyePin | FindingKind::HeadPin)
    }

    /// Outside diameter of a pin's eye and of the plain loop made at its other end. A head pin's `outside` is
    /// its head's.
    #[must_use]
    pub fn eye(&self) -> Length {
        let said = self.kind == FindingKind::EyePin && self.outside > Length::ZERO;
        if said { self.outside } else { usual::EYE }
    }

    /// Wire that the plain loop takes.
    #[must_use]
    pub fn loop_wire(&self) -> Length {
        usual::loop_wire(self.eye(), self.wire)
    }

    /// How thick it lies on the skin: as its wire, or else as it is broad. What the pattern does not say is the
    /// usual share of its length, an assumption.
    #[must_use]
    pub fn thickness(&self) -> Length {
        let or = |said: Length, share: f64| if said > Length::ZERO { said } else { self.length * share };
        match self.kind {
            FindingKind::Hook => or(self.wire, usual::HOOK_WIRE),
            FindingKind::ToggleRing => or(self.wire, usual::TOGGLE_WIRE),
            FindingKind::ToggleBar => or(self.wire, usual::TOGGLE_ROD),
            FindingKind::SpringRing => or(self.wire, usual::SPRING_TUBE),
            FindingKind::WireGuard => or(self.wire, usual::GUARD_TUBE),
            FindingKind::SpectacleLoop => or(self.wire, usual::SPECTACLE_WIRE),
            FindingKind::Clasp => or(self.wire, usual::CLASP_THICK),
            FindingKind::KnotCover => or(self.outside, usual::COVER_BREADTH),
            FindingKind::CordEnd => or(self.outside, usual::CORD_END_BREADTH),
            FindingKind::BarrelHalf => or(self.outside, usual::BARREL_BREADTH),
            FindingKind::EndBar | FindingKind::SpacerBar | FindingKind::CrimpCover => or(self.outside, 1.0),
            FindingKind::JumpRing
            | FindingKind::Chain
            | FindingKind::EyePin
            | FindingKind::HeadPin
            | FindingKind::Bail
            | FindingKind::EarWire => self.wire,
            FindingKind::Crimp | FindingKind::BeadCap | FindingKind::Cone => {
                let across = [self.outside, self.mouth, self.inside].map(Length::value);
                Length::mm(across.into_iter().fold(0.0, f64::max))
            }
        }
    }

    /// How far below the cord what hangs on it begins: the loop of a pin, else the ring, bail or chain.
    #[must_use]
    pub fn hangs(&self) -> Length {
        match self.kind {
            _ if self.is_pin() => self.eye(),
            _ if self.length > self.inside => self.length,
            _ => self.inside,
        }
    }

    /// What of it is below all that hangs on it: a pin's eye, or its head, as thick as its wire.
    #[must_use]
    pub fn foot(&self) -> Length {
        match self.kind {
            FindingKind::EyePin => self.eye(),
            FindingKind::HeadPin => self.wire,
            _ => Length::ZERO,
        }
    }

    /// How far below its tip a cone is as wide inside as `width`; its whole length for what is
    /// wider than its mouth.
    #[must_use]
    pub fn depth_of(&self, width: Length) -> Length {
        let opening = self.inside - self.tip;
        if opening <= Length::ZERO {
            return if width > self.tip { self.length } else { Length::ZERO };
        }
        self.length * ((width - self.tip) / opening).clamp(0.0, 1.0)
    }

    /// Inside width of a cone at a distance below its tip.
    #[must_use]
    pub fn width_at(&self, depth: Length) -> Length {
        self.tip + (self.inside - self.tip) * (depth / self.length).clamp(0.0, 1.0)
    }
}
