//! What a strand gives to its list.

use crate::pattern;
use crate::units::Length;

use crate::design::entries::Index;
use crate::design::model::{Bit, What};
use crate::design::row::{self, Strung};
use crate::design::shelf::Inventory;
use crate::design::stock::{Bead, Cord};

/// What a strand gives to its list.
#[derive(Clone, Copy)]
pub struct Given<'a> {
    /// The articles that names mean.
    pub shelf: &'a Inventory,
    /// The knot that comes between all beads.
    pub knots: Option<Length>,
    /// By how much a link of its chain lengthens it.
    pub link: Option<Length>,
}

impl<'a> Given<'a> {
    /// What a strand on a cord gives; one that is not defined has had its remark, and is asked for nothing more.
    pub fn new(strand: &pattern::Strand, cord: Option<Index<Cord>>, shelf: &'a Inventory) -> Self {
        let link = cord.map_or(Some(Length::ZERO), |cord| shelf.cords[cord].link);
        Self { shelf, knots: strand.knots.as_ref().map(|at| at.value), link }
    }

    /// A row with the strand's knots between neighbouring beads.
    pub fn knotted(self, row: Vec<Strung>) -> Vec<Strung> {
        let Some(knot) = self.knots else { return row };
        let is_bead = |one: &Strung| one.what.bead().is_some();
        let mut knotted: Vec<Strung> = Vec::with_capacity(2 * row.len());
        for one in row {
            if is_bead(&one) && knotted.last().is_some_and(is_bead) {
                knotted.push(Strung::other(What::Knot, knot.value(), 0.0).at(one.place));
            }
            knotted.push(one);
        }
        knotted
    }

    /// Length of a row in mm.
    pub fn length(self, row: &[Strung]) -> f64 {
        row::bits(row, &self.shelf.beads).iter().map(Bit::length).sum()
    }

    /// Length in mm of beads in a row, with the strand's knots between them.
    pub fn taken(self, beads: &[Index<Bead>]) -> f64 {
        let strung = beads.iter().map(|bead| Strung::bead(*bead, &self.shelf.beads)).collect();
        self.length(&self.knotted(strung))
    }
}
