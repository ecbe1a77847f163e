//! Which way holes run: along what a bead is strung on, or across it where it hangs; and charms, which hang by
//! their loops.

use crate::design::{Bead, Bit, Dangle, Design, Finding, Strand, What};
use crate::pattern::{FindingKind, Shape};
use crate::remark::Remark;
use crate::remark::said::fit::{Fit, Hangs, Threaded};
use crate::source::Place;

/// Remarks about beads whose holes run the wrong way, and charms that are threaded.
pub fn check(design: &Design) -> Vec<Remark> {
    let on_cords = design.strands.iter().flat_map(|strand| strand.bits()).filter_map(|bit| hanging(bit, design));
    let on_cords = on_cords.map(|one| one.threaded(Threaded::Cord));
    on_cords
        .chain(design.strands.iter().flat_map(Strand::dangles).flat_map(|dangle| of_dangle(dangle, design)))
        .collect()
}

fn of_dangle(dangle: &Dangle, design: &Design) -> Vec<Remark> {
    let on = dangle.on.map(|on| &design.findings[on]);
    if let Some(on) = on.filter(|on| !on.is_pin()) {
        return one_below_another(on, &dangle.bits, design).into_iter().collect();
    }
    // Where both ends meet what comes last hangs; all before it, and all on a pin, is threaded.
    let threaded =
        if on.is_some() { &dangle.bits[..] } else { dangle.bits.split_last().map_or(&[][..], |(_, rest)| rest) };
    let threaded = threaded.iter().filter_map(|bit| hanging(bit, design));
    threaded.map(|one| one.threaded(Threaded::Branch)).collect()
}

/// Of what hangs without a pin each piece hangs in the one above it: the first of which that is not so.
fn one_below_another(on: &Finding, bits: &[Bit], design: &Design) -> Option<Remark> {
    let mut above = Support::Finding(on);
    bits.iter().find_map(|bit| {
        let below = Support::of(bit, design)?;
        std::mem::replace(&mut above, below).refusal(bit, design)
    })
}

/// What something hangs from.
enum Support<'a> {
    Finding(&'a Finding),
    Bead(&'a Bead),
}

impl<'a> Support<'a> {
    fn of(bit: &Bit, design: &'a Design) -> Option<Self> {
        match bit.what {
            What::Finding(at) => Some(Self::Finding(&design.findings[at])),
            What::Bead(at) => Some(Self::Bead(&design.beads[at])),
            _ => None,
        }
    }

    fn name(&self) -> &'a str {
        match self {
            Self::Finding(finding) => &finding.name,
            Self::Bead(bead) => &bead.name,
        }
    }

    /// Why something cannot hang from it.
    fn refusal(&self, bit: &Bit, design: &'a Design) -> Option<Remark> {
        let below = Self::of(bit, design)?;
        match (self, &below) {
            (Self::Finding(holder), Self::Bead(bead)) if holds_others(holder) => along(bead, holder),
            (Self::Finding(holder), Self::Finding(_)) if holds_others(holder) => None,
            _ => {
                let said = Fit::HeldByNothing { below: below.name().to_owned(), above: self.name().to_owned() };
                Some(Remark::new(said).at(bit.place))
            }
        }
    }
}

const fn holds_others(finding: &Finding) -> bool {
    matches!(finding.kind(), FindingKind::JumpRing | FindingKind::Chain | FindingKind::Bail)
}

/// Something that hangs from what goes through its hole or loop.
struct Suspended<'a> {
    name: &'a str,
    /// How it comes to hang.
    hangs: Hangs,
    place: Place,
}

fn hanging<'a>(bit: &Bit, design: &'a Design) -> Option<Suspended<'a>> {
    match bit.what {
        What::Bead(at) if design.beads[at].hangs() => {
            Some(Suspended { name: &design.beads[at].name, hangs: Hangs::Across, place: design.beads[at].place })
        }
        What::Finding(at) if design.findings[at].has_loop() => {
            let finding = &design.findings[at];
            Some(Suspended { name: &finding.name, hangs: Hangs::Loop, place: finding.place })
        }
        _ => None,
    }
}

impl Suspended<'_> {
    fn threaded(&self, on: Threaded) -> Remark {
        Remark::new(Fit::Threaded { what: self.name.to_owned(), hangs: self.hangs, on }).at(self.place)
    }
}

/// A bead that a ring, link or bail is to go through though its hole runs along it: a ring must go round from the
/// hole to the edge, and be no narrower than the hole is long.
fn along(bead: &Bead, holder: &Finding) -> Option<Remark> {
    let wall = (bead.across - *bead.hole) * 0.5;
    let round = bead.along.max(wall);
    let inside = holder.opening().filter(|_| bead.shape != Shape::Drop);
    (!bead.hangs() && inside.is_none_or(|inside| inside < round)).then(|| {
        let (name, holder) = (bead.name.clone(), holder.name.clone());
        let said = match inside {
            Some(inside) => Fit::RingNotRound { bead: name, ring: holder, inside, round },
            None => Fit::NoTip { bead: name, holder },
        };
        Remark::new(said).at(bead.place)
    })
}
