//! How long a piece is: of earrings how far they hang down, which their drape knows.

use super::{Hung, Seat, hang};
use crate::design::{Design, Strand, What};
use crate::pattern::Kind;
use crate::units::Length;

/// A piece's length, closed as short and as long as it goes; of earrings from the top of what they hang by to the lowest
/// point of any bead or branch, as they hang (`Model::piece_length`, which knows no breadths, where they do not).
#[must_use]
pub fn piece_length(design: &Design) -> [Length; 2] {
    let down = if design.heading.kind == Kind::Earrings { depth(design) } else { None };
    let (above, most) = design.closure_length();
    down.map_or_else(|| design.piece_length().into(), |down| [above + down, most + down])
}

/// How far the strands reach down below what they end in.
fn depth(design: &Design) -> Option<Length> {
    let drape = hang(design, None).ok()?;
    let strands = design.strands.iter().zip(&drape.strands);
    let lows = strands.flat_map(|(strand, hung)| hung.seats.iter().map(|seat| below(design, strand, hung, seat)));
    let ends = drape.strands.iter().map(|hung| hung.drop);
    lows.chain(ends).reduce(f64::max).map(Length::mm)
}

/// How far below its strand's higher end something strung reaches.
fn below(design: &Design, strand: &Strand, hung: &Hung, seat: &Seat) -> f64 {
    let bit = &strand.trains[seat.train].bits[seat.bit];
    let reach = match &bit.what {
        What::Dangle(dangle) => dangle.drop,
        What::Bead(at) if design.closure.loops() => design.beads[*at].across.value() / 2.0,
        _ => bit.after,
    };
    hung.ends[0].y.max(hung.ends[1].y) - seat.centre.y + reach
}
