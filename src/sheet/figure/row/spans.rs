//! The spans of a strand: one after another from end to end, its beads counted.

use crate::design::{Bit, Design, Rest, Strand, What};
use crate::sheet::figure::fastened::Fastened;

use super::lowered::lower;
use super::span::{NONE, Span};

/// Something strung at a station.
struct StrungBit<'a> {
    bit: &'a Bit,
    station: f64,
    /// Whether it slides.
    slides: bool,
    train: usize,
}

impl StrungBit<'_> {
    /// Where it ends.
    fn end(&self) -> f64 {
        self.station + self.bit.length()
    }
}

/// How both ends of a strand end.
#[must_use]
pub fn fastened(design: &Design, strand: &Strand) -> [Fastened; 2] {
    [0, 1].map(|side| Fastened::of(strand, side, design))
}

/// A strand's spans, from the first end to the last, its trains starting at stations; what the ends meet in is none.
#[must_use]
pub fn spans<'a>(design: &'a Design, strand: &'a Strand, starts: &[f64], fastened: [Fastened; 2]) -> Vec<Span<'a>> {
    let strung = strung(design, strand, starts);
    let [first, last] = [0, 1].map(|side: usize| strand.ends[side].takes.value());
    let end = strand.finished.value() - last;
    let mut spans = vec![Span::end((0, fastened[0]), 0.0, strand, design)];
    let mut before = None;
    for one in &strung {
        spans.extend(bare(before, Some(one), [first, one.station]));
        spans.push(Span::bit(one.bit, one.station, strand, design));
        before = Some(one);
    }
    spans.extend(bare(before, None, [first, end]));
    spans.push(Span::end((1, fastened[1]), end, strand, design));
    count(&mut spans);
    lower(&mut spans, design);
    spans
}

/// The bare cord between two things strung on different trains, or to an end of the strand: from a first station where
/// nothing is before it.
fn bare<'a>(before: Option<&StrungBit<'_>>, next: Option<&StrungBit<'_>>, [first, to]: [f64; 2]) -> Option<Span<'a>> {
    let from = before.map_or(first, StrungBit::end);
    let are_apart = before.zip(next).is_none_or(|(before, next)| before.train != next.train);
    let slides = |one: Option<&StrungBit<'_>>| one.is_some_and(|one| one.slides);
    (to - from > NONE).then(|| Span::bare(from, to - from, are_apart && (slides(before) || slides(next))))
}

fn strung<'a>(design: &Design, strand: &'a Strand, starts: &[f64]) -> Vec<StrungBit<'a>> {
    let (mut all, slides) = (Vec::new(), strand.slides(design));
    for (train, (one, start)) in strand.trains.iter().zip(starts).enumerate() {
        let mut station = *start;
        for bit in &one.bits {
            if bit.what != What::Gap && !bit.what.is_meeting() {
                all.push(StrungBit { bit, station, slides: slides && matches!(one.rest, Rest::Free(..)), train });
            }
            station += bit.length();
        }
    }
    all
}

/// Numbers the beads, and within their runs; knots between beads of a kind do not end a run.
fn count(spans: &mut [Span<'_>]) {
    let beads = spans.iter_mut().filter(|span| span.bead().is_some());
    beads.zip(1..).for_each(|(span, number)| span.number = number);
    let strung: Vec<usize> = (0..spans.len()).filter(|at| !spans[*at].is_knot()).collect();
    let bead = |at: &usize, spans: &[Span<'_>]| spans[*at].bead();
    let kinds: Vec<_> = strung.iter().map(|at| (*at, bead(at, spans))).collect();
    for run in kinds.chunk_by(|one, next| one.1 == next.1).filter(|run| run[0].1.is_some()) {
        let total = u32::try_from(run.len()).unwrap_or(u32::MAX);
        (0..).zip(run).for_each(|(before, (at, _))| spans[*at].run = (before, total));
    }
}
