//! Measures as a table for people.

use crate::design::TOLD_LACK;
use crate::pattern::Kind;
use crate::units::{UnitStyle, eighths, figures, times};

use super::{Measures, StrandMeasures, mm};

/// Title, a block a strand, clearances, the piece.
pub fn table(measures: &Measures, units: UnitStyle) -> String {
    let mut blocks = vec![title(measures)];
    blocks.extend(measures.strands.iter().map(|one| strand(one, units)));
    blocks.push(piece(measures, units));
    blocks.join("\n")
}

fn title(measures: &Measures) -> String {
    let variant: Vec<_> = [&measures.size, &measures.colourway].into_iter().flatten().map(String::as_str).collect();
    let variant = if variant.is_empty() { String::new() } else { format!(" ({})", variant.join(", ")) };
    format!("{}, {}{variant}\n", measures.title, measures.kind)
}

fn rows(heading: &str, rows: Vec<(&str, String)>) -> String {
    let lines: Vec<_> = rows.into_iter().map(|(name, value)| format!("  {name:<18}{value}\n")).collect();
    format!("{heading}\n{}", lines.concat())
}

fn strand(strand: &StrandMeasures, units: UnitStyle) -> String {
    let counts: Vec<_> = Measures::bead_counts(strand).into_iter().map(|(id, count)| format!("{count} {id}")).collect();
    if let Some(pin) = &strand.on_pin {
        let lines =
            vec![("on", pin.clone()), ("beads", counts.join(", ")), ("mass", format!("{:.1} g", strand.mass_g))];
        return rows(&strand.name, lines);
    }
    let bias = strand.bias.as_ref().map(|bias| format!("; {}", bias.words(units))).unwrap_or_default();
    let beaded = format!("{}, give or take {:.1} mm{bias}", exact(strand.beaded_mm, units), strand.beaded_spread_mm);
    let tension = &strand.hang.tension_n;
    let mut lines = vec![
        ("finished", exact(strand.finished_mm, units)),
        ("beads", counts.join(", ")),
        ("beaded", beaded),
        ("bare cord", exact(strand.bare_mm, units)),
        ("cut", exact(strand.cut_mm, units)),
        ("mass", format!("{:.1} g", strand.mass_g)),
    ];
    if strand.knots > 0 {
        lines.insert(2, ("knots", strand.knots.to_string()));
    }
    if strand.slack_mm > 0.0 {
        lines.insert(lines.len() - 2, ("in the round", format!("{} more cord", exact(strand.slack_mm, units))));
    }
    if let Some(twist) = &strand.twist {
        lines.push(("slack", mm(twist.slack_mm).tenths()));
        lines.extend(twist.needed_mm.map(|needed| ("needed", exact(needed, units))));
    }
    // What is laid straight pulls at nothing.
    if tension.first > 0.0 {
        lines.push(("hangs", hangs(strand, units)));
        let lacks = Some(strand.hang.lacks_mm).filter(|lacks| *lacks >= TOLD_LACK.value());
        lines.extend(lacks.map(|lacks| ("where it bends", format!("lacks {} of cord", exact(lacks, units)))));
        let pulls = [(tension.first, "first end"), (tension.lowest, "lowest"), (tension.last, "last end")];
        let pulls = pulls.map(|(force, place)| format!("{} N {place}", figures(force, 3)));
        lines.push(("tension", pulls.join(", ")));
        let stiff = |stiffness: f64| format!("{stiffness:.2} N mm²{}", strand.stiffness_mark);
        lines.extend(strand.stiffness_n_mm2.map(|stiffness| ("cord's stiffness", stiff(stiffness))));
    }
    rows(&strand.name, lines)
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
    let (least, most) = (exact(piece.finished_mm.least, units), exact(piece.finished_mm.most, units));
    let finished = if least == most { least } else { format!("{least} to {most}") };
    let mass = if measures.kind == Kind::Earrings { "mass of both" } else { "mass" };
    let mut lines = vec![("finished", finished), (mass, format!("{:.1} g", piece.mass_g))];
    for clearance in &measures.clearances {
        let [one, other] = &clearance.between;
        let share = clearance.touching_share * 100.0;
        let gap = format!("{one} to {other}: {:.1} mm at the closest, {share:.0} % touching", clearance.least_mm);
        let hardest = clearance.hardest_n_per_cm;
        let gap = if hardest > 0.0 {
            format!("{gap}, {:.2} mN on a centimetre at the hardest", 1000.0 * hardest)
        } else {
            gap
        };
        lines.push(("between strands", gap));
    }
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
        lines.push(("below the neck", drops.join(", ")));
        lines.extend(worn.length_name.map(|name| ("known as", name.to_owned())));
    }
    rows("the piece", lines)
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
