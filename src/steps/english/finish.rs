//! The last steps, in words.

use super::words;
use super::{Teller, Told};
use crate::design::{Finding, Index};
use crate::english::list;
use crate::pattern::{CordKind, FindingKind};
use crate::steps::cautions::lets_go;
use crate::steps::task::Finished;
use crate::steps::tools::has_cord;
use crate::units::{Length, eighths};

impl Teller<'_> {
    pub(super) fn finished(self, finished: &Finished) -> Told {
        let (text, check) = match *finished {
            Finished::Hung(lengths) => (
                "Hang the earring up, look at it from the front, and measure from its top to its lowest point."
                    .to_owned(),
                format!("Everything hangs straight. {}", self.measured(lengths)),
            ),
            Finished::Tied { packed, inside } => (
                self.tried().to_owned(),
                format!(
                    "{}{}.{}",
                    self.holding(),
                    if packed { self.packed() } else { String::new() },
                    inside.map(|inside| self.at_rest(inside)).unwrap_or_default()
                ),
            ),
            Finished::Coiled(turns, inside) => self.coiled(turns, inside),
            Finished::Wound(times, girths) => self.wound(times, girths),
            Finished::Straight(lengths) => {
                ("Lay the piece straight and measure from end to end.".to_owned(), self.measured(lengths))
            }
            Finished::Ring(girths) => (
                "Close the piece, lay it in a round, and measure all round inside it.".to_owned(),
                self.measured(girths),
            ),
            Finished::Round(lengths, ref whole) => {
                let along = if self.design.has_shortest() { " along the shortest strand" } else { "" };
                let text = format!("Close the piece and measure once round{along}, closure and all.");
                (text, self.measured_less(lengths, &self.counted_whole(whole)))
            }
        };
        Told::new("Check the piece", text).check(check + self.opens())
    }

    /// What lets go by itself is tried; loops for spectacles have a step of their own for that.
    fn opens(self) -> &'static str {
        match lets_go(self.design).map(Finding::kind) {
            None | Some(FindingKind::SpectacleLoop) => "",
            Some(_) => " Pull on the piece from both sides: what closes it comes open by itself, and closes again.",
        }
    }

    /// The girth inside a ring that nothing stretches.
    fn at_rest(self, inside: Length) -> String {
        format!(" At rest it measures about {} round inside.", self.ruler(inside))
    }

    /// How a coil is looked at.
    fn coiled(self, turns: f64, inside: Length) -> (String, String) {
        let text = "Let the coil lie by itself, turn upon turn, and count its turns from one loop on.".to_owned();
        let (turns, inside) = (eighths(turns), self.ruler(inside));
        (text, format!("It goes round {turns} times, and measures about {inside} round inside."))
    }

    /// How a piece is tried that goes round so many times.
    fn wound(self, times: u32, girths: [Length; 2]) -> (String, String) {
        let text =
            format!("Close the piece, wind it {times} times, turn beside turn, and measure all round inside the coil.");
        (text, self.measured(girths))
    }

    /// How a piece without a closure is tried: elastic lets its beads settle, other cord does not give.
    fn tried(self) -> &'static str {
        if has_cord(self.design, CordKind::Elastic) {
            "Stretch the piece gently two or three times and let it rest."
        } else {
            "Pull gently on the piece all round."
        }
    }

    /// What holds the ends of a piece without a closure.
    fn holding(self) -> String {
        match self.closings().as_slice() {
            ["knot"] => "The knot holds".to_owned(),
            closings => format!("What closes the ends holds ({})", list(closings)),
        }
    }

    /// What is seen of beads that are packed end to end.
    fn packed(self) -> String {
        format!(", and no bare {} shows between the beads", words::cords(self.design))
    }

    /// How long the piece is, closed as short and as long as it goes.
    fn measured(self, lengths: [Length; 2]) -> String {
        self.measured_less(lengths, "")
    }

    /// The same, less something.
    fn measured_less(self, [least, most]: [Length; 2], less: &str) -> String {
        if most - least > Length::mm(1.0) {
            let (least, most) = (self.ruler(least), self.ruler(most));
            format!("It measures about {least} to {most}, from the shortest closing to the longest{less}.")
        } else {
            format!("It measures about {}{less}.", self.ruler(most))
        }
    }

    /// How much shorter it is where these hang in other parts.
    fn counted_whole(self, whole: &[Index<Finding>]) -> String {
        let names: Vec<_> = whole.iter().map(|finding| self.name(*finding)).collect();
        if names.is_empty() {
            String::new()
        } else {
            format!(", less a wire's thickness or two at the {}", list(&names))
        }
    }

    pub(super) fn try_loops(self, finding: Index<Finding>) -> Told {
        let name = self.name(finding);
        let text = format!("Slide one {name} onto each arm of a pair of spectacles, and lift them by the strap.");
        Told::new(format!("Try each {name}"), text).check("Both grip by themselves, and come off when you pull.")
    }

    pub(super) fn make_other(steps: usize) -> Told {
        let text = format!("Make the second earring in the same way: do {} again.", words::steps(1, steps));
        Told::new("Make the other one", text).check("Held side by side the two are equally long.")
    }
}
