//! A strand closed to a ring round a wrist or ankle.
//!
//! The centres of neighbouring links lie c = after + before apart, on one circle of radius R.
//! They close when the angles that they span add up to a full turn: sum 2 asin(c_i / 2R) = 2 pi.
//! For n round beads of diameter d that is R = d / (2 sin(pi / n)), exact for balls that touch; for
//! mixed sizes it is an approximation, as large beads then stand farther out than small ones. A
//! drilled bead counts with the length that it takes in a straight row, which is up to a hundredth
//! less than in a tight ring, where beads touch beside the hole. The
//! closure, hooked up as short and as long as it goes, is one more rigid link for each part, except that chain
//! is as many links as it has. The inside is the largest circle that fits: it touches the links
//! that reach farthest in.
//!
//! The sum falls steadily with R, which is found by halving, to the last bit, between c_max / 2 and a
//! quarter of the chords' sum. A strand of which one link is longer than the circle is broad, or so
//! long that the circle's centre lies outside the ring, has no ring here.

use std::f64::consts::PI;

use super::Ring;
use super::chain::{Chain, Piece, pieces};
use super::hang::Link;
use super::slide::middles;
use crate::design::{Bead, Design, Part, Strand, What};
use crate::pattern::FindingKind;
use crate::units::Length;

/// Halvings of the bracket: enough for the last bit of a double.
const HALVINGS: u32 = 60;

/// Something rigid in the ring, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chord {
    /// From its start to its centre along the strand.
    pub before: f64,
    /// From its centre to its end.
    pub after: f64,
    /// How far it reaches inward from its centre.
    pub inward: f64,
}

impl Chord {
    /// One whose centre is its middle.
    #[must_use]
    pub fn even(length: f64, inward: f64) -> Self {
        Self { before: 0.5 * length, after: 0.5 * length, inward }
    }
}

/// Closes chords to a ring; nothing where they do not reach round a centre. Its turns are those of
/// all chords' centres, and it has no strand or closure of its own.
#[must_use]
pub fn close(chords: &[Chord]) -> Option<Ring> {
    let steps = steps(chords);
    let radius = radius(&steps)?;
    let inward = chords.iter().map(|chord| chord.inward).fold(0.0, f64::max);
    let longest = chords.iter().map(|chord| chord.before + chord.after).fold(0.0, f64::max);
    let turns = turns(chords, &steps, radius);
    (radius > inward && longest <= 2.0 * radius).then(|| Ring {
        strand: 0,
        radius,
        inside_girth: 2.0 * PI * (radius - inward),
        longest_girth: 2.0 * PI * (radius - inward),
        turns: turns.iter().map(|(centre, _)| *centre).collect(),
        closing: vec![2.0 * PI],
    })
}

/// Distances from each chord's centre to the next one's, the last one's to the first's included.
fn steps(chords: &[Chord]) -> Vec<f64> {
    let next = chords.iter().cycle().skip(1);
    chords.iter().zip(next).map(|(chord, next)| chord.after + next.before).collect()
}

/// For each chord the turn of its centre and of the joint after it, from the joint before the first.
///
/// A step c spans 2 asin(c / 2R). Its middle lies h = sqrt(R² - c²/4) from the ring's centre, so a
/// joint that divides it at `after` lies asin(c / 2R) + atan((after - c/2) / h) beyond its start.
fn turns(chords: &[Chord], steps: &[f64], radius: f64) -> Vec<(f64, f64)> {
    let half = |step: f64| libm::asin((0.5 * step / radius).min(1.0));
    let to_joint = |chord: &Chord, step: f64| {
        let height = libm::sqrt((radius * radius - 0.25 * step * step).max(0.0));
        half(step) + libm::atan2(chord.after - 0.5 * step, height)
    };
    let last = chords.last().zip(steps.last());
    let mut centre = last.map_or(0.0, |(chord, &step)| 2.0 * half(step) - to_joint(chord, step));
    let turn = |(chord, &step): (&Chord, &f64)| {
        let turn = (centre, centre + to_joint(chord, step));
        centre += 2.0 * half(step);
        turn
    };
    chords.iter().zip(steps).map(turn).collect()
}

fn radius(steps: &[f64]) -> Option<f64> {
    let turn = |radius: f64| steps.iter().map(|step| 2.0 * libm::asin((0.5 * step / radius).min(1.0))).sum::<f64>();
    let longest = steps.iter().copied().fold(0.0, f64::max);
    // An arc is at most pi/2 times its chord, so that R is at most a quarter of the chords' sum.
    let (mut low, mut high) = (0.5 * longest, 0.25 * steps.iter().sum::<f64>());
    if steps.len() < 3 || turn(low) < 2.0 * PI {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if turn(middle) > 2.0 * PI {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(0.5 * (low + high))
}

/// The tightest of the rings that a design's strands make, each with the closure. Strands that make
/// none are passed over.
#[must_use]
pub fn tightest(design: &Design) -> Option<Ring> {
    let rings = (0..design.strands.len()).filter_map(|strand| of(design, strand));
    rings.min_by(|one, other| one.inside_girth.total_cmp(&other.inside_girth))
}

/// The ring of one strand with the closure, of which the last end's side comes first.
fn of(design: &Design, index: usize) -> Option<Ring> {
    let strand = &design.strands[index];
    let chain = Chain::new(design, strand, &middles(strand));
    let chords = closed(design, strand, &chain, |part| part.least);
    let ring = close(&chords)?;
    let longest = close(&closed(design, strand, &chain, |part| part.reach));
    let all = turns(&chords, &steps(&chords), ring.radius);
    let (links, _) = all.split_at(chain.links.len());
    let seats = links.iter().zip(&chain.pieces).filter(|(_, piece)| is_seat(strand, piece));
    let turns = seats.map(|((centre, _), _)| *centre).collect();
    let closing = all.iter().skip(links.len().saturating_sub(1)).map(|(_, joint)| *joint).collect();
    let longest_girth = longest.map_or(ring.inside_girth, |longest| longest.inside_girth);
    Some(Ring { strand: index, longest_girth, turns, closing, ..ring })
}

/// A strand's chords and those of the closure, each of whose parts is hooked up so long.
fn closed(design: &Design, strand: &Strand, chain: &Chain, hook: fn(&Part) -> Length) -> Vec<Chord> {
    let parts = design.closure.right.iter().chain(design.closure.left.iter().rev());
    let hooked = parts.flat_map(|part| hooked(design, part, hook(part).value()));
    strung(design, strand, chain).into_iter().chain(hooked).collect()
}

fn is_seat(strand: &Strand, piece: &Piece) -> bool {
    matches!(*piece, Piece::Bit(train, bit) if strand.trains[train].bits[bit].what != What::Gap)
}

fn strung(design: &Design, strand: &Strand, chain: &Chain) -> Vec<Chord> {
    let cord = design.cords.get(strand.cord).map_or(0.0, |cord| 0.5 * cord.diameter.value());
    let chord = |(link, piece): (&Link, &Piece)| match *piece {
        Piece::Bit(train, bit) => {
            let bit = &strand.trains[train].bits[bit];
            match bit.what {
                What::Bead(bead) => {
                    Chord { before: bit.before, after: bit.after, inward: reach(&design.beads[bead]).max(cord) }
                }
                _ => Chord::even(link.length, cord),
            }
        }
        Piece::Cord | Piece::End => Chord::even(link.length, cord),
    };
    chain.links.iter().zip(&chain.pieces).map(chord).collect()
}

/// How far a bead reaches from its hole's axis towards the skin: flat beads lie flat.
fn reach(bead: &Bead) -> f64 {
    0.5 * bead.thick.value().min(bead.across.value())
}

fn hooked(design: &Design, part: &Part, length: f64) -> Vec<Chord> {
    let finding = &design.findings[part.finding];
    let link = finding.link.value();
    let is_chain = finding.kind == FindingKind::Chain && link > 0.0;
    let count = if is_chain { pieces(length, link) } else { 1 };
    vec![Chord::even(length / count as f64, 0.0); count]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_of_equal_balls_are_equal_parts() {
        let ring = close(&[Chord::even(8.0, 4.0); 20]).unwrap();
        for (at, turn) in ring.turns.iter().enumerate() {
            let part = 2.0 * PI * (at as f64 + 0.5) / 20.0;
            assert!((turn - part).abs() < 1e-12, "{at}: {turn} is not {part}");
        }
    }

    #[test]
    fn turns_put_centres_a_step_apart_and_joints_between_them() {
        let uneven = |before: f64, after: f64| Chord { before, after, inward: 1.0 };
        let chords: Vec<_> = (0..24).map(|at| uneven(1.0 + f64::from(at % 3), 2.5 - 0.5 * f64::from(at % 4))).collect();
        let (steps, ring) = (steps(&chords), close(&chords).unwrap());
        let turns = turns(&chords, &steps, ring.radius);
        let centre = |turn: f64| crate::geometry::Point::towards(turn) * ring.radius;
        for (at, chord) in chords.iter().enumerate() {
            let (here, next) = (turns[at].0, turns[(at + 1) % chords.len()].0);
            assert!((centre(here).distance(centre(next)) - steps[at]).abs() < 1e-9, "{at}");
            // The joint is where the ray at its turn crosses the chord between the two centres.
            let joint = centre(here).between(centre(next), chord.after / steps[at]);
            let off = libm::remainder(joint.angle() - turns[at].1, 2.0 * PI);
            assert!(off.abs() < 1e-9, "{at}: {off}");
        }
        assert!((turns[23].1 - 2.0 * PI).abs() < 1e-9);
    }

    #[test]
    fn mixed_beads_span_a_full_turn() {
        let chords: Vec<Chord> =
            (0..30).map(|at| Chord::even([4.0, 6.0, 10.0][at % 3], [2.0, 3.0, 5.0][at % 3])).collect();
        let ring = close(&chords).unwrap();
        let step = |at: usize| 0.5 * (2.0 * chords[at].before + 2.0 * chords[(at + 1) % 30].before);
        let turn: f64 = (0..30).map(|at| 2.0 * libm::asin(step(at) / (2.0 * ring.radius))).sum();
        assert!((turn - 2.0 * PI).abs() < 1e-12);
        assert!((ring.inside_girth - 2.0 * PI * (ring.radius - 5.0)).abs() < 1e-12);
    }

    #[test]
    fn a_clasp_is_a_chord_like_any_other() {
        let beads = vec![Chord::even(8.0, 4.0); 20];
        let mut clasped = beads.clone();
        clasped.push(Chord::even(12.0, 0.0));
        let longer = close(&clasped).unwrap().inside_girth - close(&beads).unwrap().inside_girth;
        assert!((11.5..12.0).contains(&longer), "{longer}");
    }

    #[test]
    fn what_does_not_reach_round_is_no_ring() {
        assert_eq!(close(&[]), None);
        assert_eq!(close(&[Chord::even(8.0, 4.0); 2]), None);
        assert_eq!(close(&[Chord::even(8.0, 4.0); 3]).map(|ring| ring.inside_girth > 0.0), Some(true));
        let long = [Chord::even(90.0, 1.0), Chord::even(5.0, 1.0), Chord::even(5.0, 1.0), Chord::even(5.0, 1.0)];
        assert_eq!(close(&long), None);
    }
}
