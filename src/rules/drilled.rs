//! Which way holes run: along what a bead is strung on, or across it where it hangs; and charms, which hang by
//! their loops.

use crate::design::{Bit, Dangle, Design, Strand, What};
use crate::pattern::Shape;
use crate::remark::{Code, Remark};
use crate::source::Place;

use super::bead;

/// Remarks about beads whose holes run the wrong way, and charms that are threaded.
pub fn check(design: &Design) -> Vec<Remark> {
    let on_cords = design.strands.iter().flat_map(|strand| strand.bits()).filter_map(|bit| hanging(bit, design));
    let on_cords = on_cords.map(|one| one.threaded("on a cord"));
    on_cords
        .chain(design.strands.iter().flat_map(Strand::dangles).flat_map(|dangle| of_dangle(dangle, design)))
        .collect()
}

fn of_dangle(dangle: &Dangle, design: &Design) -> Vec<Remark> {
    let pin = dangle.on.is_some_and(|on| design.findings[on].is_pin());
    let hangs = match dangle.on {
        Some(_) if pin => None,
        Some(_) => Some(0),
        None => dangle.bits.len().checked_sub(1),
    };
    let threaded = dangle.bits.iter().enumerate().filter(|(at, _)| Some(*at) != hangs);
    let threaded = threaded.filter_map(|(_, bit)| hanging(bit, design));
    let threaded = threaded.map(|one| one.threaded("on a pin or below another bead"));
    runs_along(dangle, design).filter(|_| !pin && dangle.on.is_some()).into_iter().chain(threaded).collect()
}

/// Something that hangs from what goes through its hole or loop.
struct Hanging<'a> {
    name: &'a str,
    /// How it comes to hang.
    made: &'static str,
    place: Place,
}

fn hanging<'a>(bit: &Bit, design: &'a Design) -> Option<Hanging<'a>> {
    match bit.what {
        What::Bead(at) if design.beads[at].hangs() => {
            Some(Hanging { name: &design.beads[at].name, made: "is drilled across", place: design.beads[at].place })
        }
        What::Finding(at) if design.findings[at].has_loop() => {
            let finding = &design.findings[at];
            Some(Hanging { name: &finding.name, made: "has a loop of its own", place: finding.place })
        }
        _ => None,
    }
}

impl Hanging<'_> {
    fn threaded(&self, place: &str) -> Remark {
        let headline = format!("{} {} and hangs: it cannot be strung {place}", self.name, self.made);
        let help = "hang it from a ring or bail, `{ dangle: [it], on: bail }`, or use one that is drilled lengthwise";
        Remark::new(Code::WrongHole, headline).at(self.place).help(help)
    }
}

/// A drop that a ring or bail is to go through, though its hole runs along it.
fn runs_along(dangle: &Dangle, design: &Design) -> Option<Remark> {
    let first = dangle.bits.first().and_then(bead).map(|index| &design.beads[index])?;
    (first.shape == Shape::Drop && !first.hangs()).then(|| {
        let hanger = dangle.on.map_or("the ends", |on| &design.findings[on].name);
        let headline = format!("{} is drilled lengthwise and cannot hang from {hanger} by its tip", first.name);
        let help = "write `drilled: tip` if yours is, or hang it on a head pin";
        Remark::new(Code::WrongHole, headline).at(first.place).help(help)
    })
}
