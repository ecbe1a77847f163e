//! Ends of thick cord in cord ends, which are glued or folded over them.
//!
//! The cord is cut to its length before the last end is glued, for it cannot be drawn up afterwards. The
//! cord end's loop then hangs in the closure's ring.

use super::{Group, Side};
use crate::pattern::FindingKind;
use crate::steps::{Drawing, Step};

impl Group<'_> {
    pub(super) fn glued(&self) -> Vec<Step> {
        let name = self.first_of(FindingKind::CordEnd).unwrap_or(FindingKind::CordEnd.word());
        let mut steps = vec![self.square(name), self.glue_in(name)];
        steps.extend(self.part().map(|_| self.linked()));
        steps
    }

    fn square(&self, name: &str) -> Step {
        let (whose, cord) = (self.whose(), self.cord());
        if self.side == Side::First {
            let text = format!("Cut the first end of {whose} straight across.");
            return Step::new("Trim the end", text)
                .check(format!("The {cord} goes into the {name} as far as it should."));
        }
        let text = format!(
            "Take the bead stopper off {whose}. Measure from the loop of the first {name}, put the other {name} beside \
             the {cord} where the strand has its length, and cut the {cord} straight across so that it just fills it."
        );
        Step::new("Cut to length", text).check(self.finished_check())
    }

    fn glue_in(&self, name: &str) -> Step {
        let end = self.side.end();
        let text = format!(
            "Put a small drop of jewellery glue into the {name}, push the {end} end in as far as it goes, and wipe off \
             what comes out. Where the {name} has flaps, fold them over the {} one after the other. Follow the label \
             of the glue, work in fresh air, and let it dry as long as the label says.",
            self.cord()
        );
        Step::new(format!("Glue the {end} end"), text)
            .check("Once it is dry, a firm pull does not move it.")
            .drawing(Drawing::Glue)
    }
}
