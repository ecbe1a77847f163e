//! What is said of strands, beside their rows and in the key, in English.

use crate::design::{Design, Strand};
use crate::english::{assumed, list, times};
use crate::materials::render::words as amount;
use crate::pattern::Shape;
use crate::sheet::said::{InKey, Reading, RulerStart, Takes, ToCut};
use crate::steps::english::posts::between;
use crate::steps::english::words::cords;
use crate::steps::posts::{self, Keeps};
use crate::units::{Length, UnitStyle, ranged};

/// How a row is read.
const READ: &str = "Beads and rulers are at actual size when printed at 100 %. 5A stands for five of bead A;";
/// What figures above beads mean.
const TENS: &str = " small figures count the beads in tens;";
/// Where rulers start.
const STARTS: &str = " rulers start at the outside of the first end.";
/// The same on memory wire, and on chain.
const STARTS_ON_WIRE: &str = " rulers start where the first loop is turned.";
const STARTS_ON_CHAIN: &str = " rulers start at the inside of the first end link.";
/// How often a pair's strands are made.
const PAIR: &str = " Make each strand twice, once for each earring.";

/// How rows are read.
pub fn reading(reading: &Reading<'_>) -> String {
    let cord = cords(reading.design);
    let starts = match reading.starts {
        RulerStart::Outside => STARTS,
        RulerStart::TurnedLoop => STARTS_ON_WIRE,
        RulerStart::InEndLink => STARTS_ON_CHAIN,
    };
    let letters = letters(&reading.letters);
    let slides = reading.slides.map(|between| slide(between, cord)).unwrap_or_default();
    let pair = if reading.pair { PAIR } else { "" };
    let twisted = reading.twisted.map_or_else(String::new, |turns| {
        format!(" Strands are drawn before they are twisted together, {}: that is a step of its own.", times(turns))
    });
    let takes = reading.takes.map(|takes| taken(takes, cord)).unwrap_or_default();
    let tens = if reading.tens { TENS } else { "" };
    format!("{READ}{tens}{starts}{letters}{slides}{pair}{twisted} {takes}").trim_end().to_owned()
}

/// What becomes of beads that do not fill their strand, and whether stops keep them.
fn slide(between_stops: bool, cord: &str) -> String {
    if between_stops {
        format!(" Beads slide on bare {cord} as far as the stops let them, as they should.")
    } else {
        format!(" Beads slide on bare {cord} and gather at its low point: nothing holds them there, as it should be.")
    }
}

/// Why sizes do not add up to lengths.
fn taken(takes: Takes, cord: &str) -> String {
    let how = match takes {
        Takes::Sunk => {
            ": round ones sink a little into one another's holes. The key says what one takes among its own kind; below its row"
        }
        Takes::FromHoleToHole => ", from hole to hole, as the key says. Below its row",
    };
    format!("Lengths count what beads take of the {cord}{how} all parts of a strand are added up.")
}

/// What the letters mean that stand above a ruler: ` Above the ruler S stands for a stop, and K for a knot.`
fn letters(letters: &[(char, Keeps)]) -> String {
    let told = |(at, (letter, keeps)): (usize, &(char, Keeps))| {
        let verb = if at == 0 { " stands" } else { "" };
        format!("{letter}{verb} for {}", keeps.meant())
    };
    match letters.iter().enumerate().map(told).collect::<Vec<_>>() {
        told if told.is_empty() => String::new(),
        told => format!(" Above the ruler {}.", list(&told)),
    }
}

/// A bead's size along the cord, how much cord it takes in a row of its kind where that differs, and how it is drawn.
pub fn in_key(InKey { bead, takes, part }: &InKey<'_>, units: UnitStyle) -> String {
    let (size, which) = match bead.shape {
        Shape::Seed => (bead.across, " wide"),
        _ if bead.along == bead.across => (bead.along, ""),
        _ if bead.hangs() => (bead.along, " long"),
        _ => (bead.along, " along the hole"),
    };
    let units = sold(units);
    let takes = takes.map(|takes| format!(", takes {}", units.gauge(takes))).unwrap_or_default();
    let reduced = if *part > 1 { format!(", drawn at 1 : {part}") } else { String::new() };
    format!("{}{which}{takes}{reduced}", units.gauge(size))
}

/// A bead cap's length along the cord, how much it takes of that at the least and at the most, and what its mark stands beside.
pub fn cap_in_key(length: Length, takes: [Length; 2], units: UnitStyle) -> String {
    let units = sold(units);
    let takes = ranged(takes.map(|takes| units.gauge(takes)));
    format!("{} long, takes {takes}, beside the bead that it hugs", units.gauge(length))
}

/// How sizes are printed by which something is sold: in millimetres, and where inches are printed in those too.
fn sold(units: UnitStyle) -> UnitStyle {
    if units == UnitStyle::Mm { units } else { UnitStyle::Both }
}

/// What so many strands are cut to.
pub fn to_cut(cut: ToCut, strands: usize, units: UnitStyle) -> String {
    let times = if strands > 1 { format!("{strands} × ") } else { String::new() };
    match cut {
        ToCut::OnPin => format!("{times}on a pin"),
        ToCut::Cord(length) => format!("Cut {times}{}", amount::cut(length, units)),
    }
}

/// What a strand is strung on, and how long it becomes.
pub fn strung_on(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let cord = &design.cords[strand.cord];
    let on = format!("On {} {}", cord.name, units.gauge(cord.diameter));
    if let Some(pinned) = strand.hung().next().filter(|_| strand.is_on_pin(design)) {
        return format!("{on}. It hangs {} down, its loop counted.", units.ruler(Length::mm(pinned.drop)));
    }
    let links = strand.links(design).map(|links| format!(", {links} links")).unwrap_or_default();
    let doubled = if strand.legs > 1 { ", doubled" } else { "" };
    let (finished, between) = (units.ruler(strand.finished), between(posts::between(design, strand)));
    let (more, slack) = (besides(strand, units), slack(design, strand, units));
    format!("{on}{links}{doubled}{more}. The strand measures {finished} from {between}.{slack}")
}

/// What of a strand's cord is no part of its length.
fn besides(strand: &Strand, units: UnitStyle) -> String {
    let ends = if strand.legs > 1 { "on each leg beyond the last end" } else { "beyond each end" };
    let said = |length: Length| (length > Length::ZERO).then(|| units.ruler(length));
    let ends =
        said(*strand.allowance).map(|more| format!(", {more} of it {ends}{}", assumed(strand.allowance.is_assumed())));
    let knots = said(strand.in_knots()).map(|knots| format!(", about {knots} in its knots"));
    ends.into_iter().chain(knots).collect()
}

/// What the bend of a strand takes up.
fn slack(design: &Design, strand: &Strand, units: UnitStyle) -> String {
    let Some(slack) = strand.told_slack() else { return String::new() };
    let bent = if design.is_ring() { "Closed to a ring" } else { "Where it bends" };
    let whole = units.ruler(strand.pulled());
    let (slack, cord) = (units.fine(slack), design.cords[strand.cord].word());
    format!(
        " {bent} its beads touch on the inner side and part on the outer: that takes {slack} more {cord}, and with it the \
         strand measures {whole}."
    )
}
