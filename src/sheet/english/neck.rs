//! A piece on the neck, in English.

use std::collections::BTreeSet;

use crate::design::{Build, Design, Index, Strand};
use crate::english::{commas, list};
use crate::paint::layout::text::Type;
use crate::paint::metrics;
use crate::sheet::said::{EndsInFront, Hooked, Neck, OnNeck};
use crate::steps::english::words::cords;
use crate::trade::english::{basis, length_name};
use crate::trade::stiffness::LIMPEST;
use crate::units::{Length, UnitStyle};

/// Most strands that the words name.
const NAMED: usize = 6;
/// Widest name of a strand in them, in mm of their type.
const NAME: f64 = 30.0;

/// What is said of a piece whose ends hang free.
const FREE: &str = "Not shown on the neck: nothing joins its ends, and how they hang or are tied is the wearer's. \
                    “As it hangs” shows it over a rail as broad as the neck.";
/// What the large figure shows of a piece whose ends are in front.
const RAIL: &str = " “As it hangs” shows it over a rail as broad as the neck.";
/// Where a piece lies that is shorter than the neck's base is round.
const SHORT: &str = " It is shorter than the neck's base is round: towards the nape it sits above that.";
/// How flat beads are drawn.
const FLAT: &str = " Flat beads are drawn with a face to the front.";

/// What a figure of a piece on the neck shows and assumes.
pub fn on_neck(said: &OnNeck<'_>, units: UnitStyle) -> String {
    let OnNeck::Shown(neck) = said else { return FREE.to_owned() };
    let design = neck.design;
    format!(
        "{}{}.{}{}{}{} Drawn {}on a neck of {} round its base, {}.{}",
        hangs(neck, units),
        if neck.has_branches { ", without what hangs from it" } else { "" },
        if neck.is_short { SHORT } else { "" },
        trade(neck, units),
        ends(neck.ends, units),
        if neck.has_flat { FLAT } else { "" },
        hooked(neck.hooked, units),
        units.ruler(design.wear.girth),
        basis(*design.wear.source, design.wear.source.is_assumed()),
        build(design.wear.build, cord(neck)),
    )
}

/// How far it hangs down.
fn hangs(neck: &Neck<'_>, units: UnitStyle) -> String {
    if neck.drops.iter().all(|(_, drop)| drop.is_none()) {
        return "Lies at the front of the neck's base (dashed) or above it".to_owned();
    }
    let several = neck.drops.len() > 1;
    let drop = |(at, drop): &(Index<Strand>, Option<Length>)| {
        let drop = drop.map_or_else(|| "none".to_owned(), |drop| units.ruler(drop));
        if several { format!("{}: {drop}", number(neck.design, *at)) } else { drop }
    };
    let drops: Vec<_> = neck.drops.iter().map(drop).collect();
    let to = match neck.ends {
        EndsInFront::Through(_, Some(last)) => format!("the end of its {last}"),
        _ => format!("the middle of its {}", cords(neck.design)),
    };
    format!("Hangs below the front of the neck (dashed), to {to}: {}", drops.join("; "))
}

/// A strand's number, with its name where there are few.
fn number(design: &Design, at: Index<Strand>) -> String {
    if design.strands.len() > NAMED {
        return at.ordinal().to_string();
    }
    let Type { size, weight, .. } = Type::TINY;
    format!("{} {}", at.ordinal(), metrics::fit(&design.strands[at].name, size, weight, NAME))
}

/// What the trade calls its length.
fn trade(neck: &Neck<'_>, units: UnitStyle) -> String {
    let Some((name, low, high)) = neck.trade else { return String::new() };
    let range = high.map_or_else(|| format!("{} and more", units.ruler(low)), |high| units.range([low, high]));
    format!(" The trade calls this length {}: {range}.", length_name(name))
}

/// How an end that goes through the other is drawn, and how ends that meet are.
fn ends(ends: EndsInFront<'_>, units: UnitStyle) -> String {
    match ends {
        EndsInFront::Joined => String::new(),
        EndsInFront::Meet => RAIL.to_owned(),
        EndsInFront::Through(tail, last) => {
            let assumed = if tail.is_assumed() { ", assumed" } else { "" };
            let (tail, last) =
                (units.ruler(*tail), last.map(|last| format!(", its {last} counted")).unwrap_or_default());
            format!(" Drawn with {tail} of the last end through the ring{last}{assumed}: the wearer sets it.{RAIL}")
        }
    }
}

fn hooked(hooked: Hooked, units: UnitStyle) -> String {
    match hooked {
        Hooked::AsItIs => String::new(),
        Hooked::Shortest => "closed at its shortest ".to_owned(),
        Hooked::LetOut(out) => format!("with {} of the extender let out, to go round, ", units.ruler(out)),
    }
}

/// How stiff its cord is taken to be, where the pattern does not say it.
fn cord(neck: &Neck<'_>) -> Option<String> {
    let wire = neck.assumes_wire.then(|| format!("wire of {LIMPEST} fine strands"));
    let cords: BTreeSet<_> = neck.limp.iter().map(|cord| cord.word()).collect();
    let limp = (!cords.is_empty()).then(|| format!("limp {}", list(&Vec::from_iter(cords))));
    wire.into_iter().chain(limp).reduce(|wire, limp| format!("{wire}, {limp}"))
}

/// The shape of neck and chest that is drawn: what the pattern says, then what is assumed.
fn build(build: Build, cord: Option<String>) -> String {
    let Build { breadth_to_depth: neck, chest_tilt: chest } = build;
    let neck = (neck.is_assumed(), format!("a neck {} times as broad as it is deep", *neck));
    let chest = (chest.is_assumed(), format!("a chest that leans back {}", degrees(*chest)));
    let rest = "usual shoulders, and no friction but at the nape".to_owned();
    let which =
        |assumed: bool| [&neck, &chest].into_iter().filter(move |(is, _)| *is == assumed).map(|(_, words)| words);
    let said = commas(which(false));
    let assumed = commas(which(true).chain(&cord).chain([&rest]));
    let said = if said.is_empty() { said } else { format!(" From the pattern: {said}.") };
    format!("{said} Assumed: {assumed}.")
}

/// An angle in radians as it is printed.
fn degrees(angle: f64) -> String {
    format!("{:.0}°", angle.to_degrees())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Stated;

    #[test]
    fn what_the_pattern_says_of_the_body_is_not_called_assumed() {
        let rest = "usual shoulders, and no friction but at the nape.";
        let assumed = build(Build::default(), None);
        let neck = "a neck 1.2 times as broad as it is deep";
        assert_eq!(assumed, format!(" Assumed: {neck}, a chest that leans back 20°, {rest}"));
        let chest_tilt = Stated::Stated(25_f64.to_radians());
        assert_eq!(
            build(Build { chest_tilt, ..Build::default() }, Some("limp silk".to_owned())),
            format!(" From the pattern: a chest that leans back 25°. Assumed: {neck}, limp silk, {rest}")
        );
    }
}
