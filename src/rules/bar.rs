//! Whether bars have a hole for every strand, and are strung alike on all that share them.

use crate::design::{Bar, Design, Finding, Form, Sharer, Sharers};
use crate::remark::{Code, Remark};

/// Remarks about end bars and spacer bars.
pub fn check(design: &Design) -> Vec<Remark> {
    let ends = design.closure.parts().map(|part| &design.findings[part.finding]);
    let ends = ends.filter_map(|finding| end_bar(finding, design.strands.len()));
    let bars = design.findings.indices().filter(|at| design.findings[*at].is_shared());
    let groups = bars.flat_map(|at| design.sharing(at).into_iter().map(move |group| (at, group)));
    ends.chain(groups.filter_map(|(at, group)| spacer_bar(design, &design.findings[at], &group))).collect()
}

fn end_bar(bar: &Finding, strands: usize) -> Option<Remark> {
    let Form::EndBar(Bar { holes, .. }) = bar.form else { return None };
    (strands > holes as usize).then(|| {
        let headline = format!("{} has holes for {holes} strands, and the piece has {strands}", bar.name);
        Remark::new(Code::BarHoles, headline).at(bar.place).help(format!("use a bar with {strands} holes"))
    })
}

fn spacer_bar(design: &Design, bar: &Finding, group: &Sharers) -> Option<Remark> {
    let (first, rest) = group.0.split_first()?;
    let other = rest.iter().find(|other| other.bars != first.bars)?;
    let holes = bar.bar()?.holes;
    let name = |sharer: &Sharer| &design.strands[sharer.strand].name;
    let headline = format!(
        "strand {} goes through {} of {} and strand {} through {}, but a bar with {holes} holes holds both",
        name(first),
        first.bars,
        bar.name,
        name(other),
        other.bars,
    );
    let help = format!("write {} as often in each strand that goes through it", bar.id);
    Some(Remark::new(Code::BarHoles, headline).at(design.strands[other.strand].place).help(help))
}
