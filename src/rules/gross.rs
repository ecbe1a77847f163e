//! Sizes that no person and no bead has: most likely a slip in the unit.

use crate::design::{Basis, Bead, Design, limb};
use crate::pattern::Kind;
use crate::remark::{Code, Remark};
use crate::trade::bodies::{Place, extremes, usual};
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
    let (wear, place) = (&design.wear, limb(design.heading.kind));
    let [least, most] = extremes(place);
    let is_odd = *wear.source == Basis::Measured && design.heading.kind != Kind::Earrings;
    (is_odd && !(least..=most).contains(&wear.girth)).then(|| {
        let (key, girth) = (place.key(), wear.girth.tenths());
        let headline =
            format!("nobody has a {key} of {girth}: people measure from {} to {}", least.tenths(), most.tenths());
        let help = match meant(wear.girth, place) {
            Some(meant) => format!("did you mean {}? Check the unit", meant.tenths()),
            None => format!("check the number and its unit: `{key}: {}`", usual(place)[0].tenths()),
        };
        Remark::words(Code::OddMeasure, headline).at(wear.place.unwrap_or(design.closure.place)).helping(help)
    })
}

/// The same number in another unit, where that is what people measure.
fn meant(girth: Length, place: Place) -> Option<Length> {
    let [least, most] = usual(place);
    SLIPS.into_iter().map(|slip| girth * slip).find(|meant| (least..=most).contains(meant))
}

/// A bead larger than any.
fn huge(bead: &Bead) -> Option<Remark> {
    let most = LARGEST[usize::from(bead.hangs())];
    let longest = bead.across.max(bead.along).max(*bead.thick);
    (longest > most).then(|| {
        let headline = format!("{} is {} large, larger than beads are", bead.name, longest.tenths());
        let help = format!("did you mean {}? Check the unit of its `size:`", (longest * 0.1).tenths());
        Remark::words(Code::HugeBead, headline).at(bead.place).helping(help)
    })
}
