//! Twisted strands, in words.

use super::words::names;
use super::{Teller, Told};
use crate::design::{Design, Twist};
use crate::english::times;
use crate::units::{Length, UnitStyle};

/// How long a design's strands come out when they are twisted; nothing where they are not.
pub(super) fn twisted(design: &Design, units: UnitStyle) -> Option<String> {
    let twist = design.twist.as_ref()?;
    let (times, reach) = (times(twist.turns), units.ruler(twist.length()));
    Some(format!("Twisted {times}, the strands will reach about {reach} from loop to loop: cut them as long as told."))
}

impl Teller<'_> {
    /// The strands are turned when all else is done, and what closes the piece keeps the twist (common practice, no
    /// source).
    pub(super) fn twist(self, twist: &Twist) -> Told {
        let all: Vec<_> = self.design.strands.indices().collect();
        let text = format!(
            "Lay {} side by side, so that none crosses another. Hold one end down, and turn the other {}, always the same way \
             round, whichever that is. Draw the piece out and ease it, so that the strands settle. Then close the piece without \
             letting it turn back: what closes it keeps the twist unless it swivels, and it is turned in anew whenever the piece is put on.",
            names(self.design, &all),
            times(twist.turns)
        );
        let by = self.design.drawn_in();
        let by = by.map(|by| format!("by about {}, ", self.ruler(by)));
        let check = format!(
            "The twisted strands have drawn in {}to about {}, and are about {} thick together (worked out \
             for smooth strands: beads that settle into one another's gaps let them reach a little farther).",
            by.unwrap_or_default(),
            self.seen(twist.length()),
            self.ruler(twist.thickness())
        );
        Told::new("Twist the strands", text).check(check)
    }

    /// A length from loop to loop, told as it can be measured: loops that cones cover from tip to tip of these.
    fn seen(self, length: Length) -> String {
        match self.design.tip_to_tip(length) {
            Some((cone, tips)) => format!(
                "{} from the tip of one {} to that of the other, {} from loop to loop inside them",
                self.ruler(tips),
                self.name(cone),
                self.ruler(length)
            ),
            None => format!("{} from loop to loop", self.ruler(length)),
        }
    }
}
