//! What to check a strand against: the beaded length, bare cord, where it starts.

use super::remedy::remedy;
use super::strung;
use crate::design::{Bead, Bit, Design, Index, LEAST_BARE, Rest, Strand, TOLD_LACK, What};
use crate::drape::Hung;
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::sheet::figure::StrandRow;
use crate::sheet::said::{Bare, NotAsItIs, Others, Tolerances};
use crate::sheet::{Sheet, english as say};
use crate::steps::english;
use crate::steps::posts::Posts;
use crate::units::{Length, UnitStyle};

/// Room in mm between the measures and what is said below them.
const LINES_APART: f64 = 0.4;

/// The lengths to check against, and what of the row is not drawn as it is.
pub fn block(sheet: &Sheet<'_>, index: Index<Strand>, row: &StrandRow, width: f64) -> Block {
    let design = &sheet.piece.design;
    let strand = &design.strands[index];
    let notes = notes(design, strand, row).map(|what| say::not_as_it_is(what).to_owned());
    if strand.is_on_pin(design) {
        return Type::TINY.paragraph(&notes.collect::<Vec<_>>().join(" "), width);
    }
    let measures = measures(design, strand, sheet.units());
    let small: Vec<_> = checks(sheet, index).into_iter().chain(notes).collect();
    let measures = measures.map(|words| Type::STRONG.paragraph(&words, width));
    Block::stack(measures.into_iter().chain([Type::TINY.paragraph(&small.join(" "), width)]), LINES_APART)
}

/// How long the beads of a strand are pushed together; nothing of chain that has none of its own.
pub fn measures(design: &Design, strand: &Strand, units: UnitStyle) -> Option<String> {
    is_strung_with_beads(strand).then(|| english::measures(design, strand, units))
}

/// What to check besides the beads' length, a sentence each.
fn checks(sheet: &Sheet<'_>, index: Index<Strand>) -> Vec<String> {
    let design = &sheet.piece.design;
    let (strand, units) = (&design.strands[index], sheet.units());
    let cord = &design.cords[strand.cord];
    let is_beaded = is_strung_with_beads(strand);
    let curved = (is_beaded && cord.is_sprung()).then(|| say::CURVED.to_owned());
    let tolerances = is_beaded.then(|| say::tolerances(design, &tolerances(design, strand), units));
    let bare = bare(design, strand, &sheet.piece.drape.strands[index]);
    let bare = say::bare(&bare, cord.word(), units);
    let checks = [Some(english::sum(design, strand, units)), curved, tolerances, Some(bare)];
    checks.into_iter().chain([Posts::new(design, strand).positions(units)]).flatten().collect()
}

/// Whether there are beads on its cord itself.
fn is_strung_with_beads(strand: &Strand) -> bool {
    strung(strand).next().is_some()
}

fn tolerances<'d>(design: &'d Design, strand: &Strand) -> Tolerances<'d> {
    let is_strung = |index: &Index<Bead>| strung(strand).any(|bead| bead == *index);
    let beads = design.beads.indices().filter(is_strung).map(|index| &design.beads[index]).collect();
    let every_strand = is_held(design, strand);
    let cord = &design.cords[strand.cord];
    Tolerances { beads, remedy: remedy(design, strand, every_strand), every_strand, cord }
}

/// Whether other strands hold a strand as long as themselves: in a ring of several, or by what they share.
fn is_held(design: &Design, strand: &Strand) -> bool {
    let shares = || strand.bits().any(|bit| design.shared_bit(bit, strand).is_some());
    design.strands.len() > 1 && (design.is_ring() || shares())
}

/// Bare cord, or chain, in all, and at the ends.
fn bare(design: &Design, strand: &Strand, hung: &Hung) -> Bare {
    let (all, lacks) = (strand.bare(), Length::mm(hung.lacks));
    match () {
        () if all >= LEAST_BARE => Bare::Some {
            all,
            ends: at_ends(strand, &hung.starts),
            slides: ends_slide(strand),
            others: if is_strung_with_beads(strand) { Others::Beads } else { Others::Dangles },
        },
        () if design.closure.loops() && strand.told_slack().is_some() => Bare::Folded(strand.slack),
        () if strand.told_slack().is_some() => Bare::NoneInTheRound,
        () if lacks >= TOLD_LACK => Bare::Lacks(lacks),
        () => Bare::None,
    }
}

/// Whether what is strung first or last slides.
fn ends_slide(strand: &Strand) -> bool {
    let ends = [strand.trains.first(), strand.trains.last()];
    ends.into_iter().flatten().any(|train| matches!(train.rest, Rest::Free(..)))
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
fn notes(design: &Design, strand: &Strand, row: &StrandRow) -> impl Iterator<Item = NotAsItIs> {
    let notes = [
        (row.elided, NotAsItIs::Elided),
        (row.reduced > 0, NotAsItIs::Reduced),
        (row.unlettered > 0, NotAsItIs::Unlettered),
        (strand.trains.len() > 1 && strand.slides(design), NotAsItIs::Slides),
    ];
    notes.into_iter().filter(|(applies, _)| *applies).map(|(_, what)| what)
}
