//! What is measured of strung beads, in words.

use super::words::strands as names;
use super::{Teller, Told};
use crate::design::{Bias, Design, Finding, Index, Strand, What};
use crate::english::{count, list, plural};
use crate::units::{Length, UnitStyle, ranged};

/// A ruler is read to about a thirty-second of an inch, however alike the beads are.
const LEAST_SPREAD: Length = Length::inches(1.0 / 32.0);

impl Teller<'_> {
    /// Measure strands that are alike.
    pub(super) fn measure(self, strands: &[Index<Strand>]) -> Told {
        let first = &self.design.strands[strands[0]];
        let knotted = first.bits().any(|bit| bit.what == What::Knot);
        let close = if knotted { "Lay" } else { "Push the beads together and lay" };
        let each = if strands.len() > 1 { ", each by itself" } else { "" };
        let text = format!("{close} {} straight along a ruler{each}.", names(self.design, strands));
        Told::new("Measure", text).check(measures(self.design, first, self.units))
    }
}

/// `The beads measure 13 in (330 mm), likely to within 1.6 mm`; and to within what, where a lot is off one way and that
/// matters.
#[must_use]
pub fn measures(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let knotted = strand.bits().any(|bit| bit.what == What::Knot);
    let besides = besides(design, strand);
    let what = match (knotted, besides.as_slice()) {
        (true, _) => "The beads with their knots measure".to_owned(),
        (false, []) => "The beads measure".to_owned(),
        (false, besides) => format!("Pushed together, the beads and {} measure", list(besides)),
    };
    let curved = if design.cords[strand.cord].is_sprung() { " along the curved wire" } else { "" };
    let bias = strand.bias(design).map(|bias| format!("; {}", self::bias(&bias, units))).unwrap_or_default();
    format!(
        "{what} {}{curved}{}, likely to within {}{}{bias}.",
        units.ruler(strand.beaded()),
        not_counted(design, strand),
        units.ruler(strand.spread(design).max(LEAST_SPREAD)),
        if knotted { " if the knots are as long as told" } else { "" }
    )
}

/// What takes up cord among the beads: `the 14 tube crimps strung with them`, `the loop of their dangle`.
fn besides(design: &Design, strand: &Strand) -> Vec<String> {
    let each = design.findings.entries().filter_map(|(at, finding)| {
        match strand.bits().filter(|bit| bit.what == What::Finding(at)).count() as u64 {
            0 => None,
            1 => Some(finding.name.clone()),
            many => Some(count(many, &finding.name)),
        }
    });
    let each: Vec<_> = each.collect();
    let findings = (!each.is_empty()).then(|| format!("the {} strung with them", list(&each)));
    let dangles = strand.bits().filter(|bit| matches!(bit.what, What::Dangle(_)) && bit.length() > 0.0).count();
    let loops = match dangles {
        0 => None,
        1 => Some("the loop of their dangle".to_owned()),
        more => Some(format!("the loops of their {more} dangles")),
    };
    findings.into_iter().chain(loops).collect()
}

/// `, the tube crimps at the ends not counted`, where some are strung among the beads, too.
fn not_counted(design: &Design, strand: &Strand) -> String {
    let strung = |at: &&Index<Finding>| strand.bits().any(|bit| bit.what == What::Finding(**at));
    let at_ends = strand.ends.iter().flat_map(|end| &end.findings).find(strung);
    at_ends.map_or_else(String::new, |at| {
        format!(", the {} at the ends not counted", plural(2, &design.findings[*at].name))
    })
}

/// `to within 4.7 mm if all are 0.1 mm off one way`.
#[must_use]
pub fn bias(bias: &Bias, units: UnitStyle) -> String {
    let each = ranged(bias.each.map(|length| units.gauge(length)));
    format!("to within {} if all are {each} off one way", units.ruler(bias.by))
}
