//! What is said about sizes, whom a piece is made for, and the designer's own figures, in English.

use crate::english::a;
use crate::remark::said::variant::{Figure, Variant};
use crate::trade::bodies::Site;

/// What was found.
pub fn headline(said: &Variant) -> String {
    match said {
        Variant::IdleSize { size } => format!("size {size} is like no size at all"),
        Variant::OtherLimb { measured, piece } => {
            let piece = piece.map_or_else(|| "earrings".to_owned(), |(kind, _)| a(kind));
            let measured = limb(*measured);
            format!("a measure of the {measured} does not tell how long {piece} must be")
        }
        Variant::Unmeasured { key } => {
            format!("the pattern's lengths are made to no measure of the {key}, so that another changes nothing")
        }
        Variant::OtherCount { strand, id, found, expected } => {
            let whole = strand.as_ref().map_or_else(|| "the piece".to_owned(), |strand| format!("strand {strand}"));
            format!("{whole} takes {found} {id}, not {expected}")
        }
        Variant::OtherLength { strand, of, found, expected } => {
            let off = (*found - *expected).value().abs();
            let (of, found, expected) = (figure(*of), found.tenths(), expected.tenths());
            format!("strand {strand}: {of} {found}, which is {off:.1} mm from the expected {expected}")
        }
    }
}

/// What to change.
pub fn help(said: &Variant) -> String {
    match said {
        Variant::IdleSize { .. } => {
            "write how much it changes lengths, `change: +1 in`, or who wears it, `wear:`".to_owned()
        }
        Variant::OtherLimb { piece: None, .. } => "leave it out: earrings go round nothing".to_owned(),
        Variant::OtherLimb { piece: Some((_, own)), .. } => {
            let limb = limb(*own);
            format!("measure the {limb}, and give `--{limb}`")
        }
        Variant::Unmeasured { key } => {
            format!("write `wear: {{ {key}: … }}` with what the written lengths fit, or how much a size changes them")
        }
        Variant::OtherCount { .. } => "correct the bead list, or the expected figure".to_owned(),
        Variant::OtherLength { .. } => "correct the strand, or the expected figure".to_owned(),
    }
}

const fn figure(of: Figure) -> &'static str {
    match of {
        Figure::Beaded => "beaded",
        Figure::Finished => "finished",
        Figure::Cut => "cut",
    }
}

/// What is measured, by which the option that says it is named too.
const fn limb(site: Site) -> &'static str {
    match site {
        Site::NeckBase => "neck",
        Site::Wrist => "wrist",
        Site::Ankle => "ankle",
    }
}
