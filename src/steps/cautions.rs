//! Cautions: what can hurt the maker or the wearer, as far as this design gives cause.
//!
//! A sheet never says that a piece complies with a rule: it names what to look up and defers to the
//! rules of the place and to a qualified person. Sources behind the cautions:
//!
//! - Cut ends fly: several makers' pages.
//! - Small parts: 16 CFR 1501.4 (a cylinder 1.25 in wide and 1 to 2.25 in deep; under 3 years).
//! - Beads and cords at an infant's neck: FDA safety communication of 2018-12-20 (the death of a
//!   child of 18 months and the choking of one of 7 months, on teething jewellery); Soudek and
//!   McLaughlin, Paediatr Child Health 2018;23(2):106-110 (necklaces that do not open under a pull).
//! - Nickel: REACH (EC 1907/2006) Annex XVII entry 27.
//! - Lead: REACH Annex XVII entry 63; CPSIA section 101(a). Glass and crystal beads are not excluded
//!   from the latter (request denied, International Trade Today 2009-07-20).
//! - Cadmium: REACH Annex XVII entry 23.
//! - Children's jewellery: ASTM F2923 (its scope).
//! - Magnets that are swallowed: 16 CFR part 1262 (recalled).

use super::tools::{glues, has_cord, has_finding};
use crate::design::{Design, Finding};
use crate::pattern::{CordKind, FindingKind, Kind};
use crate::trade::{densities, metals};

/// What can hurt, as far as a design gives cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caution {
    /// Cut ends fly.
    Eyes,
    /// Memory wire springs, and its cut ends are sharp.
    HardWire,
    /// Beads and findings are small parts.
    Children,
    /// A cord round the neck that does not come open.
    LongCord,
    /// A cord round the neck that lets go when pulled.
    Breakaway,
    /// The piece is for a child: beads and findings are small parts, and rules are stricter.
    ForAChild,
    /// Metal against the skin.
    Metals,
    /// Glass and crystal.
    Glass,
    /// Glue.
    Glue,
    /// Elastic ages.
    Elastic,
    /// Rules differ from place to place; it defers to them and to a qualified person.
    Rules,
}

/// The cautions that this design gives cause for; the last defers to local rules.
#[must_use]
pub fn cautions(design: &Design) -> Vec<Caution> {
    let round_the_neck = matches!(design.heading.kind, Kind::Necklace | Kind::Strap);
    let opens = lets_go(design).is_some();
    let choices = [
        (cuts_metal(design), Caution::Eyes),
        (has_cord(design, CordKind::MemoryWire), Caution::HardWire),
        (!design.wear.child, Caution::Children),
        (design.wear.child, Caution::ForAChild),
        (round_the_neck && !opens, Caution::LongCord),
        (round_the_neck && opens, Caution::Breakaway),
        (has_metal(design), Caution::Metals),
        (has_glass(design), Caution::Glass),
        (glues(design), Caution::Glue),
        (has_cord(design, CordKind::Elastic), Caution::Elastic),
        (true, Caution::Rules),
    ];
    choices.into_iter().filter(|(applies, _)| *applies).map(|(_, caution)| caution).collect()
}

/// What of its closure lets go by itself when pulled.
pub(super) fn lets_go(design: &Design) -> Option<&Finding> {
    design.closure.parts().map(|part| &design.findings[part.finding]).find(|finding| finding.breakaway)
}

/// Whether wire, pins or chain are cut.
pub(super) fn cuts_metal(design: &Design) -> bool {
    cuts_soft_metal(design) || has_cord(design, CordKind::MemoryWire)
}

/// Whether metal is cut that does not spoil flush cutters.
pub(super) fn cuts_soft_metal(design: &Design) -> bool {
    let findings = [FindingKind::EyePin, FindingKind::HeadPin, FindingKind::Chain];
    let cords = [CordKind::Wire, CordKind::Chain];
    findings.into_iter().any(|kind| has_finding(design, kind)) || cords.into_iter().any(|kind| has_cord(design, kind))
}

/// Whether anything may be metal: wire and chain, findings but tassels of thread and what is said to be of another
/// material that is known, and beads that are said to be.
fn has_metal(design: &Design) -> bool {
    let names_metal = |material: &String| metals::colour(material).is_some();
    let other = |material: &String| !names_metal(material) && densities::density(material).is_some();
    let finding = |finding: &Finding| match &finding.material {
        Some(material) => !other(material),
        None => finding.kind() != FindingKind::Tassel,
    };
    let cords = [CordKind::Wire, CordKind::Chain, CordKind::MemoryWire].into_iter().any(|kind| has_cord(design, kind));
    cords
        || design.findings.iter().any(finding)
        || design.beads.iter().filter_map(|bead| bead.material.as_ref()).any(names_metal)
}

fn has_glass(design: &Design) -> bool {
    let glassy = |material: &String| {
        let material = material.to_lowercase();
        material.contains("glass") || material.contains("crystal")
    };
    design.beads.iter().filter_map(|bead| bead.material.as_ref()).any(glassy)
}
