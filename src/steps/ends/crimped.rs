//! Ends with crimps: thread, loop, draw up, press and cut.
//!
//! Where beads stand against the end its tail hides in them: it goes through them before the slack
//! is drawn up and the crimp pressed, for it can no longer be pulled through afterwards.

use super::{Group, Side, end};
use crate::design::{Crimp, Finding};
use crate::pattern::{CordKind, FindingKind, Kind};
use crate::steps::prepare::FLYING;
use crate::steps::tools::crimping_pliers;
use crate::steps::words::{a, list};
use crate::steps::{Drawing, Step};
use crate::units::Length;

impl Group<'_> {
    pub(super) fn crimped(&self) -> Vec<Step> {
        let crimp = self.findings().find_map(|finding| Some((finding.name.as_str(), finding.crimp()?)));
        let Some((name, crimp)) = crimp else { return Vec::new() };
        let mut steps = vec![self.thread(), self.loop_through(name)];
        if self.side == Side::Last {
            steps.push(self.draw_up());
        }
        steps.extend([self.press(name, crimp), self.trim()]);
        if let Some(cover) = self.first_of(FindingKind::CrimpCover) {
            let text = format!("Lay the {cover} over the pressed crimp and close it gently until its edges meet.");
            steps.push(Step::new("Cover the crimp", text).check("Only a smooth ball shows."));
        }
        steps
    }

    /// Thread all that sits on the cord before the end is closed.
    fn thread(&self) -> Step {
        let on_cord = |finding: &&Finding| !matches!(finding.kind(), FindingKind::CrimpCover | FindingKind::WireGuard);
        let names: Vec<_> = self.findings().filter(on_cord).map(|finding| a(&finding.name)).collect();
        Step::new(format!("Thread the {} end", self.side.end()), self.threads(&list(&names)))
    }

    fn loop_through(&self, crimp: &str) -> Step {
        let through = match self.first_of(FindingKind::WireGuard) {
            Some(guard) => format!(
                "through one tube of {}, {}, and back through the other tube and the {crimp}",
                a(guard),
                self.target()
            ),
            None => format!("{} and back through the {crimp}", self.target()),
        };
        let (on, drawing) = match self.side {
            Side::Last if self.fills() => (", then on through the next two or three beads", Drawing::CrimpPacked),
            _ => ("", Drawing::CrimpOpen),
        };
        let text = format!("Take the {} {through}{on}.{}", self.cord(), self.tail());
        let step = Step::new("Make the loop", text).drawing(drawing);
        if self.side == Side::Last { step } else { step.check(self.loop_check()) }
    }

    /// How much of the cord goes on beyond the first end.
    pub(super) fn tail(&self) -> String {
        match self.side {
            Side::Last => String::new(),
            _ => {
                let end = end(self.strand, self.side);
                let beyond = if end.is_knotted(&self.design.findings) { "" } else { " beyond it" };
                let tail = self.design.heading.units.ruler(self.strand.tail(end, self.design));
                format!(" Leave a tail of {tail}{beyond}.")
            }
        }
    }

    fn loop_check(&self) -> String {
        let bight = end(self.strand, self.side).bight;
        if bight > Length::ZERO {
            format!("The loop is {} long and moves freely.", self.design.heading.units.ruler(bight))
        } else {
            "The loop moves freely.".to_owned()
        }
    }

    /// A packed strand closed straight is stiff when it curves round the neck or wrist.
    fn draw_up(&self) -> Step {
        let curve = match (self.fills(), self.design.heading.kind) {
            (true, Kind::Necklace | Kind::Strap) => "Coil the strand one and a half turns, so that it will drape. ",
            (true, Kind::Bracelet | Kind::Anklet) => "Hold the strand in a round, so that it will close. ",
            _ => "",
        };
        let until = if self.is_packed() {
            "no gap shows between the beads, but they still bend"
        } else {
            "the strand has its length"
        };
        let text = format!("{curve}Pull the tail until {until}, and keep hold of the tail.");
        let check = format!("The loop is as long as the one at the first end. {}", self.finished_check());
        Step::new("Draw up the slack", text).check(check)
    }

    fn press(&self, name: &str, crimp: &Crimp) -> Step {
        let text = format!(
            "Press the {name} in the notched jaw of the {}, with one pass of the {} on each side of the dent. Turn it a \
             quarter and fold it shut in the round jaw.",
            crimping_pliers(crimp),
            self.cord()
        );
        Step::new("Press the crimp", text).check("Pull at the loop: nothing slips.").drawing(Drawing::CrimpPressed)
    }

    fn trim(&self) -> Step {
        let place = match (self.fills(), self.side) {
            (true, Side::Last) => "where it leaves the beads",
            (true, _) => {
                return Step::new("Keep the tail", "Leave the tail as it is: the first beads will go over it.");
            }
            _ => "close to the crimp",
        };
        let flying = if self.cord() == CordKind::Wire.word() { format!(" {FLYING}") } else { String::new() };
        Step::new("Cut the tail", format!("Cut the tail off {place}.{flying}")).check("No sharp end can be felt.")
    }
}
