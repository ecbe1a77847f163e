//! Who wears the piece: children, and skin that some metals harm. Every remark here defers to local
//! rules; none says that a piece complies.

use crate::design::{Design, limb};
use crate::pattern::Kind;
use crate::remark::{Code, Remark};

/// Remarks about wearers.
pub fn check(design: &Design) -> Vec<Remark> {
    breakaway(design).into_iter().chain(unmeasured(design)).chain(metals(design)).collect()
}

/// A cord round a child's neck must open when it catches.
fn breakaway(design: &Design) -> Option<Remark> {
    let parts = || design.closure.parts();
    let opens = parts().any(|part| design.findings[part.finding].breakaway);
    let neck = matches!(design.heading.kind, Kind::Necklace | Kind::Strap);
    (design.wear.child && neck && !opens).then(|| {
        let headline = "the piece is for a child's neck and has no closure that opens by itself when pulled";
        let help = "use a clasp with `breakaway: true`, and ask what the rules where you sell it demand";
        Remark::words(Code::ChildBreakaway, headline)
            .at(design.wear.place.unwrap_or(design.closure.place))
            .helping(help)
    })
}

/// A child's size is asked for, never taken from grown people.
fn unmeasured(design: &Design) -> Option<Remark> {
    design.wear.is_guessed().then(|| {
        let (key, girth) = (limb(design.heading.kind).key(), design.wear.girth.tenths());
        let headline =
            format!("the piece is for a child of whom no measure is written; it is drawn on a {key} of {girth}");
        let help = format!("measure the child and write `wear: {{ {key}: … }}`; nothing is said of the fit until then");
        Remark::words(Code::ChildUnmeasured, headline)
            .at(design.wear.place.unwrap_or(design.closure.place))
            .helping(help)
    })
}

/// What a material may give off, by words that it must all have.
const CONCERNS: &[(&str, &str)] = &[
    ("nickel", "nickel"),
    ("alpaca", "nickel"),
    ("german silver", "nickel"),
    ("brass", "lead"),
    ("pewter", "lead"),
    ("lead", "lead"),
    ("crystal", "lead"),
];
/// Words that deny a concern: `lead-free crystal`, `rock crystal`.
const FREE: &[&str] = &["free", "rock"];

fn metals(design: &Design) -> Vec<Remark> {
    ["nickel", "lead"].into_iter().filter_map(|metal| declared(metal, design)).collect()
}

/// All that may give off a metal, at the place of the first.
fn declared(metal: &str, design: &Design) -> Option<Remark> {
    let beads = design.beads.iter().map(|bead| (&bead.name, &bead.material, bead.place));
    let findings = design.findings.iter().map(|finding| (&finding.name, &finding.material, finding.place));
    let material_gives = |material: &Option<String>| material.as_deref().and_then(concern) == Some(metal);
    let giving: Vec<_> = beads.chain(findings).filter(|(_, material, _)| material_gives(material)).collect();
    let (_, _, place) = giving.first()?;
    let names: Vec<_> = giving.iter().map(|(name, _, _)| name.as_str()).collect();
    let headline = format!("what these are made of may give off {metal}: {}", names.join(", "));
    let help = "ask their makers for a declaration, and tell buyers as the rules where you sell demand";
    Some(Remark::words(Code::DeclareMetal, headline).at(*place).helping(help))
}

fn concern(material: &str) -> Option<&'static str> {
    let lower = material.to_lowercase();
    let words: Vec<_> = lower.split(|c: char| !c.is_alphanumeric()).collect();
    let named = |key: &str| key.split(' ').all(|word| words.contains(&word));
    let denied = FREE.iter().any(|word| words.contains(word));
    CONCERNS.iter().find(|(key, _)| !denied && named(key)).map(|(_, metal)| *metal)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::sample;

    #[test]
    fn a_childs_necklace_opens_when_pulled() {
        let mut design = sample::necklace();
        assert_eq!(check(&design), []);
        design.wear.child = true;
        assert_eq!(sample::codes(&check(&design)), [Code::ChildBreakaway]);
        sample::add_clasp(&mut design);
        assert_eq!(sample::codes(&check(&design)), [Code::ChildBreakaway]);
        design.findings.iter_mut().for_each(|finding| finding.breakaway = true);
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
