//! A design with the beads and findings that a test asks for.

use festoon::art::{Ink, Stencils};
use festoon::design::{
    Bar, Bead, Cap, ChainLinks, Charm, Cone, Cord, CordEnd, Crimp, Design, Dimensions, Finding, Foot, Form, Hanger,
    JumpRing, KnotCover, Model, Pin, Stated, Tassel,
};
use festoon::paint::mark::Rgb;
use festoon::palette::{Coat, Palette};
use festoon::pattern::{CordKind, Drilled, FindingKind, Finish, Kind, Outline, Shape};
use festoon::source::Place;
use festoon::units::{Length, Mass};

/// A bead of usual proportions, and how it looks.
pub fn bead(shape: Shape, finish: Finish, across: f64, colour: Rgb) -> (Bead, Coat) {
    let (along, thick, hole) = match shape {
        Shape::Rondelle => (0.66, 1.0, 0.17),
        Shape::Oval => (1.4, 1.0, 0.17),
        Shape::Tube => (1.7, 1.0, 0.4),
        Shape::Barrel => (1.3, 1.0, 0.25),
        Shape::Drop => (1.5, 1.0, 0.17),
        Shape::Chip => (0.7, 1.0, 0.15),
        Shape::Seed => (0.68, 1.0, 0.42),
        Shape::Square | Shape::Coin => (1.0, 0.4, 0.15),
        _ => (1.0, 1.0, 0.2),
    };
    let bead = Bead {
        id: format!("{shape}-{finish}"),
        name: format!("{finish} {shape}"),
        letter: "A".into(),
        shape,
        across: Length::mm(across),
        along: Length::mm(across * along),
        thick: Stated::Stated(Length::mm(across * thick)),
        hole: Stated::Stated(Length::mm(across * hole)),
        tolerance: Stated::Stated(Length::ZERO),
        pitch: None,
        mass: Stated::Stated(Mass::grams(0.3)),
        material: None,
        sold: None,
        drilled: Drilled::Lengthwise,
        bores: None,
        instead: Vec::new(),
        place: Place::default(),
    };
    (bead, Coat { colour, finish })
}

/// A finding of usual dimensions.
pub fn finding(kind: FindingKind) -> Finding {
    Finding {
        id: kind.word().replace(' ', "-"),
        name: kind.word().into(),
        form: form(kind),
        mass: Stated::Stated(Mass::grams(0.2)),
        material: None,
        breakaway: false,
        comes_with: None,
        sold: None,
        place: Place::default(),
    }
}

/// A kind with usual dimensions.
fn form(kind: FindingKind) -> Form {
    let mm = Length::mm;
    let sized = |length| Dimensions { length: mm(length), outside: None, inside: None, wire: None };
    let broad = |length, outside| Dimensions { outside: Some(mm(outside)), ..sized(length) };
    let pin = |foot| Form::Pin(Pin { length: mm(25.0), wire: mm(0.72), foot, outside: None });
    let bar = |length| Bar { length: mm(length), spacing: mm(5.0), holes: 3, outside: None, inside: None, wire: None };
    let hanger =
        |length, wire| Hanger { length: mm(length), wire: Stated::Stated(mm(wire)), outside: None, inside: None };
    match kind {
        FindingKind::Crimp => Form::Crimp(Crimp { length: mm(2.0), outside: mm(2.0), inside: mm(1.3) }),
        FindingKind::Cone => {
            let (inside, tip, mouth) = (mm(6.0), mm(1.5), Some(mm(7.5)));
            Form::Cone(Cone { length: mm(12.0), inside, tip, mouth, outside: None })
        }
        FindingKind::EyePin => pin(Foot::Eye),
        FindingKind::HeadPin => pin(Foot::Head),
        FindingKind::Clasp => Form::Clasp(sized(12.0)),
        FindingKind::Hook => Form::Hook(sized(12.0)),
        FindingKind::ToggleRing => Form::ToggleRing(sized(12.0)),
        FindingKind::SpringRing => Form::SpringRing(sized(8.0)),
        FindingKind::BarrelHalf => Form::BarrelHalf(sized(8.0)),
        FindingKind::ToggleBar => Form::ToggleBar(sized(5.0)),
        FindingKind::JumpRing => Form::JumpRing(ring(4.0, 0.8, Some(5.0))),
        FindingKind::Chain => Form::Chain(ChainLinks { link: mm(4.0), wire: Stated::Stated(mm(0.7)), length: None }),
        FindingKind::SpacerBar => Form::SpacerBar(bar(2.5)),
        FindingKind::EndBar => Form::EndBar(bar(8.0)),
        FindingKind::BoxHalf => Form::BoxHalf(bar(8.0)),
        FindingKind::SlideHalf => Form::SlideHalf(bar(7.0)),
        FindingKind::EarWire => Form::EarWire(hanger(20.0, 0.72)),
        FindingKind::BeadCap => {
            Form::BeadCap(Cap { length: mm(3.0), outside: Some(mm(6.0)), inside: None, mouth: None })
        }
        FindingKind::CrimpCover => Form::CrimpCover(broad(3.0, 3.0)),
        FindingKind::WireGuard => Form::WireGuard(sized(4.5)),
        FindingKind::CordEnd => {
            Form::CordEnd(CordEnd { length: mm(9.0), inside: mm(1.8), outside: Some(mm(3.0)), wire: None })
        }
        FindingKind::Charm => {
            Form::Charm(Charm { length: mm(16.0), breadth: Stated::Assumed(mm(7.2)), outline: Outline::Leaf })
        }
        FindingKind::Tassel => {
            Form::Tassel(Tassel { length: mm(22.0), breadth: Stated::Assumed(mm(3.52)), wound: None })
        }
        FindingKind::SpectacleLoop => Form::SpectacleLoop(sized(20.0)),
        FindingKind::Bail => Form::Bail(hanger(8.0, 0.8)),
        FindingKind::KnotCover => Form::KnotCover(KnotCover { body: sized(8.0), bead: None }),
    }
}

/// A jump ring's sizes, in mm.
pub fn ring(inside: f64, wire: f64, outside: Option<f64>) -> JumpRing {
    let [inside, wire] = [inside, wire].map(Length::mm);
    JumpRing { inside, wire: Stated::Stated(wire), outside: outside.map(Length::mm), closed: false }
}

/// A cord.
pub fn cord(kind: CordKind, diameter: f64) -> Cord {
    Cord {
        id: kind.word().into(),
        name: kind.word().into(),
        kind,
        is_pin: false,
        diameter: Length::mm(diameter),
        take_up: Stated::Stated(Length::ZERO),
        strength: None,
        stiffness: Stated::Assumed(0.0),
        mass_per_metre: Stated::Stated(Mass::grams(0.5)),
        needle: false,
        coil: None,
        link: None,
        sold: None,
        place: Place::default(),
    }
}

/// A design of nothing but a few articles, and their colours.
pub struct Sample {
    pub design: Design,
    palette: Palette,
}

impl Sample {
    /// Beads that look so, findings and cords of a colour.
    pub fn new(beads: Vec<(Bead, Coat)>, findings: Vec<(Finding, Rgb)>, cords: Vec<(Cord, Rgb)>) -> Self {
        let mut model = Model::bare("Contact sheet", Kind::Necklace, Length::mm(370.0));
        let mut palette = Palette::default();
        for (bead, coat) in beads {
            model.beads.push(bead);
            palette.beads.extend([coat]);
        }
        for (finding, colour) in findings {
            model.findings.push(finding);
            palette.findings.extend([colour]);
        }
        for (cord, colour) in cords {
            model.cords.push(cord);
            palette.cords.extend([colour]);
        }
        Self { design: Design::new(model).expect("a design"), palette }
    }

    pub fn of_beads(beads: impl IntoIterator<Item = (Bead, Coat)>) -> Self {
        Self::new(beads.into_iter().collect(), Vec::new(), Vec::new())
    }

    pub fn stencils(&self, ink: Ink) -> Stencils<'_> {
        Stencils::new(&self.design, &self.palette, ink)
    }
}
