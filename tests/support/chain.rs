//! A hung strand's chain.

use festoon::design::{Design, Strand};
use festoon::drape::Hung;
use festoon::drape::chain::Chain;
use festoon::drape::open::Hinges;
use festoon::geometry::Point;

/// A strand's links as it hangs: its beads part as the turns ask for that are seen there (`tests/gaping.rs` looks at
/// that).
pub fn as_it_hangs(design: &Design, strand: &Strand, hung: &Hung) -> Chain {
    let mut chain = Chain::new(design, strand, &hung.starts);
    let ways = hung.joints.windows(2).map(|pair| pair[1].at - pair[0].at);
    let ways: Vec<Point> = ways.map(|way| way * (1.0 / way.length())).collect();
    let parted = Hinges::new(design, strand, &chain).parted(&ways);
    chain.open(strand, parted);
    chain
}
