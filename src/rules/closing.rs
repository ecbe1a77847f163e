//! Whether the two sides of a closure close onto one another, and whether its findings can be joined.

use crate::design::{Design, Part};
use crate::pattern::{CordKind, FindingKind};
use crate::remark::{Code, Remark};

/// Remarks about the closure.
pub fn check(design: &Design) -> Vec<Remark> {
    let closure = &design.closure;
    let shut = [&closure.left, &closure.right].into_iter().filter_map(|parts| cannot_open(parts, design));
    one_sided(design).into_iter().chain(shut).collect()
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
