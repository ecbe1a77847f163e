//! Entries that are pointed at by an index of their own kind: the index of a bead finds no cord.

use std::cmp::Ordering;
use std::fmt;
use std::hash::{Hash, Hasher};
use std::marker::PhantomData;
use std::ops::{self, Deref, DerefMut};

/// Where an entry stands in a [`Entries`] of its kind, from 0.
pub struct Index<T> {
    number: usize,
    of: PhantomData<fn() -> T>,
}

/// The index of a number, from 0.
#[must_use]
pub const fn nth<T>(number: usize) -> Index<T> {
    Index { number, of: PhantomData }
}

impl<T> Index<T> {
    /// How many entries stand before it.
    #[must_use]
    pub const fn number(self) -> usize {
        self.number
    }

    /// Which entry it is, as people count: from 1.
    #[must_use]
    pub const fn ordinal(self) -> usize {
        self.number + 1
    }

    /// Whether no entry stands before it.
    #[must_use]
    pub const fn is_first(self) -> bool {
        self.number == 0
    }
}

impl<T> Clone for Index<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Index<T> {}

impl<T> PartialEq for Index<T> {
    fn eq(&self, other: &Self) -> bool {
        self.number == other.number
    }
}

impl<T> Eq for Index<T> {}

impl<T> PartialOrd for Index<T> {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl<T> Ord for Index<T> {
    fn cmp(&self, other: &Self) -> Ordering {
        self.number.cmp(&other.number)
    }
}

impl<T> Hash for Index<T> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.number.hash(state);
    }
}

impl<T> fmt::Debug for Index<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.number.fmt(f)
    }
}

/// Entries in an order, read as a slice and found by [`Index`]; or what there is of each of other entries, one for one in
/// their order, found by the index of those.
#[derive(Clone, Debug)]
pub struct Entries<T, Of = T> {
    entries: Vec<T>,
    of: PhantomData<fn() -> Of>,
}

impl<T> Entries<T> {
    /// Adds an entry at the end, and says where it stands.
    pub fn push(&mut self, entry: T) -> Index<T> {
        self.entries.push(entry);
        nth(self.entries.len() - 1)
    }
}

impl<T, Of> Entries<T, Of> {
    /// The indices of all entries, in their order.
    pub fn indices(&self) -> impl DoubleEndedIterator<Item = Index<Of>> + ExactSizeIterator + Clone + use<T, Of> {
        (0..self.entries.len()).map(nth)
    }

    /// All entries in their order, each with its index.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = (Index<Of>, &T)> + ExactSizeIterator + Clone {
        self.indices().zip(&self.entries)
    }

    /// All entries in their order.
    #[must_use]
    pub fn as_slice(&self) -> &[T] {
        &self.entries
    }

    /// The entry at an index that may be another list's.
    #[must_use]
    pub fn get(&self, at: Index<Of>) -> Option<&T> {
        self.entries.get(at.number)
    }

    /// The same, to be changed.
    pub fn get_mut(&mut self, at: Index<Of>) -> Option<&mut T> {
        self.entries.get_mut(at.number)
    }

    /// The first entry of which something is true.
    pub fn find(&self, mut is: impl FnMut(&T) -> bool) -> Option<Index<Of>> {
        self.indices().find(|at| is(&self[*at]))
    }
}

impl<T: PartialEq, Of> PartialEq for Entries<T, Of> {
    fn eq(&self, other: &Self) -> bool {
        self.entries == other.entries
    }
}

impl<T: Eq, Of> Eq for Entries<T, Of> {}

impl<T, Of> Default for Entries<T, Of> {
    fn default() -> Self {
        Vec::new().into()
    }
}

impl<T, Of> ops::Index<Index<Of>> for Entries<T, Of> {
    type Output = T;

    fn index(&self, at: Index<Of>) -> &T {
        &self.entries[at.number]
    }
}

impl<T, Of> ops::IndexMut<Index<Of>> for Entries<T, Of> {
    fn index_mut(&mut self, at: Index<Of>) -> &mut T {
        &mut self.entries[at.number]
    }
}

impl<T, Of> Deref for Entries<T, Of> {
    type Target = [T];

    fn deref(&self) -> &[T] {
        &self.entries
    }
}

impl<T, Of> DerefMut for Entries<T, Of> {
    fn deref_mut(&mut self) -> &mut [T] {
        &mut self.entries
    }
}

impl<T, Of> From<Vec<T>> for Entries<T, Of> {
    fn from(entries: Vec<T>) -> Self {
        Self { entries, of: PhantomData }
    }
}

impl<T, Of> FromIterator<T> for Entries<T, Of> {
    fn from_iter<I: IntoIterator<Item = T>>(entries: I) -> Self {
        entries.into_iter().collect::<Vec<_>>().into()
    }
}

impl<T, Of> Extend<T> for Entries<T, Of> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, entries: I) {
        self.entries.extend(entries);
    }
}

impl<T, Of> IntoIterator for Entries<T, Of> {
    type Item = T;
    type IntoIter = std::vec::IntoIter<T>;

    fn into_iter(self) -> Self::IntoIter {
        self.entries.into_iter()
    }
}

impl<'a, T, Of> IntoIterator for &'a Entries<T, Of> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.entries.iter()
    }
}

impl<'a, T, Of> IntoIterator for &'a mut Entries<T, Of> {
    type Item = &'a mut T;
    type IntoIter = std::slice::IterMut<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.entries.iter_mut()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_index_finds_what_was_pushed() {
        let mut list: Entries<_> = vec!["a", "b"].into();
        let at = list.push("c");
        assert_eq!((at.number(), list[at], list.len()), (2, "c", 3));
        assert_eq!(list.find(|entry| *entry == "b"), Some(nth(1)));
        assert_eq!(list.indices().map(|at| list[at]).collect::<Vec<_>>(), list.to_vec());
    }
}
