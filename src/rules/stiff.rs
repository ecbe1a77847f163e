//! How stiff cords are said to be.

use crate::design::{Cord, Design};
use crate::remark::{Code, Remark};
use crate::trade::stiffness;

/// Remarks about stiffness.
pub fn check(design: &Design) -> Vec<Remark> {
    design.cords.iter().filter_map(too_stiff).collect()
}

/// Nothing that beads are strung on is stiffer than steel all through.
fn too_stiff(cord: &Cord) -> Option<Remark> {
    let (told, most) = (cord.stiffness.stated()?, stiffness::solid(cord.diameter));
    (told > most).then(|| {
        let headline = format!(
            "{} is said to be stiffer than a solid steel wire as thick, which has {most:.2} N mm²: {told} N mm²",
            cord.name
        );
        let help = "take `stiffness:` out, or measure it: of an end held level, so long that it sinks by a tenth of that \
                    under its own weight, it is 1.25 times the weight of the end times its length squared";
        Remark::words(Code::CordTooStiff, headline).at(cord.place).helping(help)
    })
}
