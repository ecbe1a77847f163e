//! A small design and drape for the rules' tests, about which no rule has anything to say.

use crate::design::{
    Bead, Bit, Cord, Crimp, Dangle, Design, Dimensions, End, Finding, Foot, Form, Joins, Model, Part, Pin, Stated,
    Strand, What, nth,
};
use crate::drape::{self, Drape};
use crate::pattern::{CordKind, Kind, Shape};
use crate::remark::{Code, Remark};
use crate::units::{Force, Length, Mass};

/// The codes of remarks, each once.
pub fn codes(remarks: &[Remark]) -> Vec<Code> {
    crate::remark::once(remarks.to_vec()).iter().map(|remark| remark.code()).collect()
}

/// Three 6 mm beads on 400 mm of wire, a crimp at both ends, for a neck of 370 mm.
pub fn necklace() -> Design {
    let mut model = Model::bare("", Kind::Necklace, Length::mm(370.0));
    model.beads = vec![bead()].into();
    model.cords = vec![cord()].into();
    model.findings = vec![Finding::new("crimp", Form::Crimp(CRIMP))].into();
    model.strands = vec![strand()].into();
    Design::new(model).unwrap()
}

/// That necklace as it hangs.
pub fn drape() -> Drape {
    drape::hang(&necklace(), None).unwrap()
}

/// Strings bits on the strand anew, which is as long as they need at least.
pub fn string(design: &mut Model, bits: Vec<Bit>) {
    let old = &design.strands[nth(0)];
    let ends: f64 = old.ends.iter().map(|end| end.takes.value()).sum();
    let needed = Length::mm(bits.iter().map(Bit::length).sum::<f64>() + ends);
    let strand = Strand::sliding(&old.name, old.cord, old.finished.max(needed), old.ends.clone(), bits);
    design.strands[nth(0)] = Strand { allowance: old.allowance, ..strand };
}

/// Hangs a bead on a head pin, finding 1, at the strand's middle.
pub fn hang_dangle(design: &mut Model) {
    design.findings.push(Finding::new("head pin", Form::Pin(pin(Foot::Head, 50.0, 0.6))));
    let dangle = Dangle::new(Some(nth(1)), vec![bit(What::Bead(nth(0)))], 9.0);
    let mut bits = design.strands[nth(0)].trains[0].bits.clone();
    bits.insert(1, bit(What::Dangle(dangle)));
    string(design, bits);
}

/// Closes the piece with a clasp, the last finding, on the right.
pub fn add_clasp(design: &mut Model) {
    let clasp = design.findings.push(Finding::new("clasp", Form::Clasp(Dimensions::new(Length::mm(50.0)))));
    design.closure.joins = Joins::sides(Vec::new(), vec![Part::new(clasp, Length::ZERO)]);
}

/// A crimp of 2 mm with its inside of 1.3 mm.
pub const CRIMP: Crimp = Crimp::new(Length::mm(2.0), Length::mm(2.0), Length::mm(1.3));

/// A pin, its length and wire in mm.
pub const fn pin(foot: Foot, length: f64, wire: f64) -> Pin {
    Pin::new(foot, Length::mm(length), Length::mm(wire))
}

fn bead() -> Bead {
    let mut bead = Bead::new("reed", Shape::Round, [Length::mm(6.0); 2]);
    (bead.letter, bead.mass) = ("A".to_owned(), Stated::Stated(Mass::grams(0.27)));
    bead
}

fn cord() -> Cord {
    let mut cord = Cord::new("wire", CordKind::Wire, Length::mm(0.4));
    (cord.strength, cord.mass_per_metre) = (Some(Force::newtons(60.0)), Stated::Stated(Mass::grams(0.55)));
    cord
}

fn strand() -> Strand {
    let end = End::new(vec![nth(0)], Some(Length::mm(3.0)), Length::mm(5.0));
    let bits = vec![bit(What::Bead(nth(0))); 3];
    let strand = Strand::sliding("only", nth(0), Length::mm(400.0), [end.clone(), end], bits);
    Strand { allowance: Stated::Stated(Length::mm(8.0)), ..strand }
}

fn bit(what: What) -> Bit {
    Bit::new(what, [3.0, 3.0], 0.27)
}
