//! The last steps: measure the piece, and make the second of a pair.

use super::task::{Finished, Task};
use super::{Drawing, Step};
use crate::design::{Design, Part, Strand, What};
use crate::drape::{self, Hung, Seat, ring};
use crate::pattern::{FindingKind, Kind, Settle};
use crate::units::Length;

/// Measure, and make the second one, after as many steps as are done.
pub fn finish(design: &Design, done: usize) -> Vec<Step<'_>> {
    // Loops that grip the arms of spectacles are tried on a pair.
    let is_loop = |part: &&Part| design.findings[part.finding].kind() == FindingKind::SpectacleLoop;
    let loops = design.closure.parts().find(is_loop).map(|part| Task::TryLoops(part.finding));
    let again = (design.copies > 1).then_some(Task::MakeOther(done + 1));
    let lets_out = design.closure.parts().any(|part| part.reach > part.least);
    let check = Step { task: Task::Check(finished(design)), drawing: lets_out.then_some(Drawing::LetOut) };
    std::iter::once(check).chain([loops, again].into_iter().flatten().map(Step::new)).collect()
}

fn finished(design: &Design) -> Finished {
    if let Some(spring) = design.spring() {
        return Finished::Coiled(design.turns(), Length::mm(spring.inside()));
    }
    let lengths = || design.piece_length().into();
    match design.heading.kind {
        Kind::Earrings => Finished::Hung(depth(design)),
        _ if design.closure.is_empty() => {
            let packed = design.strands.iter().all(|strand| strand.settle == Settle::Fill);
            Finished::Tied { packed, inside: ring::inside(design).map(|[least, _]| least) }
        }
        _ if design.closure.open().is_some() => Finished::Straight(lengths()),
        Kind::Strap => Finished::Straight(lengths()),
        _ => match ring::inside(design) {
            Some(girths) if design.rounds() > 1 => Finished::Wound(design.rounds(), girths),
            Some(girths) => Finished::Ring(girths),
            None => Finished::Round(lengths()),
        },
    }
}

/// From where an earring hangs in its ear wire down to the lowest point of any bead or branch, as its drape finds it
/// below what the strands end in.
fn depth(design: &Design) -> Option<Length> {
    let is_below = |part: &&Part| design.findings[part.finding].kind() != FindingKind::EarWire;
    let above: Length = design.closure.parts().filter(is_below).map(|part| part.reach).sum();
    let drape = drape::hang(design, None).ok()?;
    let strands = design.strands.iter().zip(&drape.strands);
    let lows = strands.flat_map(|(strand, hung)| hung.seats.iter().map(|seat| below(design, strand, hung, seat)));
    let ends = drape.strands.iter().map(|hung| hung.drop);
    lows.chain(ends).reduce(f64::max).map(|low| above + Length::mm(low))
}

/// How far below its strand's higher end something strung reaches.
fn below(design: &Design, strand: &Strand, hung: &Hung, seat: &Seat) -> f64 {
    let bit = &strand.trains[seat.train].bits[seat.bit];
    let reach = match &bit.what {
        What::Dangle(dangle) => dangle.drop,
        What::Bead(at) if design.closure.loops() => design.beads[*at].across.value() / 2.0,
        _ => bit.after,
    };
    hung.ends[0].y.max(hung.ends[1].y) - seat.centre.y + reach
}
