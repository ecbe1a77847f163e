//! Twisted strands: whether the twist is too tight or hardly seen, and which strands stand loose in it.

use crate::design::{Design, Strand, Twist};
use crate::remark::{Code, Remark};
use crate::units::{Length, times};

/// Steepest that strands should run across the piece, in degrees: an assumption.
const TIGHT: f64 = 40.0;
/// Least steep that a twist is seen, in degrees: an assumption.
const LOOSE: f64 = 3.0;
/// Share of a strand's length that may be bare cord: an assumption.
const BARE: f64 = 0.1;

/// Remarks about the twist.
pub fn check(design: &Design) -> Vec<Remark> {
    let Some(twist) = &design.twist else { return Vec::new() };
    let slack = |(at, strand): (usize, &Strand)| {
        Some(loose_strand(strand, twist.slack(at)?, &design.heading.units.ruler(twist.length())))
    };
    let slack = design.strands.iter().enumerate().filter_map(slack);
    let bare = design.strands.iter().filter_map(bare);
    tight(twist).into_iter().chain(loose(twist)).chain(slack).chain(bare).collect()
}

fn tight(twist: &Twist) -> Option<Remark> {
    let angle = twist.angle().to_degrees();
    (angle > TIGHT).then(|| {
        let headline = format!("turned {}, the strands run across the piece at {angle:.0} degrees", times(twist.turns));
        Remark::new(Code::TwistTight, headline).at(twist.place).help("turn them less often, or make them longer")
    })
}

fn loose(twist: &Twist) -> Option<Remark> {
    let angle = twist.angle().to_degrees();
    (angle < LOOSE).then(|| {
        let headline = format!("turned {}, the strands hardly run across the piece", times(twist.turns));
        let often = (twist.turns * LOOSE / angle).ceil();
        let help = format!("turn them {} or more, or leave `twist:` out", times(often));
        Remark::new(Code::TwistLoose, headline).at(twist.place).help(help)
    })
}

/// A strand that stands loose in the twist, which reaches so far.
fn loose_strand(strand: &Strand, slack: Length, twisted: &str) -> Remark {
    let name = &strand.name;
    let headline =
        format!("strand {name} is {} longer than its way in the twist, which is {twisted} long", slack.tenths());
    let help = format!("make it {} long, or allow it: `allow: [twist-slack]`", (strand.finished - slack).tenths());
    Remark::new(Code::TwistSlack, headline).at(strand.length_place).help(help)
}

fn bare(strand: &Strand) -> Option<Remark> {
    let share = strand.bare() / strand.finished;
    (share > BARE).then(|| {
        let headline = format!("strand {} is bare along {:.0} % of its length", strand.name, 100.0 * share);
        let help = "string more beads on it, or make it shorter";
        Remark::new(Code::TwistBare, headline).at(strand.length_place).help(help)
    })
}
