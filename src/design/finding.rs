//! Findings, each with what it does.

use crate::pattern::FindingKind;
use crate::source::Place;
use crate::trade::usual;
use crate::units::{Length, Mass};

use super::entries::Index;
use super::form::*;
use super::model::{Bit, Model, What};
use super::stated::Stated;
use super::stock::{Bead, Sold};

/// A finding.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Finding {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// What it does, with the sizes that its kind has.
    pub form: Form,
    /// Mass of one, or of one metre of chain; where the pattern does not say it, of a tassel wound with the piece what is
    /// wound, else nothing.
    pub mass: Stated<Mass>,
    /// What it is made of, as the pattern says.
    pub material: Option<String>,
    /// Whether it opens by itself when pulled.
    pub breakaway: bool,
    /// Id of the finding with which it is sold as one thing.
    pub comes_with: Option<String>,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Where the pattern defines it.
    pub place: Place,
}

impl Finding {
    /// What kind of finding it is.
    #[must_use]
    pub const fn kind(&self) -> FindingKind {
        self.form.kind()
    }

    /// Mass of one; of chain, which is weighed by the metre, that of its piece, where its pieces are all alike.
    #[must_use]
    pub fn mass_of_one(&self) -> Option<Stated<Mass>> {
        let metres = match &self.form {
            Form::Chain(chain) => chain.length?.value() / 1000.0,
            _ => 1.0,
        };
        Some(self.mass.map(|mass| mass * metres))
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
            Form::SpacerBar(bar) | Form::EndBar(bar) | Form::BoxHalf(bar) | Form::SlideHalf(bar) => Some(bar.length),
            Form::BeadCap(cap) => Some(cap.length),
            Form::Bail(hanger) | Form::EarWire(hanger) => Some(hanger.length),
            Form::CordEnd(end) => Some(end.length),
            Form::Charm(charm) => Some(charm.length),
            Form::Tassel(tassel) => Some(tassel.length),
            other => other.body().map(|body| body.length),
        }
    }

    /// The same, nothing of what has none.
    #[must_use]
    pub fn along(&self) -> Length {
        self.length().unwrap_or_default()
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
            Form::SpacerBar(bar) | Form::EndBar(bar) | Form::BoxHalf(bar) | Form::SlideHalf(bar) => bar.outside,
            Form::BeadCap(cap) => cap.outside,
            Form::Bail(hanger) | Form::EarWire(hanger) => hanger.outside,
            Form::CordEnd(end) => end.outside,
            Form::Charm(charm) => Some(*charm.breadth),
            Form::Tassel(tassel) => Some(*tassel.breadth),
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
            Form::SpacerBar(bar) | Form::EndBar(bar) | Form::BoxHalf(bar) | Form::SlideHalf(bar) => bar.inside,
            Form::BeadCap(cap) => cap.inside,
            Form::Bail(hanger) | Form::EarWire(hanger) => hanger.inside,
            Form::CordEnd(end) => Some(end.inside),
            other => other.body().and_then(|body| body.inside),
        }
    }

    /// How far open a ring of it is that other things hang in: a jump ring, or a link of chain.
    #[must_use]
    pub fn opening(&self) -> Option<Length> {
        match &self.form {
            Form::JumpRing(ring) => Some(ring.inside),
            Form::Chain(chain) => Some(chain.pitch()),
            _ => None,
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
            Form::Chain(ChainLinks { wire, .. })
            | Form::JumpRing(JumpRing { wire, .. })
            | Form::Bail(Hanger { wire, .. })
            | Form::EarWire(Hanger { wire, .. }) => Some(*wire),
            Form::SpacerBar(Bar { wire, .. })
            | Form::EndBar(Bar { wire, .. })
            | Form::BoxHalf(Bar { wire, .. })
            | Form::SlideHalf(Bar { wire, .. })
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
    pub const fn chain(&self) -> Option<&ChainLinks> {
        if let Form::Chain(chain) = &self.form { Some(chain) } else { None }
    }

    /// Its sizes as a jump ring.
    #[must_use]
    pub const fn ring(&self) -> Option<&JumpRing> {
        if let Form::JumpRing(ring) = &self.form { Some(ring) } else { None }
    }

    /// Its sizes as a bar, at the strands' ends or along the way.
    #[must_use]
    pub const fn bar(&self) -> Option<&Bar> {
        if let Form::SpacerBar(bar) = &self.form { Some(bar) } else { self.comb() }
    }

    /// Its sizes, where it has a row of loops in which strands end side by side, each in its own.
    #[must_use]
    pub const fn comb(&self) -> Option<&Bar> {
        if let Form::EndBar(bar) | Form::BoxHalf(bar) | Form::SlideHalf(bar) = &self.form { Some(bar) } else { None }
    }

    /// The bead that the knot in it is tied round.
    #[must_use]
    pub const fn knotted_bead(&self) -> Option<Index<Bead>> {
        if let Form::KnotCover(cover) = &self.form { cover.bead } else { None }
    }

    /// Whether it hangs by a loop of its own.
    #[must_use]
    pub const fn has_loop(&self) -> bool {
        matches!(self.form, Form::Charm(_) | Form::Tassel(_))
    }

    /// How broad a charm or tassel is, where that is stated.
    #[must_use]
    pub fn broad(&self) -> Option<Length> {
        match &self.form {
            Form::Charm(charm) => charm.breadth.stated(),
            Form::Tassel(tassel) => tassel.breadth.stated(),
            _ => None,
        }
    }

    /// What it is made of: as the pattern says, or the cord that it is wound of.
    #[must_use]
    pub fn made_of(&self, design: &Model) -> Option<String> {
        let wound = self.tassel().and_then(|tassel| tassel.wound).map(|(cord, _)| design.cords[cord].name.clone());
        self.material.clone().or(wound)
    }

    /// Its sizes as a tassel.
    #[must_use]
    pub const fn tassel(&self) -> Option<&Tassel> {
        if let Form::Tassel(tassel) = &self.form { Some(tassel) } else { None }
    }

    /// Whether it is a pin.
    #[must_use]
    pub const fn is_pin(&self) -> bool {
        self.pin().is_some()
    }

    /// How thick it lies on the skin: as its wire, or else as it is broad. What the pattern does not say is assumed, most of
    /// it as the usual share of its length.
    #[must_use]
    pub fn thickness(&self) -> Stated<Length> {
        let wire = |body: &Dimensions, share: f64| Stated::or(body.wire, body.length * share);
        let broad = |body: &Dimensions, share: f64| Stated::or(body.outside, body.length * share);
        match &self.form {
            Form::Hook(body) => wire(body, usual::HOOK_WIRE),
            Form::ToggleRing(body) => wire(body, usual::TOGGLE_WIRE),
            Form::ToggleBar(body) => wire(body, usual::TOGGLE_ROD),
            Form::SpringRing(body) => wire(body, usual::SPRING_TUBE),
            Form::WireGuard(body) => wire(body, usual::GUARD_TUBE),
            Form::SpectacleLoop(body) => wire(body, usual::SPECTACLE_WIRE),
            Form::Clasp(body) => wire(body, usual::CLASP_THICK),
            Form::KnotCover(cover) => broad(&cover.body, usual::COVER_BREADTH),
            Form::CordEnd(end) => Stated::or(end.outside, end.length * usual::CORD_END_BREADTH),
            Form::BarrelHalf(body) => broad(body, usual::BARREL_BREADTH),
            Form::CrimpCover(body) => broad(body, 1.0),
            Form::EndBar(bar) | Form::SpacerBar(bar) | Form::SlideHalf(bar) => Stated::or(bar.outside, bar.length),
            Form::BoxHalf(bar) => Stated::or(bar.outside, bar.length * usual::BOX_THICK),
            Form::Pin(pin) => Stated::Stated(pin.wire),
            Form::JumpRing(JumpRing { wire, .. }) | Form::Chain(ChainLinks { wire, .. }) => *wire,
            Form::Bail(hanger) | Form::EarWire(hanger) => hanger.wire,
            Form::Crimp(Crimp { length, .. }) | Form::BeadCap(Cap { length, .. }) | Form::Cone(Cone { length, .. }) => {
                Stated::or(self.across(), *length)
            }
            Form::Charm(_) => Stated::Assumed(usual::PLATE),
            Form::Tassel(tassel) => tassel.breadth,
        }
    }

    /// How broad it is across the cord, where that is known: the largest of its diameters; of a ring with its wire, of a
    /// bar, square to its row of holes.
    #[must_use]
    pub fn across(&self) -> Option<Length> {
        let ring = self.ring().map(JumpRing::breadth);
        [self.outside(), self.mouth(), self.inside(), ring].into_iter().flatten().reduce(Length::max)
    }

    /// How broad it is across the cord or along the row of its holes, where that is known.
    #[must_use]
    pub fn widest(&self) -> Option<Length> {
        [self.across(), self.bar().map(Bar::breadth)].into_iter().flatten().reduce(Length::max)
    }

    /// How broad it is across in mm, or a breadth in mm where that is not known.
    #[must_use]
    pub fn across_or(&self, breadth: f64) -> f64 {
        self.across().map_or(breadth, Length::value)
    }

    /// How far below the cord what hangs on it begins: the loop of a pin, else the ring, bail or chain. Chain cut to no one
    /// length has none.
    #[must_use]
    pub fn hangs(&self) -> Option<Length> {
        match &self.form {
            Form::Pin(pin) => Some(*pin.eye()),
            _ => [self.length(), self.inside()].into_iter().flatten().reduce(Length::max),
        }
    }

    /// What of it is below all that hangs on it: a pin's foot.
    #[must_use]
    pub fn foot(&self) -> Length {
        self.pin().map_or(Length::ZERO, Pin::foot_length)
    }
}

impl Model {
    /// How broad a bit is across the cord; a finding of which that is not known no broader than long.
    #[must_use]
    pub fn breadth_of(&self, bit: &Bit) -> Length {
        match bit.what {
            What::Bead(at) => self.beads[at].across,
            What::Finding(at) => self.findings[at].across().unwrap_or(Length::mm(bit.length())),
            What::Knot | What::Gap | What::Dangle(_) => Length::ZERO,
        }
    }
}
