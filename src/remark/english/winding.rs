//! What is said about torsades, coils and wraps, in English.

use crate::english::times;
use crate::remark::said::winding::Winding;

/// What was found.
pub fn headline(said: &Winding) -> String {
    match said {
        Winding::BeadStiff { bead, cord, hole, .. } => format!(
            "{bead} does not go round with {cord}: its hole of {} is too narrow for so tight a curve",
            hole.hundredths()
        ),
        Winding::CoilSmall { inside, limb, .. } => {
            format!("the coil measures {} inside its beads, and springs open round {}", inside.tenths(), limb.tenths())
        }
        Winding::OtherTurns { turns, wraps } => {
            format!("the beads go round {turns:.2} times, and `wraps:` says {wraps}")
        }
        Winding::EndsMeet { turns, .. } => {
            format!("the coil goes round {turns:.2} times, and its ends meet in one place")
        }
        Winding::TwistTight { turns, angle } => {
            format!("turned {}, the strands run across the piece at {angle:.0} degrees", times(*turns))
        }
        Winding::TwistLoose { turns, .. } => {
            format!("turned {}, the strands hardly run across the piece", times(*turns))
        }
        Winding::Taut { strand, most, .. } => {
            format!("strand {strand} is drawn taut, and all others stand loose in the twist by up to {}", most.tenths())
        }
        Winding::Slack { strand, by, twisted, units, .. } => format!(
            "strand {strand} is {} longer than its way in the twist, which is {} long",
            by.tenths(),
            units.ruler(*twisted)
        ),
        Winding::TwistBare { strand, share } => {
            format!("strand {strand} is bare along {:.0} % of its length", 100.0 * share)
        }
    }
}

/// What to change.
pub fn help(said: &Winding) -> String {
    match said {
        Winding::BeadStiff { needed, .. } => {
            format!("take a hole of at least {}, a shorter bead, or thinner wire", needed.at_least(2))
        }
        Winding::CoilSmall { needed, .. } => {
            format!("take memory wire with a coil of at least {}, or thinner beads", needed.at_least(0))
        }
        Winding::OtherTurns { turns, .. } => {
            format!("write `wraps: {turns:.1}`, or let `repeat: fill` string as many beads as it takes")
        }
        Winding::EndsMeet { better, .. } => {
            format!("let them lie over each other by a quarter to half a turn: `wraps: {better}`")
        }
        Winding::TwistTight { .. } => "turn them less often, or make them longer".to_owned(),
        Winding::TwistLoose { seen, .. } => format!("turn them {} or more, or leave `twist:` out", times(*seen)),
        Winding::Taut { strand, least, .. } => {
            format!("make strand {strand} about {} longer, or allow it: `allow: [twist-slack]`", least.tenths())
        }
        Winding::Slack { fits, .. } => {
            format!("make it {} long, or allow it: `allow: [twist-slack]`", fits.tenths())
        }
        Winding::TwistBare { .. } => "string more beads on it, or make it shorter".to_owned(),
    }
}
