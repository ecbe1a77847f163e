//! How a row bends as it is worn, and how much cord its beads take up there.
//!
//! Round a limb it is closed to a ring ([`Circlet::slack`]). A loop that hangs from an ear folds (`folded`). Round a neck it bends by [`COIL`] rounds: half of that behind, where it
//! lies on the neck and each two neighbours bend by their share of its length and that of the closure; and half in front,
//! where it hangs and they bend by their share of its weight. Statics: from link to link of a hanging chain the slope grows by
//! the weight between over the pull across, which is the same all along; so a heavy middle takes of the bend what lighter beads
//! beside it then do not. An approximation: which beads lie behind and which in front is not asked, and a long row hangs
//! straight at its sides. Beads that are alike take as much wherever they bend, to the square of a turn
//! (`geometry/hinge.rs`). Within 0.7 mm of what the shipped rows take on the neck (a test of `drape/body`).

use std::f64::consts::TAU;

use crate::geometry::hinge::Hinge;
use crate::pattern::Kind;
use crate::trade::usual::COIL;

use super::model::{Bit, Train};
use super::round::{Circlet, Stock};
use super::wraps;

/// How a row bends as it is worn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bends {
    /// It hangs from an ear: straight, or folded where both ends do.
    Fold,
    /// To a ring, round a limb or several times round.
    Ring,
    /// Round a neck, or as a strap.
    Loop,
}

impl Bends {
    /// How a row of a piece bends that goes so many times round.
    pub fn of(kind: Kind, wraps: f64) -> Self {
        match kind {
            Kind::Earrings => Self::Fold,
            _ if wraps::goes_round(kind, wraps) => Self::Ring,
            Kind::Necklace | Kind::Strap | Kind::Bracelet | Kind::Anklet => Self::Loop,
        }
    }

    /// How much more cord in mm a row takes that bends so than laid straight; its strand is so long in mm.
    pub fn takes(self, row: &Circlet<'_>, trains: &[Train], finished: f64) -> f64 {
        match self {
            Self::Fold if row.closure.loops() => {
                let bits: Vec<&Bit> = trains.iter().flat_map(|train| &train.bits).collect();
                row.stock.folded(&bits, row.cord, finished).map_or(0.0, |folded| folded.takes)
            }
            Self::Fold => 0.0,
            Self::Ring => row.slack(&trains.iter().flat_map(|train| &train.bits).cloned().collect::<Vec<_>>()),
            Self::Loop => {
                let whole = finished + row.closure.length().0.value();
                trains.iter().map(|train| in_loop(row, &train.bits, whole)).sum()
            }
        }
    }
}

/// The same of bits one after the other in a loop that is so long in all.
fn in_loop(row: &Circlet<'_>, bits: &[Bit], whole: f64) -> f64 {
    let long: f64 = bits.iter().map(Bit::length).sum();
    let heavy: f64 = bits.iter().map(|bit| bit.mass).sum();
    let by_weight = |bit: &Bit| if heavy > 0.0 { bit.mass / heavy * long } else { bit.length() };
    let share = |bit: &Bit| 0.5 * (bit.length() + by_weight(bit)) / whole;
    let takes = |pair: &[Bit]| {
        let hinge = row.stock.hinge([&pair[0], &pair[1]], row.cord)?;
        Some(hinge.takes(COIL * TAU * 0.5 * (share(&pair[0]) + share(&pair[1]))))
    };
    bits.windows(2).filter_map(takes).sum()
}

impl Stock<'_> {
    /// Where two neighbours on a strand meet whose cord is so thick in mm, all legs together; nothing where one of them is no
    /// bead, or hangs from it.
    #[must_use]
    pub fn hinge(self, bits: [&Bit; 2], cord: f64) -> Option<Hinge> {
        let bead = |bit: &Bit| Some(&self.beads[bit.what.bead()?]).filter(|bead| !bead.hangs());
        Some(bead(bits[0])?.hinge(bead(bits[1])?, cord))
    }
}
