//! Whether the two sides of a closure close onto one another, and whether its findings can be joined.

use crate::design::{Design, Part, Strand};
use crate::pattern::{CordKind, FindingKind};
use crate::remark::{Code, Remark};

/// Remarks about the closure.
pub fn check(design: &Design) -> Vec<Remark> {
    let closure = &design.closure;
    let shut = [&closure.left, &closure.right].into_iter().filter_map(|parts| cannot_open(parts, design));
    unjoined(design).into_iter().chain(one_sided(design)).chain(shut).collect()
}

/// Ends that are not tied to each other need findings to join them.
fn unjoined(design: &Design) -> Option<Remark> {
    let closed = |strand: &&Strand| {
        let has_findings = strand.ends.iter().any(|end| !end.findings.is_empty());
        has_findings || design.cords[strand.cord].kind == CordKind::Chain
    };
    let nothing = design.closure.left.is_empty() && design.closure.right.is_empty();
    design.strands.iter().find(closed).filter(|_| nothing).map(|strand| {
        let headline = format!("nothing joins the ends of strand {}: the piece cannot be closed", strand.name);
        let help = "write a `closure:`, such as { left: [ring], right: [hook] }, or `ends: knot` to tie the ends";
        Remark::new(Code::Unjoined, headline).at(strand.place).help(help)
    })
}

/// What closes a piece needs something on the other side.
fn one_sided(design: &Design) -> Option<Remark> {
    let closure = &design.closure;
    let (bare, other) = match (closure.left.last(), closure.right.last()) {
        (None, Some(part)) => ("left", part),
        (Some(part), None) if !closure.loops => ("right", part),
        _ => return None,
    };
    let finding = &design.findings[other.finding];
    finding.kind.is_clasp().then(|| {
        let headline = format!("{} has nothing on the other side that it closes onto", finding.name);
        let help = format!(
            "write a ring in the closure's `{bare}:`, or of a clasp in two halves one on `each side:` with the length of \
             a half"
        );
        Remark::new(Code::OneSided, headline).at(closure.place).help(help)
    })
}

/// Two findings are joined by whichever of them opens.
fn cannot_open(parts: &[Part], design: &Design) -> Option<Remark> {
    let opens = |at: usize| opens(parts, at, design);
    let at = (1..parts.len()).find(|at| !opens(at - 1) && !opens(*at))?;
    let [before, after] = [at - 1, at].map(|at| &design.findings[parts[at].finding].name);
    let headline = format!("{after} cannot be hung on {before}: neither has a ring that opens");
    let help = "write a jump ring between them";
    Some(Remark::new(Code::NoOpening, headline).at(design.closure.place).help(help))
}

/// Whether a part has a ring, link or loop that is opened to hang the next thing in it: a cone or cap has
/// the loop of the pin that it covers.
fn opens(parts: &[Part], at: usize, design: &Design) -> bool {
    let kind = |at: usize| design.findings[parts[at].finding].kind;
    match kind(at) {
        FindingKind::JumpRing | FindingKind::Chain | FindingKind::EyePin | FindingKind::EarWire => true,
        FindingKind::Cone | FindingKind::BeadCap => (0..at).any(|before| kind(before) == FindingKind::EyePin),
        // A chain's own end link opens for what it hangs on.
        _ => at == 0 && design.strands.iter().any(|strand| design.cords[strand.cord].kind == CordKind::Chain),
    }
}
