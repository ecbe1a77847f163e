//! What to ask for in a shop: the sizes and stuff of beads, cords and findings, in a line.

use crate::design::{Bead, Cord, Design, Finding, usual_wire};
use crate::materials::Article;
use crate::pattern::{FindingKind, Shape};
use crate::trade::gauges::awg_diameter;
use crate::units::Length;

/// What to ask for.
pub fn of(design: &Design, article: Article) -> String {
    match article {
        Article::Bead(at) => bead(&design.beads[at]),
        Article::Cord(at) => cord(&design.cords[at]),
        Article::Finding(at) => finding(&design.findings[at]),
    }
}

fn bead(bead: &Bead) -> String {
    let material = bead.material.as_ref().map(|material| format!(", {material}")).unwrap_or_default();
    format!("{}{material}", size(bead))
}

/// A space at which no line breaks, between a size's name and its figure.
const JOINED: char = '\u{a0}';

/// `6 mm round, hole 1 mm`, `12 mm coin, 3 mm thick, drilled edge to edge, hole 1 mm`; across first.
pub fn size(bead: &Bead) -> String {
    let (across, along) = (bead.across.tenths(), bead.along.tenths());
    let both = bead.across != bead.along && bead.shape != Shape::Seed;
    let size = if both { format!("{} × {along}", across.trim_end_matches(" mm")) } else { across };
    format!("{size} {}{}, hole{JOINED}{}", bead.shape, drilled(bead), bead.hole.tenths())
}

/// How thick a flat bead is, and which way the hole runs where its name leaves that open.
fn drilled(bead: &Bead) -> String {
    match bead.shape {
        Shape::Coin | Shape::Square => format!(", {} thick, drilled edge to edge", bead.thick.tenths()),
        Shape::Drop if bead.tip_drilled => ", drilled across the tip".to_owned(),
        Shape::Drop | Shape::Oval => ", drilled lengthwise".to_owned(),
        _ => String::new(),
    }
}

/// `wire 0.38 mm thick, breaks at 67 N`.
fn cord(cord: &Cord) -> String {
    let strength = cord.strength.map(|force| format!(", breaks at {:.0} N", force.value())).unwrap_or_default();
    format!("{} {} thick{strength}", cord.kind, cord.diameter.hundredths())
}

/// `14 mm long, inside 8 mm, wide end 9 mm, tip 1.5 mm, brass`; sizes that the finding has.
fn finding(finding: &Finding) -> String {
    let way = if has_holes(finding) { "along the cord" } else { "long" };
    let long = (finding.length > Length::ZERO).then(|| format!("{} {way}", finding.length.tenths()));
    let tapers = matches!(finding.kind, FindingKind::Cone | FindingKind::BeadCap);
    let only = |applies: bool, size: Length| if applies { size } else { Length::ZERO };
    let sizes = [
        ("outside", finding.outside),
        ("inside", finding.inside),
        ("wide end", only(tapers, finding.mouth)),
        ("tip", only(tapers, finding.tip)),
    ];
    let sizes = sizes.into_iter().filter(|(_, size)| *size > Length::ZERO);
    let said = sizes.map(|(name, size)| format!("{name}{JOINED}{}", size.hundredths()));
    let parts = long.into_iter().chain(holes(finding)).chain(said).chain(wire(finding)).chain(links(finding));
    parts.chain(finding.material.clone()).collect::<Vec<_>>().join(", ")
}

/// Whether it is a bar with a hole or loop for each of several strands.
const fn has_holes(finding: &Finding) -> bool {
    finding.holes > 1 && matches!(finding.kind, FindingKind::EndBar | FindingKind::SpacerBar)
}

/// `3 holes, 8 mm from middle to middle`.
fn holes(finding: &Finding) -> Option<String> {
    let what = if finding.kind == FindingKind::EndBar { "loops" } else { "holes" };
    let apart = finding.spacing.tenths();
    has_holes(finding).then(|| format!("{} {what}, {apart} from middle to middle", finding.holes))
}

/// `21 gauge wire (0.72 mm)`, or its diameter where that is no gauge's; nothing where it is assumed.
fn wire(finding: &Finding) -> Option<String> {
    let wire = Some(finding.wire).filter(|wire| *wire > Length::ZERO && *wire != usual_wire(finding))?;
    let diameter = wire.hundredths();
    Some(
        gauge(wire).map_or_else(
            || format!("wire{JOINED}{diameter}"),
            |gauge| format!("{gauge}{JOINED}gauge wire ({diameter})"),
        ),
    )
}

/// The wire gauge of a diameter, if it is one's.
fn gauge(wire: Length) -> Option<u32> {
    let is_its = |gauge: &u32| awg_diameter(*gauge).is_some_and(|one| (one.value() - wire.value()).abs() < 1e-9);
    (0..=40).find(is_its)
}

/// `links of 4 mm`, as each lengthens the chain.
fn links(finding: &Finding) -> Option<String> {
    (finding.link > Length::ZERO).then(|| format!("links of {}", finding.link.tenths()))
}
