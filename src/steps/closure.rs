//! Joining the strands: cones over the gathered ends, loops, chains and clasps.
//!
//! The closure's parts are told outward from the strands. What both sides have alike is told once.
//! Rings are opened sideways so that they keep their round (common practice, no source).

use super::words::a;
use super::{Drawing, Step};
use crate::design::{Design, Finding, Part};
use crate::pattern::FindingKind;
use crate::units::Length;

/// Wire left for a plain loop: common practice, no source.
pub const LOOP_WIRE: Length = Length::mm(10.0);

/// A side of the closure, as a sentence says it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Where {
    Both,
    First,
    Last,
}

impl Where {
    const fn words(self) -> &'static str {
        match self {
            Self::Both => " Do the same on the other side.",
            Self::First | Self::Last => "",
        }
    }

    const fn open(self) -> &'static str {
        match self {
            Self::Both => "Open",
            Self::First => "On the side of the first ends, open",
            Self::Last => "On the side of the last ends, open",
        }
    }
}

/// Join the strands' ends to the closure.
pub fn join(design: &Design) -> Vec<Step> {
    let (left, right) = (&design.closure.left, &design.closure.right);
    let alike = left.iter().zip(right).take_while(|(a, b)| a == b).count();
    let mut steps: Vec<_> = (0..alike).flat_map(|at| part(design, left, at, Where::Both)).collect();
    for (parts, side) in [(left, Where::First), (right, Where::Last)] {
        steps.extend((alike..parts.len()).flat_map(|at| part(design, parts, at, side)));
    }
    steps
}

/// The steps that a part of one side takes.
fn part(design: &Design, parts: &[Part], at: usize, side: Where) -> Vec<Step> {
    let finding = &design.findings[parts[at].finding];
    let before = at.checked_sub(1).map(|at| &design.findings[parts[at].finding]);
    let pin = parts[..at].iter().map(|part| &design.findings[part.finding]).find(|finding| finding.is_pin());
    let mut steps = match (finding.kind, before, pin) {
        (FindingKind::EyePin | FindingKind::HeadPin, ..) => Vec::new(),
        (FindingKind::Cone | FindingKind::BeadCap, _, Some(pin)) => vec![cover(finding, pin, side)],
        (FindingKind::Chain, _, _) => chain(design, &parts[at], finding, before, side),
        (_, Some(before), _) => vec![hang(finding, before, side)],
        (_, None, _) => Vec::new(),
    };
    let next = parts.get(at + 1).map(|part| design.findings[part.finding].kind);
    let covers = |kind| matches!(kind, FindingKind::Cone | FindingKind::BeadCap);
    if (finding.is_pin() || (covers(finding.kind) && pin.is_some())) && !next.is_some_and(covers) {
        steps.extend(close_pin(design, pin.unwrap_or(finding), finding, side));
    }
    steps
}

fn cover(cone: &Finding, pin: &Finding, side: Where) -> Step {
    let text = format!(
        "Slide the {} down the wire of the {}, wide end first, until it covers the ends.{}",
        cone.name,
        pin.name,
        side.words()
    );
    Step::new(format!("Put on the {}", cone.name), text).check("No crimp or knot shows.").drawing(Drawing::Cone)
}

fn close_pin(design: &Design, pin: &Finding, above: &Finding, side: Where) -> [Step; 3] {
    let units = design.heading.units;
    let bend = format!(
        "Bend the wire of the {} to a right angle where it leaves the {}.{}",
        pin.name,
        above.name,
        side.words()
    );
    let cut =
        format!("Cut the wire {} from the bend. Hold the end as you cut.{}", units.ruler(LOOP_WIRE), side.words());
    let turn = format!(
        "Grip the tip with round-nose pliers and roll it back towards the bend into a plain loop.{}",
        side.words()
    );
    [
        Step::new("Bend the pin", bend),
        Step::new("Cut the pin", cut),
        Step::new("Turn a loop", turn)
            .check("The loop is round and shut: no thread slips through the gap.")
            .drawing(Drawing::PlainLoop),
    ]
}

fn chain(design: &Design, part: &Part, chain: &Finding, before: Option<&Finding>, side: Where) -> Vec<Step> {
    let units = design.heading.units;
    let mut steps = Vec::new();
    if part.cut > Length::ZERO {
        let text = format!("Cut {} of {}.{}", units.ruler(part.cut), chain.name, side.words());
        steps.push(Step::new("Cut the chain", text).check("Both end links are whole."));
    }
    steps.extend(before.map(|before| hang(chain, before, side)));
    steps
}

/// Hang a finding on the one before it, by whichever of the two has a ring that opens.
fn hang(finding: &Finding, before: &Finding, side: Where) -> Step {
    let opens = if finding.kind == FindingKind::JumpRing { finding } else { before };
    let hung = if finding.kind == FindingKind::JumpRing { before } else { finding };
    let text = format!(
        "{} the {} sideways, like a door. Hang the {} in it and close it the same way.{}",
        side.open(),
        ring(opens),
        hung.name,
        side.words()
    );
    Step::new(format!("Hang {}", a(&finding.name)), text)
        .check("No gap shows where the ring closes.")
        .drawing(Drawing::OpenLink)
}

/// The part of a finding that opens.
fn ring(finding: &Finding) -> String {
    match finding.kind {
        FindingKind::JumpRing => finding.name.clone(),
        FindingKind::Chain => format!("end link of the {}", finding.name),
        FindingKind::EyePin | FindingKind::HeadPin | FindingKind::Cone | FindingKind::BeadCap => {
            "plain loop".to_owned()
        }
        _ => format!("ring of the {}", finding.name),
    }
}
