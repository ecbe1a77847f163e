//! What is said about beads, cords and findings by themselves, in English.

use crate::english::{a, commas};
use crate::remark::said::article::Article;

use super::words::meant_or;

/// What was found.
pub fn headline(said: &Article) -> String {
    match said {
        Article::NoLength { shape, .. } => format!("{} needs its size across and along the hole", a(shape)),
        Article::NoSeedSize { name, .. } => format!("`{name}` is no seed bead size that festoon knows"),
        Article::HoleAssumed { id, hole } => format!("bead {id}: a hole of {} is assumed", hole.hundredths()),
        Article::HolesApart { id } => format!("bead {id}: how far apart are its holes?"),
        Article::OneHoleApart { id } => format!("bead {id}: one hole is not apart from another"),
        Article::HolesAcross { id } => format!("bead {id}: several holes run along it, not across"),
        Article::HolesCrowd { id, across } => format!("bead {id}: its holes do not lie side by side within {across}"),
        Article::HoleTooWide { id, hole, across } => format!("bead {id}: a hole of {hole} leaves nothing of {across}"),
        Article::ToleranceTooLarge { id, tolerance } => {
            format!("bead {id}: a tolerance of {tolerance} is more than half the bead")
        }
        Article::TooLong { each } => format!("that makes each bead {each} long"),
        Article::NoDensity { id, material, .. } => format!("bead {id}: no density is known for `{material}`"),
        Article::RoughWeight { id, material, least, most, assumed, density } => {
            let assumed = if *assumed { " (assumed: no published range was found)" } else { "" };
            format!(
                "bead {id}: {material} has from {least} to {most} g/cm³{assumed}, and is weighed with {density}: its \
                 weight is rough"
            )
        }
        Article::NoThickness { id } => format!("{id}: neither diameter nor gauge is written"),
        Article::NoGauge { gauge } => format!("there is no wire gauge {gauge}"),
        Article::NoCoil { id } => format!("{id} is memory wire, and how wide is its coil?"),
        Article::Coil { id, kind } => format!("{id} is {}, and only memory wire is a coil", a(kind)),
        Article::Links { id, kind } => format!("{id} is {}, and only a chain has links", a(kind)),
        Article::OfWire { id, kind, word } => format!("{id} is {}, and only wire has `{word}:`", a(kind)),
        Article::NoLay { filaments, .. } => format!("no wire is known in which {filaments} filaments lie"),
        Article::NoModulus { id, metal, .. } => format!("cord {id}: it is not known how stiff `{metal}` is"),
        Article::Stiffness { id, kind, keeps_round: true } => {
            format!("{id} is {}, which keeps the round of its coil", a(kind))
        }
        Article::Stiffness { id, kind, .. } => format!("{id} is {}, whose links turn freely", a(kind)),
    }
}

/// What to change.
pub fn help(said: &Article) -> String {
    let plain = match said {
        Article::NoLength { across, .. } => return format!("write both, across first: {} x … mm", across.value()),
        Article::NoSeedSize { known, .. } => return format!("write one of {}, or a size in mm", commas(known)),
        Article::HoleAssumed { hole, .. } => return format!("measure it and write `hole: {}`", hole.hundredths()),
        Article::NoDensity { known, meant, .. } => return weigh(known, meant.as_deref()),
        Article::OfWire { word, .. } => return format!("take `{word}:` out"),
        Article::NoLay { known, .. } => return lays(known),
        Article::NoModulus { known, meant, .. } => return name_metal(known, meant.as_deref()),
        Article::HolesApart { .. } => "measure from middle to middle and write `apart: … mm`",
        Article::OneHoleApart { .. } => "write `holes: 2` beside it, or take `apart:` out",
        Article::HolesAcross { .. } => "take `drilled:` out, or `holes:`",
        Article::HolesCrowd { .. } => "check `hole`, `apart` and the size across the holes",
        Article::HoleTooWide { .. } => "check the hole",
        Article::ToleranceTooLarge { .. } => "check the tolerance",
        Article::TooLong { .. } => "check the count and the unit",
        Article::RoughWeight { .. } => "weigh ten beads and write a tenth of it as `mass:`",
        Article::NoThickness { .. } => "add `diameter: 0.4 mm` or `gauge: 26`",
        Article::NoGauge { .. } => "write an American wire gauge from 1 to 40",
        Article::NoCoil { .. } => "add the inside diameter of its coil: `coil: 55 mm`",
        Article::Coil { .. } => "take `coil:` out, or write `kind: memory wire`",
        Article::Links { .. } => "take `links:` out",
        Article::Stiffness { .. } => "take `stiffness:` out",
    };
    plain.to_owned()
}

/// Of how many filaments wire is.
fn lays(known: &[u32]) -> String {
    let known: Vec<_> = known.iter().map(u32::to_string).collect();
    format!("write one of {}, of which 1 is solid wire", commas(known))
}

/// What to do about a metal of which it is not known how stiff it is.
fn name_metal(known: &[&str], meant: Option<&str>) -> String {
    let near = meant_or(meant, || format!("festoon knows {}", commas(known)));
    format!("write `stiffness:` beside it; until then it counts as steel; {near}")
}

/// What to do about a material of which no density is known.
fn weigh(known: &[&str], meant: Option<&str>) -> String {
    let near = meant_or(meant, || format!("festoon knows {}", commas(known)));
    format!("write the mass of one bead, like `mass: 0.29 g`; until then it is weighed as glass; {near}")
}
