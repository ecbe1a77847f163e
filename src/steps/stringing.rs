//! Stringing: the word chart of each strand, the length to check it against, and the places of
//! what does not slide.

use std::collections::BTreeMap;

use super::ends::keeps_tail;
use super::posts::{self, Keeps, Posts, datum, stop};
use super::tools::{Needle, needle};
use super::words::{count, list, strand as name};
use super::{Step, chart};
use crate::design::{Bead, Bit, Design, Finding, Index, Strand, What};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::units::Length;

/// A ruler is read to about a millimetre, however alike the beads are.
const LEAST_SPREAD: Length = Length::mm(1.0);
/// Gaps that differ by less are told as equal: half of what a ruler shows.
const SAME: f64 = 0.5;

/// String and measure each strand.
pub fn strands(design: &Design) -> Vec<Step> {
    design.strands.iter().flat_map(|strand| of_strand(design, strand)).collect()
}

fn of_strand(design: &Design, strand: &Strand) -> Vec<Step> {
    if strand.bits().next().is_none() {
        return Vec::new();
    }
    let posts = Posts::new(design, strand);
    let mut steps = vec![string(design, strand, &posts)];
    if design.cords[strand.cord].kind != CordKind::Chain && strand.bits().any(|bit| matches!(bit.what, What::Bead(_))) {
        steps.push(measure(design, strand));
    }
    steps.extend(stops(design, strand, &posts));
    steps.extend(space(design, strand, &posts));
    steps.extend(hold(design, strand));
    steps
}

fn string(design: &Design, strand: &Strand, posts: &Posts<'_>) -> Step {
    let title = if design.strands.len() == 1 { "the beads".to_owned() } else { name(design, strand) };
    let chart = chart::text(design, strand);
    let mut said = vec![match design.cords[strand.cord].kind {
        CordKind::Chain => format!("Hang in the links {chart}."),
        _ if design.strands.len() > 1 => format!("Take the tag off the {} piece and string {chart}.", strand.name),
        _ => format!("String {chart}."),
    }];
    said.extend(besides(design, strand));
    let check = [
        Some(counts(design, strand)),
        besides_beads(design, strand),
        first_ten(design, strand),
        fixed(design, strand, posts),
        posts.sentence(Keeps::Bar),
        posts.sentence(Keeps::Knot),
    ];
    let check: Vec<_> = check.into_iter().flatten().collect();
    Step::new(format!("String {title}"), said.join(" ")).check(check.join(" "))
}

/// What else is done while a strand is strung.
fn besides(design: &Design, strand: &Strand) -> Vec<String> {
    let bars = passes(design, strand);
    let [own, bought] = [Needle::Own, Needle::Bought].map(|which| needle(design, strand) == Some(which));
    let choices = [
        (own, "String with the cord's own needle: that end is the last one, and comes through the beads."),
        (bought && strand.legs == 1, "String with a beading needle on the last end, the long one."),
        (bought && strand.legs > 1, "String with a beading needle that both last ends go through."),
        (strand.legs > 1, "Take both legs through every bead."),
        (bars == Some(Pass::First), "The other strands go through the other holes of the same spacer bars."),
        (bars == Some(Pass::Next), "The spacer bars are those of the strands before."),
        (has_caps(design, strand), "Each bead cap has its hollow side to the bead that it hugs."),
        (hangs(strand), "Dangles are told from the cord down."),
        (keeps_tail(design, strand), "Take the first beads over the tail as well, until it is covered."),
        (hangs_pins(design, strand), "Roll each loop shut round its link."),
        (hangs_bails(design, strand), "A bail goes on over the end link and slides to its place."),
        (design.cords[strand.cord].kind != CordKind::Chain, "Put a bead stopper on the end."),
    ];
    let said = choices.into_iter().filter(|(applies, _)| *applies).map(|(_, words)| words.to_owned());
    silent_knots(design, strand).into_iter().chain(said).collect()
}

/// How the knots are tied that come between all beads.
fn silent_knots(design: &Design, strand: &Strand) -> Option<String> {
    let knot = posts::silent_knot(strand)?;
    let (cord, takes) = (design.cords[strand.cord].kind.word(), Length::mm(knot.length()).hundredths());
    Some(format!(
        "Before the next bead tie an overhand knot in the {cord}: put an awl or the tip of tweezers in its loop, slide \
         the loop up to the bead with it, and draw the knot tight there. A knot is to take {takes} along the {cord}."
    ))
}

/// `The first 10 beads with their knots measure 80 mm.`, to be seen before all are knotted.
fn first_ten(design: &Design, strand: &Strand) -> Option<String> {
    const FEW: usize = 10;
    let is_bead = |bit: &&Bit| matches!(bit.what, What::Bead(_));
    let many = strand.bits().filter(is_bead).count() > 2 * FEW;
    let mut beads = 0;
    let first = strand.bits().take_while(|bit| {
        beads += usize::from(is_bead(bit));
        beads <= FEW
    });
    let length = Length::mm(first.map(Bit::length).sum());
    let told = posts::silent_knot(strand).is_some() && many;
    told.then(|| format!("The first {FEW} beads with their knots measure {}.", design.heading.units.ruler(length)))
}

/// Which hole of the bars that it shares a strand goes through.
#[derive(PartialEq, Eq)]
enum Pass {
    First,
    Next,
}

/// The pass of a strand through bars that hold it beside others.
fn passes(design: &Design, strand: &Strand) -> Option<Pass> {
    let hole = design.findings.indices().find_map(|at| design.hole(at, strand))?;
    Some(if hole == 1 { Pass::First } else { Pass::Next })
}

fn has_caps(design: &Design, strand: &Strand) -> bool {
    let is_cap =
        |bit: &Bit| matches!(bit.what, What::Finding(at) if design.findings[at].kind() == FindingKind::BeadCap);
    strand.bits().any(is_cap)
}

fn hangs(strand: &Strand) -> bool {
    strand.bits().any(|bit| matches!(bit.what, What::Dangle(_)))
}

/// Whether branches on pins hang in the links of a chain.
fn hangs_pins(design: &Design, strand: &Strand) -> bool {
    let on_pin = |bit: &Bit| matches!(&bit.what, What::Dangle(dangle) if design.findings[dangle.on].is_pin());
    design.cords[strand.cord].kind == CordKind::Chain && strand.bits().any(on_pin)
}

/// Whether branches on bails hang from a chain.
fn hangs_bails(design: &Design, strand: &Strand) -> bool {
    let is_bail = |at: Index<Finding>| design.findings[at].kind() == FindingKind::Bail;
    let on_bail = |bit: &Bit| matches!(&bit.what, What::Dangle(dangle) if is_bail(dangle.on));
    design.cords[strand.cord].kind == CordKind::Chain && strand.bits().any(on_bail)
}

/// `65 beads: 55A and 10B.`, or with branches `24 beads on the cord, 4 on the branch: 26A, 1B and 1C.`
#[must_use]
pub fn counts(design: &Design, strand: &Strand) -> String {
    let counts = strand.counts(design);
    let strung = design.beads.iter().zip(&counts).filter(|(_, count)| **count > 0);
    let each: Vec<_> = strung.map(|(bead, count)| format!("{count}{}", bead.letter)).collect();
    let total = total(design.cords[strand.cord].kind.word(), strand, counts.iter().copied().map(u64::from).sum());
    let strung = if each.is_empty() { format!("{total}.") } else { format!("{total}: {}.", list(&each)) };
    let tied = in_knots(design, strand).map(|tied| format!(" {tied}")).unwrap_or_default();
    strung + &tied
}

/// `The knots at its ends are tied round 2A more.`
fn in_knots(design: &Design, strand: &Strand) -> Option<String> {
    let mut beads: BTreeMap<Index<Bead>, u32> = BTreeMap::new();
    strand.in_end_knots(design).for_each(|bead| *beads.entry(bead).or_default() += 1);
    let each: Vec<_> = beads.iter().map(|(bead, count)| format!("{count}{}", design.beads[*bead].letter)).collect();
    (!each.is_empty()).then(|| format!("The knots at its ends are tied round {} more.", list(&each)))
}

/// `Besides, 26 petal bead caps.`: the findings among the beads, but for bars that strands share, and the knots
/// that the chart says.
fn besides_beads(design: &Design, strand: &Strand) -> Option<String> {
    let strung = |at: Index<Finding>| strand.bits().filter(|bit| bit.what == What::Finding(at)).count() as u64;
    let alone = |at: &Index<Finding>| design.strands.len() == 1 || !design.findings[*at].is_shared();
    let each = design.findings.indices().filter(alone).filter(|at| strung(*at) > 0);
    let knots = Some(posts::knots(strand) as u64).filter(|knots| *knots > 0).map(|knots| count(knots, "knot"));
    let each: Vec<_> = each.map(|at| count(strung(at), &design.findings[at].name)).chain(knots).collect();
    (!each.is_empty()).then(|| format!("Besides, {}.", list(&each)))
}

/// How many beads there are in all, those on dangles told apart.
fn total(cord: &str, strand: &Strand, all: u64) -> String {
    let number = |is: fn(&What) -> bool| strand.bits().filter(|bit| is(&bit.what)).count() as u64;
    let on_cord = number(|what| matches!(what, What::Bead(_)));
    if all == on_cord {
        return count(all, "bead");
    }
    let dangles = match number(|what| matches!(what, What::Dangle(_))) {
        1 => "the dangle".to_owned(),
        more => format!("the {more} dangles"),
    };
    if on_cord == 0 {
        return format!("{} on {dangles}", count(all, "bead"));
    }
    format!("{} on the {cord}, {} on {dangles}", count(on_cord, "bead"), all.saturating_sub(on_cord))
}

fn measure(design: &Design, strand: &Strand) -> Step {
    let close = if strand.bits().any(|bit| bit.what == What::Knot) { "Lay" } else { "Push the beads together and lay" };
    let text = format!("{close} {} straight along a ruler.", name(design, strand));
    Step::new("Measure", text).check(measures(design, strand))
}

/// `The beads measure 13 in (330 mm), likely within 1⁄16 in (1.6 mm).`; and what a lot that is off one way
/// adds, where that matters.
#[must_use]
pub fn measures(design: &Design, strand: &Strand) -> String {
    let units = design.heading.units;
    let spread = strand.spread(design);
    let has = |is: fn(&What) -> bool| strand.bits().any(|bit| is(&bit.what));
    let with = match (has(|what| *what == What::Knot), has(|what| matches!(what, What::Finding(_)))) {
        (true, _) => " with the knots between them",
        (false, true) => " with all that is strung among them",
        (false, false) => "",
    };
    let bias = strand.bias(design).map(|bias| format!("; {}", bias.words(units))).unwrap_or_default();
    format!(
        "The beads{with} measure {}, likely within {}{bias}.",
        units.ruler(strand.beaded()),
        units.margin(if spread > LEAST_SPREAD { spread } else { LEAST_SPREAD })
    )
}

/// Fix the stops at their stations.
fn stops(design: &Design, strand: &Strand, posts: &Posts<'_>) -> Option<Step> {
    let (stop, _) = strand.trains.iter().find_map(|train| stop(design, strand, train))?;
    let finding = &design.findings[stop];
    let how = if finding.kind() == FindingKind::Crimp { "press it shut" } else { "fix it" };
    let text =
        format!("Set each {} that is strung on {} in its place, and {how} there.", finding.name, name(design, strand));
    let holds = "Pull each one: it stays.";
    Some(Step::new("Fix the stops", text).check(format!("{} {holds}", posts.sentence(Keeps::Stop)?)))
}

/// Space groups that are spread along the cord.
fn space(design: &Design, strand: &Strand, posts: &Posts<'_>) -> Option<Step> {
    if strand.settle != Settle::Spread {
        return None;
    }
    let (units, from) = (design.heading.units, datum(design, strand));
    let cord = design.cords[strand.cord].kind.word();
    let groups: Vec<_> = posts.of(Keeps::Group).collect();
    let first = groups.first()?;
    let gaps: Vec<_> = groups.windows(2).map(|pair| pair[1].station - pair[0].until).collect();
    let check = match gaps.split_first() {
        Some((gap, rest)) if rest.iter().all(|other| (*other - *gap).value().abs() < SAME) => format!(
            "The first group, {}, starts {} {from}, and {} of bare {cord} lies between groups.",
            first.name,
            units.ruler(first.station),
            units.ruler(*gap)
        ),
        _ => posts.sentence(Keeps::Group)?,
    };
    Some(Step::new("Space", format!("Space the groups evenly along the {cord}.")).check(check))
}

/// Where what stays in its place begins, to be seen while it is strung: a knot cannot be moved.
fn fixed(design: &Design, strand: &Strand, posts: &Posts<'_>) -> Option<String> {
    let first = posts.of(Keeps::Group).next().filter(|_| strand.settle == Settle::Fixed)?;
    let (station, from) = (design.heading.units.ruler(first.station), datum(design, strand));
    Some(format!("The first of them, {}, starts {station} {from}.", first.name))
}

/// Press the crimps that hold groups, once these are in their places.
fn hold(design: &Design, strand: &Strand) -> Option<Step> {
    let crimp =
        strand.trains.iter().filter(|train| stop(design, strand, train).is_none()).flat_map(|train| &train.bits);
    let crimp = crimp.filter_map(|bit| match bit.what {
        What::Finding(at) => Some(&design.findings[at]).filter(|finding| finding.kind() == FindingKind::Crimp),
        _ => None,
    });
    let crimp = crimp.into_iter().next()?;
    let text = format!("Press each {} of the groups shut where it stands, close against its beads.", crimp.name);
    Some(Step::new("Fix the groups", text).check("No group slides."))
}
