//! How stiff cords are said to be.

use crate::design::{Cord, Design};
use crate::remark::Remark;
use crate::remark::said::fit::Fit;
use crate::trade::stiffness;

/// Remarks about stiffness.
pub fn check(design: &Design) -> Vec<Remark> {
    design.cords.iter().filter_map(too_stiff).collect()
}

/// Nothing that beads are strung on is stiffer than steel all through.
fn too_stiff(cord: &Cord) -> Option<Remark> {
    let (told, most) = (cord.stiffness.stated()?, stiffness::solid(cord.diameter));
    let said = || Fit::CordTooStiff { cord: cord.name.clone(), told, most };
    (told > most).then(|| Remark::new(said()).at(cord.place))
}
