//! Bead art: beads, findings and cords as marks, to scale.
//!
//! [`Stencils`] hands out stamps and keeps the symbols that they need. A symbol is drawn in mm about
//! the point that its stamp places: a bead's centre with the hole along x, a finding's strand side
//! with +x outward. Page coordinates: y down, angles clockwise. There is one light, from above left,
//! whichever way a bead is turned: a bead has a symbol for each of 24 turns of the light, and a pearl
//! for each of a few variants.

mod bead;
mod chain;
mod cord;
mod facet;
mod finding;
mod glass;
mod hatch;
mod light;
mod look;
mod mirror;
mod pearl;
pub mod pen;
mod shape;
mod stencils;
mod step;
mod strung;
mod surface;
mod wire;

pub use bead::looks_the_same_turned;
pub use finding::{eye_wire, ring_round};
pub use light::{Ink, Light};
pub use look::Look;
pub use pearl::Deal;
pub use stencils::Stencils;
pub use step::{
    ROOM as STEP_ROOM, RULER, SIZE as STEP_SIZE, beside, boxed, clipped, reduced, ruler, ruler_upright, step,
};
