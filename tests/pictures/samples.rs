//! A design with the beads and findings that a test asks for.

use festoon::design::{Bead, Build, Closure, Cord, Design, Finding, Heading, Wear};
use festoon::paint::mark::Rgb;
use festoon::pattern::{CordKind, FindingKind, Finish, Kind, Shape};
use festoon::source::Place;
use festoon::units::{Length, Mass, UnitStyle};

/// A bead of usual proportions.
pub fn bead(shape: Shape, finish: Finish, across: f64, colour: Rgb) -> Bead {
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
    Bead {
        id: format!("{shape}-{finish}"),
        name: format!("{finish} {shape}"),
        letter: "A".into(),
        shape,
        finish,
        colour,
        across: Length::mm(across),
        along: Length::mm(across * along),
        thick: Length::mm(across * thick),
        hole: Length::mm(across * hole),
        tolerance: Length::ZERO,
        pitch: None,
        mass: Mass::grams(0.3),
        material: None,
        sold: None,
        tip_drilled: false,
        instead: Vec::new(),
        place: Place::default(),
    }
}

/// A finding of usual dimensions.
pub fn finding(kind: FindingKind, colour: Rgb) -> Finding {
    let none = Length::ZERO;
    let (length, outside, wire) = match kind {
        FindingKind::Crimp => (2.0, 2.0, 0.0),
        FindingKind::Cone => (12.0, 0.0, 0.0),
        FindingKind::EyePin | FindingKind::HeadPin => (25.0, 0.0, 0.72),
        FindingKind::Clasp | FindingKind::Hook | FindingKind::ToggleRing => (12.0, 0.0, 0.0),
        FindingKind::SpringRing | FindingKind::BarrelHalf => (8.0, 0.0, 0.0),
        FindingKind::ToggleBar => (5.0, 0.0, 0.0),
        FindingKind::JumpRing => (0.0, 5.0, 0.8),
        FindingKind::Chain => (0.0, 0.0, 0.7),
        FindingKind::SpacerBar => (2.5, 0.0, 0.0),
        FindingKind::EndBar => (8.0, 0.0, 0.0),
        FindingKind::EarWire => (20.0, 0.0, 0.72),
        FindingKind::BeadCap => (3.0, 6.0, 0.0),
        FindingKind::CrimpCover => (3.0, 3.0, 0.0),
        FindingKind::WireGuard => (4.5, 0.0, 0.0),
        FindingKind::CordEnd => (9.0, 3.0, 0.0),
        FindingKind::SpectacleLoop => (20.0, 0.0, 0.0),
        FindingKind::Bail | FindingKind::KnotCover => (8.0, 0.0, 0.0),
    };
    let is = |wanted| kind == wanted;
    Finding {
        id: kind.word().replace(' ', "-"),
        name: kind.word().into(),
        kind,
        length: Length::mm(length),
        outside: Length::mm(outside),
        inside: none,
        mouth: if is(FindingKind::Cone) { Length::mm(7.5) } else { none },
        tip: if is(FindingKind::Cone) { Length::mm(1.5) } else { none },
        wire: Length::mm(wire),
        link: if is(FindingKind::Chain) { Length::mm(4.0) } else { none },
        spacing: Length::mm(5.0),
        holes: 3,
        mass: Mass::grams(0.2),
        material: None,
        breakaway: false,
        closed: false,
        bead: None,
        comes_with: None,
        colour,
        sold: None,
        place: Place::default(),
    }
}

/// A cord.
pub fn cord(kind: CordKind, diameter: f64, colour: Rgb) -> Cord {
    Cord {
        id: kind.word().into(),
        name: kind.word().into(),
        kind,
        diameter: Length::mm(diameter),
        take_up: Length::ZERO,
        strength: None,
        mass_per_metre: Mass::grams(0.5),
        needle: false,
        colour,
        sold: None,
        place: Place::default(),
    }
}

/// A design of nothing but these.
pub fn design(beads: Vec<Bead>, findings: Vec<Finding>, cords: Vec<Cord>) -> Design {
    let heading = Heading {
        title: "Contact sheet".into(),
        summary: None,
        kind: Kind::Necklace,
        designer: None,
        permissions: None,
        skill: None,
        time: None,
        notes: None,
        units: UnitStyle::Both,
        currency: None,
        size: None,
        colourway: None,
    };
    let wear = Wear {
        girth: Length::mm(370.0),
        narrowest: Length::mm(328.0),
        ease: Length::ZERO,
        source: String::new(),
        build: Build::default(),
        child: false,
        guessed: false,
        place: None,
    };
    let (strands, closure) = (Vec::new(), Closure::default());
    Design {
        heading,
        beads: beads.into(),
        cords: cords.into(),
        findings: findings.into(),
        strands,
        closure,
        wear,
        copies: 1,
        price: None,
    }
}
