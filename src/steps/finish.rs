//! The last steps: measure the piece, and make the second of a pair.

use super::task::{Finished, Task};
use super::{Drawing, Inspection, Step};
use crate::design::{Design, Finding, Index, Part};
use crate::drape::ring;
use crate::materials::{Article, need};
use crate::pattern::{FindingKind, Kind, Settle};
use crate::units::Length;

/// Measure how long it is, and make the second one, after as many steps as are done.
pub fn finish(design: &Design, length: impl Fn() -> [Length; 2], done: usize) -> Vec<Step<'_>> {
    // Loops that grip the arms of spectacles are tried on a pair.
    let is_loop = |part: &&Part| design.findings[part.finding].kind() == FindingKind::SpectacleLoop;
    let loops = design.closure.parts().find(is_loop).map(|part| Task::TryLoops(part.finding));
    let again = (design.copies > 1).then_some(Task::MakeOther(done + 1));
    let finished = finished(design, length);
    let drawing = inspection(&finished);
    let check = Step::new(Task::Check(finished)).drawing(drawing);
    let loops = loops.map(|loops| Step::new(loops).drawing(Drawing::OnArm));
    [Some(check), loops, again.map(Step::new)].into_iter().flatten().collect()
}

const fn inspection(finished: &Finished) -> Drawing {
    Drawing::Inspected(match finished {
        Finished::Coiled(..) => return Drawing::CountedCoil,
        Finished::Hung(_) => Inspection::Hung,
        Finished::Tied { .. } => Inspection::Pulled,
        Finished::Straight(_) => Inspection::Straight,
        Finished::Round(..) => Inspection::Round,
        Finished::Ring(_) | Finished::Wound(..) => Inspection::Inside,
    })
}

fn finished(design: &Design, length: impl Fn() -> [Length; 2]) -> Finished {
    if let Some(spring) = design.spring() {
        return Finished::Coiled(design.turns(), Length::mm(spring.inside()));
    }
    match design.heading.kind {
        Kind::Earrings => Finished::Hung(length()),
        _ if design.closure.is_empty() => {
            let packed = design.strands.iter().all(|strand| strand.settle == Settle::Fill);
            Finished::Tied { packed, inside: ring::inside(design).map(|[least, _]| least) }
        }
        _ if design.closure.open().is_some() => Finished::Straight(length()),
        Kind::Strap => Finished::Straight(length()),
        _ => match ring::inside(design) {
            Some(girths) if design.rounds() > 1 => Finished::Wound(design.rounds(), girths),
            Some(girths) => Finished::Ring(girths),
            None => Finished::Round(length(), counted_whole(design)),
        },
    }
}

/// What a closed piece's length counts from outside to outside though it hooks into other parts, each kind of it once: of a
/// ring the inside is counted, and halves that snap shut are as long as they say.
fn counted_whole(design: &Design) -> Vec<Index<Finding>> {
    let hooks = |at: &Index<Finding>| {
        let kind = design.findings[*at].kind();
        kind.hooks() || matches!(kind, FindingKind::ToggleRing | FindingKind::KnotCover)
    };
    let used = need::counts(design);
    let is_used = |at: &Index<Finding>| used.contains_key(&Article::Finding(*at));
    design.findings.indices().filter(hooks).filter(is_used).collect()
}
