//! What to check a strand against: the beaded length, bare cord, where it starts.

use crate::design::{Bead, Bit, Design, Index, LEAST_BARE, Strand, TOLD_LACK, What};
use crate::drape::Hung;
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::pattern::{CordKind, Settle};
use crate::sheet::Sheet;
use crate::sheet::figure::Row;
use crate::steps::english;
use crate::steps::posts::Posts;
use crate::units::{Length, UnitStyle};

/// Bare lengths that differ by less are told as equal: half of what a ruler shows.
const SAME: f64 = 0.5;

/// The lengths to check against, and what of the row is not drawn as it is.
pub fn block(sheet: &Sheet<'_>, index: Index<Strand>, row: &Row, width: f64) -> Block {
    let design = &sheet.piece.design;
    let strand = &design.strands[index];
    if strand.is_on_pin(design) {
        return Type::TINY.paragraph(&notes(design, strand, row).join(" "), width);
    }
    let mut small = vec![english::sum(design, strand)];
    let mut blocks = Vec::new();
    if is_strung_with_beads(strand) {
        blocks.push(Type::STRONG.paragraph(&english::measures(design, strand), width));
        if design.cords[strand.cord].is_sprung() {
            small.push(CURVED.to_owned());
        }
        small.push(tolerances(design, strand));
    }
    let chain = design.cords[strand.cord].kind == CordKind::Chain;
    small.push(bare(design, if chain { "chain" } else { "cord" }, strand, &sheet.piece.drape.strands[index]));
    small.extend(Posts::new(design, strand).positions());
    small.extend(notes(design, strand, row).into_iter().map(str::to_owned));
    blocks.push(Type::TINY.paragraph(&small.join(" "), width));
    Block::stack(blocks, 0.4)
}

/// Whether there are beads on its cord itself.
fn is_strung_with_beads(strand: &Strand) -> bool {
    strand.bits().any(|bit| matches!(bit.what, What::Bead(_)))
}

/// What is said of a length on memory wire.
const CURVED: &str =
    "That is along the wire as it is curved, where beads touch on the inner side; here they are drawn as far apart.";

/// What to do where the length differs by more.
fn tolerances(design: &Design, strand: &Strand) -> String {
    let strung = |index: &Index<Bead>| strand.bits().any(|bit| bit.what == What::Bead(*index));
    let beads: Vec<_> = design.beads.indices().filter(strung).map(|index| &design.beads[index]).collect();
    let first = beads.first().map_or(Length::ZERO, |bead| bead.tolerance);
    let each = if beads.iter().all(|bead| bead.tolerance == first) {
        format!("each may be off by {}", first.hundredths())
    } else {
        let each = beads.iter().map(|bead| format!("{} by {}", bead.letter, bead.tolerance.hundredths()));
        format!("each may be off, {}", each.collect::<Vec<_>>().join(", "))
    };
    format!("If it differs by more, measure your beads: {each}. {}", remedy(design, strand))
}

/// What beads of other sizes ask for: where the strand's length follows from them, other counts; where it
/// is written, the bare cord gives way.
fn remedy(design: &Design, strand: &Strand) -> String {
    let is_firm = strand.settle == Settle::Fill || strand.bare() < LEAST_BARE;
    // One end of a lariat is not as the other.
    let alike = if design.closure.open().is_some() { "" } else { ", alike on both sides" };
    if is_firm && strand.bits().any(|bit| bit.what == What::Knot) {
        format!(
            "Measure early, while the next knots can still be tied tighter or looser; at the end string more or fewer \
             beads{alike}."
        )
    } else if is_firm {
        let until = if alike.is_empty() { " until" } else { ", until" };
        format!("String more or fewer{alike}{until} it comes nearest.")
    } else {
        "Keep the counts and the strand's length: what the beads take more or less comes off the bare cord.".to_owned()
    }
}

/// Bare cord, or chain, in all, and at the ends.
fn bare(design: &Design, cord: &str, strand: &Strand, hung: &Hung) -> String {
    let units = design.heading.units;
    let all = strand.bare();
    if all < LEAST_BARE {
        let lacks = Length::mm(hung.lacks);
        return match strand.told_slack() {
            Some(_) => format!("No bare {cord} is left in the round."),
            None if lacks >= TOLD_LACK => format!(
                "No bare {cord} is left, and where it bends its beads want {} more: there their flat ends lock, and it hangs \
                 stiffer than drawn.",
                units.ruler(lacks)
            ),
            None if design.closure.loops() && lacks.value() > SAME => format!(
                "No bare {cord} is left along the row; where the loop folds its beads part, and about {} of it shows there.",
                units.ruler(lacks)
            ),
            None => format!("No bare {cord} is left."),
        };
    }
    let [first, last] = at_ends(strand, &hung.starts);
    // What does not slide is told as over the row.
    let (about, told): (_, Told) =
        if strand.slides(design) { ("about ", UnitStyle::ruler) } else { ("", UnitStyle::fine) };
    let say = |length: f64| format!("{about}{}", told(units, Length::mm(length)));
    let alike = (first - last).abs() < SAME;
    let [first, last] = if alike { [first.midpoint(last); 2] } else { [first, last] };
    let ends = if alike {
        format!("{} at each end", say(first))
    } else {
        format!("{} at the first end, {} at the last", say(first), say(last))
    };
    let others = if is_strung_with_beads(strand) { "beads" } else { "dangles" };
    let between = (all.value() - first - last > SAME).then(|| format!(", the rest between the {others}"));
    let between = between.unwrap_or_default();
    let adds_up = !between.is_empty() || adds_up(units, told, [first, last], all.value());
    let rounding = if adds_up { "" } else { " (each rounded by itself)" };
    format!("Bare {cord}: in all {}, {ends}{between}{rounding}.", units.ruler(all))
}

/// How a length is printed.
type Told = fn(UnitStyle, Length) -> String;

/// Whether parts in mm, told in a way, add up to a whole as they are printed.
fn adds_up(units: UnitStyle, told: Told, parts: [f64; 2], whole: f64) -> bool {
    // What is printed as nothing is none.
    let printed = |words: &str| Length::parse(words).map_or(0.0, Length::value);
    let part = |style: UnitStyle, mm| printed(&told(style, Length::mm(mm)));
    let whole = |style: UnitStyle| printed(&style.ruler(Length::mm(whole)));
    let differ = |style: UnitStyle| parts.map(|mm| part(style, mm)).iter().sum::<f64>() - whole(style);
    let styles = if units == UnitStyle::Both { vec![UnitStyle::In, UnitStyle::Mm] } else { vec![units] };
    styles.into_iter().all(|style| differ(style).abs() < 1e-6)
}

/// Bare cord before the first thing strung and after the last, of trains that start at stations.
fn at_ends(strand: &Strand, starts: &[f64]) -> [f64; 2] {
    fn gaps<'a>(bits: impl Iterator<Item = &'a Bit>) -> f64 {
        bits.take_while(|bit| bit.what == What::Gap).map(Bit::length).sum()
    }
    let [first_takes, last_takes] = strand.ends.each_ref().map(|end| end.takes.value());
    let mut trains = strand.trains.iter().zip(starts);
    let Some((first, start)) = trains.next() else { return [strand.bare().value(), 0.0] };
    let (last, last_start) = trains.next_back().unwrap_or((first, start));
    let end = last_start + last.length() - gaps(last.bits.iter().rev());
    [start + gaps(first.bits.iter()) - first_takes, strand.finished.value() - last_takes - end]
}

/// What of the row is not drawn as it is.
fn notes(design: &Design, strand: &Strand, row: &Row) -> Vec<&'static str> {
    let notes = [
        (row.elided, "Repeats left out of the drawing are told where they stand; ruler and counts go on past them."),
        (row.reduced > 0, "What is too large for the page is drawn smaller, and the ruler stops there."),
        (row.unlettered > 0, "Runs too short for their letter have a bracket alone: read them in the words above."),
        (
            strand.trains.len() > 1 && strand.slides(design),
            "Some of the beads slide: the ruler shows where they rest when the piece hangs.",
        ),
    ];
    notes.into_iter().filter(|(applies, _)| *applies).map(|(_, words)| words).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_add_up_as_they_are_printed() {
        // 12.5 and 166.5 mm are printed as 13 and 167, and their sum as 179.
        assert!(!adds_up(UnitStyle::Mm, UnitStyle::ruler, [12.5, 166.5], 179.0));
        assert!(
            adds_up(UnitStyle::Mm, UnitStyle::ruler, [12.0, 167.0], 179.0)
                && adds_up(UnitStyle::Mm, UnitStyle::ruler, [0.1, 20.0], 20.1)
        );
        // 3/32 in twice is 3/16 in; 12.7 mm twice is an inch, but 13 and 13 are not 25.
        assert!(
            adds_up(UnitStyle::In, UnitStyle::ruler, [12.7, 12.7], 25.4)
                && !adds_up(UnitStyle::Both, UnitStyle::ruler, [12.7, 12.7], 25.4)
        );
    }
}
