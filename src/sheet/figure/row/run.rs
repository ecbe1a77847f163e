//! Long runs of one bead: the first and the last of them are drawn, and between them stands how many more there are.

use super::span::{Span, Spanned};
use crate::steps::posts::Post;

/// Most beads of a run that are drawn at either end of what is left out.
const DRAWN: usize = 10;
/// Width in mm of what stands for those left out: room for their number and length.
pub const LEFT_OUT: f64 = 34.0;
/// The most of a line that a shortened run takes.
const SHARE: f64 = 0.85;
/// How many times as long a run is as what would be drawn of it, at least, for some of it to be left out.
const LEAST: f64 = 1.6;

/// Spans without most of each run that is long in a room, unless something there has a place of its own.
pub fn shortened<'a>(spans: &[Span<'a>], posts: &[Post], room: f64) -> Vec<Span<'a>> {
    let mut kept = Vec::new();
    for run in spans.chunk_by(|one, next| goes_on(one, next)) {
        match left_out(run, room).filter(|(from, to)| !holds_post(&run[*from..*to], posts)) {
            Some((from, to)) => {
                kept.extend_from_slice(&run[..from]);
                kept.extend(more(&run[from..to]));
                kept.extend_from_slice(&run[to..]);
            }
            None => kept.extend_from_slice(run),
        }
    }
    kept
}

/// Whether a run goes on from one span to the next: knots between beads of a kind do not end it.
fn goes_on(one: &Span<'_>, next: &Span<'_>) -> bool {
    let strung = |span: &Span<'_>| span.bead().is_some() || span.is_knot();
    strung(one) && strung(next) && !(next.bead().is_some() && next.run.0 == 0)
}

/// Which spans of a run are left out: from the first bead after those drawn to the last ones drawn.
fn left_out(run: &[Span<'_>], room: f64) -> Option<(usize, usize)> {
    let beads: Vec<usize> = (0..run.len()).filter(|at| run[*at].bead().is_some()).collect();
    let length = |spans: &[Span<'_>]| spans.iter().map(Span::length).sum::<f64>();
    let whole = length(run);
    let each = whole / beads.len().max(1) as f64;
    let fit = ((SHARE * room - LEFT_OUT) / (2.0 * each)).floor().max(1.0) as usize;
    let drawn = DRAWN.min(fit);
    let last = beads.len().checked_sub(drawn)?;
    let long = whole > LEAST * (2.0 * drawn as f64).mul_add(each, LEFT_OUT);
    (long && drawn < last).then(|| (beads[drawn], beads[last]))
}

/// Whether what stays in its place stands among spans.
fn holds_post(spans: &[Span<'_>], posts: &[Post]) -> bool {
    let [Some(first), Some(last)] = [spans.first(), spans.last()] else { return false };
    let among = first.from..last.from + last.cord;
    posts.iter().any(|post| among.contains(&post.station.value()))
}

/// What stands for spans that are left out.
fn more<'a>(spans: &[Span<'a>]) -> Option<Span<'a>> {
    let count = spans.iter().filter(|span| span.bead().is_some()).count();
    let first = *spans.first()?;
    let thing = Spanned::More(u32::try_from(count).ok()?, first.bead()?);
    let cord = spans.iter().map(|span| span.cord).sum();
    Some(Span { thing, cord, before: LEFT_OUT / 2.0, after: LEFT_OUT / 2.0, number: 0, ..first })
}
