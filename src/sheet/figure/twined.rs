//! Twisted strands: what is strung on all of them, the farther before the nearer, over all their cords.

use crate::design::{Entries, Strand};
use crate::drape::Hung;
use crate::paint::mark::Mark;

use super::{Canvas, Sketch};

/// Twisted strands in so many layers, from the cords and what is farthest to what is nearest.
pub fn layers(hung: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>, count: usize) -> Vec<Vec<Mark>> {
    let laid = canvas.design().strands.iter().zip(hung).filter_map(|(strand, hung)| Some((strand, (*hung)?)));
    let laid: Vec<_> = laid.map(|(strand, hung)| Sketch::new(strand, hung, canvas)).collect();
    let mut ground: Vec<_> = laid.iter().flat_map(Sketch::cord).collect();
    let mut strung = Vec::new();
    for sketch in &laid {
        ground.extend(sketch.ends());
        strung.extend(sketch.hung.seats.iter().map(|seat| (seat.near, sketch.seated(seat))));
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
