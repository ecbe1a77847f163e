//! Sizes that no person and no bead has: most likely a slip in the unit.

use crate::design::{Basis, Bead, Design, limb};
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::wearing::Wearing;
use crate::trade::bodies::{Site, extremes, usual};
use crate::units::Length;

/// The longest side of the largest beads that are strung, and of the largest that hang: common practice, no source.
const LARGEST: [Length; 2] = [Length::mm(50.0), Length::mm(100.0)];
/// How much a length changes that was written in one unit and meant in another: millimetres, centimetres and inches.
const SLIPS: [f64; 6] = [0.1, 10.0, 2.54, 1.0 / 2.54, 25.4, 1.0 / 25.4];

/// Remarks about measures and beads.
pub fn check(design: &Design) -> Vec<Remark> {
    measure(design).into_iter().chain(design.beads.iter().filter_map(huge)).collect()
}

/// A girth that nobody has, and that which may be meant.
fn measure(design: &Design) -> Option<Remark> {
    let (wear, limb) = (&design.wear, limb(design.heading.kind));
    let (girth, people) = (wear.girth, extremes(limb));
    let is_odd = *wear.source == Basis::Measured && design.heading.kind != Kind::Earrings;
    (is_odd && !(people[0]..=people[1]).contains(&girth)).then(|| {
        let (meant, usual) = (meant(girth, limb), usual(limb)[0]);
        let said = Wearing::OddMeasure { limb, girth, people, meant, usual };
        Remark::new(said).at(wear.place.unwrap_or(design.closure.place))
    })
}

/// The same number in another unit, where that is what people measure.
fn meant(girth: Length, place: Site) -> Option<Length> {
    let [least, most] = usual(place);
    SLIPS.into_iter().map(|slip| girth * slip).find(|meant| (least..=most).contains(meant))
}

/// A bead larger than any.
fn huge(bead: &Bead) -> Option<Remark> {
    let most = LARGEST[usize::from(bead.hangs())];
    let size = bead.across.max(bead.along).max(*bead.thick);
    let said = || Wearing::HugeBead { bead: bead.name.clone(), size, meant: size * 0.1 };
    (size > most).then(|| Remark::new(said()).at(bead.place))
}
