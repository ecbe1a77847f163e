//! How long a piece is: of earrings how far they hang down, which their drape knows.

use super::{Drape, Hung, Seat, hang};
use crate::design::{Design, Strand, What};
use crate::pattern::Kind;
use crate::units::Length;

/// A piece's length, closed as short and as long as it goes; of earrings from the top of what they hang by to the lowest
/// point of any bead or branch, as they hang.
#[must_use]
pub fn piece_length(design: &Design, drape: &Drape) -> [Length; 2] {
    let down = if design.heading.kind == Kind::Earrings { depth(design, drape) } else { None };
    let (above, most) = design.closure_length();
    down.map_or_else(|| design.piece_length().into(), |down| [above + down, most + down])
}

/// The same of a design that is hung for it (`Model::piece_length`, which knows no breadths, where it cannot be).
#[must_use]
pub fn hung_length(design: &Design) -> [Length; 2] {
    let drape = if design.heading.kind == Kind::Earrings { hang(design, None).ok() } else { None };
    drape.map_or_else(|| design.piece_length().into(), |drape| piece_length(design, &drape))
}

/// How far the strands reach down below what they end in.
fn depth(design: &Design, drape: &Drape) -> Option<Length> {
    let strands = design.strands.iter().zip(&drape.strands);
    let lows = strands.flat_map(|(strand, hung)| hung.seats.iter().map(|seat| below(design, strand, hung, seat)));
    let ends = drape.strands.iter().map(|hung| hung.drop);
    lows.chain(ends).reduce(f64::max).map(Length::mm)
}

/// How far below its strand's higher end something strung reaches.
fn below(design: &Design, strand: &Strand, hung: &Hung, seat: &Seat) -> f64 {
    let bit = seat.bit(strand);
    let reach = match &bit.what {
        What::Dangle(dangle) => dangle.drop,
        What::Bead(at) if design.closure.loops() => design.beads[*at].across.value() / 2.0,
        _ => bit.after,
    };
    hung.ends[0].y.max(hung.ends[1].y) - seat.centre.y + reach
}
