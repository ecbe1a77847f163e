//! Ends that a crimp closes, in words.

use super::prepare::flying;
use super::words::{few, strands as strands_named};
use super::{Group, Told, ordinal, tools};
use crate::design::{Finding, Index, Strand};
use crate::english::{a, commas, list};
use crate::pattern::{FindingKind, Kind};
use crate::steps::ends::end;
use crate::steps::side::Side;
use crate::steps::tail::{Hides, hidden};
use crate::steps::tools::crimping_pliers;

impl Group<'_> {
    /// Thread all that sits on the cord before the end is closed.
    pub(super) fn thread(self) -> Told {
        let on_cord = |finding: &&Finding| !matches!(finding.kind(), FindingKind::CrimpCover | FindingKind::WireGuard);
        let names: Vec<_> = self.ends.findings().filter(on_cord).map(|finding| a(&finding.name)).collect();
        Told::new(format!("Thread the {} end", ordinal(self.ends.side)), self.threads(&list(&names)))
    }

    pub(super) fn loop_through(self, crimp: &str) -> Told {
        let guard = self.ends.findings().find(|finding| finding.kind() == FindingKind::WireGuard);
        let through = match guard {
            Some(guard) => format!(
                "through one tube of {}, {}, and back through the other tube and the {crimp}",
                a(&guard.name),
                self.target()
            ),
            None => format!("{} and back through the {crimp}", self.target()),
        };
        let last = self.ends.side == Side::Last;
        let on = if last { self.hidden() } else { String::new() };
        let told = Told::new("Make the loop", format!("Take the {} {through}{on}.{}", self.cord(), self.tail()));
        if last { told } else { told.check(self.loop_check()) }
    }

    /// How far the last tail goes on through the beads; of strands that differ in it, each by its name.
    fn hidden(self) -> String {
        let cord = self.cord();
        let so_far = |hides: &Hides| match hides {
            Hides::Wholly => self.held(),
            Hides::Through(beads) | Hides::Clear(beads) => format!("through the last {}", few(*beads)),
            Hides::Nowhere => "through none".to_owned(),
        };
        match self.ends.hides().as_slice() {
            [] | [(Hides::Nowhere, _)] => String::new(),
            [(Hides::Wholly, _)] => format!(", then on {}", self.held()),
            [(hides @ Hides::Clear(_), _)] => format!(", then on {}, clear of the dangle", so_far(hides)),
            [(hides, _)] => format!(", then on {}: the next does not take the {cord} twice", so_far(hides)),
            several => {
                let of = |(hides, strands): &(Hides, Vec<Index<Strand>>)| {
                    format!("of {} {}", strands_named(self.ends.design, strands), so_far(hides))
                };
                let each = list(&several.iter().map(of).collect::<Vec<_>>());
                format!(", then on as far as the beads take the {cord} twice: {each}")
            }
        }
    }

    /// As much of the last tail as holds by itself.
    fn held(self) -> String {
        format!("through about {} of beads", self.teller.ruler(hidden(self.ends.design, self.ends.strand)))
    }

    /// How much of the cord goes on beyond the first end.
    pub(super) fn tail(self) -> String {
        if self.ends.side == Side::Last {
            return String::new();
        }
        let end = end(self.ends.strand, self.ends.side);
        let beyond = if end.is_knotted(&self.ends.design.findings) { "the knot" } else { "it" };
        format!(" Leave a tail of {} beyond {beyond}.", self.tail_length())
    }

    /// How long that is.
    pub(super) fn tail_length(self) -> String {
        let (design, strand) = (self.ends.design, self.ends.strand);
        self.teller.ruler(strand.tail(end(strand, self.ends.side), design))
    }

    fn loop_check(self) -> String {
        match end(self.ends.strand, self.ends.side).bight {
            Some(bight) => format!("The loop stands {} out of the crimp and moves freely.", self.teller.ruler(bight)),
            None => "The loop moves freely.".to_owned(),
        }
    }

    /// A packed strand closed straight is stiff when it curves round the neck or wrist.
    pub(super) fn draw_up(self) -> Told {
        let curve = self.curve();
        let until = match (self.ends.is_packed(), self.ends.strand.told_slack()) {
            (true, Some(_)) if self.ends.design.closure.loops() => {
                "the beads touch on the inner side of the fold and part on the outer"
            }
            (true, Some(_)) => "in the round the beads touch on the inner side and part on the outer",
            (true, None) => "no gap shows between the beads, but they still bend",
            (false, _) => "the strand has its length",
        };
        let text = format!("{curve}Pull the tail until {until}, and keep hold of the tail.");
        let check = format!("The loop is as long as the one at the first end. {}", self.finished_check());
        Told::new("Draw up the slack", text).check(check)
    }

    /// How the strand is held while its last end is closed.
    pub(super) fn curve(self) -> String {
        let design = self.ends.design;
        match (self.ends.fills(), design.heading.kind) {
            (true, _) if design.rounds() > 1 => {
                format!(
                    "Wind the strand {} times round as it will be worn: wound tighter it would not close. ",
                    design.rounds()
                )
            }
            (true, _) if design.is_ring() => "Hold the strand in a round, so that it will close. ".to_owned(),
            (true, _) if !design.passages(self.ends.strand).is_empty() => {
                "Lay all strands in a round, as they will be worn, so that they will drape together. ".to_owned()
            }
            (true, Kind::Necklace | Kind::Strap) if design.twist.is_none() => {
                "Lay the strand in a round, as it will be worn, so that it will drape. ".to_owned()
            }
            (true, Kind::Earrings) if self.ends.strand.told_slack().is_some() => {
                "Fold the strand in its middle, as it will hang. ".to_owned()
            }
            _ => String::new(),
        }
    }

    pub(super) fn press(self, crimp: Index<Finding>) -> Told {
        let pliers = self.ends.design.findings[crimp].crimp().map(crimping_pliers);
        let text = format!(
            "Press the {} in the notched jaw of the {}, with one pass of the {} on each side of the dent. Turn it a \
             quarter and fold it shut in the round jaw.",
            self.teller.name(crimp),
            pliers.map(|pliers| tools::tool(self.ends.design, pliers, self.teller.units)).unwrap_or_default(),
            self.cord()
        );
        Told::new("Press the crimp", text).check("Pull at the loop: nothing slips.")
    }

    /// Cut the tail, or keep the first one for the first beads to go over.
    pub(super) fn trim(self) -> Told {
        let hides = self.ends.hides();
        let cut = hides.iter().find(|(hides, _)| *hides == Hides::Nowhere).map(|(_, strands)| strands);
        let close = cut.map(|strands| match hides.len() {
            1 => "close to the crimp".to_owned(),
            _ => format!("of {} close to the crimp", strands_named(self.ends.design, strands)),
        });
        let place = match (hides.len() - usize::from(cut.is_some()), self.ends.side, close) {
            (0, _, close) => close.unwrap_or_default(),
            (_, Side::Last, close) => commas(["where it leaves the beads".to_owned()].into_iter().chain(close)),
            (_, _, close) => {
                let others = close.map(|close| format!(" Cut that {close}.{}", self.flying())).unwrap_or_default();
                let text = format!("Leave the tail as it is: the first beads will go over it.{others}");
                return Told::new("Keep the tail", text);
            }
        };
        Told::new("Cut the tail", format!("Cut the tail off {place}.{}", self.flying()))
            .check("No sharp end can be felt.")
    }

    fn flying(self) -> String {
        flying(self.ends.design.cords[self.ends.strand.cord].kind)
    }

    pub(super) fn cover_crimp(cover: &str) -> Told {
        let text = format!(
            "Lay the {cover} over the pressed crimp and close it gently with chain-nose pliers until its edges meet."
        );
        Told::new("Cover the crimp", text).check("Only a smooth ball shows.")
    }
}
