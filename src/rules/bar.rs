//! Whether bars have a hole for every strand, and are strung alike on all that share them.

use crate::design::{Design, Finding, Sharer, Sharers};
use crate::remark::{Code, Remark};

/// Remarks about end bars, clasps with loops and spacer bars.
pub fn check(design: &Design) -> Vec<Remark> {
    let ends = design.closure.parts().map(|part| &design.findings[part.finding]);
    let ends = ends.filter_map(|finding| comb(finding, design.strands.len()));
    let bars = design.findings.indices().filter(|at| design.findings[*at].is_shared());
    let groups = bars.flat_map(|at| design.sharing(at).into_iter().map(move |group| (at, group)));
    ends.chain(groups.filter_map(|(at, group)| spacer_bar(design, &design.findings[at], &group))).collect()
}

fn comb(finding: &Finding, strands: usize) -> Option<Remark> {
    let loops = finding.comb()?.holes;
    (strands > loops as usize).then(|| {
        let (name, kind) = (&finding.name, finding.kind());
        let headline = format!("{name} has loops for {loops} of the piece's {strands} strands");
        Remark::new(Code::BarHoles, headline).at(finding.place).help(format!("use one ({kind}) with {strands} loops"))
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
