//! Joining the strands, in words.

use super::words::cords;
use super::{Teller, Told, ordinal};
use crate::design::{Finding, Index};
use crate::english::{a, any, be, count, list, plural};
use crate::pattern::FindingKind;
use crate::steps::ends::{Fastening, closings};
use crate::steps::side::{Side, on_both};
use crate::steps::task::Hang;
use crate::units::Length;

impl Teller<'_> {
    pub(super) fn look_for_gaps(self, rings: &[Index<Finding>]) -> Told {
        let gap = |finding: &Index<Finding>| {
            let side = if on_both(self.design, *finding) { Side::Both } else { Side::First };
            self.ring(*finding, side)
        };
        let rings: Vec<_> = rings.iter().map(gap).collect();
        let (rings, are) = (list(&rings), be(rings.len()));
        let text = format!("See that {rings} {are} shut. Squeeze any gap together with chain-nose pliers.");
        Told::new("Look for gaps", text).check(format!("No {} can slip out.", cords(self.design)))
    }

    pub(super) fn cover(self, cover: Index<Finding>, pin: Index<Finding>, side: Side) -> Told {
        let (name, closings) = (self.name(cover), self.closings());
        let text = format!(
            "Slide {} down the wire of {}, wide end first, until it covers the {}.",
            a(name),
            self.the(pin, side),
            list(&closings.iter().map(|closing| plural(2, closing)).collect::<Vec<_>>())
        );
        Told::new(format!("Put on the {name}"), text).check(format!("No {} shows.", any(&closings)))
    }

    /// What closes the strands' ends, each in a word.
    pub(super) fn closings(self) -> Vec<&'static str> {
        let word = |way: Fastening| match way {
            Fastening::Crimped => "crimp",
            Fastening::Covered => "knot cover",
            Fastening::Glued => "cord end",
            Fastening::Turned => "turned loop",
            Fastening::Linked => "end link",
            Fastening::Pinned => "pin's loop",
            Fastening::Hitched => "lark's head",
            Fastening::Knotted | Fastening::Tied => "knot",
        };
        closings(self.design).into_iter().map(word).collect()
    }

    pub(super) fn cut_chain(self, chain: Index<Finding>, length: Length, links: Option<u64>, side: Side) -> Told {
        let (each, counted) = match side {
            Side::Both => ("two pieces of ", "Each piece has"),
            _ => ("", "The piece has"),
        };
        let links = links.map_or_else(|| "whole links".to_owned(), |links| format!("about {}", count(links, "link")));
        Told::new("Cut the chain", self.off_chain(each, chain, length, &links))
            .check(format!("{counted} {links}, and both end links are whole."))
    }

    pub(super) fn hang(self, what: Index<Finding>, side: Side, how: Hang) -> Told {
        let (text, check) = match how {
            Hang::Opened { opens, hangs, before } => {
                let (ring, hanging) = (self.ring(opens, side), self.hanging(hangs, side));
                let text = opened(&ring, &hanging) + &self.which_side(before, side);
                let what = if self.design.findings[opens].kind() == FindingKind::Chain { "link" } else { "ring" };
                (text, format!("No gap shows where the {what} closes."))
            }
            Hang::Between { ring, inner } => {
                let both = format!("{} and {}", self.ring(inner, side), self.hanging(what, side));
                let text = opened(&self.the(ring, side), &both) + &self.which_side(ring, side);
                (text, "No gap shows where the ring closes.".to_owned())
            }
            Hang::InLoop(pin) => {
                let check = "The loop is shut tight: no gap shows, and a pull does not open it.";
                (self.in_loop(what, pin, side), check.to_owned())
            }
            Hang::Unopened(before) => {
                let [before, what] = [before, what].map(|finding| self.hanging(finding, side));
                let text = format!("Neither {what} nor {before} opens: join them with a jump ring of your own.");
                (text, "No gap shows where the ring closes.".to_owned())
            }
        };
        Told::new(self.hang_title(what), text).check(check)
    }

    fn hang_title(self, finding: Index<Finding>) -> String {
        match self.design.findings[finding].kind() {
            FindingKind::Chain => "Hang the chain".to_owned(),
            _ => format!("Hang the {}", self.name(finding)),
        }
    }

    fn hanging(self, finding: Index<Finding>, side: Side) -> String {
        match (self.design.findings[finding].kind(), side) {
            (FindingKind::Chain, _) => format!("the end link of {}", self.the(finding, side)),
            (_, Side::Both) => a(self.name(finding)),
            _ => self.the(finding, side),
        }
    }

    /// Two findings alike are told apart by the ends that will hang there.
    fn which_side(self, finding: Index<Finding>, side: Side) -> String {
        match side {
            Side::First | Side::Last if on_both(self.design, finding) => {
                format!(" This is the side of the {} ends.", ordinal(side))
            }
            _ => String::new(),
        }
    }

    fn in_loop(self, finding: Index<Finding>, pin: Index<Finding>, side: Side) -> String {
        let what = match self.design.findings[finding].kind() {
            FindingKind::Chain => format!("an end link of the {}", self.name(finding)),
            FindingKind::JumpRing => a(self.name(finding)),
            _ => format!("the ring of {}", self.the(finding, side)),
        };
        format!(
            "Hang {what} in the loop of {}, and roll the loop shut with round-nose pliers. It carries the whole piece.{}",
            self.the(pin, side),
            self.which_side(pin, side)
        )
    }

    /// The part of a finding that opens, or in which something hangs.
    fn ring(self, finding: Index<Finding>, side: Side) -> String {
        let name = self.the(finding, side);
        match self.design.findings[finding].kind() {
            FindingKind::JumpRing => name,
            FindingKind::Chain => format!("the end link of {name}"),
            FindingKind::EyePin => format!("the eye of {name}"),
            FindingKind::ToggleRing => format!("the small ring of {name}"),
            _ => format!("the ring of {name}"),
        }
    }
}

/// What is opened and closed again over what hangs in it.
pub fn opened(ring: &str, hangs: &str) -> String {
    format!(
        "With two pairs of chain-nose pliers open {ring} sideways, like a door. Hang {hangs} in it and close it the same way."
    )
}
