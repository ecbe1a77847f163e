//! Where the lines of a row end.

use super::span::{Span, Spanned};

/// Shortest that bare cord is drawn, with room for its length.
const SHORTEST: f64 = 14.0;
/// Share of a line below which the last one is made longer.
const LEAST_LAST: f64 = 0.33;
/// Share of a line at its end in which it may end beside bare cord or between runs, and where a repeat begins.
const NEAR: f64 = 0.2;
const FAR: f64 = 0.25;
/// Into how many steps a line is divided to find the shortest equal ones.
const STEPS: u8 = 24;
/// How many beads of a run that fills its line stand with bare cord on the next.
const FEW: usize = 6;

/// The spans in lines no longer than the room: in equal ones where a few beads would stand on the last alone.
pub fn broken<'a>(spans: &[Span<'a>], room: f64) -> Vec<Vec<Span<'a>>> {
    let full = filled(spans, room);
    let last: f64 = full.last().into_iter().flatten().map(Span::length).sum();
    if full.len() < 2 || last > LEAST_LAST * room {
        return full;
    }
    let rooms = (1..STEPS).map(|step| room * f64::from(step) / f64::from(STEPS));
    rooms.map(|room| filled(spans, room)).find(|even| even.len() == full.len()).unwrap_or(full)
}

/// The spans in lines as full as can be. A line ends where a run does, if that is near its end; bare cord that ends the
/// row stands on the line of the last beads.
fn filled<'a>(spans: &[Span<'a>], room: f64) -> Vec<Vec<Span<'a>>> {
    let (mut lines, mut from, mut length) = (Vec::new(), 0, 0.0);
    for (at, span) in spans.iter().enumerate() {
        if at > from && length + span.length() > room {
            let cut = last_place(spans, from, at, room);
            lines.push(spans[from..cut].to_vec());
            length = spans[cut..at].iter().map(Span::length).sum();
            from = cut;
        }
        length += span.length();
    }
    if from < spans.len() {
        lines.push(spans[from..].to_vec());
    }
    gather(&mut lines, room);
    lines
}

/// Brings a last line without beads to the beads before it: up to them where there is room for its
/// cord cut short, or else the last run, or the last few beads of one that fills its line, down to it.
fn gather(lines: &mut Vec<Vec<Span<'_>>>, room: f64) {
    let Some(mut last) = lines.pop_if(|last| !last.iter().any(is_strung)) else { return };
    let Some(before) = lines.last_mut() else { return lines.push(last) };
    let beads = before.iter().rposition(is_strung).map_or(0, |at| at + 1);
    last.splice(0..0, before.drain(beads..));
    let bare = last.iter().filter(|span| span.is_bare()).count() as f64;
    let ends: f64 = last.iter().filter(|span| !span.is_bare()).map(Span::length).sum();
    let left = room - length(before) - ends;
    if left >= SHORTEST * bare {
        before.extend(last.iter().map(|span| span.cut_short(left / bare.max(1.0))));
    } else {
        let run = last_run(before);
        if length(&before[run..]) + length(&last) <= room {
            last.splice(0..0, before.split_off(run));
        }
        lines.push(last);
    }
}

/// Whether a bead, a finding or a branch stands there, or beads that are left out.
const fn is_strung(span: &Span<'_>) -> bool {
    matches!(span.thing, Spanned::Bit(_) | Spanned::More(..))
}

fn length(spans: &[Span<'_>]) -> f64 {
    spans.iter().map(Span::length).sum()
}

/// Where the last run of a line begins, or the last few beads of one that fills it.
fn last_run(line: &[Span<'_>]) -> usize {
    let starts_run = |at: &usize| line[*at].run.0 == 0 && !line[*at].is_knot();
    let few = line.len().saturating_sub(FEW).max(1).min(line.len());
    (1..line.len()).rev().find(starts_run).unwrap_or(few)
}

/// Where to end a line that has room up to a span: near its end beside bare cord, or where a repeat begins, or else where no
/// run goes on and no finding, such as a cap, is parted from what it faces.
fn last_place(spans: &[Span<'_>], from: usize, at: usize, room: f64) -> usize {
    let near = |share: f64| {
        let mut left = share * room;
        let is_near = move |cut: &usize| {
            let near = left >= 0.0;
            left -= spans[cut - 1].length();
            near
        };
        (from + 1..=at).rev().take_while(is_near)
    };
    let beside_bare = |cut: &usize| spans[*cut].is_bare() || spans[*cut - 1].is_bare();
    let parts_facing = |cut: usize| spans[cut].faces(false) || spans[cut - 1].faces(true);
    let between_runs = |cut: &usize| spans[*cut].run.0 == 0 && !spans[*cut].is_knot() && !parts_facing(*cut);
    let at_repeat = |cut: &usize| spans[*cut].opens && between_runs(cut);
    let bare = near(NEAR).find(beside_bare);
    bare.or_else(|| near(FAR).find(at_repeat)).or_else(|| near(NEAR).find(between_runs)).unwrap_or(at)
}
