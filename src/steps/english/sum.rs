//! What each part of a strand takes of it, so that a reader can add all of them up to its length.

use crate::design::{Bit, Design, Finding, Strand, What};
use crate::english::{count, list};
use crate::pattern::FindingKind;
use crate::steps::ends::{Fastening, beyond, end, way};
use crate::steps::side::Side;
use crate::units::{INCH, Length, UnitStyle};

/// Bare cord in mm that is none.
const NONE: f64 = 0.05;

/// `Added up: 40A 157.8 mm, 7B 40.9 mm, bare 209 mm and 2 ends (loop, tube crimp) 9.5 mm are 419.1 mm.`
#[must_use]
pub fn sum(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let parts = parts(design, strand, units);
    let lengths: Vec<_> = parts.iter().map(|(_, length)| *length).collect();
    let (each, whole) = added(&lengths, units);
    let each: Vec<_> = parts.iter().zip(each).map(|((name, _), said)| format!("{name} {said}")).collect();
    format!("Added up: {} are {whole}.", list(&each))
}

/// The parts that take some of a strand, by name, with what all of each take.
fn parts(design: &Design, strand: &Strand, units: UnitStyle) -> Vec<(String, f64)> {
    let taken = |is: &dyn Fn(&What) -> bool| {
        let bits: Vec<&Bit> = strand.bits().filter(|bit| is(&bit.what)).collect();
        (bits.len() as u64, bits.iter().map(|bit| bit.length()).sum::<f64>())
    };
    let beads = design.beads.entries().map(|(at, bead)| {
        let (many, takes) = taken(&|what| *what == What::Bead(at));
        (format!("{many}{}", bead.letter), takes)
    });
    let findings = design.findings.entries().map(|(at, finding)| {
        let (many, takes) = taken(&|what| *what == What::Finding(at));
        (format!("{many} × {}", finding.name), takes)
    });
    let of = |noun: &str, (many, takes): (u64, f64)| (count(many, noun), takes);
    let knots = of("knot", taken(&|what| *what == What::Knot));
    let dangles = of("dangle", taken(&|what| matches!(what, What::Dangle(_))));
    let all = beads.chain(findings).chain([knots, dangles, ("bare".to_owned(), strand.bare().value())]);
    all.chain(ends(design, strand, units)).filter(|(_, takes)| *takes > NONE).collect()
}

/// What both ends take, told once where they are alike.
fn ends(design: &Design, strand: &Strand, units: UnitStyle) -> Vec<(String, f64)> {
    let said =
        [Side::First, Side::Last].map(|side| (of_end(design, strand, side, units), end(strand, side).takes.value()));
    let bracketed = |each: &str, has: String| if has.is_empty() { has } else { format!(" ({each}{has})") };
    let [(first, one), (last, other)] = said;
    if first == last {
        vec![(format!("2 ends{}", bracketed("each ", first)), one + other)]
    } else {
        vec![(format!("first end{}", bracketed("", first)), one), (format!("last end{}", bracketed("", last)), other)]
    }
}

/// `loop 2.76 mm, tube crimp 2 mm`: what an end has, and what of it adds to the strand.
fn of_end(design: &Design, strand: &Strand, side: Side, units: UnitStyle) -> String {
    let (end, way) = (end(strand, side), way(design, strand, side));
    let told = |what: &str, length: Length| format!("{what} {}", fine(length, units));
    let word = if way == Fastening::Hitched { "hitch" } else { "loop" };
    let a_loop = (end.bight > Length::ZERO).then(|| told(word, end.bight));
    let knot = (way == Fastening::Knotted && a_loop.is_some()).then(|| told("knot", end.takes - end.bight));
    let findings = || end.findings.iter().map(|at| &design.findings[*at]);
    let within = |finding: &Finding| finding.length().unwrap_or_default();
    let beyond = beyond(design, end);
    let names = findings().map(|finding| match finding.kind() {
        FindingKind::WireGuard => format!("{} in it", finding.name),
        FindingKind::CrimpCover if beyond > Length::mm(NONE) => format!("{} beyond it", told(&finding.name, beyond)),
        FindingKind::CrimpCover => format!("{} over it", finding.name),
        _ => told(&finding.name, within(finding)),
    });
    a_loop.into_iter().chain(knot).chain(names).collect::<Vec<_>>().join(", ")
}

/// A part of an end to the hundredth.
fn fine(length: Length, units: UnitStyle) -> String {
    if units == UnitStyle::In { format!("{:.2} in", length.value() / INCH) } else { length.hundredths() }
}

/// Lengths in mm to the tenth, or in inches to the hundredth, rounded so that they add up to their whole as it is told: those
/// that lose most by being rounded down are rounded up.
fn added(lengths: &[f64], units: UnitStyle) -> (Vec<String>, String) {
    let (unit, places, word) = if units == UnitStyle::In { (INCH / 100.0, 2, "in") } else { (0.1, 1, "mm") };
    let exact: Vec<f64> = lengths.iter().map(|length| length / unit).collect();
    let whole = exact.iter().sum::<f64>().round();
    let mut parts: Vec<f64> = exact.iter().map(|part| part.floor()).collect();
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by(|one, other| (exact[*other] - parts[*other]).total_cmp(&(exact[*one] - parts[*one])));
    let short = (whole - parts.iter().sum::<f64>()).max(0.0) as usize;
    order.iter().take(short).for_each(|at| parts[*at] += 1.0);
    let scale = 10_f64.powi(places);
    let said = |part: &f64| format!("{} {word}", part / scale);
    (parts.iter().map(said).collect(), said(&whole))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_rounded_so_that_they_add_up() {
        // Three times 0.14 mm are 0.42 mm: told as 0.1, 0.1 and 0.2, which are 0.4.
        let (parts, whole) = added(&[0.14, 0.14, 0.14], UnitStyle::Mm);
        assert_eq!((parts.join(", ").as_str(), whole.as_str()), ("0.2 mm, 0.1 mm, 0.1 mm", "0.4 mm"));
        let (parts, whole) = added(&[25.4, 12.7], UnitStyle::In);
        assert_eq!((parts.join(", ").as_str(), whole.as_str()), ("1 in, 0.5 in", "1.5 in"));
    }
}
