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

use super::tools::{glues, has_cord, has_finding};
use crate::design::Design;
use crate::pattern::{CordKind, FindingKind, Kind};

/// One caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What it is about, in a word or two.
    pub title: &'static str,
    /// What to do.
    pub text: &'static str,
}

const EYES: Caution = Caution {
    title: "Eyes",
    text: "Cut ends fly. Wear eye protection, hold the end or cut into a bag, and point it down and away from faces.",
};
const CHILDREN: Caution = Caution {
    title: "Children",
    text: "Beads and findings are small parts and can choke. This piece is not for young children, and no bead \
           jewellery is for a baby to wear or to chew.",
};
const LONG_CORD: Caution = Caution {
    title: "Long cords",
    text: "A cord round the neck can catch and may not come open. Take the piece off for sleep, sport and machines, \
           and keep it away from young children.",
};
const BREAKAWAY: Caution = Caution {
    title: "Long cords",
    text: "A cord round the neck can catch. What fastens it should let go by itself when pulled: try that before each \
           wearing. Take the piece off for sleep, sport and machines, and keep it away from young children.",
};
const FOR_A_CHILD: Caution = Caution {
    title: "For a child",
    text: "Rules for what children wear are stricter: on small parts, cords, lead, cadmium and nickel. Have the \
           finished piece tested before you sell or give it, and let the child wear it only while you watch.",
};
const METALS: Caution = Caution {
    title: "Metals",
    text: "Metal against the skin can hold nickel, lead or cadmium, and nickel gives some people a rash. Ask the \
           supplier in writing what each part is made of, and tell the wearer.",
};
const GLASS: Caution = Caution {
    title: "Glass and crystal",
    text: "Glass and crystal can hold lead, and a broken bead is sharp. Ask the supplier, and throw chipped beads away.",
};
const GLUE: Caution = Caution { title: "Glue", text: "Follow the label of the glue, and work in fresh air." };
const ELASTIC: Caution = Caution {
    title: "Elastic",
    text: "Elastic ages and snaps. Look at it now and then, and string the piece anew before it gives way.",
};
const RULES: Caution = Caution {
    title: "Before you sell",
    text: "This sheet does not say that a piece complies with any rule. Rules for jewellery differ from place to \
           place: look up those of yours, and ask a qualified person.",
};

/// The cautions that this design gives cause for; the last defers to local rules.
#[must_use]
pub fn cautions(design: &Design) -> Vec<Caution> {
    let round_the_neck = matches!(design.heading.kind, Kind::Necklace | Kind::Strap);
    let opens = design.findings.iter().any(|finding| finding.breakaway);
    let choices = [
        (cuts_metal(design), EYES),
        (true, CHILDREN),
        (design.wear.child, FOR_A_CHILD),
        (round_the_neck && !opens, LONG_CORD),
        (round_the_neck && opens, BREAKAWAY),
        (!design.findings.is_empty() || has_cord(design, CordKind::Chain), METALS),
        (has_glass(design), GLASS),
        (glues(design), GLUE),
        (has_cord(design, CordKind::Elastic), ELASTIC),
        (true, RULES),
    ];
    choices.into_iter().filter(|(applies, _)| *applies).map(|(_, caution)| caution).collect()
}

/// Whether wire, pins or chain are cut.
pub(super) fn cuts_metal(design: &Design) -> bool {
    let findings = [FindingKind::EyePin, FindingKind::HeadPin, FindingKind::Chain];
    let cords = [CordKind::Wire, CordKind::Chain];
    findings.into_iter().any(|kind| has_finding(design, kind)) || cords.into_iter().any(|kind| has_cord(design, kind))
}

fn has_glass(design: &Design) -> bool {
    let glassy = |material: &String| {
        let material = material.to_lowercase();
        material.contains("glass") || material.contains("crystal")
    };
    design.beads.iter().filter_map(|bead| bead.material.as_ref()).any(glassy)
}
