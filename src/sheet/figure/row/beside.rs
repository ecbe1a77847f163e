//! Letters beside the beads of branches, those of a run of one bead once.

use crate::design::{Bead, Dangle, Design, Index, What};
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark};

use super::line::Placed;

/// Room between a branch and its letters.
const CLEAR: f64 = 0.8;
/// Room that is missing by less is there.
const ROUNDING: f64 = 1e-9;
/// How the letters look.
const FACE: Type = Type::SMALL_STRONG;

/// The letters of a line's branches with the cord at a height: to the right of each branch, or else
/// to its left; none where its neighbours leave no room.
pub fn letters(design: &Design, placed: &[Placed<'_, '_>], cord: f64, width: f64) -> Vec<Mark> {
    let (branches, others): (Vec<&Placed<'_, '_>>, Vec<&Placed<'_, '_>>) =
        placed.iter().partition(|one| one.span.branch().is_some());
    let row = others.iter().map(|one| one.span.reach.below).fold(0.0, f64::max);
    let mut taken: Vec<_> = branches.iter().map(|one| reach(one)).collect();
    let mut marks = Vec::new();
    for one in &branches {
        let letters = of_branch(design, one, cord, cord + row);
        let wide = letters.iter().map(|(words, _)| FACE.width(words)).fold(0.0, f64::max);
        let (left, right) = reach(one);
        let is_free = |x: &f64| {
            let inside = *x >= 0.0 && x + wide <= width;
            inside && taken.iter().all(|(from, to)| x + wide <= *from + ROUNDING || *x >= to - ROUNDING)
        };
        let Some(x) = [right, left - wide].into_iter().find(is_free) else { continue };
        taken.push((x - CLEAR, x + wide + CLEAR));
        marks.extend(letters.iter().map(|(words, y)| FACE.mark(words, Point::new(x, *y), Anchor::Start)));
    }
    marks
}

/// What a branch takes of the line, with room beside it.
fn reach(one: &Placed<'_, '_>) -> (f64, f64) {
    let half = one.span.reach.aside + CLEAR;
    (one.centre() - half, one.centre() + half)
}

/// The letters of one branch with their baselines, without those that would reach above a height.
fn of_branch(design: &Design, one: &Placed<'_, '_>, cord: f64, lowest: f64) -> Vec<(String, f64)> {
    let Some(branch) = one.span.branch() else { return Vec::new() };
    let baseline = |level: f64| cord + one.span.hang + level * one.span.scale + FACE.size * 0.35;
    let all = runs(branch, design).into_iter().map(|(words, level)| (words, baseline(level)));
    all.filter(|(_, y)| y - FACE.size >= lowest).collect()
}

/// The runs of a branch, each with how far its middle lies below the branch's top.
fn runs(branch: &Dangle, design: &Design) -> Vec<(String, f64)> {
    let levels = branch.levels(design);
    let beads: Vec<_> = branch.bits.iter().zip(levels).map(|(bit, level)| (bead(&bit.what), level)).collect();
    let runs = beads.chunk_by(|one, next| one.0 == next.0 && one.0.is_some());
    let run = |run: &[(Option<Index<Bead>>, f64)]| match run {
        [(Some(bead), first), ..] => {
            let last = run.last().map_or(*first, |(_, level)| *level);
            Some((format!("{}{}", run.len(), design.beads[*bead].letter), first.midpoint(last)))
        }
        _ => None,
    };
    runs.filter_map(run).collect()
}

const fn bead(what: &What) -> Option<Index<Bead>> {
    match what {
        What::Bead(bead) => Some(*bead),
        _ => None,
    }
}
