//! Designs and their parts made by hand, where there is no pattern: for tests, and for programs that have their own.
//!
//! Whoever makes one fills a [`Model`] and makes it a [`super::Design`], which looks whether it keeps what stages after it
//! rely on.

use crate::pattern::{Kind, Overhead, Settle};
use crate::source::Place;
use crate::trade::usual;
use crate::units::{Length, Money};

use super::assorted::{Assorted, Held, Pack};
use super::build::copies;
use super::entries::{Entries, Index};
use super::finding::Finding;
use super::joins::{Closure, Part};
use super::model::{Bit, Dangle, End, Heading, Model, Price, Rest, Strand, Train, Wear, What};
use super::stated::Stated;
use super::stock::{Bead, Cord, Lot, Sold};
use super::wear::{Basis, Build, limb, narrowest};

impl Model {
    /// One of a title and a kind, of nothing else, for somebody of this girth where it is worn.
    #[must_use]
    pub fn bare(title: &str, kind: Kind, girth: Length) -> Self {
        let wear = Wear {
            girth,
            narrowest: narrowest(limb(kind), girth),
            ease: Stated::Stated(Length::ZERO),
            source: Stated::Stated(Basis::Measured),
            build: Build::default(),
            child: false,
            place: None,
        };
        Self {
            heading: Heading::bare(title, kind),
            beads: Entries::default(),
            cords: Entries::default(),
            findings: Entries::default(),
            assorted: Entries::default(),
            strands: Entries::default(),
            closure: Closure::default(),
            wear,
            wraps: 1.0,
            twist: None,
            copies: copies(kind),
            price: None,
        }
    }
}

impl Heading {
    fn bare(title: &str, kind: Kind) -> Self {
        Self {
            title: title.to_owned(),
            kind,
            variants: 1,
            summary: None,
            designer: None,
            permissions: None,
            care: None,
            skill: None,
            time: None,
            notes: None,
            size: None,
            colourway: None,
        }
    }
}

impl Price {
    /// So many hours at a rate, with the usual factors and no other costs.
    #[must_use]
    pub fn new(hours: f64, rate: Money) -> Self {
        Self {
            hours,
            rate,
            overhead: Stated::Assumed(Overhead::Sum(Money::ZERO)),
            wholesale: Stated::Assumed(usual::WHOLESALE),
            retail: Stated::Assumed(usual::RETAIL),
            place: Place::default(),
        }
    }
}

impl Sold {
    /// By such lots, of no known price and from nobody in particular.
    #[must_use]
    pub const fn new(lot: Lot) -> Self {
        Self { lot, price: None, from: None }
    }
}

impl Assorted {
    /// So many beads of these kinds in one pack.
    #[must_use]
    pub fn new(id: &str, pack: Pack, beads: u64, holds: Vec<Held>) -> Self {
        let [id, name] = [id, id].map(str::to_owned);
        Self { id, name, pack, beads, holds, price: None, from: None, place: Place::default() }
    }
}

impl Held {
    /// So many of a bead of the piece, or so many parts of all.
    #[must_use]
    pub const fn new(id: String, parts: u32, bead: Index<Bead>) -> Self {
        Self { id, parts, bead: Some(bead) }
    }
}

impl Part {
    /// A finding that adds so much to the piece, and no less.
    #[must_use]
    pub const fn new(finding: Index<Finding>, reach: Length) -> Self {
        Self { finding, reach, least: reach, cut: None }
    }
}

impl End {
    /// What findings close, with so much of the piece in the loop, where there is one, and in all.
    #[must_use]
    pub const fn new(findings: Vec<Index<Finding>>, bight: Option<Length>, takes: Length) -> Self {
        Self { findings, bight, takes, take_up: None }
    }
}

impl Dangle {
    /// Bits on a finding that hang down so far in mm.
    #[must_use]
    pub const fn new(on: Option<Index<Finding>>, bits: Vec<Bit>, drop: f64) -> Self {
        Self { on, bits, drop }
    }
}

impl Strand {
    /// A strand so long from loop to loop, of one cord, whose one train of bits slides as far as its ends leave room, or
    /// starts behind the first where they leave none.
    #[must_use]
    pub fn sliding(name: &str, cord: Index<Cord>, finished: Length, ends: [End; 2], bits: Vec<Bit>) -> Self {
        let [first, last] = ends.each_ref().map(|end| end.takes.value());
        let mut train = Train::new(bits, Rest::At(first));
        let latest = finished.value() - last - train.length();
        if latest > first {
            train.rest = Rest::Free(first, latest);
        }
        Self {
            name: name.to_owned(),
            cord,
            legs: 1,
            finished,
            take_up: Stated::Stated(Length::ZERO),
            slack: Length::ZERO,
            allowance: Stated::Stated(Length::ZERO),
            ends,
            trains: vec![train],
            settle: Settle::Slide,
            aside: Length::ZERO,
            chart: Vec::new(),
            place: Place::default(),
            length_place: Place::default(),
            fill: None,
        }
    }
}

impl Train {
    /// Bits that move together, and where they rest, in mm from the first end's loop.
    #[must_use]
    pub const fn new(bits: Vec<Bit>, rest: Rest) -> Self {
        Self { bits, rest }
    }
}

impl Bit {
    /// Something with so many mm of cord before and after its centre, and its mass in grams, that no pattern says.
    #[must_use]
    pub const fn new(what: What, [before, after]: [f64; 2], mass: f64) -> Self {
        Self { what, before, after, mass, turned: false, place: Place { file: 0, start: 0, end: 0 } }
    }
}
