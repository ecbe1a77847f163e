//! Strands closed to rings round a wrist or ankle, see [`taut`](super::taut).
//!
//! The links of a strand as it lies straight, and the closure's, hooked up as short and as long as it goes:
//! one more rigid link for each part, except that chain is as many links as it has. Beads reach inward as far
//! as they are thick, flat ones lying flat, and so do findings, see
//! [`Finding::thickness`]. What dangles hangs outside.

use std::f64::consts::{FRAC_PI_2, PI};

use super::chain::{Chain, Piece};
use super::hang::Link;
use super::taut::{Chord, Taut, close};
use super::{Hung, Joint, Ring, Seat, Tension};
use crate::design::{Bead, Design, Finding, Index, Part, Strand, What};
use crate::geometry::Point;
use crate::trade::usual::KNOT_WIDTH;
use crate::units::Length;

/// The rings that a design's strands make, each with the closure; `chains` and `hung` are its strands laid
/// straight. Strands that make none are passed over.
#[must_use]
pub fn rings(design: &Design, chains: &[Chain], hung: &[Hung]) -> Vec<Ring> {
    let laid = chains.iter().zip(hung).enumerate();
    laid.filter_map(|(strand, (chain, hung))| of(design, strand, chain, hung)).collect()
}

/// The ring of one strand with the closure, of which the last end's side comes first.
fn of(design: &Design, index: usize, chain: &Chain, hung: &Hung) -> Option<Ring> {
    let strand = &design.strands[index];
    let chords = closed(design, strand, chain, |part| part.least);
    let taut = close(&chords)?;
    let longest = close(&closed(design, strand, chain, |part| part.reach));
    let inside_girth = taut.girth();
    let longest_girth = longest.map_or(inside_girth, |longest| longest.girth());
    let way = Way::new(&chords, &taut, chain.links.len());
    let closing = way.joints[chain.links.len()..].to_vec();
    Some(Ring { strand: index, inside_girth, longest_girth, round: way.round(strand, &chords, chain, hung), closing })
}

/// A strand's chords and those of the closure, each of whose parts is hooked up so long.
fn closed(design: &Design, strand: &Strand, chain: &Chain, hook: fn(&Part) -> Length) -> Vec<Chord> {
    let parts = design.closure.right().iter().chain(design.closure.left().iter().rev());
    let hooked = parts.flat_map(|part| hooked(design, part, hook(part)));
    strung(design, strand, chain).into_iter().chain(hooked).collect()
}

fn strung(design: &Design, strand: &Strand, chain: &Chain) -> Vec<Chord> {
    let cord = 0.5 * strand.cord_width(design).value();
    let findings = |at: Index<Finding>| design.findings[at].thickness().value();
    let chord = |(link, piece): (&Link, &Piece)| match *piece {
        Piece::Bit(train, bit) => {
            let bit = &strand.trains[train].bits[bit];
            let inward = match bit.what {
                What::Bead(bead) => lying(&design.beads[bead]).max(cord),
                What::Finding(finding) => (0.5 * findings(finding)).max(cord),
                What::Knot => KNOT_WIDTH * cord,
                What::Gap | What::Dangle(_) => cord,
            };
            if bit.what == What::Gap {
                Chord::even(link.length, inward)
            } else {
                Chord { before: bit.before, after: bit.after, inward }
            }
        }
        Piece::Cord => Chord::even(link.length, cord),
        Piece::End => {
            let ends = strand.ends.iter().flat_map(|end| &end.findings);
            Chord::even(link.length, ends.map(|at| 0.5 * findings(*at)).fold(cord, f64::max))
        }
    };
    chain.links.iter().zip(&chain.pieces).map(chord).collect()
}

/// How far a bead reaches from its hole's axis towards the skin: flat beads lie flat.
fn lying(bead: &Bead) -> f64 {
    0.5 * bead.thick.value().min(bead.across.value())
}

fn hooked(design: &Design, part: &Part, length: Length) -> Vec<Chord> {
    let finding = &design.findings[part.finding];
    let links = finding.chain().and_then(|chain| chain.links(length));
    let count = links.unwrap_or(1.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count, at least 1")]
    let chords = count as usize;
    vec![Chord::even(length.value() / count, 0.5 * finding.thickness().value()); chords]
}

/// A closed row turned so that the middle of its strand lies at the foot.
struct Way {
    /// One a chord.
    centres: Vec<Point>,
    /// Before the first chord and after each, where the row goes on into the next.
    joints: Vec<Point>,
}

impl Way {
    /// `links` is how many of the chords are the strand's; the others are the closure's.
    fn new(chords: &[Chord], taut: &Taut, links: usize) -> Self {
        let count = chords.len();
        let joint = |at: usize| {
            let (last, next) = ((at + count - 1) % count, at % count);
            let step = chords[last].after + chords[next].before;
            let share = if step > 0.0 { chords[last].after / step } else { 0.5 };
            taut.centres[last].between(taut.centres[next], share)
        };
        let (first, last) = (joint(0).angle(), joint(links).angle());
        let span = if links == count { 2.0 * PI } else { (last - first).rem_euclid(2.0 * PI) };
        let turned = |at: Point| at.turned(-FRAC_PI_2 - first - 0.5 * span);
        Self {
            centres: taut.centres.iter().map(|at| turned(*at)).collect(),
            joints: (0..=count).map(|at| turned(joint(at))).collect(),
        }
    }

    /// A strand that lies straight put on this way, its cord through the centres of its links.
    fn round(&self, strand: &Strand, chords: &[Chord], chain: &Chain, laid: &Hung) -> Hung {
        let links = chain.links.len();
        let ends = [self.joints[0], self.joints[links]];
        let stations = laid.joints.iter().zip(chords).map(|(joint, chord)| joint.station + chord.before).take(links);
        let centres = stations.zip(&self.centres).map(|(station, at)| Joint { station, at: *at });
        let [first, last] =
            [(0.0, ends[0]), (strand.finished.value(), ends[1])].map(|(station, at)| Joint { station, at });
        let is_seat = |piece: &Piece| matches!(*piece, Piece::Bit(train, bit) if strand.trains[train].bits[bit].what != What::Gap);
        let seated = chain.pieces.iter().enumerate().filter(|(_, piece)| is_seat(piece));
        let seat = |(seat, (at, _)): (&Seat, (usize, &Piece))| Seat {
            centre: self.centres[at],
            angle: self.angle(at),
            ..*seat
        };
        Hung {
            ends,
            joints: std::iter::once(first).chain(centres).chain([last]).collect(),
            seats: laid.seats.iter().zip(seated).map(seat).collect(),
            tension: Tension::default(),
            drop: 0.0,
            ..laid.clone()
        }
    }

    /// The direction of a chord: halfway between those in which the row comes and goes.
    fn angle(&self, at: usize) -> f64 {
        let count = self.centres.len();
        let [before, here, after] = [at + count - 1, at, at + 1].map(|at| self.centres[at % count]);
        let unit = |way: Point| way * (1.0 / way.length().max(f64::MIN_POSITIVE));
        (unit(here - before) + unit(after - here)).angle()
    }
}
