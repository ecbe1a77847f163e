//! Cutting plans and lists, in English.

use super::fact::rounding;
use crate::english::{capital, count};
use crate::materials::Cutting;
use crate::materials::render::words::{cut, cut_for, verdict};
use crate::sheet::said::{CutOrder, ListedCut, MadeUp, PlanNote};
use crate::units::UnitStyle;

/// The columns of a cutting list that have a heading.
pub const CUTTING_TABLE: [&str; 2] = ["piece", "cut"];
/// What stands on what is left of a spool, the best first.
pub const LEFT_OVER: [&str; 2] = ["left over", "left"];
/// What is said of each cut through chain.
const TAKES_LINKS: &str = " Each cut takes the link that it goes through.";
/// How cuts are rounded, where an earlier plan tells it of all lengths.
const ROUNDED_UP: &str = " Cuts are rounded up.";
/// What is said where a pattern does not say it.
const ASSUMED_ALLOWANCE: &str = " What is cut for the ends is assumed.";

/// The scale of a plan's bars, from how much it is cut, and how lengths are rounded.
pub fn plan_note(cutting: &Cutting, note: &PlanNote, units: UnitStyle) -> String {
    let from = from(cutting);
    let from = match note.bars {
        Some(scale) => format!("Bars at {scale}; {from}"),
        None => capital(&from),
    };
    let order = note.order.map(order).unwrap_or_default();
    let takes = if note.takes_links { TAKES_LINKS } else { "" };
    let assumed = if note.assumes_allowance { ASSUMED_ALLOWANCE } else { "" };
    let rounded = if note.rounds { format!(" {}", rounding(units)) } else { ROUNDED_UP.to_owned() };
    format!("{from}.{order}{takes}{assumed}{rounded}")
}

const fn order(order: CutOrder) -> &'static str {
    match order {
        CutOrder::FromLeft => " Cut from the left on.",
        CutOrder::FromBothEnds => " The needle is at the left: cut from the right, the strand last.",
    }
}

fn from(cutting: &Cutting) -> String {
    match (verdict(cutting), cutting.too_long()) {
        (_, [_, ..]) => "some pieces are longer than any length on sale".to_owned(),
        (Some(words), _) => format!("from {words}"),
        (None, _) => "the pattern does not say how it is sold".to_owned(),
    }
}

/// The number and the name of a piece, with how many there are.
pub fn listed_cut(listed: &ListedCut) -> [String; 2] {
    let ListedCut { number, piece, count, .. } = listed;
    let name = cut_for(piece);
    let name = if *count > 1 { format!("{count} × {name}") } else { name };
    [number.map(|number| number.to_string()).unwrap_or_default(), name]
}

/// The only piece of a list as a sentence: `row: 410 mm finished + 2 × 50 mm, cut 510 mm.`
pub fn only_cut(only: &ListedCut, units: UnitStyle) -> String {
    let parts = only.parts.map(|parts| format!("{}, ", made_up(parts, units))).unwrap_or_default();
    format!("{}: {parts}cut {}.", listed_cut(only).join(" ").trim_start(), cut(only.piece.length, units))
}

/// What a piece's length is made up of: `2 × 410 mm finished + 12 mm in knots + 2 × 50 mm`, or
/// `about 25 links of 4 mm, each lengthens it by 2.4 mm`.
pub fn made_up(parts: MadeUp, units: UnitStyle) -> String {
    match parts {
        MadeUp::Strand { legs, finished, round, knots, allowance } => {
            let legs = if legs > 1 { format!("{legs} × ") } else { String::new() };
            let round = round.map(|slack| format!(" + {} to bend round", units.fine(slack))).unwrap_or_default();
            let knots = knots.map(|(length, ends)| {
                let about = if length.is_assumed() { "about " } else { "" };
                format!(
                    " + {about}{} in knots{}",
                    units.ruler(*length),
                    if ends { ", those at the ends too" } else { "" }
                )
            });
            let (finished, allowance) = (units.ruler(finished), units.ruler(*allowance));
            format!("{legs}{finished} finished{round}{} + 2 × {allowance}", knots.unwrap_or_default())
        }
        MadeUp::Tassel { turns, card, piled, binding } => format!(
            "{turns} turns of 2 × {}, {:.0} % more as they pile up, + {} to bind",
            units.ruler(card),
            piled * 100.0,
            cut(binding, units)
        ),
        MadeUp::Links { count: links, link, pitch } => {
            let links = count(links, "link");
            format!("about {links} of {}, each lengthens it by {}", link.tenths(), pitch.tenths())
        }
    }
}
