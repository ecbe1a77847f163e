//! Whether what closes the ends holds on its cord.

use crate::design::{Design, Strand};
use crate::pattern::CordKind;
use crate::remark::{Code, Remark};

/// A remark for each strand of wire that would have to be knotted. Wire cannot be doubled at all.
pub fn check(design: &Design) -> Vec<Remark> {
    let is_wire = |strand: &&Strand| strand.legs == 1 && design.cords[strand.cord].kind == CordKind::Wire;
    let wires = design.strands.iter().filter(is_wire);
    wires.filter(|strand| strand.ends.iter().any(|end| end.is_knotted(&design.findings))).map(knotted).collect()
}

fn knotted(strand: &Strand) -> Remark {
    let headline = format!("strand {} is of wire, and nothing but a knot would hold its ends", strand.name);
    let help = "close it with a crimp: `ends: crimp`, or string it on thread, silk or elastic";
    Remark::new(Code::WireKnotted, headline).at(strand.place).help(help)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::sample;

    #[test]
    fn thread_is_knotted_and_wire_is_crimped() {
        let mut design = sample::necklace();
        assert_eq!(check(&design), []);
        design.strands[0].ends[1].findings.clear();
        assert_eq!(sample::codes(&check(&design)), [Code::WireKnotted]);
        design.cords[0].kind = CordKind::Thread;
        assert_eq!(check(&design), []);
    }
}
