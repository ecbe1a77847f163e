//! A small design and drape for the rules' tests, about which no rule has anything to say.

use crate::design::{
    Bead, Bit, Cord, Crimp, Dangle, Design, Dimensions, End, Finding, Foot, Form, Index, Joins, Model, Part, Pin,
    Stated, Strand, What, nth,
};
use crate::drape::{Drape, Hung, Tension};
use crate::geometry::Point;
use crate::pattern::{CordKind, Drilled, Kind, Shape};
use crate::remark::{Code, Remark};
use crate::source::Place;
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
    model.findings = vec![finding("crimp", Form::Crimp(CRIMP))].into();
    model.strands = vec![strand()].into();
    Design::new(model).unwrap()
}

/// That necklace's drape, as far as the rules read it.
pub fn drape() -> Drape {
    let hung = Hung {
        ends: [Point::ORIGIN; 2],
        joints: Vec::new(),
        seats: Vec::new(),
        lacks: 0.0,
        starts: Vec::new(),
        tension: Tension { first: 0.1, lowest: 0.0, last: 0.1 },
        drop: 0.0,
        iterations: 0,
        residual: 0.0,
        unseen: None,
    };
    Drape {
        span: 0.0,
        strands: vec![hung].into(),
        clearances: Vec::new(),
        presses: Vec::new(),
        unrest: None,
        worn: None,
        rings: Vec::new(),
    }
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
    design.findings.push(finding("head pin", Form::Pin(pin(Foot::Head, 50.0, 0.6))));
    let dangle = Dangle { on: Some(nth(1)), bits: vec![bit(What::Bead(nth(0)))], drop: 9.0 };
    let mut bits = design.strands[nth(0)].trains[0].bits.clone();
    bits.insert(1, bit(What::Dangle(dangle)));
    string(design, bits);
}

/// Closes the piece with a clasp, the last finding, on the right.
pub fn add_clasp(design: &mut Model) {
    let clasp = design.findings.push(finding("clasp", Form::Clasp(body(50.0))));
    design.closure.joins = Joins::sides(Vec::new(), vec![part(clasp)]);
}

/// A part of a closure that takes no length.
pub fn part(finding: Index<Finding>) -> Part {
    Part { finding, reach: Length::ZERO, least: Length::ZERO, cut: None }
}

/// A crimp of 2 mm with its inside of 1.3 mm.
pub const CRIMP: Crimp = Crimp { length: Length::mm(2.0), outside: Length::mm(2.0), inside: Length::mm(1.3) };

/// A pin, its length and wire in mm.
pub fn pin(foot: Foot, length: f64, wire: f64) -> Pin {
    Pin { length: Length::mm(length), wire: Length::mm(wire), foot, outside: None }
}

/// What is so long, in mm.
pub fn body(length: f64) -> Dimensions {
    Dimensions { length: Length::mm(length), outside: None, inside: None, wire: None }
}

/// A finding of a form.
pub fn finding(name: &str, form: Form) -> Finding {
    Finding {
        id: name.to_owned(),
        name: name.to_owned(),
        form,
        mass: Mass::ZERO,
        material: None,
        breakaway: false,
        comes_with: None,
        sold: None,
        place: Place::default(),
    }
}

fn bead() -> Bead {
    Bead {
        id: "reed".to_owned(),
        name: "reed".to_owned(),
        letter: "A".to_owned(),
        shape: Shape::Round,
        across: Length::mm(6.0),
        along: Length::mm(6.0),
        thick: Stated::Stated(Length::mm(6.0)),
        hole: Stated::Stated(Length::mm(1.0)),
        tolerance: Length::mm(0.2),
        pitch: None,
        mass: Mass::grams(0.27),
        material: None,
        sold: None,
        drilled: Drilled::Lengthwise,
        bores: None,
        instead: Vec::new(),
        place: Place::default(),
    }
}

fn cord() -> Cord {
    Cord {
        id: "wire".to_owned(),
        name: "wire".to_owned(),
        kind: CordKind::Wire,
        is_pin: false,
        diameter: Length::mm(0.4),
        take_up: Length::mm(4.0),
        strength: Some(Force::newtons(60.0)),
        wire: None,
        stiffness: Stated::Assumed(1.8),
        mass_per_metre: Mass::grams(0.55),
        needle: false,
        coil: None,
        link: None,
        sold: None,
        place: Place::default(),
    }
}

fn strand() -> Strand {
    let end = End { findings: vec![nth(0)], bight: Length::mm(3.0), takes: Length::mm(5.0), take_up: Length::ZERO };
    let bits = vec![bit(What::Bead(nth(0))); 3];
    let strand = Strand::sliding("only", nth(0), Length::mm(400.0), [end.clone(), end], bits);
    Strand { allowance: Length::mm(8.0), ..strand }
}

fn bit(what: What) -> Bit {
    Bit::new(what, [3.0, 3.0], 0.27)
}
