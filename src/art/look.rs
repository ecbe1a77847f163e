//! What symbols of beads, findings and knots are of, and how each is seen.

use super::light::TURNS;
use crate::design::{Bead, Cord, Finding, Index, nth};
use crate::paint::mark::Key;

/// What a symbol shows of a design. Beads, findings and cords are the design's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Look {
    /// A bead under the light on one of its turns, and which of the pearls that differ; of a flat one its face or its edge.
    Bead { bead: Index<Bead>, turn: u32, variant: u32, on_edge: bool },
    /// A bead so small on paper that its colour alone is seen.
    Speck { bead: Index<Bead> },
    /// A finding under the light on one of its turns.
    Finding { finding: Index<Finding>, turn: u32 },
    /// The half of a ring to the right of its way outward, or to the left.
    Half { finding: Index<Finding>, turn: u32, right: bool },
    /// Of a finding's eyes what lies before what links with them.
    Linked { finding: Index<Finding>, turn: u32 },
    /// A crimp pressed shut.
    Pressed { finding: Index<Finding>, turn: u32 },
    /// A pin cut and closed, so many hundredths of a millimetre long.
    Pin { finding: Index<Finding>, reach: u32 },
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
        let (sort, of, seen) = match self {
            Self::Bead { bead, turn, variant, on_edge } => {
                (if on_edge { "bead-on-edge" } else { "bead" }, bead.number(), Some(turn + TURNS * variant))
            }
            Self::Speck { bead } => ("speck", bead.number(), None),
            Self::Finding { finding, turn } => ("finding", finding.number(), Some(turn)),
            Self::Half { finding, turn, right: true } => ("right-half", finding.number(), Some(turn)),
            Self::Half { finding, turn, right: false } => ("left-half", finding.number(), Some(turn)),
            Self::Linked { finding, turn } => ("linked", finding.number(), Some(turn)),
            Self::Pressed { finding, turn } => ("pressed", finding.number(), Some(turn)),
            Self::Pin { finding, reach } => ("pin", finding.number(), Some(reach)),
            Self::Link { finding } => ("link", finding.number(), None),
            Self::Edge { finding } => ("edge", finding.number(), None),
            Self::Knot { cord, doubled: false, length } => ("knot", cord.number(), Some(length)),
            Self::Knot { cord, doubled: true, length } => ("knot-of-two", cord.number(), Some(length)),
        };
        Key { of: Some(of), seen, ..Key::new(sort) }
    }

    /// What the symbol of a key shows, in whichever figure and mirrored or not; nothing where it is none
    /// of a design's.
    #[must_use]
    pub fn of(key: Key) -> Option<Self> {
        Some(match (key.sort, key.of?, key.seen) {
            (sort @ ("bead" | "bead-on-edge"), bead, Some(seen)) => {
                let on_edge = sort == "bead-on-edge";
                Self::Bead { bead: nth(bead), turn: seen % TURNS, variant: seen / TURNS, on_edge }
            }
            ("speck", bead, None) => Self::Speck { bead: nth(bead) },
            ("finding", finding, Some(turn)) => Self::Finding { finding: nth(finding), turn },
            (sort @ ("right-half" | "left-half"), finding, Some(turn)) => {
                Self::Half { finding: nth(finding), turn, right: sort == "right-half" }
            }
            ("linked", finding, Some(turn)) => Self::Linked { finding: nth(finding), turn },
            ("pressed", finding, Some(turn)) => Self::Pressed { finding: nth(finding), turn },
            ("pin", finding, Some(reach)) => Self::Pin { finding: nth(finding), reach },
            ("link", finding, None) => Self::Link { finding: nth(finding) },
            ("edge", finding, None) => Self::Edge { finding: nth(finding) },
            ("knot", cord, Some(length)) => Self::Knot { cord: nth(cord), doubled: false, length },
            ("knot-of-two", cord, Some(length)) => Self::Knot { cord: nth(cord), doubled: true, length },
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_tells_its_look() {
        let looks = [
            (Look::Bead { bead: nth(3), turn: 12, variant: 0, on_edge: false }, "bead-3-12"),
            (Look::Bead { bead: nth(3), turn: 12, variant: 2, on_edge: true }, "bead-on-edge-3-60"),
            (Look::Speck { bead: nth(7) }, "speck-7"),
            (Look::Finding { finding: nth(0), turn: 1 }, "finding-0-1"),
            (Look::Half { finding: nth(0), turn: 3, right: true }, "right-half-0-3"),
            (Look::Half { finding: nth(0), turn: 3, right: false }, "left-half-0-3"),
            (Look::Linked { finding: nth(2), turn: 5 }, "linked-2-5"),
            (Look::Pressed { finding: nth(2), turn: 0 }, "pressed-2-0"),
            (Look::Pin { finding: nth(1), reach: 1250 }, "pin-1-1250"),
            (Look::Link { finding: nth(4) }, "link-4"),
            (Look::Edge { finding: nth(4) }, "edge-4"),
            (Look::Knot { cord: nth(0), doubled: false, length: 150 }, "knot-0-150"),
            (Look::Knot { cord: nth(0), doubled: true, length: 150 }, "knot-of-two-0-150"),
        ];
        for (look, id) in looks {
            assert_eq!(look.key().to_string(), id);
            assert_eq!(Look::of(Key { figure: Some(2), mirrored: true, ..look.key() }), Some(look));
        }
        assert_eq!(Look::of(Key::new("bead")), None);
    }
}
