//! What each part of a strand takes of it, so that a reader can add all of them up to its length.

use crate::design::{Bit, Design, Finding, Strand, What};
use crate::english::{commas, count, list};
use crate::pattern::FindingKind;
use crate::steps::ends::{Fastening, beyond, end, way};
use crate::steps::side::Side;
use crate::units::{INCH, Length, UnitStyle, as_printed, fraction, trimmed};

/// Bare cord in mm that is none.
const NONE: f64 = 0.05;

/// What bare cord is called among the parts.
const BARE: &str = "bare";

/// `Added up in mm: 40A 157.8, 7B 40.9, bare 211 and 2 ends (each loop 2.76, tube crimp 2) 9.5 are 419.2 (16 ½ in).`
#[must_use]
pub fn sum(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let (strung, kept) = (strung(design, strand), kept(design, strand, units));
    let rounded_by_itself = |name: &str| name == BARE || !strung.is_empty();
    let lengths = strung.iter().map(|(_, length)| (*length, false));
    let lengths: Vec<_> = lengths.chain(kept.iter().map(|(name, length)| (*length, rounded_by_itself(name)))).collect();
    let each = strung.iter().chain(&kept).zip(added(&lengths, units)).map(|((name, _), said)| format!("{name} {said}"));
    let whole = lengths.iter().map(|(length, _)| length).sum();
    let inches = if units == UnitStyle::Mm { String::new() } else { format!(" ({} in)", fraction(Length::mm(whole))) };
    let unit = if units == UnitStyle::In { "inches" } else { "mm" };
    format!("Added up in {unit}: {} are {}{inches}.", list(&each.collect::<Vec<_>>()), told(whole, units))
}

/// In what lengths are added up, in mm, and with how many decimals.
const fn counted(units: UnitStyle) -> (f64, usize) {
    match units {
        UnitStyle::In => (INCH, 2),
        UnitStyle::Mm | UnitStyle::Both => (1.0, 1),
    }
}

/// A length in mm to the tenth, or in inches to the hundredth, without its unit.
fn told(length: f64, units: UnitStyle) -> String {
    let (unit, places) = counted(units);
    match units {
        UnitStyle::In => format!("{:.places$}", length / unit),
        UnitStyle::Mm | UnitStyle::Both => trimmed(length / unit, places),
    }
}

/// Lengths in mm rounded so that they add up to their whole as it is told. What is told elsewhere too, or of whose parts a
/// reader sees the sum, is rounded by itself; of the others those that lose most by being rounded down are rounded up.
fn added(lengths: &[(f64, bool)], units: UnitStyle) -> Vec<String> {
    let ((whole, places), parts_of_one) = (counted(units), if units == UnitStyle::In { 100.0 } else { 10.0 });
    let unit = whole / parts_of_one;
    let rounded = |length: f64| (as_printed(length / whole, places) * parts_of_one).round();
    let down = |&(length, kept): &(f64, bool)| if kept { rounded(length) } else { (length / unit).floor() };
    let mut parts: Vec<f64> = lengths.iter().map(down).collect();
    let lost = |at: usize| lengths[at].0 / unit - parts[at];
    let mut order: Vec<usize> = (0..parts.len()).filter(|at| !lengths[*at].1).collect();
    order.sort_by(|one, other| lost(*other).total_cmp(&lost(*one)));
    let short = rounded(lengths.iter().map(|(length, _)| length).sum()) - parts.iter().sum::<f64>();
    order.iter().cycle().take(short.abs() as usize).for_each(|at| parts[*at] += short.signum());
    parts.iter().map(|part| told(part * unit, units)).collect()
}

/// A part of a strand by name, with what all such take.
type Summand = (String, f64);

/// The parts that take some of a strand.
fn takes_some(parts: impl Iterator<Item = Summand>) -> Vec<Summand> {
    parts.filter(|(_, takes)| *takes > NONE).collect()
}

/// What is strung.
fn strung(design: &Design, strand: &Strand) -> Vec<Summand> {
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
    takes_some(beads.chain(findings).chain([knots, dangles]))
}

/// Bare cord and the ends.
fn kept(design: &Design, strand: &Strand, units: UnitStyle) -> Vec<Summand> {
    let bare = (BARE.to_owned(), strand.bare().value());
    takes_some(std::iter::once(bare).chain(ends(design, strand, units)))
}

/// What both ends take, told once where they are alike.
fn ends(design: &Design, strand: &Strand, units: UnitStyle) -> Vec<Summand> {
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

/// `loop 2.76, tube crimp 2`: what an end has, and what of it adds to the strand.
fn of_end(design: &Design, strand: &Strand, side: Side, units: UnitStyle) -> String {
    let (end, way) = (end(strand, side), way(design, strand, side));
    let told = |what: &str, length: Length| format!("{what} {}", fine(length, units));
    let word = if way == Fastening::Hitched { "hitch" } else { "loop" };
    let a_loop = end.bight.map(|bight| told(word, bight));
    let knot = end.bight.filter(|_| way == Fastening::Knotted).map(|bight| told("knot", end.takes - bight));
    let findings = || end.findings.iter().map(|at| &design.findings[*at]);
    let within = |finding: &Finding| finding.along();
    let beyond = beyond(design, end);
    let names = findings().map(|finding| match finding.kind() {
        FindingKind::WireGuard => format!("{} in it", finding.name),
        FindingKind::CrimpCover if beyond > Length::mm(NONE) => format!("{} beyond it", told(&finding.name, beyond)),
        FindingKind::CrimpCover => format!("{} over it", finding.name),
        _ => told(&finding.name, within(finding)),
    });
    commas(a_loop.into_iter().chain(knot).chain(names))
}

/// A part of an end to the hundredth, without its unit.
fn fine(length: Length, units: UnitStyle) -> String {
    match units {
        UnitStyle::In => told(length.value(), units),
        UnitStyle::Mm | UnitStyle::Both => trimmed(length.value(), 2),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_rounded_so_that_they_add_up() {
        // Three times 0.14 mm are 0.42 mm: told as 0.1, 0.1 and 0.2, which are 0.4.
        let parts = |lengths: &[(f64, bool)], units| added(lengths, units).join(" ");
        assert_eq!(parts(&[(0.14, false); 3], UnitStyle::Mm), "0.2 0.1 0.1");
        assert_eq!(parts(&[(25.4, false), (12.7, false)], UnitStyle::In), "1.00 0.50");
        // What is bare is told elsewhere too: 225.86 mm are 225.9, and the others make up for that.
        let bare = [(140.94, false), (46.97, false), (225.86, true), (9.53, false)];
        assert_eq!(parts(&bare, UnitStyle::Mm), "140.9 47 225.9 9.5");
        assert_eq!(parts(&[(0.14, false), (0.14, false), (0.16, true)], UnitStyle::Mm), "0.1 0.1 0.2");
    }
}
