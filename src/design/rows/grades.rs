//! Graduated rows: sizes that grow from both ends to one bead in the middle, as long as there is room.
//!
//! Each size stands on each side q times or once more, with one of the last size in the middle, so that counts
//! differ by at most one. Rows are put in steps by their length: of k sizes there are 2^k − 1 ways to give some of
//! them, but not all, one more, and then q is one larger. The row is that of the last step that is no longer than
//! the room; of steps that are equally long, the one that has more of the sizes written first.

use crate::pattern::bounds::MOST_STRUNG;
use crate::units::Length;

use crate::design::entries::Index;
use crate::design::filling::largest;
use crate::design::list::Given;
use crate::design::resting::SAME;
use crate::design::stock::Bead;

/// The steps of a graduated row.
#[derive(Clone)]
pub struct Grades<'a> {
    given: Given<'a>,
    beads: Vec<Index<Bead>>,
    /// Which sizes have one more, by length of the row; a bit each.
    more: Vec<u32>,
}

impl<'a> Grades<'a> {
    /// Puts the rows of these beads, at least one and no more than a row may have sizes, in order.
    pub fn new(beads: Vec<Index<Bead>>, given: Given<'a>) -> Self {
        let mut grades = Self { given, beads, more: Vec::new() };
        grades.more = grades.ordered();
        grades
    }

    /// The ways to give some sizes one more, the shortest row first.
    fn ordered(&self) -> Vec<u32> {
        let each: Vec<f64> = (0..self.beads.len()).map(|size| self.taken(&self.counted(1, 1 << size))).collect();
        let none = self.taken(&self.counted(1, 0));
        let sizes = 0..self.beads.len();
        let longer = |more: u32| sizes.clone().filter(|size| more >> size & 1 == 1).map(|size| each[size] - none).sum();
        let ways = 0..(1_u32 << self.beads.len()) - 1;
        let mut ways: Vec<(f64, u32)> = ways.map(|more| (longer(more), more)).collect();
        ways.sort_by(|(one, which), (other, other_which)| one.total_cmp(other).then(other_which.cmp(which)));
        ways.into_iter().map(|(_, more)| more).collect()
    }

    /// The row of a step.
    pub fn row(&self, step: u32) -> Vec<Index<Bead>> {
        let (each, more) = self.step(step);
        self.counted(each, more)
    }

    /// How many beads the row of a step has.
    pub fn count(&self, step: u32) -> u64 {
        let (each, more) = self.step(step);
        2 * (u64::from(each) * self.beads.len() as u64 + u64::from(more.count_ones())) + 1
    }

    /// The last step that is no longer than this; none where the first one is.
    pub fn longest(&self, length: Length) -> Option<u32> {
        let fits = |step| self.taken(&self.row(step)) <= length.value() + SAME;
        largest(|step| self.count(step) <= u64::from(MOST_STRUNG) && fits(step))
    }

    /// How long the row of the first step is.
    pub fn least(&self) -> Length {
        Length::mm(self.taken(&self.row(1)))
    }

    /// How often each size stands on a side in a step, counted from 1, and which stand there once more.
    fn step(&self, step: u32) -> (u32, u32) {
        let (step, ways) = (step.saturating_sub(1), self.more.len());
        // There are at most 2¹⁰ ways.
        let ways = u32::try_from(ways).unwrap_or(u32::MAX);
        (step / ways + 1, self.more[(step % ways) as usize])
    }

    fn counted(&self, each: u32, more: u32) -> Vec<Index<Bead>> {
        let often = |size: usize| (each + (more >> size & 1)) as usize;
        let side = self.beads.iter().enumerate().flat_map(|(size, bead)| std::iter::repeat_n(*bead, often(size)));
        let side: Vec<_> = side.collect();
        let middle = self.beads.last().copied();
        side.iter().copied().chain(middle).chain(side.iter().rev().copied()).collect()
    }

    fn taken(&self, beads: &[Index<Bead>]) -> f64 {
        self.given.taken(beads)
    }
}
