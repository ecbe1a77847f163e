//! Strands on the bust, in the frame of [`crate::drape::Worn`]. What lies behind the neck or the shoulders
//! is not drawn.

use crate::design::{Entries, Strand, What};
use crate::drape::Worn;
use crate::geometry::Extent;
use crate::paint::mark::Mark;
use crate::piece::Piece;
use crate::sheet::figure::{Canvas, Track, closing_on, on_neck};

use super::bust::Bust;
use super::shade::Shade;
use super::subject::strung;

/// A piece on its bust.
pub struct Bearing<'a> {
    worn: &'a Worn,
    bust: Bust,
    /// None where a strand does not reach round.
    tracks: Entries<Option<Track>, Strand>,
    close: bool,
}

impl<'a> Bearing<'a> {
    /// Puts a piece that is worn round the neck on a bust, which may be seen close.
    pub fn of(piece: &'a Piece, close: bool) -> Option<Self> {
        let worn = piece.drape.worn.as_ref()?;
        let lowest = worn.lines.iter().flatten().map(|spot| spot.at.y).fold(f64::INFINITY, f64::min);
        let hanging = piece.design.strands.iter().map(longest_branch).fold(0.0, f64::max);
        let bust = Bust { skin: worn.skin, breadth: worn.skin.breadth(), lowest: lowest - hanging };
        let tracks = Track::all(&worn.lines);
        tracks.iter().any(Option::is_some).then_some(Self { worn, bust, tracks, close })
    }

    /// The box to show: round the bust, or close round the piece.
    pub fn extent(&self) -> Extent {
        if self.close { self.bust.close() } else { self.bust.extent() }
    }

    /// The bust, and what of the piece lies in front of it.
    pub fn marks(&self, piece: &Piece, shade: Shade, canvas: Canvas<'_>) -> Vec<Mark> {
        let closure = closing_on(&self.tracks, canvas);
        let strands = strung(&on_neck(piece, self.worn, &self.tracks), shade, canvas);
        let mut all = self.bust.marks(&canvas.frame);
        all.push(shade.resting(shade.closed(strands, closure)));
        all
    }
}

fn longest_branch(strand: &Strand) -> f64 {
    let bits = strand.trains.iter().flat_map(|train| &train.bits);
    bits.map(|bit| if let What::Dangle(dangle) = &bit.what { dangle.drop } else { 0.0 }).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::art::{Ink, Stencils};
    use crate::design::{Choice, nth};
    use crate::drape::on_way;
    use crate::sheet::figure::Frame;
    use crate::source::Source;

    fn piece(name: &str, text: &str) -> Piece {
        crate::piece(&Source::new(name, text), &Choice::default(), None).0.unwrap()
    }

    #[test]
    fn what_lies_in_front_and_behind_is_the_strand() {
        let piece = piece("saltmarsh", include_str!("../../patterns/saltmarsh.yaml"));
        let bearing = Bearing::of(&piece, false).unwrap();
        for (strand, track) in piece.design.strands.iter().zip(&bearing.tracks) {
            let spots = track.as_ref().unwrap().spots();
            let (first, last) = (spots[0].station, spots[spots.len() - 1].station);
            // As much lies behind the neck at the last end as at the first, but for one bead that tells the sides apart.
            assert!(first > 0.0 && (strand.finished.value() - last - first).abs() < 3.0, "{}", strand.name);
        }
    }

    #[test]
    fn strands_that_bars_hold_apart_lie_side_by_side() {
        let piece = piece("pierhead", include_str!("../../patterns/pierhead.yaml"));
        let worn = piece.drape.worn.unwrap();
        assert_eq!(worn.unrest, None);
        let along = |strand: usize| (20..440).map(move |at| (strand, f64::from(at)));
        let places =
            |strand: usize| along(strand).filter_map(|(strand, at)| Some(on_way(&worn.lines[nth(strand)], at)?.0));
        for outer in 1..3 {
            let outside: Vec<_> = places(outer).collect();
            for place in places(outer - 1) {
                // Beads of 4 mm, taken as smooth tubes.
                assert!(outside.iter().all(|other| other.distance(place) > 3.9), "{place:?}");
            }
        }
    }

    #[test]
    fn of_a_closure_is_seen_what_fits_in_front() {
        let chain = "findings:\n  links: { kind: chain, link: 4 mm, mass: 6 g }\n  hook: { kind: clasp, length: 12 mm }\n  \
                     ring: { kind: jump ring, inside: 4 mm }\n";
        let text = format!(
            "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  a: {{ shape: round, size: 6 mm, hole: 1 mm, \
             material: glass, colour: '#5d7f5b' }}\ncords:\n  wire: {{ kind: wire, diameter: 0.4 mm, mass: 0.6 g/m }}\n\
             {chain}strands:\n  - {{ name: only, cord: wire, ends: knot, beads: [25 a], settle: fill }}\n\
             closure: {{ left: [{{ links: 160 mm }}, ring], right: [{{ links: 150 mm }}, hook] }}\n\
             wear: {{ neck base: 370 mm }}\n"
        );
        let piece = piece("t", &text);
        let bearing = Bearing::of(&piece, false).unwrap();
        let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
        let closure = closing_on(&bearing.tracks, Canvas::new(Frame::ACTUAL, &stencils));
        let links: Vec<_> = closure.around(Vec::new()).iter().map(|side| side.inner()[0].inner().len()).collect();
        // Chain alone, and less of it than there is: 3 mm and more a link.
        assert_eq!(links.len(), 2);
        assert!(links.iter().all(|links| (5..40).contains(links)), "{links:?}");
    }
}
