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

/// Works on stretches of data of one length, the last perhaps shorter, each with its number from 0.
#[cfg(feature = "parallel")]
pub fn stretches(data: &mut [u8], length: usize, work: impl Fn(usize, &mut [u8]) + Sync + Send) {
    data.par_chunks_mut(length).enumerate().for_each(|(number, stretch)| work(number, stretch));
}

/// Works on stretches of data of one length, the last perhaps shorter, each with its number from 0.
#[cfg(not(feature = "parallel"))]
pub fn stretches(data: &mut [u8], length: usize, work: impl Fn(usize, &mut [u8])) {
    data.chunks_mut(length).enumerate().for_each(|(number, stretch)| work(number, stretch));
}
