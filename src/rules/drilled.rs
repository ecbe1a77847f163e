//! Which way holes run: along what a bead is strung on, or across it where it hangs by its tip.

use crate::design::{Bead, Bit, Dangle, Design};
use crate::pattern::Shape;
use crate::remark::{Code, Remark};

use super::{bead, dangles, strung};

/// Remarks about beads whose holes run the wrong way.
pub fn check(design: &Design) -> Vec<Remark> {
    let on_cords = design.strands.iter().flat_map(strung).map(|index| &design.beads[index]);
    let on_cords = on_cords.filter(|bead| bead.tip_drilled).map(|bead| hangs(bead, "on a cord"));
    on_cords.chain(design.strands.iter().flat_map(dangles).flat_map(|dangle| of_dangle(dangle, design))).collect()
}

fn of_dangle(dangle: &Dangle, design: &Design) -> Vec<Remark> {
    let pin = design.findings[dangle.on].is_pin();
    let beads = dangle.bits.iter().filter_map(bead).map(|index| &design.beads[index]);
    let first = dangle.bits.first().and_then(|bit: &Bit| bead(bit)).map(|index| &design.beads[index]);
    let by_its_length = first.filter(|bead| !pin && bead.shape == Shape::Drop && !bead.tip_drilled);
    let threaded = beads.enumerate().filter(|(at, bead)| bead.tip_drilled && (pin || *at > 0));
    let threaded = threaded.map(|(_, bead)| hangs(bead, "on a pin or below another bead"));
    by_its_length.map(|bead| runs_along(bead, &design.findings[dangle.on].name)).into_iter().chain(threaded).collect()
}

fn hangs(bead: &Bead, place: &str) -> Remark {
    let headline = format!("{} is drilled across its tip and hangs: it cannot be strung {place}", bead.name);
    let help = "hang it from a ring or bail, `{ dangle: [it], on: bail }`, or use one that is drilled lengthwise";
    Remark::new(Code::WrongHole, headline).at(bead.place).help(help)
}

fn runs_along(bead: &Bead, hanger: &str) -> Remark {
    let headline = format!("{} is drilled lengthwise and cannot hang from {hanger} by its tip", bead.name);
    let help = "write `drilled: tip` if yours is, or hang it on a head pin";
    Remark::new(Code::WrongHole, headline).at(bead.place).help(help)
}
