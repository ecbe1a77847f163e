//! What a close picture shows of beads and a sheet does not: the dark where neighbours in the row keep
//! the light off a bead's ends.

use crate::art::looks_the_same_turned;
use crate::design::{Bead, Design};
use crate::geometry::Point;
use crate::pattern::Shape;
use crate::sheet::mark::{Fill, Mark, Rgb, Stop, Symbol};

/// Share of a bead's length that lies in its neighbour's dark, at each end.
const DARK: f64 = 0.16;
/// How dark it is at the very end.
const DARKEST: f64 = 0.4;

/// A bead's symbol with the dark at its ends; other symbols as they are. Balls are drawn without
/// regard to their hole's direction and stay as they are too.
pub fn polished(mut symbol: Symbol, design: &Design) -> Symbol {
    let bead = number(&symbol.id).and_then(|index| design.beads.get(index));
    let in_row =
        |bead: &&Bead| !looks_the_same_turned(bead) && !matches!(bead.shape, Shape::Coin | Shape::Drop | Shape::Chip);
    if let Some((bead, Mark::Shape { outline, .. })) = bead.filter(in_row).zip(symbol.marks.first()) {
        let dusk = Mark::Shape { outline: outline.clone(), fill: Some(dusk(bead)), stroke: None };
        symbol.marks.push(dusk);
    }
    symbol
}

/// The number of the bead whose symbol has an id like `p0-bead-3-12`.
fn number(id: &str) -> Option<usize> {
    id.split_once("bead-")?.1.split('-').next()?.parse().ok()
}

fn dusk(bead: &Bead) -> Fill {
    let end = Point::new(bead.along.value() / 2.0, 0.0);
    let stop = |at, opacity| Stop { at, colour: Rgb(0x1c, 0x16, 0x14), opacity };
    let stops = vec![stop(0.0, DARKEST), stop(DARK, 0.0), stop(1.0 - DARK, 0.0), stop(1.0, DARKEST)];
    Fill::Linear(end * -1.0, end, stops)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn symbols_of_beads_tell_their_number() {
        assert_eq!(number("p0-bead-13-2"), Some(13));
        assert_eq!(number("p0-finding-1-2"), None);
    }
}
