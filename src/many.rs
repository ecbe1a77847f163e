//! Work on many things alike: on all processors with the feature `parallel`, else one after another.
//! What comes of it is the same.

#[cfg(feature = "parallel")]
use rayon::prelude::*;

/// What a change makes of each thing, in their order.
#[cfg(feature = "parallel")]
pub fn map<T: Sync, R: Send>(things: &[T], change: impl Fn(&T) -> R + Sync + Send) -> Vec<R> {
    things.par_iter().map(change).collect()
}

/// What a change makes of each thing, in their order.
#[cfg(not(feature = "parallel"))]
pub fn map<T, R>(things: &[T], change: impl Fn(&T) -> R) -> Vec<R> {
    things.iter().map(change).collect()
}

/// Changes each row of so many values, of which the first is row 0.
#[cfg(feature = "parallel")]
pub fn rows<T: Send>(values: &mut [T], width: usize, change: impl Fn(usize, &mut [T]) + Sync + Send) {
    values.par_chunks_mut(width.max(1)).enumerate().for_each(|(at, row)| change(at, row));
}

/// Changes each row of so many values, of which the first is row 0.
#[cfg(not(feature = "parallel"))]
pub fn rows<T>(values: &mut [T], width: usize, change: impl Fn(usize, &mut [T])) {
    values.chunks_mut(width.max(1)).enumerate().for_each(|(at, row)| change(at, row));
}

/// What two pieces of work give.
#[cfg(feature = "parallel")]
pub fn both<A: Send, B: Send>(one: impl FnOnce() -> A + Send, other: impl FnOnce() -> B + Send) -> (A, B) {
    rayon::join(one, other)
}

/// What two pieces of work give.
#[cfg(not(feature = "parallel"))]
pub fn both<A, B>(one: impl FnOnce() -> A, other: impl FnOnce() -> B) -> (A, B) {
    (one(), other())
}
