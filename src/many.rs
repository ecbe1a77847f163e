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
