//! All the lengths that a finding's form has.

use crate::units::Length;

use super::form::{
    Bar, Cap, ChainLinks, Charm, Cone, CordEnd, Crimp, Dimensions, Form, Hanger, JumpRing, KnotCover, Pin, Tassel,
};

impl Form {
    /// Its lengths, and those that are stated of those that may be.
    pub(super) fn lengths(&self) -> Vec<Length> {
        match self {
            Self::Crimp(Crimp { length, outside, inside }) => vec![*length, *outside, *inside],
            Self::Cone(Cone { length, inside, tip, mouth, outside }) => {
                and([*length, *inside, *tip], [*mouth, *outside])
            }
            Self::Pin(Pin { length, wire, outside, .. }) => and([*length, *wire], [*outside]),
            Self::Clasp(body)
            | Self::SpringRing(body)
            | Self::Hook(body)
            | Self::ToggleRing(body)
            | Self::ToggleBar(body)
            | Self::BarrelHalf(body)
            | Self::CrimpCover(body)
            | Self::WireGuard(body)
            | Self::SpectacleLoop(body)
            | Self::KnotCover(KnotCover { body, .. }) => {
                let Dimensions { length, outside, inside, wire } = body;
                and([*length], [*outside, *inside, *wire])
            }
            Self::BoxHalf(bar) | Self::SlideHalf(bar) | Self::SpacerBar(bar) | Self::EndBar(bar) => {
                let Bar { length, spacing, outside, inside, wire, .. } = bar;
                and([*length, *spacing], [*outside, *inside, *wire])
            }
            Self::Chain(ChainLinks { link, wire, length }) => and([*link, **wire], [*length]),
            Self::JumpRing(JumpRing { inside, wire, outside, .. }) => and([*inside, **wire], [*outside]),
            Self::BeadCap(Cap { length, outside, inside, mouth }) => and([*length], [*outside, *inside, *mouth]),
            Self::Bail(Hanger { length, wire, outside, inside })
            | Self::EarWire(Hanger { length, wire, outside, inside }) => and([*length, **wire], [*outside, *inside]),
            Self::CordEnd(CordEnd { length, inside, outside, wire }) => and([*length, *inside], [*outside, *wire]),
            Self::Charm(Charm { length, breadth, .. }) | Self::Tassel(Tassel { length, breadth, .. }) => {
                vec![*length, **breadth]
            }
        }
    }
}

fn and<const ALWAYS: usize, const STATED: usize>(
    always: [Length; ALWAYS],
    stated: [Option<Length>; STATED],
) -> Vec<Length> {
    always.into_iter().chain(stated.into_iter().flatten()).collect()
}
