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
    let bare = design.strands.iter().filter_map(bare);
    tight(twist).into_iter().chain(loose(twist)).chain(slack(design, twist)).chain(bare).collect()
}

/// Strands that stand loose: each by itself, but where one alone is drawn taut, that one.
fn slack(design: &Design, twist: &Twist) -> Vec<Remark> {
    let slacks: Vec<_> = (0..design.strands.len()).map(|at| twist.slack(at)).collect();
    let taut: Vec<_> = design.strands.iter().zip(&slacks).filter(|(_, slack)| slack.is_none()).collect();
    if let ([(strand, _)], true) = (taut.as_slice(), slacks.len() > 2) {
        return vec![taut_strand(strand, slacks.iter().flatten().copied())];
    }
    let reach = design.heading.units.ruler(twist.length());
    let each = design.strands.iter().zip(slacks);
    each.filter_map(|(strand, slack)| Some(loose_strand(strand, slack?, &reach))).collect()
}

/// The one strand that is drawn taut, beside which all others stand loose by so much.
fn taut_strand(strand: &Strand, slacks: impl Iterator<Item = Length> + Clone) -> Remark {
    let least = slacks.clone().reduce(Length::min).unwrap_or_default();
    let most = slacks.reduce(Length::max).unwrap_or_default();
    let name = &strand.name;
    let headline =
        format!("strand {name} is drawn taut, and all others stand loose in the twist by up to {}", most.tenths());
    let help = format!("make strand {name} about {} longer, or allow it: `allow: [twist-slack]`", least.tenths());
    Remark::words(Code::TwistSlack, headline).at(strand.length_place).helping(help)
}

fn tight(twist: &Twist) -> Option<Remark> {
    let angle = twist.angle().to_degrees();
    (angle > TIGHT).then(|| {
        let headline = format!("turned {}, the strands run across the piece at {angle:.0} degrees", times(twist.turns));
        Remark::words(Code::TwistTight, headline).at(twist.place).helping("turn them less often, or make them longer")
    })
}

fn loose(twist: &Twist) -> Option<Remark> {
    let angle = twist.angle().to_degrees();
    (angle < LOOSE).then(|| {
        let headline = format!("turned {}, the strands hardly run across the piece", times(twist.turns));
        let often = (twist.turns * LOOSE / angle).ceil();
        let help = format!("turn them {} or more, or leave `twist:` out", times(often));
        Remark::words(Code::TwistLoose, headline).at(twist.place).helping(help)
    })
}

/// A strand that stands loose in the twist, which reaches so far.
fn loose_strand(strand: &Strand, slack: Length, twisted: &str) -> Remark {
    let name = &strand.name;
    let headline =
        format!("strand {name} is {} longer than its way in the twist, which is {twisted} long", slack.tenths());
    let help = format!("make it {} long, or allow it: `allow: [twist-slack]`", (strand.finished - slack).tenths());
    Remark::words(Code::TwistSlack, headline).at(strand.length_place).helping(help)
}

fn bare(strand: &Strand) -> Option<Remark> {
    let share = strand.bare() / strand.finished;
    (share > BARE).then(|| {
        let headline = format!("strand {} is bare along {:.0} % of its length", strand.name, 100.0 * share);
        let help = "string more beads on it, or make it shorter";
        Remark::words(Code::TwistBare, headline).at(strand.length_place).helping(help)
    })
}
