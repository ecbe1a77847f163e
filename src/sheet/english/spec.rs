//! What to ask for in a shop: the sizes and stuff of beads, cords and findings, in a line.

use crate::design::{Assorted, Bead, Bores, Cord, Design, Finding, Held, Pack, Stated};
use crate::english::{assumed, commas};
use crate::materials::{Article, need};
use crate::pattern::{Drilled, FindingKind, Shape};
use crate::steps::ends::ring_needed;
use crate::trade::gauges::awg_diameter;
use crate::trade::seeds::seed_name;
use crate::units::{INCH, Length, POUND_FORCE, UnitStyle, trimmed};

/// What to ask for.
pub fn of(design: &Design, article: Article, units: UnitStyle) -> String {
    match article {
        Article::Bead(at) => bead(&design.beads[at]),
        Article::Cord(at) => cord(&design.cords[at], units),
        Article::Finding(at) => finding(&design.findings[at], ring_needed(design, at)),
        Article::Assorted(at) => assorted(design, &design.assorted[at], units),
    }
}

/// What to ask for, with what comes with it: `14 mm long; toggle bar: 5 mm long`.
pub fn of_all(design: &Design, article: Article, units: UnitStyle) -> String {
    let with = need::companions(design, article).map(|at| {
        let name = &design.findings[at].name;
        format!("; {name}: {}", of(design, Article::Finding(at), units))
    });
    of(design, article, units) + &with.collect::<String>()
}

/// `16 in long, with 24 A, 20 B, 8 nine`, `mixed, in the parts 3 A, 3 B, 1 C`: by letters, or what is not used by id.
fn assorted(design: &Design, assorted: &Assorted, units: UnitStyle) -> String {
    let said = |held: &Held| {
        let name = held.bead.map_or(&held.id, |at| &design.beads[at].letter);
        format!("{} {name}", held.parts)
    };
    let holds: Vec<_> = assorted.holds.iter().map(said).collect();
    let holds = commas(holds);
    match assorted.pack {
        Pack::Strand(Some(length)) => format!("{} long, with {holds}", units.ruler(length)),
        Pack::Strand(None) => format!("with {holds}"),
        Pack::Mix(_) => format!("mixed, in the parts {holds}"),
    }
}

/// A bead's size and what it is made of, where it is not called so: `6 mm round, hole 1 mm, glass`.
pub fn bead(bead: &Bead) -> String {
    let material = bead.material.as_ref().filter(|material| !bead.name.ends_with(material.as_str()));
    commas([size(bead)].iter().chain(material))
}

/// A space at which no line breaks, between a size's name and its figure.
const JOINED: char = '\u{a0}';

/// `6 mm round, hole 1 mm`, `11/0, 1.8 mm seed, hole 0.8 mm`, `12 mm coin, 3 mm thick, drilled edge to edge, hole 1 mm`; across first.
pub fn size(bead: &Bead) -> String {
    let (across, along) = (bead.across.tenths(), bead.along.tenths());
    let both = bead.across != bead.along && bead.shape != Shape::Seed;
    let name = seed_name(bead.across).filter(|_| bead.shape == Shape::Seed);
    let size = match name {
        Some(name) => format!("{name}, {across}"),
        None if both => format!("{} × {along}", trimmed(bead.across.value(), 1)),
        None => across,
    };
    let hole = format!("{}{}", bead.hole.tenths(), assumed(bead.hole.is_assumed()));
    let hole = bead.bores.map_or_else(
        || format!("hole{JOINED}{hole}"),
        |Bores { count, apart }| format!("{count} holes of {hole}, {} from middle to middle", apart.tenths()),
    );
    let shape = if both && bead.shape == Shape::Square { "rectangle" } else { bead.shape.word() };
    format!("{size} {shape}{}, {hole}", drilled(bead))
}

/// How thick a flat bead is, and which way the hole runs where its name leaves that open.
fn drilled(bead: &Bead) -> String {
    let thick = match bead.shape {
        Shape::Coin | Shape::Square => format!(", {} thick{}", bead.thick.tenths(), assumed(bead.thick.is_assumed())),
        _ => String::new(),
    };
    let way = match (bead.drilled, bead.shape) {
        (Drilled::Tip, _) => ", drilled across the tip",
        (Drilled::Front, _) => ", drilled through the front",
        (Drilled::Lengthwise, Shape::Coin | Shape::Square) => ", drilled edge to edge",
        (Drilled::Lengthwise, Shape::Drop | Shape::Oval) => ", drilled lengthwise",
        _ => "",
    };
    thick + way
}

/// `wire 0.4 mm (0.016 in) thick, breaks at 60 N (13 lb)`; of chain also how long its links are inside: links of round
/// wire that pull at one another lie as far apart.
fn cord(cord: &Cord, units: UnitStyle) -> String {
    let inches = units != UnitStyle::Mm;
    let (mm, newtons) = (cord.diameter.value(), cord.strength.map(|force| force.value()));
    let thick = if inches { format!(" ({:.3} in)", mm / INCH) } else { String::new() };
    let pounds = |force: f64| if inches { format!(" ({:.0} lb)", force / POUND_FORCE) } else { String::new() };
    let strength = newtons.map(|force| format!(", breaks at {force:.0} N{}", pounds(force))).unwrap_or_default();
    let needle = if cord.needle { ", with its needle" } else { "" };
    let coil = cord.coil.map(|coil| format!(", its coil {} inside", coil.tenths())).unwrap_or_default();
    let links = cord.link.map(|link| format!(", links {} long inside", link.hundredths())).unwrap_or_default();
    let strands = made_of(cord);
    format!("{} {}{thick} thick{strands}{links}{coil}{strength}{needle}", cord.word(), cord.diameter.hundredths())
}

/// What wire is made of: `, of 7 fine strands`, `, solid copper`; not what is not said where how stiff it is is.
fn made_of(cord: &Cord) -> String {
    let Some(wire) = &cord.wire else { return String::new() };
    let metal = |before: &str| wire.metal.as_ref().map(|metal| format!("{before}{metal}")).unwrap_or_default();
    match wire.filaments {
        Stated::Stated(1) => format!(", solid{}", metal(" ")),
        Stated::Assumed(_) if !cord.stiffness.is_assumed() => metal(", "),
        count => format!(", of {} fine strands{}", *count, metal(" of ")),
    }
}

/// `14 mm long, inside 8 mm, wide end 9 mm, tip 1.5 mm, brass`; sizes that the finding has, and how wide its ring must be where
/// thick cord goes through that.
fn finding(finding: &Finding, ring: Option<Length>) -> String {
    let is_toggle = finding.kind() == FindingKind::ToggleBar;
    let way = if has_holes(finding) { "along the strand" } else { "long" };
    let long = match finding.length() {
        Some(adds) if is_toggle => Some(toggle(finding, adds)),
        length => length.map(|length| format!("{} {way}", length.tenths())),
    };
    let sizes = [
        ("outside", finding.outside().filter(|_| !is_toggle && !finding.has_loop())),
        (if finding.kind() == FindingKind::Hook { "ring inside" } else { "inside" }, finding.inside()),
        ("wide end", finding.mouth()),
        ("tip", finding.cone().map(|cone| cone.tip)),
    ];
    let said = sizes.into_iter().filter_map(|(name, size)| Some(format!("{name}{JOINED}{}", size?.hundredths())));
    let broad = finding.broad().map(|breadth| format!("{} broad", breadth.tenths()));
    let ring = ring.map(|ring| format!("its ring at least {} inside", ring.at_least(1)));
    let parts = long
        .into_iter()
        .chain(broad)
        .chain(holes(finding))
        .chain(said)
        .chain(wire(finding))
        .chain(links(finding))
        .chain(ring);
    commas(parts.chain(finding.material.clone()))
}

/// A toggle's bar lies across the piece: `20 mm long, adds 5 mm to the piece`.
fn toggle(finding: &Finding, adds: Length) -> String {
    let long = finding.outside().map(|long| format!("{} long, ", long.tenths())).unwrap_or_default();
    format!("{long}adds {} to the piece", adds.tenths())
}

/// Whether it is a bar with a hole or loop for each of several strands.
fn has_holes(finding: &Finding) -> bool {
    finding.bar().is_some_and(|bar| bar.holes > 1)
}

/// `3 holes, 8 mm from middle to middle`; `3 loops, 8 mm from middle to middle, and a ring opposite` of a bar that ends strands.
fn holes(finding: &Finding) -> Option<String> {
    let what = if finding.comb().is_some() { "loops" } else { "holes" };
    let bar = finding.bar().filter(|bar| bar.holes > 1)?;
    let ring = if finding.kind() == FindingKind::EndBar { ", and a ring opposite" } else { "" };
    Some(format!("{} {what}, {} from middle to middle{ring}", bar.holes, bar.spacing.tenths()))
}

/// `21 gauge wire (0.72 mm)`, or its diameter where that is no gauge's; nothing where it is assumed.
fn wire(finding: &Finding) -> Option<String> {
    let wire = finding.wire().and_then(Stated::stated)?;
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
    finding.chain().map(|chain| format!("links of {}", chain.link.tenths()))
}
