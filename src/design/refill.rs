//! What a design would be if a row that fills its length took another count of repeats, or a strand another
//! length, or bars held the strands farther apart: for remarks that name a remedy.

use std::ops::Range;

use crate::units::Length;

use super::entries::Index;
use super::model::{Bit, Design, Model, Rest, Strand};

impl Design {
    /// With so many repeats of the list that fills a strand; nothing where no repeat does.
    #[must_use]
    pub fn refilled(&self, strand: Index<Strand>, times: u32) -> Option<Self> {
        self.with(|other| refill(other.strands.get_mut(strand)?, times))
    }

    /// With a strand so much longer, its beads where they were from the middle.
    #[must_use]
    pub fn lengthened(&self, strand: Index<Strand>, by: Length) -> Option<Self> {
        self.with(|other| {
            lengthen(other.strands.get_mut(strand)?, by);
            Some(())
        })
    }

    /// With its strands held so far apart, each from the next, at their ends.
    #[must_use]
    pub fn held_apart(&self, by: Length) -> Option<Self> {
        self.with(|other| {
            hang_apart(&mut other.strands, by);
            Some(())
        })
    }

    /// With a change, where that can be made and leaves a design.
    fn with(&self, change: impl FnOnce(&mut Model) -> Option<()>) -> Option<Self> {
        let mut made = None;
        self.changed(|model| made = change(model)).ok().filter(|_| made.is_some())
    }
}

fn lengthen(strand: &mut Strand, by: Length) {
    strand.finished = strand.finished + by;
    for train in &mut strand.trains {
        train.rest = match train.rest {
            Rest::At(start) => Rest::At(start + 0.5 * by.value()),
            Rest::Free(from, to) => Rest::Free(from, to + by.value()),
        };
    }
}

/// Holds strands apart, each so far from the next.
pub fn hang_apart(strands: &mut [Strand], by: Length) {
    for (at, strand) in strands.iter_mut().enumerate() {
        strand.aside = by * at as f64;
    }
}

fn refill(strand: &mut Strand, times: u32) -> Option<()> {
    // What is made has another count, and its repeats elsewhere.
    let fill = strand.fill.take().filter(|fill| times > 0 && !fill.ones.is_empty())?;
    let [train] = strand.trains.as_mut_slice() else { return None };
    let before = train.length();
    // The last first, so that the places of the others stay as they are.
    for one in fill.ones.iter().rev() {
        again(&mut train.bits, one.clone(), fill.times, times)?;
    }
    strand.finished = strand.finished + Length::mm(train.length() - before);
    Some(())
}

/// Strings a repeat another number of times.
fn again(bits: &mut Vec<Bit>, one: Range<usize>, now: u32, times: u32) -> Option<()> {
    let (start, end) = (one.start, one.end);
    let one = bits.get(one)?.to_vec();
    match times.checked_sub(now) {
        Some(more) => {
            let added = one.iter().cycle().take(one.len() * more as usize).cloned();
            bits.splice(end..end, added);
        }
        None => {
            // Repeats before the last but one: the first of them begins so much earlier.
            let earlier = one.len() * (now - times - 1) as usize;
            bits.drain(start.checked_sub(earlier)?..end);
        }
    }
    Some(())
}
