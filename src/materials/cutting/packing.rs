//! Packing sizes into as few bins as will do: one-dimensional bin packing in whole numbers.
//!
//! All bins are of one size but the first, which is at hand already and does not count. First-fit
//! decreasing takes the sizes largest first and puts each into the first bin that still holds it; it needs
//! at most 11/9 of the best count and 6/9 of a bin (Dósa, "The tight bound of first fit decreasing
//! bin-packing algorithm", 2007; from memory). Where that is more than the lower bound, bins are filled
//! one after the other in every way that may be best, the fullest first.
//!
//! What need not be tried (the rules are those of Martello and Toth, "Knapsack Problems", 1990, chapter 8,
//! and Korf, "An improved algorithm for optimal bin packing", 2003; from memory, and each with its reason):
//! - a bin without the largest size that is left: bins are numbered as one likes, so the next one holds it;
//! - a bin that holds one more, or a larger one in the place of a smaller: what is exchanged fits where the
//!   larger one was;
//! - a bin emptier than all bins together may be, if there is to be one fewer than in the best plan so far;
//! - what is left, where its lower bound says the same, or where it was left before by as few bins.

use std::collections::BTreeMap;

/// No more sizes than this are packed in every way.
pub const MOST_TRIED: usize = 100;
/// Steps after which the search gives up: some hundredths of a second.
const MOST_STEPS: u32 = 300_000;

/// Sizes that are packed.
#[derive(Clone, Debug)]
pub struct PackSizes {
    /// The different ones, largest first.
    pub sizes: Vec<u64>,
    /// How many there are of each.
    pub counts: Vec<usize>,
}

/// The bins: how much one holds.
#[derive(Clone, Copy, Debug)]
pub struct Bins {
    /// The one at hand, where there is one.
    pub first: Option<u64>,
    /// Each of the others. No size is larger.
    pub each: u64,
}

/// A plan.
#[derive(Clone, Debug)]
pub struct Packing {
    /// For each bin, which of the different sizes are in it; the one at hand comes first, even if empty.
    pub bins: Vec<Vec<usize>>,
    /// No plan can do with fewer bins beside the one at hand.
    pub least: usize,
    /// Steps that the search took.
    pub steps: u32,
}

impl PackSizes {
    fn sum(&self) -> u64 {
        self.sizes.iter().zip(&self.counts).map(|(size, count)| size * *count as u64).sum()
    }

    /// Sizes of a range with how many there are of each.
    fn between(&self, least: u64, most: u64) -> impl Iterator<Item = (u64, u64)> {
        let all = self.sizes.iter().zip(&self.counts).map(|(size, count)| (*size, *count as u64));
        all.filter(move |(size, _)| (least..=most).contains(size))
    }
}

impl Bins {
    const fn room(&self, bin: usize) -> u64 {
        match (bin, self.first) {
            (0, Some(first)) => first,
            _ => self.each,
        }
    }

    fn at_hand(&self) -> usize {
        usize::from(self.first.is_some())
    }
}

/// Packs sizes, of which none is larger than a bin.
#[must_use]
pub fn pack(sizes: &PackSizes, bins: Bins) -> Packing {
    let least = least(sizes, bins);
    let fitted = first_fit(sizes, bins);
    let to_do = fitted.len() > bins.at_hand() + least && sizes.counts.iter().sum::<usize>() <= MOST_TRIED;
    if !to_do {
        return Packing { bins: fitted, least, steps: 0 };
    }
    let enough = bins.at_hand() + least;
    let mut search =
        Search { left: sizes.clone(), bins, best: fitted, enough, used: Vec::new(), seen: BTreeMap::new(), steps: 0 };
    search.next_bin();
    let proven = search.steps < MOST_STEPS;
    let least = if proven { search.best.len() - bins.at_hand() } else { least };
    Packing { bins: search.best, least, steps: search.steps }
}

/// Each size, largest first, into the first bin that still holds it.
fn first_fit(sizes: &PackSizes, bins: Bins) -> Vec<Vec<usize>> {
    let mut packed: Vec<Vec<usize>> = vec![Vec::new(); bins.at_hand()];
    let mut rooms: Vec<u64> = bins.first.into_iter().collect();
    for (kind, (size, count)) in sizes.sizes.iter().zip(&sizes.counts).enumerate() {
        let mut bin = 0;
        for _ in 0..*count {
            // A bin that could not hold a size cannot hold another of the same.
            bin += rooms[bin..].iter().take_while(|room| *room < size).count();
            if bin == rooms.len() {
                rooms.push(bins.each);
                packed.push(Vec::new());
            }
            rooms[bin] -= size;
            packed[bin].push(kind);
        }
    }
    packed
}

/// A lower bound for the bins beside the one at hand.
///
/// A bin at hand no larger than the others is one of them that holds what it is smaller by. One that is
/// larger saves all it holds, end to end.
fn least(sizes: &PackSizes, bins: Bins) -> usize {
    match bins.first {
        None => martello_toth(sizes, bins.each),
        Some(first) if first <= bins.each => {
            let mut filled = sizes.clone();
            filled.sizes.push(bins.each - first);
            filled.counts.push(1);
            martello_toth(&filled, bins.each) - 1
        }
        Some(first) => whole(sizes.sum().saturating_sub(first).div_ceil(bins.each)),
    }
}

/// The bound L2 of Martello and Toth. For any threshold up to half a bin: what is larger than a bin less the
/// threshold, and what is larger than half a bin, has a bin of its own; the rest down to the threshold lies
/// beside the latter, and what has no room there fills further bins.
fn martello_toth(sizes: &PackSizes, bin: u64) -> usize {
    let half = bin / 2;
    let alone = |threshold: u64| sizes.between(bin - threshold + 1, bin).map(|(_, count)| count).sum::<u64>();
    let bound = |threshold: u64| {
        let large = || sizes.between(half + 1, bin - threshold);
        let beside: u64 = large().map(|(size, count)| (bin - size) * count).sum();
        let small: u64 = sizes.between(threshold, half).map(|(size, count)| size * count).sum();
        let large: u64 = large().map(|(_, count)| count).sum();
        alone(threshold) + large + small.saturating_sub(beside).div_ceil(bin)
    };
    let thresholds = sizes.between(1, half).map(|(size, _)| size).chain([0]);
    whole(thresholds.map(bound).max().unwrap_or_default())
}

/// A count of bins, which are no more than there are sizes.
fn whole(count: u64) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}

/// Bins filled one after the other in every way that may be best.
struct Search {
    left: PackSizes,
    bins: Bins,
    best: Vec<Vec<usize>>,
    /// With so many bins nothing better is looked for.
    enough: usize,
    used: Vec<Vec<usize>>,
    /// By how few bins so much was left before.
    seen: BTreeMap<Vec<usize>, usize>,
    steps: u32,
}

/// A bin that is being filled.
struct Filling {
    /// The first of the sizes that may still be added.
    from: usize,
    /// The sizes in it; the first of them must be.
    holds: Vec<usize>,
    must: usize,
    room: u64,
    /// How much of the sizes that may still be added there is.
    more: u64,
    /// How much of the bin may stay empty.
    spare: u64,
}

impl Search {
    fn is_over(&self) -> bool {
        self.steps >= MOST_STEPS || self.best.len() <= self.enough
    }

    /// Fills the next bin, if fewer than in the best plan may do.
    fn next_bin(&mut self) {
        let sum = self.left.sum();
        let first = self.used.is_empty() && self.bins.first.is_some();
        if sum == 0 && !first {
            self.best.clone_from(&self.used);
            return;
        }
        if self.is_over() || self.is_hopeless(first) {
            return;
        }
        let room = self.bins.room(self.used.len());
        let all = room + (self.best.len() - 2 - self.used.len()) as u64 * self.bins.each;
        let Some(spare) = all.checked_sub(sum) else { return };
        let mut filling = Filling { from: 0, holds: Vec::new(), must: 0, room, more: sum, spare };
        if !first {
            filling.must = 1;
            let largest = self.left.counts.iter().position(|count| *count > 0);
            largest.into_iter().for_each(|kind| self.add(kind, &mut filling));
        }
        self.fill(&mut filling);
        filling.holds.iter().for_each(|kind| self.left.counts[*kind] += 1);
    }

    /// Whether what is left needs as many bins as the best plan, or was tried before.
    fn is_hopeless(&mut self, first: bool) -> bool {
        if first {
            return self.best.len() < 2;
        }
        if self.used.len() + martello_toth(&self.left, self.bins.each) >= self.best.len() {
            return true;
        }
        let before = self.seen.get(&self.left.counts).is_some_and(|used| *used <= self.used.len());
        self.seen.insert(self.left.counts.clone(), self.used.len());
        before
    }

    fn add(&mut self, kind: usize, filling: &mut Filling) {
        self.left.counts[kind] -= 1;
        filling.room -= self.left.sizes[kind];
        filling.more -= self.left.sizes[kind];
        filling.holds.push(kind);
    }

    /// Adds the next size to a bin or passes it over, and goes on with the next bin where none is left.
    fn fill(&mut self, filling: &mut Filling) {
        self.steps += 1;
        let too_empty = filling.room > filling.spare + filling.more;
        if self.is_over() || too_empty || (filling.must == 0 && self.passes_too_much(filling)) {
            return;
        }
        let fits = |kind: &usize| self.left.counts[*kind] > 0 && self.left.sizes[*kind] <= filling.room;
        let Some(kind) = (filling.from..self.left.sizes.len()).find(fits) else {
            return self.close(filling);
        };
        let Filling { from, room, more, .. } = *filling;
        let passed = |kinds: std::ops::Range<usize>| -> u64 {
            kinds.map(|kind| self.left.sizes[kind] * self.left.counts[kind] as u64).sum()
        };
        let (before, own) = (passed(from..kind), passed(kind..kind + 1));
        (filling.from, filling.more) = (kind, more - before);
        self.add(kind, filling);
        self.fill(filling);
        filling.holds.pop();
        self.left.counts[kind] += 1;
        (filling.from, filling.room, filling.more) = (kind + 1, room, more - before - own);
        self.fill(filling);
        (filling.from, filling.room, filling.more) = (from, room, more);
    }

    /// Whether what the bin at hand has passed over needs as many bins as the best plan.
    fn passes_too_much(&self, filling: &Filling) -> bool {
        let passed = PackSizes {
            sizes: self.left.sizes[..filling.from].to_vec(),
            counts: self.left.counts[..filling.from].to_vec(),
        };
        1 + martello_toth(&passed, self.bins.each) >= self.best.len()
    }

    /// Goes on with the next bin, unless this one would be better with something else in it.
    fn close(&mut self, filling: &Filling) {
        if filling.room > filling.spare || self.is_bettered(filling) {
            return;
        }
        self.used.push(filling.holds.clone());
        self.next_bin();
        self.used.pop();
    }

    /// Whether one more fits in, or a larger one in the place of a smaller.
    fn is_bettered(&self, filling: &Filling) -> bool {
        let sizes = &self.left.sizes;
        let may_go = || filling.holds[filling.must..].iter().map(|kind| sizes[*kind]).chain([0]);
        let left = (0..sizes.len()).filter(|kind| self.left.counts[*kind] > 0).map(|kind| sizes[kind]);
        let mut left = left.peekable();
        left.any(|size| may_go().any(|smaller| smaller < size && size <= filling.room + smaller))
    }
}
