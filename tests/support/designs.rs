//! Designs made by hand, for stages that start from one.

use festoon::design::*;
use festoon::pattern::{CordKind, Drilled, FindingKind, Kind, Outline, Shape};
use festoon::source::Place;
use festoon::units::{Length, Mass, Money};

pub fn sold(lot: Lot, coins: i64) -> Option<Sold> {
    Some(Sold { lot, price: Some(Money::coins(coins)), from: None })
}

pub fn bead(id: &str, letter: &str, size: f64) -> Bead {
    Bead {
        id: id.into(),
        name: format!("{id} bead"),
        letter: letter.into(),
        shape: Shape::Round,
        across: Length::mm(size),
        along: Length::mm(size),
        thick: Stated::Stated(Length::mm(size)),
        hole: Stated::Stated(Length::mm(1.0)),
        tolerance: Length::mm(0.2),
        pitch: None,
        mass: Mass::grams(0.3),
        material: Some("glass".into()),
        sold: None,
        drilled: Drilled::Lengthwise,
        bores: None,
        instead: Vec::new(),
        place: Place::default(),
    }
}

pub fn cord(id: &str, kind: CordKind) -> Cord {
    Cord {
        id: id.into(),
        name: format!("{id} cord"),
        kind,
        is_pin: false,
        diameter: Length::mm(0.4),
        take_up: Length::ZERO,
        strength: None,
        wire: None,
        stiffness: Stated::Assumed(0.0),
        mass_per_metre: Mass::grams(0.5),
        needle: false,
        coil: None,
        link: None,
        sold: sold(Lot::Length(Length::mm(10_000.0)), 790),
        place: Place::default(),
    }
}

pub fn finding(name: &str, kind: FindingKind) -> Finding {
    Finding {
        id: name.into(),
        name: name.into(),
        form: form(kind),
        mass: Mass::grams(0.1),
        material: None,
        breakaway: false,
        comes_with: None,
        sold: None,
        place: Place::default(),
    }
}

/// A finding of a kind, 12 mm long where its kind has a length.
pub fn form(kind: FindingKind) -> Form {
    let [length, outside, inside, wire] = [12.0, 2.0, 1.3, 0.7].map(Length::mm);
    let body = Dimensions { length, outside: Some(outside), inside: Some(inside), wire: None };
    let pin = |foot| Form::Pin(Pin { length, wire, foot, outside: None });
    let hanger = Hanger { length, wire: Stated::Stated(wire), outside: None, inside: None };
    match kind {
        FindingKind::Crimp => Form::Crimp(Crimp { length, outside, inside }),
        FindingKind::Cone => {
            Form::Cone(Cone { length, inside: Length::mm(8.0), tip: inside, mouth: None, outside: None })
        }
        FindingKind::EyePin => pin(Foot::Eye),
        FindingKind::HeadPin => pin(Foot::Head),
        FindingKind::Clasp => Form::Clasp(body),
        FindingKind::SpringRing => Form::SpringRing(body),
        FindingKind::Hook => Form::Hook(body),
        FindingKind::ToggleRing => Form::ToggleRing(body),
        FindingKind::ToggleBar => Form::ToggleBar(body),
        FindingKind::BarrelHalf => Form::BarrelHalf(body),
        FindingKind::Chain => {
            Form::Chain(ChainLinks { link: Length::mm(4.0), wire: Stated::Stated(wire), length: None })
        }
        FindingKind::JumpRing => ring(false),
        FindingKind::SpacerBar => bar(1),
        FindingKind::EndBar => Form::EndBar(sizes(1)),
        FindingKind::BoxHalf => Form::BoxHalf(sizes(1)),
        FindingKind::SlideHalf => Form::SlideHalf(sizes(1)),
        FindingKind::BeadCap => Form::BeadCap(Cap { length, outside: Some(outside), inside: None, mouth: None }),
        FindingKind::CrimpCover => Form::CrimpCover(body),
        FindingKind::WireGuard => Form::WireGuard(body),
        FindingKind::Bail => Form::Bail(hanger),
        FindingKind::EarWire => Form::EarWire(hanger),
        FindingKind::KnotCover => Form::KnotCover(KnotCover { body, bead: None }),
        FindingKind::CordEnd => Form::CordEnd(CordEnd { length, inside, outside: Some(outside), wire: None }),
        FindingKind::Charm => {
            Form::Charm(Charm { length, breadth: Stated::Assumed(length * 0.45), outline: Outline::Leaf })
        }
        FindingKind::Tassel => Form::Tassel(Tassel { length, breadth: Stated::Assumed(length * 0.16), wound: None }),
        FindingKind::SpectacleLoop => Form::SpectacleLoop(body),
    }
}

/// A spacer bar of so many holes.
pub fn bar(holes: u32) -> Form {
    Form::SpacerBar(sizes(holes))
}

fn sizes(holes: u32) -> Bar {
    let [length, outside, spacing] = [12.0, 2.0, 5.0].map(Length::mm);
    Bar { length, spacing, holes, outside: Some(outside), inside: None, wire: None }
}

/// A jump ring, soldered shut or not.
pub fn ring(closed: bool) -> Form {
    let [inside, wire] = [4.0, 0.7].map(Length::mm);
    Form::JumpRing(JumpRing { inside, wire: Stated::Stated(wire), outside: None, closed })
}

/// A part of a closure: the finding of this number.
pub fn part(finding: usize) -> Part {
    Part { finding: nth(finding), reach: Length::mm(12.0), least: Length::mm(12.0), cut: None }
}

pub fn chain(finding: usize, length: f64) -> Part {
    Part { finding: nth(finding), reach: Length::mm(length), least: Length::mm(4.0), cut: Some(Length::mm(length)) }
}

pub fn end(findings: &[usize]) -> End {
    End {
        findings: findings.iter().copied().map(nth).collect(),
        bight: Length::mm(4.0),
        takes: Length::mm(6.0),
        take_up: Length::ZERO,
    }
}

/// A strand of a chart, its bits those that the chart says, at least as long as they need.
pub fn strand(name: &str, finished: f64, ends: &[usize], chart: Vec<Phrase>) -> Strand {
    let (ends, bits) = ([end(ends), end(ends)], bits(&chart));
    let needed: f64 = bits.iter().map(Bit::length).sum::<f64>() + 2.0 * ends[0].takes.value();
    let mut strand = Strand::sliding(name, nth(0), Length::mm(finished.max(needed)), ends, bits);
    (strand.allowance, strand.chart) = (Length::mm(8.0), chart);
    strand
}

/// What a chart's phrases put on the cord, one bit after another; each bead takes 6 mm.
pub fn bits(chart: &[Phrase]) -> Vec<Bit> {
    chart.iter().flat_map(phrase_bits).collect()
}

fn phrase_bits(phrase: &Phrase) -> Vec<Bit> {
    match phrase {
        Phrase::Run(count, bead) => vec![bit(What::Bead(*bead), 3.0); *count as usize],
        Phrase::Times(count, list) => (0..*count).flat_map(|_| bits(list)).collect(),
        Phrase::Mirror(side, middle) => {
            let side = bits(side);
            let backwards: Vec<_> = side.iter().rev().cloned().collect();
            [side, bits(middle), backwards].concat()
        }
        Phrase::Ordered(list) => bits(list),
        Phrase::Gap(length) => vec![bit(What::Gap, length.value() / 2.0)],
        Phrase::Links(links) => vec![bit(What::Gap, f64::from(*links))],
        Phrase::Knot => vec![bit(What::Knot, 0.6)],
        Phrase::Finding(at) | Phrase::Stop(_, at) => vec![bit(What::Finding(*at), 1.0)],
        Phrase::Dangle(on, list) => vec![bit(What::Dangle(Dangle { on: *on, bits: bits(list), drop: 20.0 }), 1.0)],
    }
}

fn bit(what: What, half: f64) -> Bit {
    Bit::new(what, [half, half], 0.3)
}

/// A design of three beads (A, B, C), one wire, and findings 0 crimp, 1 head pin, 2 stop.
pub fn design(strands: Vec<Strand>) -> Design {
    design_with(Vec::new(), strands)
}

/// The same with more findings, the first of them number 3.
pub fn design_with(findings: Vec<Finding>, strands: Vec<Strand>) -> Design {
    let mut model = Model::bare("Test", Kind::Necklace, Length::mm(370.0));
    model.beads = vec![bead("reed", "A", 6.0), bead("mist", "B", 4.0), bead("brass", "C", 3.0)].into();
    model.cords = vec![cord("wire", CordKind::Wire)].into();
    model.findings = vec![
        finding("tube crimp", FindingKind::Crimp),
        finding("head pin", FindingKind::HeadPin),
        finding("stop", FindingKind::SpacerBar),
    ]
    .into();
    model.findings.extend(findings);
    model.strands = strands.into();
    Design::new(model).expect("a design")
}

/// A necklace of two strands gathered in cones, with a chain on one side and a hook on the other.
pub fn gathered() -> Design {
    let chart = |times| {
        vec![Phrase::Times(times, vec![Phrase::Run(5, nth(0)), Phrase::Run(1, nth(1))]), Phrase::Run(5, nth(0))]
    };
    let two = design(vec![strand("inner", 419.1, &[0], chart(10)), strand("outer", 463.55, &[0], chart(11))]);
    let findings = [
        ("eye pin", FindingKind::EyePin),
        ("fluted cone", FindingKind::Cone),
        ("cable chain", FindingKind::Chain),
        ("lobster clasp", FindingKind::Clasp),
    ];
    let [left, right] = [chain(5, 60.0), part(6)].map(|last| vec![part(3), part(4), last]);
    let gathered = two.changed(|model| {
        model.beads = vec![bead("reed", "A", 6.0), bead("mist", "B", 4.0)].into();
        model.findings.extend(findings.map(|(name, kind)| finding(name, kind)));
        model.closure.joins = Joins::sides(left, right);
        model.findings[nth(5)].sold = sold(Lot::Length(Length::mm(1000.0)), 500);
    });
    gathered.expect("a design")
}
