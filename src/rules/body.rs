//! Who wears the piece: children, and skin that some metals harm. Every remark here defers to local
//! rules; none says that a piece complies.

use crate::design::{Design, limb};
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::wearing::{Metal, Wearing};

/// Remarks about wearers.
pub fn check(design: &Design) -> Vec<Remark> {
    breakaway(design).into_iter().chain(unmeasured(design)).chain(metals(design)).collect()
}

/// A cord round a child's neck must open when it catches.
fn breakaway(design: &Design) -> Option<Remark> {
    let parts = || design.closure.parts();
    let opens = parts().any(|part| design.findings[part.finding].breakaway);
    let neck = matches!(design.heading.kind, Kind::Necklace | Kind::Strap);
    (design.wear.child && neck && !opens)
        .then(|| Remark::new(Wearing::ChildBreakaway).at(design.wear.place.unwrap_or(design.closure.place)))
}

/// A child's size is asked for, never taken from grown people.
fn unmeasured(design: &Design) -> Option<Remark> {
    design.wear.is_guessed().then(|| {
        let said = Wearing::ChildUnmeasured { limb: limb(design.heading.kind), girth: design.wear.girth };
        Remark::new(said).at(design.wear.place.unwrap_or(design.closure.place))
    })
}

/// What a material may give off, by words that it must all have.
const CONCERNS: &[(&str, Metal)] = &[
    ("nickel", Metal::Nickel),
    ("alpaca", Metal::Nickel),
    ("german silver", Metal::Nickel),
    ("brass", Metal::Lead),
    ("pewter", Metal::Lead),
    ("lead", Metal::Lead),
    ("crystal", Metal::Lead),
];
/// Words that deny a concern: `lead-free crystal`, `rock crystal`.
const FREE: &[&str] = &["free", "rock"];

fn metals(design: &Design) -> Vec<Remark> {
    [Metal::Nickel, Metal::Lead].into_iter().filter_map(|metal| declared(metal, design)).collect()
}

/// All that may give off a metal, at the place of the first.
fn declared(metal: Metal, design: &Design) -> Option<Remark> {
    let beads = design.beads.iter().map(|bead| (&bead.name, &bead.material, bead.place));
    let findings = design.findings.iter().map(|finding| (&finding.name, &finding.material, finding.place));
    let material_gives = |material: &Option<String>| material.as_deref().and_then(concern) == Some(metal);
    let giving: Vec<_> = beads.chain(findings).filter(|(_, material, _)| material_gives(material)).collect();
    let (_, _, place) = giving.first()?;
    let things = giving.iter().map(|(name, _, _)| (*name).clone()).collect();
    Some(Remark::new(Wearing::DeclareMetal { metal, things }).at(*place))
}

fn concern(material: &str) -> Option<Metal> {
    let lower = material.to_lowercase();
    let words: Vec<_> = lower.split(|c: char| !c.is_alphanumeric()).collect();
    let named = |key: &str| key.split(' ').all(|word| words.contains(&word));
    let denied = FREE.iter().any(|word| words.contains(word));
    CONCERNS.iter().find(|(key, _)| !denied && named(key)).map(|(_, metal)| *metal)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn a_childs_necklace_opens_when_pulled() {
        let mut design = sample::necklace();
        assert_eq!(check(&design), []);
        design = design.changed(|model| model.wear.child = true).unwrap();
        assert_eq!(sample::codes(&check(&design)), [Code::ChildBreakaway]);
        design = design.changed(sample::add_clasp).unwrap();
        assert_eq!(sample::codes(&check(&design)), [Code::ChildBreakaway]);
        design =
            design.changed(|model| model.findings.iter_mut().for_each(|finding| finding.breakaway = true)).unwrap();
        assert_eq!(check(&design), []);
    }

    #[test]
    fn materials_to_declare() {
        for material in ["brass", "Nickel silver", "lead crystal", "crystal", "German silver"] {
            assert!(concern(material).is_some(), "{material}");
        }
        for material in ["lead-free crystal", "nickel-free brass", "glass", "rock crystal", "sterling silver", ""] {
            assert_eq!(concern(material), None, "{material}");
        }
    }
}
