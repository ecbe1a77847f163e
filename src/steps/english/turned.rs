//! Ends of memory wire turned into loops, in words (common practice, no source).

use super::{Group, Told};
use crate::steps::side::Side;
use crate::trade::usual;

impl Group<'_> {
    pub(super) fn turn(self) -> Told {
        let (wire, strand) = (self.cord(), self.ends.strand);
        let (inside, takes) = (self.teller.ruler(usual::TURNED), self.teller.ruler(*strand.allowance));
        let pliers = format!("round-nose pliers where their jaws are {inside} thick");
        if self.ends.side == Side::First {
            let text = format!(
                "Grip the tip of the {wire} with {pliers}, and roll it outward, away from where the limb will be, into a \
                 closed loop. It takes {takes}."
            );
            return Told::new("Turn the first loop", text)
                .check("The loop is shut, no sharp end stands out, and no bead slips over it.");
        }
        let text = format!(
            "Push the beads against the first loop. {takes} of {wire} should be left beyond the last: cut off what is more, or \
             take last beads off where it is less. Grip its tip with {pliers}, and roll it outward into a loop that meets the last bead."
        );
        Told::new("Turn the last loop", text).check("The loop is shut, and the beads lie end to end with no gap.")
    }
}
