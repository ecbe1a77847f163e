//! What is said about whether one thing fits in or on another, in English.

use crate::english::often;
use crate::remark::said::fit::{Fit, Hangs, Passing, Threaded};

/// What was found.
pub fn headline(said: &Fit) -> String {
    match said {
        Fit::Snug { cord, bead, fills, hole, .. } => {
            format!("{cord} of {} all but fills the hole of {bead}, {}", fills.hundredths(), hole.hundredths())
        }
        Fit::CordTooThick { cord, what, how, thick, hole, .. } => format!(
            "{cord} is {} thick and does not go{} into {what} with its hole of {}",
            thick.hundredths(),
            passing(*how),
            hole.hundredths()
        ),
        Fit::CrimpTooSmall { cord, crimp, passes, guarded, inside, needed, .. } => format!(
            "{cord} goes through {crimp} {}{} and needs {} there; the inside is {}",
            often(u64::from(*passes)),
            if *guarded { " with a guard's leg" } else { "" },
            needed.at_least(2),
            inside.hundredths()
        ),
        Fit::SlipsInside { narrow, bead, broad, hole } => format!(
            "{narrow} is {} broad and slips into {bead} with its hole of {}",
            broad.hundredths(),
            hole.hundredths()
        ),
        Fit::KnotSlips { strand, bead, size, hole, .. } => format!(
            "a knot of {} in strand {strand} does not hold {bead} with its hole of {}",
            size.hundredths(),
            hole.hundredths()
        ),
        Fit::WireKnotted { strand } => {
            format!("strand {strand} is of wire, and nothing but a knot would hold its ends")
        }
        Fit::PinTooThick { pin, what, wire, hole } => format!(
            "{pin} is {} thick and does not pass through {what} with its hole of {}",
            wire.hundredths(),
            hole.hundredths()
        ),
        Fit::PinTooShort { pin, length, carried, needed } => {
            format!("{pin} is {} long; {} and the loop need {}", length.tenths(), carried.tenths(), needed.at_least(1))
        }
        Fit::Threaded { what, hangs, on } => {
            format!("{what} {} and hangs: it cannot be strung {}", because(*hangs), place(*on))
        }
        Fit::HeldByNothing { below, above } => format!("nothing holds {below} below {above}"),
        Fit::RingNotRound { bead, ring, inside, round } => format!(
            "{bead} is drilled lengthwise, and {ring} of {} inside does not go round it, which takes {} at least",
            inside.tenths(),
            round.tenths()
        ),
        Fit::NoTip { bead, holder } => format!("{bead} is drilled lengthwise and cannot hang from {holder} by its tip"),
        Fit::CordTooStiff { cord, told, most } => format!(
            "{cord} is said to be stiffer than a solid steel wire as thick, which has {most:.2} N mm²: {told} N mm²"
        ),
    }
}

/// What to change.
pub fn help(said: &Fit) -> String {
    match said {
        Fit::Snug { thinnest, needed, .. } | Fit::CordTooThick { thinnest, needed, .. } => {
            format!("use a cord of at most {}, or a hole of at least {}", thinnest.at_most(2), needed.at_least(2))
        }
        Fit::CrimpTooSmall { thickest, needed, .. } => format!(
            "use a crimp of at least {} inside, or a cord of at most {}",
            needed.at_least(2),
            thickest.at_most(2)
        ),
        Fit::SlipsInside { hole, .. } => format!(
            "put something between them that is broader than {}, or use a bead with a smaller hole",
            hole.hundredths()
        ),
        Fit::KnotSlips { needed, .. } => {
            format!("make knots of at least {}, use a thicker cord, or beads with a smaller hole", needed.at_least(2))
        }
        Fit::WireKnotted { .. } => {
            "close it with a crimp: `ends: crimp`, or string it on thread, silk or elastic".to_owned()
        }
        Fit::PinTooThick { wire, hole, .. } => {
            format!("use a pin of at most {}, or a hole of at least {}", hole.at_most(2), wire.at_least(2))
        }
        Fit::PinTooShort { needed, .. } => format!("use a pin of at least {}", needed.at_least(1)),
        Fit::Threaded { .. } => {
            "hang it from a ring or bail, `{ dangle: [it], on: bail }`, or use one that is drilled lengthwise"
                .to_owned()
        }
        Fit::HeldByNothing { .. } => {
            "string them on a head pin, or hang each from the strand in a ring of its own: a dangle hangs from no other"
                .to_owned()
        }
        Fit::RingNotRound { .. } | Fit::NoTip { .. } => {
            "write `drilled: tip` if yours is, or hang it on a head pin".to_owned()
        }
        Fit::CordTooStiff { .. } => {
            "take `stiffness:` out, or measure it: of an end held level, so long that it sinks by a tenth of that \
             under its own weight, it is 1.25 times the weight of the end times its length squared"
                .to_owned()
        }
    }
}

const fn passing(how: Passing) -> &'static str {
    match how {
        Passing::Single => "",
        Passing::Doubled => " doubled",
        Passing::BothEnds => " with both ends",
    }
}

const fn because(hangs: Hangs) -> &'static str {
    match hangs {
        Hangs::Across => "is drilled across",
        Hangs::Loop => "has a loop of its own",
    }
}

const fn place(on: Threaded) -> &'static str {
    match on {
        Threaded::Cord => "on a cord",
        Threaded::Branch => "on a pin or below another bead",
    }
}
