//! Strands of which none as a whole is the nearest, twisted or crossing: what is strung on all of them, the farther before the
//! nearer, over all their cords.

use crate::design::{Design, Entries, Strand};
use crate::drape::{Hung, Seat};
use crate::geometry::{Extent, Point};
use crate::paint::mark::Mark;

use super::strands::longest_first;
use super::{Canvas, Sketch};

/// Beads are seen over one another where their middles are nearer than this share of what they are apart side by side; less
/// of an overlap, as of strands beside one another on a slope, looks alike whichever comes first.
const OVER: f64 = 0.75;

/// A bead as it is seen: a disc as wide as the bead is at its least, in mm.
struct Disc {
    centre: Point,
    radius: f64,
    near: f64,
    /// The place of its strand, among those that are drawn one by one.
    turn: usize,
}

/// Whether no strand lies as a whole over those that are longer: they are twisted, or one somewhere lies under a longer one.
pub fn are_twined(hung: &Entries<Option<&Hung>, Strand>, design: &Design) -> bool {
    design.twist.is_some() || design.strands.len() > 1 && any_under(discs(hung, design))
}

/// The beads of all strands.
fn discs(hung: &Entries<Option<&Hung>, Strand>, design: &Design) -> Vec<Disc> {
    let of_strand = |(turn, index)| {
        let strand: &Strand = &design.strands[index];
        let seats = hung.get(index).copied().flatten().into_iter().flat_map(|hung| &hung.seats);
        seats.filter_map(move |seat| disc(seat, strand, turn, design))
    };
    longest_first(design).into_iter().enumerate().flat_map(of_strand).collect()
}

fn disc(seat: &Seat, strand: &Strand, turn: usize, design: &Design) -> Option<Disc> {
    let bit = seat.bit(strand);
    let across = design.beads[bit.what.bead()?].across.value();
    Some(Disc { centre: seat.centre, radius: across.min(bit.length()) / 2.0, near: seat.near, turn })
}

/// Whether a bead is seen behind one of a strand that is drawn before its own.
fn any_under(mut discs: Vec<Disc>) -> bool {
    let Some(all) = Extent::of(discs.iter().map(|disc| disc.centre)) else { return false };
    let is_tall = all.height() > all.width();
    let along = |disc: &Disc| if is_tall { disc.centre.y } else { disc.centre.x };
    discs.sort_by(|one, other| along(one).total_cmp(&along(other)));
    let widest = discs.iter().map(|disc| disc.radius).fold(0.0, f64::max);
    discs.iter().enumerate().any(|(at, one)| {
        let beside = |other: &&Disc| along(other) - along(one) < one.radius + widest;
        discs[at + 1..].iter().take_while(beside).any(|other| one.is_amiss(other))
    })
}

impl Disc {
    /// Whether two are seen over one another in the wrong order.
    fn is_amiss(&self, other: &Self) -> bool {
        let (first, later) = if self.turn < other.turn { (self, other) } else { (other, self) };
        first.turn < later.turn
            && first.near > later.near
            && first.centre.distance(later.centre) < OVER * (first.radius + later.radius)
    }
}

/// Such strands in so many layers, from the cords and what is farthest to what is nearest.
pub fn layers(hung: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>, count: usize) -> Vec<Vec<Mark>> {
    let laid = canvas.design().strands.iter().zip(hung).filter_map(|(strand, hung)| Some((strand, (*hung)?)));
    let laid: Vec<_> = laid.map(|(strand, hung)| Sketch::new(strand, hung, canvas)).collect();
    let mut ground: Vec<_> = laid.iter().flat_map(Sketch::cord).collect();
    let mut strung = Vec::new();
    for sketch in &laid {
        ground.extend(sketch.ends());
        strung.extend(sketch.heaped());
    }
    strung.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    let each = strung.len().div_ceil(count).max(1);
    let mut strung = strung.into_iter().map(|(_, marks)| marks);
    let mut layers = std::iter::from_fn(|| {
        let layer: Vec<_> = strung.by_ref().take(each).collect();
        (!layer.is_empty()).then(|| layer.into_iter().flatten().collect::<Vec<_>>())
    });
    // What is farthest lies with the cords.
    ground.extend(layers.next().into_iter().flatten());
    std::iter::once(ground).chain(layers).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn disc(x: f64, near: f64, turn: usize) -> Disc {
        Disc { centre: Point::new(x, 0.0), radius: 2.0, near, turn }
    }

    #[test]
    fn strands_are_twined_where_one_that_is_drawn_later_is_seen_behind_another() {
        let one_over_other = || vec![disc(0.0, 1.0, 0), disc(0.0, 4.0, 1), disc(20.0, 1.0, 0), disc(21.0, 4.0, 1)];
        assert!(!any_under(one_over_other()));
        let under = |x: f64| one_over_other().into_iter().chain([disc(40.0, 4.0, 0), disc(40.0 + x, 1.0, 1)]).collect();
        assert!(any_under(under(1.0)) && any_under(under(-1.0)));
        assert!(!any_under(under(3.5)), "side by side");
    }
}
