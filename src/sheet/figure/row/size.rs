//! How far what is strung reaches from its centre on the cord, in mm at actual size.

use crate::design::{Bit, Dangle, Design, End, Finding, Strand, What};
use crate::pattern::FindingKind;
use crate::sheet::figure;
use crate::trade::usual::KNOT_WIDTH;

/// How far a drawing reaches from its centre, or of an end from the cord.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reach {
    /// To either side along the cord.
    pub aside: f64,
    /// Upward.
    pub above: f64,
    /// Downward.
    pub below: f64,
}

/// Most that a drawing may reach to either side, up and down, and most that it may take of the
/// cord: what the smallest page has room for in one line.
const MOST: Reach = Reach { aside: 25.0, above: 40.0, below: 80.0 };
const MOST_LENGTH: f64 = 60.0;

impl Reach {
    const fn round(half: f64) -> Self {
        Self { aside: half, above: half, below: half }
    }

    /// Enlarged about the centre.
    #[must_use]
    pub fn times(self, scale: f64) -> Self {
        Self { aside: self.aside * scale, above: self.above * scale, below: self.below * scale }
    }

    /// The scale, 1 where there is room for it, at which a thing of this reach and a length fits.
    #[must_use]
    pub fn scale(self, length: f64) -> f64 {
        let share = |most: f64, size: f64| if size > most { most / size } else { 1.0 };
        let whole = share(MOST.aside, self.aside).min(share(MOST.above, self.above));
        whole.min(share(MOST.below, self.below)).min(share(MOST_LENGTH, length))
    }
}

/// How far the middle of a bit that strands share is drawn below this one's cord: the outer strands lie
/// below the inner ones.
pub fn below(bit: &Bit, strand: &Strand, design: &Design) -> f64 {
    figure::shared(bit, strand, design).map_or(0.0, |finding| figure::middle(strand, finding, design))
}

/// The reach of a bit on a strand.
#[must_use]
pub fn on_strand(bit: &Bit, strand: &Strand, design: &Design) -> Reach {
    if bit.what == What::Knot {
        return Reach { aside: bit.length() / 2.0, ..Reach::round(half_knot(strand, design)) };
    }
    let (reach, below) = (of_bit(bit, design), below(bit, strand, design));
    Reach { above: reach.above - below, below: reach.below + below, ..reach }
}

/// The reach of a bit.
fn of_bit(bit: &Bit, design: &Design) -> Reach {
    let length = bit.length() / 2.0;
    match &bit.what {
        What::Bead(bead) => {
            let bead = &design.beads[*bead];
            let half = bead.across.value().max(bead.thick.value()) / 2.0;
            Reach { aside: (bead.along.value() / 2.0).max(length), above: half, below: half }
        }
        What::Gap | What::Knot => Reach { aside: length, ..Reach::default() },
        What::Finding(index) => {
            Reach { aside: length.max(1.5), ..Reach::round(half_breadth(&design.findings[*index])) }
        }
        What::Dangle(dangle) => of_dangle(dangle, design),
    }
}

fn of_dangle(dangle: &Dangle, design: &Design) -> Reach {
    let half = |bit: &Bit| match bit.what {
        What::Bead(bead) => design.beads[bead].across.value().max(design.beads[bead].thick.value()) / 2.0,
        What::Finding(index) => half_breadth(&design.findings[index]),
        What::Gap | What::Knot | What::Dangle(_) => 0.0,
    };
    let aside = dangle.bits.iter().map(half).fold(hanger(dangle, design), f64::max);
    Reach { aside, above: 1.0, below: dangle.drop + 1.0 }
}

/// Half the breadth of what a branch hangs on.
pub fn hanger(dangle: &Dangle, design: &Design) -> f64 {
    half_breadth(&design.findings[dangle.on]).min(4.0)
}

/// Half of a finding's breadth across the cord; where the pattern does not say it, what art draws
/// is no broader.
fn half_breadth(finding: &Finding) -> f64 {
    let (length, spacing) = (finding.length.value(), finding.spacing.value());
    let bar = match finding.kind {
        FindingKind::SpacerBar | FindingKind::EndBar => {
            f64::from(finding.holes.max(1)) * if spacing > 0.0 { spacing } else { 5.0 }
        }
        _ => 0.0,
    };
    let sizes = [finding.outside.value(), finding.mouth.value(), finding.inside.value() + 2.0, bar];
    let unsaid = if finding.outside.value() > 0.0 { 0.0 } else { length.clamp(3.0, 10.0) };
    sizes.into_iter().fold(unsaid, f64::max) / 2.0
}

/// Half the breadth of a strand's knots.
fn half_knot(strand: &Strand, design: &Design) -> f64 {
    strand.cord_width(design).value() * KNOT_WIDTH / 2.0
}

/// The reach of an end of a strand and the length that it is drawn with.
#[must_use]
pub fn of_end(end: &End, strand: &Strand, design: &Design) -> (Reach, f64) {
    let half = end.findings.iter().map(|index| half_breadth(&design.findings[*index]));
    let knot = if end.findings.is_empty() { half_knot(strand, design) } else { 0.0 };
    let half = half.fold(end.bight.value().mul_add(0.3, 1.0).max(knot), f64::max);
    let length = if end.findings.is_empty() { TAIL } else { end.takes.value() };
    (Reach { aside: length / 2.0, above: half, below: half }, length)
}

/// Length of the tail that is drawn beyond an end's knot.
pub const TAIL: f64 = 7.0;
