//! What symbols of beads, findings and knots are of, and how each is seen.

use super::light::TURNS;
use super::pearl::VARIANTS;
use crate::design::{Bead, Cord, Finding, Index};
use crate::paint::mark::Key;

/// What a symbol shows of a design. Beads, findings and cords are the design's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Look {
    /// A bead under the light on one of its turns, and which of the pearls that differ; on paper halved about so often.
    Bead { bead: Index<Bead>, turn: u32, variant: u32, halved: u32 },
    /// A bead so small on paper that its colour alone is seen.
    Speck { bead: Index<Bead> },
    /// A finding under the light on one of its turns, or its mirror image.
    Finding { finding: Index<Finding>, turn: u32, mirrored: bool },
    /// Part of a ring, between so many degrees from its way outward.
    Part { finding: Index<Finding>, turn: u32, from: u32, to: u32 },
    /// The half of a ring that lies before what it goes through at both ends.
    Front { finding: Index<Finding>, turn: u32 },
    /// Of a finding's eyes what lies before what links with them.
    Linked { finding: Index<Finding>, turn: u32 },
    /// A crimp pressed shut.
    Pressed { finding: Index<Finding>, turn: u32 },
    /// A pin cut and closed, so many hundredths of a millimetre long.
    Pin { finding: Index<Finding>, reach: u32 },
    /// Of such a pin's loop what lies before the cord that goes through it.
    PinLoop { finding: Index<Finding>, reach: u32 },
    /// A link of chain on face.
    Link { finding: Index<Finding> },
    /// A link of chain on edge.
    Edge { finding: Index<Finding> },
    /// A knot that takes so many hundredths of a millimetre along its cord, which is single or doubled.
    Knot { cord: Index<Cord>, doubled: bool, length: u32 },
}

impl Look {
    /// The key of its symbol.
    #[must_use]
    pub const fn key(self) -> Key {
        match self {
            Self::Bead { bead, turn, variant, halved } => {
                Key::new("bead").of(bead.number()).seen(turn + TURNS * (variant + VARIANTS * halved))
            }
            Self::Speck { bead } => Key::new("speck").of(bead.number()),
            Self::Finding { finding, turn, mirrored } => of("finding", finding, turn).mirrored(mirrored),
            Self::Part { finding, turn, from, to } => of("ring-part", finding, turn + TURNS * (from + 720 * to)),
            Self::Front { finding, turn } => of("front-half", finding, turn),
            Self::Linked { finding, turn } => of("linked", finding, turn),
            Self::Pressed { finding, turn } => of("pressed", finding, turn),
            Self::Pin { finding, reach } => of("pin", finding, reach),
            Self::PinLoop { finding, reach } => of("pin-loop", finding, reach),
            Self::Link { finding } => Key::new("link").of(finding.number()),
            Self::Edge { finding } => Key::new("edge").of(finding.number()),
            Self::Knot { cord, doubled, length } => {
                Key::new(if doubled { "knot-of-two" } else { "knot" }).of(cord.number()).seen(length)
            }
        }
    }
}

const fn of(word: &'static str, finding: Index<Finding>, way: u32) -> Key {
    Key::new(word).of(finding.number()).seen(way)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;

    #[test]
    fn every_look_has_a_key_of_its_own() {
        let looks = [
            (Look::Bead { bead: nth(3), turn: 12, variant: 0, halved: 0 }, "bead-3-12"),
            (Look::Bead { bead: nth(3), turn: 12, variant: 2, halved: 1 }, "bead-3-180"),
            (Look::Speck { bead: nth(7) }, "speck-7"),
            (Look::Finding { finding: nth(0), turn: 1, mirrored: false }, "finding-0-1"),
            (Look::Finding { finding: nth(0), turn: 1, mirrored: true }, "finding-0-1-mirrored"),
            (Look::Part { finding: nth(0), turn: 3, from: 10, to: 40 }, "ring-part-0-691443"),
            (Look::Front { finding: nth(2), turn: 6 }, "front-half-2-6"),
            (Look::Linked { finding: nth(2), turn: 5 }, "linked-2-5"),
            (Look::Pressed { finding: nth(2), turn: 0 }, "pressed-2-0"),
            (Look::Pin { finding: nth(1), reach: 1250 }, "pin-1-1250"),
            (Look::PinLoop { finding: nth(1), reach: 1250 }, "pin-loop-1-1250"),
            (Look::Link { finding: nth(4) }, "link-4"),
            (Look::Edge { finding: nth(4) }, "edge-4"),
            (Look::Knot { cord: nth(0), doubled: false, length: 150 }, "knot-0-150"),
            (Look::Knot { cord: nth(0), doubled: true, length: 150 }, "knot-of-two-0-150"),
        ];
        for (look, id) in looks {
            assert_eq!(look.key().to_string(), id);
            assert_eq!(look.key().in_figure(2).to_string(), format!("p2-{id}"));
        }
    }
}
