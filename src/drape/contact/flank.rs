//! The side of a link that another strand meets. Lengths are mm.

use super::super::clearance::Silhouette;

/// A line through places on a link, swept by a ball.
#[derive(Clone, Debug, PartialEq)]
pub struct Flank {
    /// Along the link from its start, and aside of it, in mm.
    pub places: Vec<[f64; 2]>,
    /// The ball's.
    pub radius: f64,
}

impl Flank {
    /// The side of a link's form: a box is its middle line swept by a ball as wide, on to where its link meets the next; a
    /// round bead a point, any other bead its outline.
    pub fn new(form: &Silhouette) -> Self {
        let first = form.widths.first().copied().unwrap_or_default();
        let last = form.widths.last().copied().unwrap_or_default();
        let half_width = form.reach();
        if form.is_ball {
            return Self { places: vec![[form.middle, 0.0]], radius: half_width };
        }
        if form.widths.iter().all(|(_, width)| *width == half_width) {
            let [before, after] = form.beyond;
            let places = [first.0 - before, last.0 + after].map(|place| [form.middle + place, 0.0]);
            return Self { places: places.to_vec(), radius: half_width };
        }
        Self { places: form.widths.iter().map(|(place, width)| [form.middle + place, *width]).collect(), radius: 0.0 }
    }

    /// The smooth tube round it, for a link of a length.
    pub fn tube(&self, length: f64) -> Self {
        Self { places: vec![[0.0, 0.0], [length, 0.0]], radius: self.reach() }
    }

    /// How far from the middle line it reaches.
    pub fn reach(&self) -> f64 {
        self.radius + self.places.iter().map(|place| place[1]).fold(0.0, f64::max)
    }

    /// Goes with its link, which begins so much sooner and is so much longer: a line that is swept stays from end to end.
    pub fn moved(&mut self, by: f64, longer: f64) {
        let is_line = self.radius > 0.0 && self.places.len() == 2;
        let of = |at: usize| if is_line { longer * at as f64 } else { by };
        self.places.iter_mut().enumerate().for_each(|(at, place)| place[0] += of(at));
    }

    /// Whether the side of a link of this length runs on in the next link's as one smooth line.
    pub fn runs_on_in(&self, length: f64, next: &Self) -> bool {
        /// Rounding of lengths, in mm.
        const SAME: f64 = 1e-9;
        let ([[_, _], [end, _]], [[start, _], _]) = (self.places.as_slice(), next.places.as_slice()) else {
            return false;
        };
        let smooth = self.radius > 0.0 && (self.radius - next.radius).abs() < SAME;
        smooth && (end - length).abs() < SAME && start.abs() < SAME
    }

    /// Makes it longer by the next link's side, if it runs on in that.
    pub fn extend(&mut self, length: f64, next: &Self, more: f64) -> bool {
        let goes_on = self.runs_on_in(length, next) && next.runs_on_in(more, next);
        if goes_on {
            self.places[1] = [length + more, 0.0];
        }
        goes_on
    }
}
