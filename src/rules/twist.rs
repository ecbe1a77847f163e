//! Twisted strands: whether the twist is too tight or hardly seen, and which strands stand loose in it.

use crate::design::{Design, Strand, Twist};
use crate::remark::Remark;
use crate::remark::said::winding::Winding;
use crate::units::{Length, UnitStyle};

/// Steepest that strands should run across the piece, in degrees: an assumption.
const TIGHT: f64 = 40.0;
/// Least steep that a twist is seen, in degrees: an assumption.
const LOOSE: f64 = 3.0;
/// Share of a strand's length that may be bare cord: an assumption.
const BARE: f64 = 0.1;

/// Remarks about the twist.
pub fn check(design: &Design, units: UnitStyle) -> Vec<Remark> {
    let Some(twist) = &design.twist else { return Vec::new() };
    let bare = design.strands.iter().filter_map(bare);
    tight(twist).into_iter().chain(loose(twist)).chain(slack(design, twist, units)).chain(bare).collect()
}

/// Strands that stand loose: each by itself, but where one alone is drawn taut, that one.
fn slack(design: &Design, twist: &Twist, units: UnitStyle) -> Vec<Remark> {
    let slacks: Vec<_> = design.strands.indices().map(|at| twist.slack(at)).collect();
    let taut: Vec<_> = design.strands.iter().zip(&slacks).filter(|(_, slack)| slack.is_none()).collect();
    if let ([(strand, _)], true) = (taut.as_slice(), slacks.len() > 2) {
        return vec![taut_strand(strand, slacks.iter().flatten().copied())];
    }
    let twisted = twist.length();
    let each = design.strands.iter().zip(slacks).filter_map(|(strand, slack)| Some((strand, slack?)));
    let said = |strand: &Strand, by| {
        let (name, fits) = (strand.name.clone(), strand.finished - by);
        Winding::Slack { strand: name, by, twisted, units, fits }
    };
    each.map(|(strand, by)| Remark::new(said(strand, by)).at(strand.length_place)).collect()
}

/// The one strand that is drawn taut, beside which all others stand loose by so much.
fn taut_strand(strand: &Strand, slacks: impl Iterator<Item = Length> + Clone) -> Remark {
    let least = slacks.clone().reduce(Length::min).unwrap_or_default();
    let most = slacks.reduce(Length::max).unwrap_or_default();
    Remark::new(Winding::Taut { strand: strand.name.clone(), least, most }).at(strand.length_place)
}

fn tight(twist: &Twist) -> Option<Remark> {
    let angle = twist.angle().to_degrees();
    (angle > TIGHT).then(|| Remark::new(Winding::TwistTight { turns: twist.turns, angle }).at(twist.place))
}

fn loose(twist: &Twist) -> Option<Remark> {
    let (turns, angle) = (twist.turns, twist.angle().to_degrees());
    let said = Winding::TwistLoose { turns, seen: (turns * LOOSE / angle).ceil() };
    (angle < LOOSE).then(|| Remark::new(said).at(twist.place))
}

fn bare(strand: &Strand) -> Option<Remark> {
    let share = strand.bare() / strand.finished;
    let said = || Winding::TwistBare { strand: strand.name.clone(), share };
    (share > BARE).then(|| Remark::new(said()).at(strand.length_place))
}
