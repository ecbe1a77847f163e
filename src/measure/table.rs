//! Measures as a table for people.

use crate::design::TOLD_LACK;
use crate::english::{assumed, commas, list, times};
use crate::pattern::Kind;
use crate::steps::english::bias;
use crate::units::{UnitStyle, eighths, figures, ranged};

use super::{Assumptions, ClearanceMeasures, ContactMeasures, Measures, PieceMeasures, StrandMeasures, mm};

/// Title, a block a strand, clearances, the piece.
pub fn table(measures: &Measures, units: UnitStyle) -> String {
    let mut blocks = vec![title(measures)];
    blocks.extend(measures.strands.iter().map(|one| strand(one, units)));
    blocks.push(piece(measures, units));
    blocks.join("\n")
}

fn title(measures: &Measures) -> String {
    let variant: Vec<_> = [&measures.size, &measures.colourway].into_iter().flatten().map(String::as_str).collect();
    let variant = if variant.is_empty() { String::new() } else { format!(" ({})", commas(variant)) };
    format!("{}, {}{variant}\n", measures.title, measures.kind)
}

fn rows(heading: &str, rows: Vec<(&str, String)>) -> String {
    let lines: Vec<_> = rows.into_iter().map(|(name, value)| format!("  {name:<18}{value}\n")).collect();
    format!("{heading}\n{}", lines.concat())
}

fn strand(strand: &StrandMeasures, units: UnitStyle) -> String {
    let counts: Vec<_> = Measures::bead_counts(strand).into_iter().map(|(id, count)| format!("{count} {id}")).collect();
    let (counts, mass) = (("beads", commas(counts)), ("mass", format!("{:.1} g", strand.mass_g)));
    if let Some(pin) = &strand.on_pin {
        return rows(&strand.name, vec![("on", pin.clone()), counts, mass]);
    }
    let mut lines = vec![("finished", exact(strand.finished_mm, units)), counts];
    lines.extend((strand.knots > 0).then(|| ("knots", strand.knots.to_string())));
    lines.extend([("beaded", beaded(strand, units)), ("bare cord", exact(strand.bare_mm, units))]);
    let slack = || ("in the round", format!("{} more cord", exact(strand.slack_mm, units)));
    lines.extend((strand.slack_mm > 0.0).then(slack));
    lines.extend([("cut", exact(strand.cut_mm, units) + cut_for(strand.assumed)), mass]);
    if let Some(twist) = &strand.twist {
        lines.push(("slack", mm(twist.slack_mm).tenths()));
        lines.extend(twist.needed_mm.map(|needed| ("needed", exact(needed, units))));
    }
    // What is laid straight pulls at nothing.
    if strand.hang.tension_n.first > 0.0 {
        lines.extend(hanging(strand, units));
    }
    rows(&strand.name, lines)
}

/// What follows a length to cut of which something is assumed.
const fn cut_for(assumed: Assumptions) -> &'static str {
    if assumed.cut { ", what its ends and knots take assumed" } else { "" }
}

fn beaded(strand: &StrandMeasures, units: UnitStyle) -> String {
    let bias = strand.bias.as_ref().map(|told| format!("; {}", bias(told, units))).unwrap_or_default();
    let assumed = assumed(strand.assumed.tolerances);
    format!("{}, give or take {:.1} mm{assumed}{bias}", exact(strand.beaded_mm, units), strand.beaded_spread_mm)
}

/// How it hangs, what cord it lacks, what pulls at it, how stiff its cord is.
fn hanging(strand: &StrandMeasures, units: UnitStyle) -> Vec<(&'static str, String)> {
    let (hang, tension) = (&strand.hang, &strand.hang.tension_n);
    let lacks = Some(hang.lacks_mm).filter(|lacks| *lacks >= TOLD_LACK.value());
    let pulls = [(tension.first, "first end"), (tension.lowest, "lowest"), (tension.last, "last end")];
    let pulls = pulls.map(|(force, place)| format!("{} N {place}", figures(force, 3)));
    let stiff = |stiffness: f64| format!("{stiffness:.2} N mm²{}", assumed(strand.assumed.stiffness));
    let mut lines = vec![("hangs", hangs(strand, units))];
    lines.extend(lacks.map(|lacks| ("where it bends", format!("lacks {} of cord", exact(lacks, units)))));
    lines.push(("tension", commas(pulls)));
    lines.extend(strand.stiffness_n_mm2.map(|stiffness| ("cord's stiffness", stiff(stiffness))));
    lines
}

/// How a strand hangs: by its first end alone, or between two.
fn hangs(strand: &StrandMeasures, units: UnitStyle) -> String {
    const SAME: f64 = 1e-6;
    let (drop, span) = (strand.hang.drop_mm, strand.hang.span_mm);
    if (drop - span).abs() < SAME {
        format!("{} straight down", exact(drop, units))
    } else {
        format!("{} below a span of {}", exact(drop, units), exact(span, units))
    }
}

fn piece(measures: &Measures, units: UnitStyle) -> String {
    let piece = &measures.piece;
    let finished = ranged([piece.finished_mm.least, piece.finished_mm.most].map(|length| exact(length, units)));
    let mass = if measures.kind == Kind::Earrings { "mass of both" } else { "mass" };
    let mut lines = vec![("finished", finished), (mass, format!("{:.1} g{}", piece.mass_g, weighed(piece)))];
    lines.extend(measures.clearances.iter().map(|clearance| ("between strands", gap(clearance))));
    if let Some(twist) = &piece.twist {
        let (turns, length, thick) =
            (times(twist.turns), exact(twist.length_mm, units), mm(twist.thickness_mm).tenths());
        lines.push(("twisted", format!("{turns} to {length}, {thick} thick, at {:.1} degrees", twist.angle_deg)));
    }
    if let Some(ring) = &piece.ring {
        lines.extend(ring.coil.as_ref().map(|coil| ("goes round", format!("{} times", eighths(coil.turns)))));
        lines.push(("inside girth", exact(ring.inside_girth_mm, units)));
    }
    if let Some(worn) = &piece.worn {
        let drops: Vec<_> = worn
            .drop_mm
            .iter()
            .map(|(name, drop)| format!("{name} {:.0} mm", drop.as_f64().unwrap_or_default()))
            .collect();
        lines.push(("below the neck", commas(drops)));
        lines.extend(worn.contacts.iter().map(|contact| ("touch on the neck", touch(contact))));
        lines.extend(worn.length_name.map(|name| ("known as", name.to_owned())));
    }
    rows("the piece", lines)
}

/// Of what the mass is assumed that goes into the piece's.
fn weighed(piece: &PieceMeasures) -> String {
    let names = &piece.assumed_masses;
    if names.is_empty() { String::new() } else { format!(" (assumed: {})", list(names)) }
}

/// How near two strands come.
fn gap(clearance: &ClearanceMeasures) -> String {
    let ([one, other], share) = (&clearance.between, clearance.touching_share * 100.0);
    let [across, up] = clearance.at;
    let gap = format!(
        "{one} to {other}: {:.1} mm at the closest, {across:.0} mm across and {:.0} mm below the left end; {share:.0} % touching",
        clearance.least_mm, -up
    );
    gap + &hardest(clearance.hardest_n_per_cm) + &deep(clearance.least_at_ends_mm, " near the ends")
}

/// How two strands touch on the neck.
fn touch(contact: &ContactMeasures) -> String {
    let ([one, other], share) = (&contact.between, contact.touching_share * 100.0);
    let pressed = hardest(contact.hardest_n_per_cm.unwrap_or_default());
    let deep = [deep(contact.least_mm, ""), deep(contact.least_at_ends_mm, " near the ends")];
    format!("{one} and {other}: along {share:.0} %{pressed}{}", deep.concat())
}

/// How hard two strands press on one another, where they do.
fn hardest(n_per_cm: f64) -> String {
    let hardest = 1000.0 * n_per_cm;
    if hardest > 0.0 { format!(", {hardest:.2} mN on a centimetre at the hardest") } else { String::new() }
}

/// How deep strands lie in one another, where that is more than is known of them.
fn deep(least: Option<f64>, place: &str) -> String {
    /// What outlines are known to, in mm.
    const KNOWN: f64 = 0.05;
    let deep = least.map_or(0.0, |least| -least);
    if deep > KNOWN { format!(", {deep:.1} mm in one another{place}") } else { String::new() }
}

/// Tenths of a millimetre, with the inches beside them.
fn exact(value: f64, units: UnitStyle) -> String {
    let inches = crate::units::fraction(mm(value));
    match units {
        UnitStyle::Mm => mm(value).tenths(),
        UnitStyle::In => format!("{inches} in"),
        UnitStyle::Both => format!("{} ({inches} in)", mm(value).tenths()),
    }
}
