//! What each part of a strand takes of it, so that a reader can add all of them up to its length.

use super::words::{count, list};
use crate::design::{Bit, Design, End, Strand, What};
use crate::units::{INCH, UnitStyle};

/// Bare cord in mm that is none.
const NONE: f64 = 0.05;

/// `Added up: 40A 157.8 mm, 7B 40.9 mm, bare 209 mm and 2 ends (loop, tube crimp) 9.5 mm are 419.1 mm.`
#[must_use]
pub fn sum(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let parts = parts(design, strand);
    let lengths: Vec<_> = parts.iter().map(|(_, length)| *length).collect();
    let (each, whole) = added(&lengths, units);
    let each: Vec<_> = parts.iter().zip(each).map(|((name, _), said)| format!("{name} {said}")).collect();
    format!("Added up: {} are {whole}.", list(&each))
}

/// The parts that take some of a strand, by name, with what all of each take.
fn parts(design: &Design, strand: &Strand) -> Vec<(String, f64)> {
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
    all.chain(ends(design, strand)).filter(|(_, takes)| *takes > NONE).collect()
}

/// What both ends take, told once where they are alike.
fn ends(design: &Design, strand: &Strand) -> Vec<(String, f64)> {
    let said = strand.ends.each_ref().map(|end| (of_end(design, end), end.takes.value()));
    let [(first, one), (last, other)] = said;
    if first == last {
        vec![(format!("2 ends{first}"), one + other)]
    } else {
        vec![(format!("first end{first}"), one), (format!("last end{last}"), other)]
    }
}

/// ` (loop, tube crimp)`: what an end has.
fn of_end(design: &Design, end: &End) -> String {
    let a_loop = (end.bight.value() > 0.0).then(|| format!("loop {}", end.bight.tenths()));
    let names = end.findings.iter().map(|at| design.findings[*at].name.clone());
    let has: Vec<_> = a_loop.into_iter().chain(names).collect();
    if has.is_empty() { String::new() } else { format!(" ({})", has.join(", ")) }
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
