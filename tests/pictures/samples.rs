//! A design with the beads and findings that a test asks for.

use festoon::art::{Ink, Stencils};
use festoon::design::{Bead, Cord, Design, Finding, Form, JumpRing, Model, Stated};
use festoon::paint::mark::Rgb;
use festoon::palette::{Coat, Palette};
use festoon::pattern::{CordKind, FindingKind, Finish, Kind, Shape};
use festoon::units::Length;

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
    let mut bead = Bead::new(&format!("{shape}-{finish}"), shape, [across, across * along].map(Length::mm));
    (bead.name, bead.letter) = (format!("{finish} {shape}"), "A".into());
    (bead.thick, bead.hole) = (Stated::Stated(Length::mm(across * thick)), Stated::Stated(Length::mm(across * hole)));
    (bead, Coat::new(colour, finish))
}

/// A finding of usual dimensions.
pub fn finding(kind: FindingKind) -> Finding {
    let mut finding = Finding::new(&kind.word().replace(' ', "-"), Form::usual(kind));
    finding.name = kind.word().into();
    finding
}

/// A jump ring's sizes, in mm.
pub fn ring(inside: f64, wire: f64) -> JumpRing {
    let mut ring = JumpRing::new(Length::mm(inside));
    ring.wire = Stated::Stated(Length::mm(wire));
    ring
}

/// A cord.
pub fn cord(kind: CordKind, diameter: f64) -> Cord {
    Cord::new(kind.word(), kind, Length::mm(diameter))
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
