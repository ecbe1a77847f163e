//! Loops whose two sides hang side by side: beads of one side do not lie in those of the other.
//!
//! **Problem.** A strand hangs by both ends from one place. Its sides would fall together, but their beads are as broad
//! as they are, so that the loop is a drop, open where it turns.
//!
//! **Method.** Each side keeps to its own side of the upright line midway between the ends: each bead as a ball as thick as it
//! is, swept along as much as it is longer; a bead that lies across the fold is of neither. So all is one second-order cone program (`super::program`): the lowest place
//! of all joints.
//!
//! **Trade-off.** A side that is much heavier than the other would lean over the line; here it stays beside it.
//! Cord is taken as limp, so that what the sheet tells of a loop's length can be told without hanging it: stiff wire holds
//! it rounder, and a little less deep. The beads next to what hangs in the fold may touch that.

use super::chain::{Chain, Content};
use super::clearance::form;
use super::hang::{Hanging, Link};
use super::program::{Constraint, Net, Node, Term, Tie, down};
use crate::design::{Design, Strand};
use crate::geometry::Point;

/// A loop as it hangs alone, opened where its sides lie in one another; nothing where the solver finds no place.
pub fn opened(design: &Design, strand: &Strand, chain: &Chain, hanging: &Hanging) -> Option<Hanging> {
    let net = net(chain, hanging);
    let constraints = constraints(design, strand, chain, hanging);
    let found = net.solve(&constraints, 0.0)?;
    let joints: Vec<Point> = found.places.iter().map(|[x, y]| Point::new(*x, *y)).collect();
    let along = |pair: &[Point]| Point::towards((pair[1] - pair[0]).angle());
    Some(Hanging {
        directions: joints.windows(2).map(along).collect(),
        first: found.tensions.first().copied().unwrap_or_default(),
        lowest: found.tensions.iter().take(chain.links.len()).copied().fold(f64::INFINITY, f64::min),
        last: found.tensions.last().copied().unwrap_or_default(),
        joints,
        ..hanging.clone()
    })
}

/// The chain's joints, the first and the last held where they are, and its links.
fn net(chain: &Chain, hanging: &Hanging) -> Net<2> {
    let last = hanging.joints.len() - 1;
    let node = |(at, joint): (usize, &Point)| {
        let before = at.checked_sub(1).map_or(0.0, |link| weight(&chain.links[link], 1.0));
        let after = chain.links.get(at).map_or(0.0, |link| weight(link, 0.0));
        Node { at: [joint.x, joint.y], weight: before + after, down: down(), held: [at == 0 || at == last; 2] }
    };
    let tie = |(at, link): (usize, &Link)| Tie::new([at, at + 1], link.length);
    Net {
        nodes: hanging.joints.iter().enumerate().map(node).collect(),
        ties: chain.links.iter().enumerate().map(tie).collect(),
        bends: Vec::new(),
    }
}

/// What of a link's weight its start bears, or its end.
fn weight(link: &Link, end: f64) -> f64 {
    link.weight * (1.0 - (end - link.centre).abs())
}

/// What keeps the sides off the line between them.
fn constraints(design: &Design, strand: &Strand, chain: &Chain, hanging: &Hanging) -> Vec<Constraint<2>> {
    let joints = &hanging.joints;
    let middle = 0.5 * (joints[0].x + joints[joints.len() - 1].x);
    let low = (0..joints.len()).min_by(|a, b| joints[*a].y.total_cmp(&joints[*b].y)).unwrap_or_default();
    let of = |at: usize| {
        let (length, bead, before) = (chain.links[at].length, chain.lengths[at], chain.parted.beyond[at][0]);
        let reach = form(design, strand, chain, at).reach();
        let side = if at < low { -1.0 } else { 1.0 };
        let (middle_of_bead, off) = (before + 0.5 * bead, (0.5 * bead - reach).max(0.0));
        [middle_of_bead - off, middle_of_bead + off].map(|along| {
            let share = along / length;
            let x = joints[at].between(joints[at + 1], share).x;
            let terms = vec![
                Term { node: at, slope: [side * (1.0 - share), 0.0] },
                Term { node: at + 1, slope: [side * share, 0.0] },
            ];
            Constraint { terms, gap: side * (x - middle) - reach, gives: true }
        })
    };
    let is_bead = |at: &usize| match chain.pieces[*at] {
        Content::Bit(train, bit) => strand.trains[train].bits[bit].what.bead().is_some(),
        _ => false,
    };
    // A bead that lies across the fold is of neither side.
    let lies_across = |at: &usize| {
        let along = joints[at + 1] - joints[*at];
        (*at == low || at + 1 == low) && along.x.abs() > along.y.abs()
    };
    (0..chain.links.len()).filter(|at| is_bead(at) && !lies_across(at)).flat_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::super::Joint;
    use super::super::chain::Chain;
    use super::super::open::Hinges;
    use crate::design::{Choice, What, nth};
    use crate::geometry::Point;
    use crate::source::Source;

    /// What is strung from the other side is the same loop: so each half is the other's mirror, whether a bead lies across
    /// the fold or two meet in it.
    #[test]
    fn both_sides_are_alike() {
        for beads in [20, 21] {
            let text = format!(
                "festoon: 1\ntitle: t\nkind: earrings\nbeads:\n  a: {{ shape: round, size: 4 mm, hole: 1 mm, mass: 0.1 g, \
                 colour: '#5d7f5b' }}\ncords:\n  wire: {{ kind: wire, diameter: 0.3 mm, mass: 0.6 g/m }}\nfindings:\n  crimp: {{ \
                 kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}\n  hook: {{ kind: ear wire, length: 18 mm }}\n\
                 strands:\n  - {{ name: loop, cord: wire, ends: crimp, beads: [{beads} a] }}\nclosure: {{ both ends: [hook] \
                 }}\n"
            );
            let (piece, remarks) = crate::piece(&Source::new("test.yaml", text), &Choice::default(), None);
            let hung = &piece.unwrap_or_else(|| panic!("{remarks:?}")).drape.strands[nth(0)];
            let middle = 0.5 * (hung.ends[0].x + hung.ends[1].x);
            let mirrored = hung.joints.iter().zip(hung.joints.iter().rev());
            let off =
                mirrored.map(|(one, other)| libm::hypot(one.at.x + other.at.x - 2.0 * middle, one.at.y - other.at.y));
            assert!(off.fold(0.0, f64::max) < 1e-4, "{beads}: {:?}", hung.joints);
        }
    }

    /// By pencil (`design/folded.rs`): both sides are straight but for the beads next to what hangs in the fold, whose
    /// middles are kept as far from the line between as they are thick, so that two right triangles tell the depth.
    #[test]
    fn sides_hang_beside_one_another() {
        let source = Source::new("whelk", include_str!("../../patterns/whelk.yaml"));
        let piece = crate::piece(&source, &Choice::default(), None).0.unwrap();
        let (strand, hung) = (&piece.design.strands[nth(0)], &piece.drape.strands[nth(0)]);
        let bits: Vec<_> = strand.bits().collect();
        let What::Dangle(below) = &bits[12].what else { panic!("{:?}", bits[12].what) };
        let hook = piece.design.closure_length().0.value();
        let told = piece.design.piece_length().0.value() - hook - below.drop;
        assert!((hung.drop - told).abs() < 0.01, "{} is not {told}", hung.drop);
        let reach = 0.5 * piece.design.beads[bits[0].what.bead().unwrap()].across.value();
        let middle = 0.5 * (hung.ends[0].x + hung.ends[1].x);
        for seat in hung.seats.iter().filter(|seat| seat.bit(strand).what.bead().is_some()) {
            assert!((seat.centre.x - middle).abs() > reach - 0.001, "{seat:?}");
        }
        // No link is shorter than it is.
        let longer = |pair: &[Joint]| pair[0].at.distance(pair[1].at) - (pair[1].station - pair[0].station);
        let longer: Vec<f64> = hung.joints.windows(2).map(longer).collect();
        assert!(longer.iter().all(|longer| *longer > -1e-4), "{longer:?}");
        // Beads' axes are longer by what parting takes and by the play of holes, at whose inner side the cord lies.
        let chain = Chain::new(&piece.design, strand, &hung.starts);
        let way = |pair: &[Joint]| (pair[1].at - pair[0].at) * (1.0 / pair[1].at.distance(pair[0].at));
        let ways: Vec<Point> = hung.joints.windows(2).map(way).collect();
        let taken: f64 = Hinges::new(&piece.design, strand, &chain).parted(&ways).takes.iter().sum();
        assert!((taken - strand.slack.value()).abs() < 0.02, "{taken} mm taken, {} left", strand.slack);
        assert!(taken > 0.1 && hung.lacks < 0.02, "{taken} {}", hung.lacks);
    }
}
