//! Designs made by hand, for stages that start from one.

use festoon::design::*;
use festoon::pattern::{CordKind, FindingKind, Kind, Shape};
use festoon::units::{Length, Mass, Money};

pub fn sold(lot: Lot, coins: i64) -> Option<Sold> {
    let mut sold = Sold::new(lot);
    sold.price = Some(Money::coins(coins));
    Some(sold)
}

pub fn bead(id: &str, letter: &str, size: f64) -> Bead {
    let mut bead = Bead::new(id, Shape::Round, [Length::mm(size); 2]);
    (bead.name, bead.letter) = (format!("{id} bead"), letter.into());
    (bead.mass, bead.material) = (Stated::Stated(Mass::grams(0.3)), Some("glass".into()));
    bead
}

/// Cord of which a knot takes nothing, so that what is cut is counted by head.
pub fn cord(id: &str, kind: CordKind) -> Cord {
    let mut cord = Cord::new(id, kind, Length::mm(0.4));
    cord.name = format!("{id} cord");
    cord.take_up = Stated::Stated(Length::ZERO);
    cord.mass_per_metre = Stated::Stated(Mass::grams(0.5));
    cord.sold = sold(Lot::Length(Length::mm(10_000.0)), 790);
    cord
}

pub fn finding(name: &str, kind: FindingKind) -> Finding {
    let mut finding = Finding::new(name, Form::usual(kind));
    finding.mass = Stated::Stated(Mass::grams(0.1));
    finding
}

/// A spacer bar of so many holes.
pub fn bar(holes: u32) -> Form {
    Form::SpacerBar(Bar::new(Length::mm(12.0), holes, Length::mm(5.0)))
}

/// A jump ring that is soldered shut.
pub fn soldered() -> Form {
    let mut ring = JumpRing::new(Length::mm(4.0));
    ring.closed = true;
    Form::JumpRing(ring)
}

/// A part of a closure: the finding of this number.
pub fn part(finding: usize) -> Part {
    Part::new(nth(finding), Length::mm(12.0))
}

pub fn chain(finding: usize, length: f64) -> Part {
    let mut part = Part::new(nth(finding), Length::mm(length));
    (part.least, part.cut) = (Length::mm(4.0), Some(Length::mm(length)));
    part
}

pub fn end(findings: &[usize]) -> End {
    End::new(findings.iter().copied().map(nth).collect(), Some(Length::mm(4.0)), Length::mm(6.0))
}

/// A strand of a chart, its bits those that the chart says, at least as long as they need.
pub fn strand(name: &str, finished: f64, ends: &[usize], chart: Vec<Phrase>) -> Strand {
    let (ends, bits) = ([end(ends), end(ends)], bits(&chart));
    let needed: f64 = bits.iter().map(Bit::length).sum::<f64>() + 2.0 * ends[0].takes.value();
    let mut strand = Strand::sliding(name, nth(0), Length::mm(finished.max(needed)), ends, bits);
    (strand.allowance, strand.chart) = (Stated::Stated(Length::mm(8.0)), chart);
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
        Phrase::Dangle(on, list) => vec![bit(What::Dangle(Dangle::new(*on, bits(list), 20.0)), 1.0)],
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
