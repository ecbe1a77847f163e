//! What is said about the shapes and sizes of findings, in English.

use crate::english::{a, assumed, commas};
use crate::remark::said::shaping::{Shaping, Sizes};

/// What was found.
pub fn headline(said: &Shaping) -> String {
    match said {
        Shaping::Closed { id, kind } => format!("{id} is {}, and only a jump ring may be `closed`", a(kind)),
        Shaping::Outlined { id, kind } => format!("{id} is {}, and only a charm has an `outline`", a(kind)),
        Shaping::Knotted { kind } => format!("a knot is tied round a bead in a knot cover, not in {}", a(kind)),
        Shaping::Wound { kind } => format!("a tassel is wound of a cord, not {}", a(kind)),
        Shaping::Lacks { id, kind, keys } => format!("{id}: {} needs its {}", a(kind), commas(keys)),
        Shaping::Contradiction { id, sizes, smaller, larger, assumed: is_assumed } => {
            let (key, must) = relation(*sizes);
            let (smaller, larger) = (smaller.hundredths(), larger.hundredths());
            format!("{id}: its {key} of {smaller} is not {must} of {larger}{}", assumed(*is_assumed))
        }
        Shaping::TooManyLinks { id, length, links } => {
            format!("{id}: {} of it would have {links} links", length.tenths())
        }
        Shaping::NoOpening { id, wire } => {
            format!("{id}: a wire of {} leaves nothing open in its links", wire.hundredths())
        }
    }
}

/// What to change.
pub fn help(said: &Shaping) -> String {
    let plain = match said {
        Shaping::Lacks { keys, .. } => return add(keys),
        Shaping::Closed { .. } => "take `closed:` out",
        Shaping::Outlined { .. } => "take `outline:` out, or write `kind: charm`",
        Shaping::Knotted { .. } => "take `bead:` out",
        Shaping::Wound { .. } => "take `cord:` out",
        Shaping::Contradiction { assumed: true, .. } => {
            "use a pin of thinner wire, or of an eye pin write its `outside:`"
        }
        Shaping::Contradiction { .. } => "measure both again",
        Shaping::TooManyLinks { .. } | Shaping::NoOpening { .. } => "measure a link again, outside, and its wire",
    };
    plain.to_owned()
}

/// What the first of two sizes is called, and what it must be.
const fn relation(sizes: Sizes) -> (&'static str, &'static str) {
    match sizes {
        Sizes::TipAndInside => ("tip", "narrower than its inside"),
        Sizes::InsideAndMouth => ("inside", "narrower than its mouth"),
        Sizes::InsideAndOutside => ("inside", "less than its outside"),
        Sizes::WireAndEye => ("wire", "less than half its eye"),
    }
}

fn add(keys: &[&str]) -> String {
    let keys = keys.iter().map(|key| format!("`{key}: …`")).collect::<Vec<_>>();
    format!("add {}", commas(keys))
}
