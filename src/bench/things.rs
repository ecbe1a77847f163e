//! Where each thing strung lies in the drawing, and where the pattern says it.

use crate::design::{Bead, Bit, Design, Entries, Finding, Index, Strand, What};
use crate::drape::{Hung, Seat};
use crate::geometry::{Extent, Point};
use crate::sheet::figure::{Frame, bit_box};
use crate::source::Place;

/// A bead, finding or knot of a strand, or a bead of a branch.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Thing {
    /// Its strand's index.
    pub strand: Index<Strand>,
    /// What it is.
    pub of: Of,
    /// Its centre on the page.
    pub at: Point,
    /// How far it reaches from there, in mm.
    pub reach: f64,
    /// Cord length in mm from the first end's loop; of a branch's bead, the branch's.
    pub station: f64,
    /// The entry of the bead list that says it.
    pub place: Place,
}

/// What a thing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// A bead.
    Bead(Index<Bead>),
    /// A finding.
    Finding(Index<Finding>),
    /// A knot.
    Knot,
}

/// Everything strung, strand by strand, in order; the beads of a branch follow what they hang on.
#[must_use]
pub fn things(design: &Design, hung: &Entries<Option<Hung>, Strand>, frame: &Frame) -> Vec<Thing> {
    let laid = hung.entries().filter_map(|(strand, hung)| Some((strand, hung.as_ref()?)));
    laid.flat_map(|(strand, hung)| hung.seats.iter().flat_map(move |seat| seated(design, strand, seat, frame)))
        .collect()
}

/// What a bit is of, if it is a thing.
const fn of(bit: &Bit) -> Option<Of> {
    match bit.what {
        What::Bead(bead) => Some(Of::Bead(bead)),
        What::Finding(finding) => Some(Of::Finding(finding)),
        What::Knot => Some(Of::Knot),
        What::Gap | What::Dangle(_) => None,
    }
}

fn seated(design: &Design, strand: Index<Strand>, seat: &Seat, frame: &Frame) -> Vec<Thing> {
    let bit = seat.bit(&design.strands[strand]);
    let thing = |of, bit: &Bit, below: f64| {
        let at = seat.below(below).front();
        let around = bit_box(bit, Extent::at(Point::ORIGIN), design);
        let reach = around.width().max(around.height()).max(bit.length()) / 2.0;
        Thing { strand, of, at: frame.page(at), reach, station: seat.station, place: bit.place }
    };
    match &bit.what {
        What::Dangle(dangle) => {
            let hanging = dangle.bits.iter().zip(dangle.levels(design));
            hanging.filter_map(|(bit, below)| Some(thing(of(bit)?, bit, below))).collect()
        }
        _ => of(bit).into_iter().map(|of| thing(of, bit, 0.0)).collect(),
    }
}
