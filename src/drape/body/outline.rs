//! Balls that outline what is strung.
//!
//! A bead is a ball, or one that is swept along its hole: balls at most as far from each other as they reach, from end to end.
//! Nets are outlined by their pieces, with balls no more than 10 mm apart; at last by the beads themselves, wherever they lie in
//! their pieces.

use super::loops::{Loops, Member, Straight, StrandPieces, stations};
use crate::geometry::Point3;

/// Balls of a rod are no farther from each other than this, in mm.
const STEP: f64 = 10.0;
/// What reaches less far from its middle line is cord, in mm: so much of it has one ball.
const CORD: f64 = 0.6;
const OF_CORD: f64 = 4.0;

/// A ball of an outline.
#[derive(Clone, Copy, Debug)]
pub struct Ball {
    /// The rod on which it lies.
    pub rod: usize,
    /// How far along it, as a share of it.
    pub share: f64,
    /// Its radius in mm.
    pub reach: f64,
}

impl Ball {
    /// One in the middle of a rod.
    pub const fn amid(at: usize, rod: &Member) -> Self {
        Self { rod: at, share: 0.5, reach: rod.reach }
    }
}

impl Loops {
    /// Where a ball's middle is.
    pub fn middle(&self, ball: Ball) -> Point3 {
        let [one, other] = self.rods[ball.rod].ends.map(|node| self.at(node));
        one.between(other, self.share_of_tie(ball.rod, ball.share))
    }

    /// Outlines all by their rods, long ones in more than one place.
    pub fn outline_rods(&mut self) {
        let of = |(at, rod): (usize, &Member)| {
            let count = super::super::chain::pieces(rod.length, STEP).max(1);
            let share = move |place: usize| (place as f64 + 0.5) / count as f64;
            let reach = rod.reach;
            (0..count).map(move |place| Ball { rod: at, share: share(place), reach })
        };
        self.balls = self.rods.iter().enumerate().flat_map(of).collect();
    }

    /// Outlines strands by all their pieces, of which rods may hold several.
    pub fn outline_beads(&mut self, strands: &[StrandPieces]) {
        self.is_beaded = true;
        self.balls.retain(|ball| self.rods[ball.rod].strand.is_none());
        for (at, strand) in strands.iter().enumerate() {
            let (first, ends) = (self.ties_of(at).start, super::super::hang::stations(self.lengths(at).into_iter()));
            let ball = |(station, reach): (f64, f64)| {
                let rod = ends.partition_point(|end| *end <= station).clamp(1, ends.len() - 1) - 1;
                let share = (station - ends[rod]) / (ends[rod + 1] - ends[rod]).max(f64::MIN_POSITIVE);
                Ball { rod: first + rod, share: share.clamp(0.0, 1.0), reach }
            };
            self.balls.extend(balls(&strand.pieces).into_iter().map(ball));
            self.lifts.extend(lifts(&strand.pieces).map(ball));
        }
    }
}

/// The balls of pieces: their stations and how far they reach.
fn balls(pieces: &[Straight]) -> Vec<(f64, f64)> {
    let mut balls: Vec<(f64, f64)> = Vec::new();
    for (piece, from) in pieces.iter().zip(stations(pieces)) {
        let is_covered = |(last, _): &(f64, f64)| from - last < OF_CORD;
        if piece.reach >= CORD || !balls.last().is_some_and(is_covered) {
            let offsets = offsets(piece.link.length, piece.reach).into_iter();
            balls.extend(offsets.map(|offset| (from + offset, piece.reach)));
        }
    }
    balls
}

/// The stations of pieces from which something hangs that lifts them, and how far off the body that keeps them.
fn lifts(pieces: &[Straight]) -> impl Iterator<Item = (f64, f64)> {
    let lifted = pieces.iter().zip(stations(pieces)).filter(|(piece, _)| piece.lift > piece.reach);
    lifted.map(|(piece, from)| (from + 0.5 * piece.link.length, piece.lift))
}

/// How far from its start the balls of a piece lie.
fn offsets(length: f64, reach: f64) -> Vec<f64> {
    let swept = length - 2.0 * reach;
    if reach < CORD || swept <= 0.0 {
        return vec![0.5 * length];
    }
    let count = super::super::chain::pieces(swept, reach).max(1);
    (0..=count).map(|at| reach + swept * at as f64 / count as f64).collect()
}
