//! How long a chain takes to hang.

use divan::{Bencher, black_box};
use festoon::drape::hang::{Link, solve};
use festoon::geometry::Point;

fn main() {
    divan::main();
}

/// Beads of three weights in turn, from ends 0.3 of the length apart.
#[divan::bench(args = [100, 10_000])]
fn mixed_beads(bencher: Bencher<'_, '_>, count: usize) {
    let link = |at: usize| Link { length: 6.0, weight: [0.003, 0.001, 0.01][at % 3], centre: 0.5 };
    let links: Vec<Link> = (0..count).map(link).collect();
    let end = Point::new(1.8 * count as f64, 0.0);
    bencher.bench_local(|| solve(black_box(&links), end));
}

/// The same for a chain that is nearly taut.
#[divan::bench(args = [100, 10_000])]
fn nearly_taut(bencher: Bencher<'_, '_>, count: usize) {
    let links = vec![Link { length: 6.0, weight: 0.003, centre: 0.5 }; count];
    let end = Point::new(0.999_99 * 6.0 * count as f64, 0.0);
    bencher.bench_local(|| solve(black_box(&links), end));
}
