//! Whether the piece goes together, hangs well and can be worn.
//!
//! One file a family of rules; each rule is a small function from the design and its drape to
//! remarks. A rule's formula and source stand in its code's explanation ([`crate::remark::Code`]).

mod bar;
mod body;
mod closing;
mod coil;
mod cone;
mod cover;
mod drilled;
mod drops;
mod extender;
mod fit;
mod gross;
mod hang;
mod held;
mod hitch;
mod inside;
mod knot;
mod lean;
mod legend;
mod links;
mod load;
mod packs;
mod pin;
mod price;
mod ring;
#[cfg(test)]
mod sample;
mod stiff;
mod text;
mod twist;

use crate::design::{Bead, Bit, Design, Index, Strand};
use crate::drape::Drape;
use crate::palette::Palette;
use crate::remark::{Remark, once};
use crate::units::Telling;

/// Everything that the rules have to say about a design and its drape, how it is told and in what colours.
#[must_use]
pub fn check(design: &Design, drape: &Drape, telling: &Telling, palette: &Palette) -> Vec<Remark> {
    once(
        [
            fit::check(design),
            hitch::check(design),
            held::check(design),
            inside::check(design),
            drilled::check(design),
            closing::check(design),
            pin::check(design),
            cone::check(design),
            cover::check(design),
            bar::check(design, drape),
            knot::check(design),
            load::check(design, drape),
            stiff::check(design),
            hang::check(design, drape),
            drops::check(design, drape),
            ring::check(design, drape),
            coil::check(design),
            twist::check(design, telling.units),
            extender::check(design, drape),
            links::check(design),
            legend::check(design, palette),
            body::check(design),
            gross::check(design),
            packs::check(design),
            price::check(design),
            text::check(design, telling),
        ]
        .concat(),
    )
}

/// The beads on a strand's own cord, in order.
fn strung(strand: &Strand) -> impl Iterator<Item = Index<Bead>> {
    strand.bits().filter_map(bead)
}

const fn bead(bit: &Bit) -> Option<Index<Bead>> {
    bit.what.bead()
}
