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

/// Entries in an order, read as a slice and found by [`Index`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entries<T>(Vec<T>);

impl<T> Entries<T> {
    /// Adds an entry at the end, and says where it stands.
    pub fn push(&mut self, entry: T) -> Index<T> {
        self.0.push(entry);
        nth(self.0.len() - 1)
    }

    /// The indices of all entries, in their order.
    pub fn indices(&self) -> impl DoubleEndedIterator<Item = Index<T>> + ExactSizeIterator + Clone + use<T> {
        (0..self.0.len()).map(nth)
    }

    /// All entries in their order, each with its index.
    pub fn entries(&self) -> impl Iterator<Item = (Index<T>, &T)> {
        self.indices().zip(&self.0)
    }

    /// The entry at an index that may be another list's.
    #[must_use]
    pub fn get(&self, at: Index<T>) -> Option<&T> {
        self.0.get(at.number)
    }

    /// The first entry of which something is true.
    pub fn find(&self, mut is: impl FnMut(&T) -> bool) -> Option<Index<T>> {
        self.indices().find(|at| is(&self[*at]))
    }
}

impl<T> Default for Entries<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> ops::Index<Index<T>> for Entries<T> {
    type Output = T;

    fn index(&self, at: Index<T>) -> &T {
        &self.0[at.number]
    }
}

impl<T> ops::IndexMut<Index<T>> for Entries<T> {
    fn index_mut(&mut self, at: Index<T>) -> &mut T {
        &mut self.0[at.number]
    }
}

impl<T> Deref for Entries<T> {
    type Target = [T];

    fn deref(&self) -> &[T] {
        &self.0
    }
}

impl<T> DerefMut for Entries<T> {
    fn deref_mut(&mut self) -> &mut [T] {
        &mut self.0
    }
}

impl<T> From<Vec<T>> for Entries<T> {
    fn from(entries: Vec<T>) -> Self {
        Self(entries)
    }
}

impl<T> Extend<T> for Entries<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, entries: I) {
        self.0.extend(entries);
    }
}

impl<'a, T> IntoIterator for &'a Entries<T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl<'a, T> IntoIterator for &'a mut Entries<T> {
    type Item = &'a mut T;
    type IntoIter = std::slice::IterMut<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter_mut()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_index_finds_what_was_pushed() {
        let mut list = Entries::from(vec!["a", "b"]);
        let at = list.push("c");
        assert_eq!((at.number(), list[at], list.len()), (2, "c", 3));
        assert_eq!(list.find(|entry| *entry == "b"), Some(nth(1)));
        assert_eq!(list.indices().map(|at| list[at]).collect::<Vec<_>>(), list.to_vec());
    }
}
