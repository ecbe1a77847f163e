//! What opens: rings, links and loops that are turned aside, and closed again over what hangs in them.

use crate::pattern::{CordKind, FindingKind};

use super::finding::Finding;
use super::form::{Foot, Form, Pin};
use super::joins::Part;
use super::model::Model;

impl Finding {
    /// Whether a ring, link or loop of it is opened to hang something in it. The rings of clasps and bars
    /// are solid, and so are jump rings that are soldered shut.
    #[must_use]
    pub const fn opens(&self) -> bool {
        match &self.form {
            Form::JumpRing(ring) => !ring.closed,
            Form::Chain(_) | Form::Pin(Pin { foot: Foot::Eye, .. }) | Form::EarWire(_) => true,
            _ => false,
        }
    }

    /// Whether it is a jump ring that opens.
    #[must_use]
    pub const fn is_open_ring(&self) -> bool {
        matches!(self.form, Form::JumpRing(_)) && self.opens()
    }
}

impl Model {
    /// Whether a part of a closure's side opens for its neighbours. A cone or cap has the loop of the pin that
    /// it covers, and a chain's own end link opens for what it hangs on.
    #[must_use]
    pub fn part_opens(&self, parts: &[Part], at: usize) -> bool {
        let finding = |at: usize| &self.findings[parts[at].finding];
        let on_chain = || self.strands.iter().any(|strand| self.cords[strand.cord].kind == CordKind::Chain);
        match finding(at).kind() {
            FindingKind::Cone | FindingKind::BeadCap => {
                (0..at).any(|before| finding(before).kind() == FindingKind::EyePin)
            }
            _ => finding(at).opens() || (at == 0 && on_chain()),
        }
    }
}
