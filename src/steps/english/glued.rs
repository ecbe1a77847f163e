//! Ends of thick cord in cord ends, in words.
//!
//! The cord is cut to its length before the last end is glued, for it cannot be drawn up afterwards. The
//! cord end's loop then hangs in the closure's ring.

use super::{Group, Told, ordinal};
use crate::pattern::FindingKind;
use crate::steps::side::Side;

impl Group<'_> {
    pub(super) fn square(self) -> Told {
        let (whose, cord, name) = (self.whose(), self.cord(), self.closing(FindingKind::CordEnd));
        if self.ends.side == Side::First {
            let text = format!("Cut the first end of {whose} straight across.");
            let check = format!("The {cord} goes into the {name} as far as it should.");
            return Told::new("Trim the end", text).check(check);
        }
        let text = format!(
            "Take the bead stopper off {whose}. Measure from the loop of the first {name}, put the other {name} beside \
             the {cord} where the strand has its length, and cut the {cord} straight across so that it just fills it."
        );
        Told::new("Cut to length", text).check(self.finished_check())
    }

    pub(super) fn glue(self) -> Told {
        let (end, name) = (ordinal(self.ends.side), self.closing(FindingKind::CordEnd));
        let text = format!(
            "Put a small drop of jewellery glue into the {name}, push the {end} end in as far as it goes, and wipe off \
             what comes out. Where the {name} has flaps, fold them over the {} one after the other. Follow the label \
             of the glue, work in fresh air, and let it dry as long as the label says.",
            self.cord()
        );
        Told::new(format!("Glue the {end} end"), text).check("Once it is dry, a firm pull does not move it.")
    }
}
