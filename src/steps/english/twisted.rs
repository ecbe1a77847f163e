//! Twisted strands, in words.

use super::words::names;
use super::{Teller, Told};
use crate::design::{Design, Twist};
use crate::english::list;
use crate::english::times;
use crate::units::{Length, UnitStyle};

/// Lengths that differ by less print alike, or nearly: half of what a ruler shows.
const ALIKE: f64 = 0.5;

/// How long a design's strands come out when they are twisted, and how long they must be to come out as long as the
/// shortest of them is before; nothing where they are not twisted.
#[must_use]
pub fn twisted(design: &Design, units: UnitStyle) -> Option<String> {
    let (twist, wanted) = (design.twist.as_ref()?, design.untwisted()?);
    let ruler = |length: Length| units.ruler(length);
    let reach =
        format!("Twisted {}, the strands reach about {} from loop to loop", times(twist.turns), ruler(twist.length()));
    let needed = twist.needed(wanted).map(|needed| match needed.as_slice() {
        [first, rest @ ..] if rest.iter().all(|other| (*other - *first).value().abs() < ALIKE) => {
            format!("each strand takes a finished {}", ruler(*first))
        }
        each => {
            let each = design.strands.iter().zip(each);
            let each: Vec<_> = each.map(|(strand, length)| format!("{} {}", strand.name, ruler(*length))).collect();
            format!("the finished strands take {}", list(&each))
        }
    });
    let needed = needed.map(|needed| {
        format!(" Where they should reach {} twisted, {needed}, with more beads and more cord.", ruler(wanted))
    });
    Some(format!("{reach}.{}", needed.unwrap_or_default()))
}

impl Teller<'_> {
    /// The strands are turned when all else is done, and what closes the piece keeps the twist (common practice, no
    /// source).
    pub(super) fn twist(self, twist: &Twist) -> Told {
        let all: Vec<_> = self.design.strands.indices().collect();
        let text = format!(
            "Lay {} side by side, so that none crosses another, and hold both ends. Turn one end {}, always the same way \
             round. Draw the piece out and let go in the middle, so that the strands settle. Then close the piece without \
             letting it turn back: what closes it keeps the twist unless it swivels, and it is turned in anew whenever the piece is put on.",
            names(self.design, &all),
            times(twist.turns)
        );
        let by = self.design.untwisted().map(|before| before - twist.length());
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
        let closure = &self.design.closure;
        let tips = [closure.left(), closure.right()].map(|parts| self.design.tip(parts));
        match tips {
            [Some((cone, one)), Some((_, other))] => format!(
                "{} from the tip of one {} to that of the other, {} from loop to loop inside them",
                self.ruler(length + one + other),
                self.name(cone),
                self.ruler(length)
            ),
            _ => format!("{} from loop to loop", self.ruler(length)),
        }
    }
}
