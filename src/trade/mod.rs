//! Outside knowledge as small tables: gauges, densities, packing, bodies, names of lengths, paper,
//! seed beads, ease, metals, how stiff wire is, and how colours look to different eyes.
//!
//! Every table names its source. Where the trade agrees on a figure without a standard, the figure
//! is labelled common practice and stands with the range in which sources differ.

pub mod bodies;
pub mod densities;
pub mod ease;
pub mod english;
pub mod gauges;
pub mod lengths;
pub mod metals;
pub mod packing;
pub mod paper;
mod phrase;
pub mod seeds;
pub mod sight;
pub mod stiffness;
pub mod usual;

/// Rows of a table of check values, split at commas; the columns used stand before any quotes.
#[cfg(test)]
fn rows(csv: &str) -> Vec<Vec<&str>> {
    csv.lines().skip(1).map(|line| line.split(',').collect()).collect()
}
