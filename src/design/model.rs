//! The design: what a pattern makes once every bead is resolved.
//!
//! Once a [`Design`] exists these are true, and later code does not check them again: every length of beads, cords,
//! findings, closure, body and strands is finite, every size and count positive, and so is how often it goes round or is
//! twisted; every index points at an entry of its list, and every repeat at bits of its strand; no strand is overfull; a
//! strand's trains follow one another along its cord without overlap, wherever in their ranges they come to rest.
//! [`Design::new`] looks it over, and no other way leads to one. Of one that a pattern was resolved to it is true too that
//! its beads are listed in the order in which the pattern's lists first name them, and that each is strung, or a knot is
//! tied round it ([`Model::idle`]).

use std::ops::{Deref, Range};

use crate::pattern::{Kind, Overhead, Settle, Skill};
use crate::source::Place;
use crate::units::{Length, Money};

use super::assorted::Assorted;
use super::entries::{Entries, Index};
use super::finding::Finding;
use super::joins::Closure;
use super::sound::Flaw;
use super::stated::Stated;
use super::stock::{Bead, Cord};
use super::twist::Twist;
use super::wear::{Basis, Build};

/// A piece, resolved: by [`super::resolve`], or by hand from a [`Model`]. What it is made of is read through it, and
/// nobody changes it:
///
/// ```compile_fail,E0594
/// # fn change(mut design: festoon::design::Design) {
/// design.copies = 3;
/// # }
/// ```
#[derive(Clone, Debug)]
pub struct Design(Model);

impl Design {
    /// The design of a model.
    ///
    /// # Errors
    /// The model's first flaw.
    pub fn new(model: Model) -> Result<Self, Flaw> {
        Self::checked(model).map_err(|(flaw, _)| flaw)
    }

    /// The design of a model; its first flaw and the model itself where it has one.
    pub(super) fn checked(model: Model) -> Result<Self, (Flaw, Box<Model>)> {
        match model.flaw() {
            Some(flaw) => Err((flaw, Box::new(model))),
            None => Ok(Self(model)),
        }
    }

    /// The design with something changed.
    ///
    /// # Errors
    /// The first flaw that the change makes.
    pub fn changed(&self, change: impl FnOnce(&mut Model)) -> Result<Self, Flaw> {
        let mut model = self.0.clone();
        change(&mut model);
        Self::new(model)
    }

    /// The design with another letter for each bead.
    #[must_use]
    pub fn relettered(mut self, letter: impl Fn(&Bead) -> String) -> Self {
        for bead in &mut self.0.beads {
            bead.letter = letter(bead);
        }
        self
    }
}

impl Deref for Design {
    type Target = Model;

    fn deref(&self) -> &Model {
        &self.0
    }
}

/// What a design is made of, of which nothing is promised yet: [`Design::new`] looks it over.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Model {
    /// Title and what else stands above the drawing.
    pub heading: Heading,
    /// The beads in order of first use.
    pub beads: Entries<Bead>,
    /// The cords that strands use.
    pub cords: Entries<Cord>,
    /// The findings that ends, closure, dangles and bead lists use.
    pub findings: Entries<Finding>,
    /// What several kinds of its beads are bought in.
    pub assorted: Entries<Assorted>,
    /// The strands, innermost first.
    pub strands: Entries<Strand>,
    /// What joins the strands' ends.
    pub closure: Closure,
    /// The body that the piece is made for.
    pub wear: Wear,
    /// How many times the piece goes round, as the pattern says.
    pub wraps: f64,
    /// How its strands are twisted round one another, where they are.
    pub twist: Option<Twist>,
    /// How often the whole is made: 1, or 2 for a pair of earrings.
    pub copies: u32,
    /// What the maker asks for her work, where the pattern says.
    pub price: Option<Price>,
}

/// Title and what else stands above the drawing.
#[derive(Clone, Debug)]
#[non_exhaustive]
#[expect(missing_docs, reason = "each is the pattern key of the same name")]
pub struct Heading {
    pub title: String,
    pub summary: Option<String>,
    pub kind: Kind,
    pub designer: Option<String>,
    pub permissions: Option<String>,
    /// How the wearer looks after the piece.
    pub care: Option<String>,
    pub skill: Option<Skill>,
    pub time: Option<String>,
    pub notes: Option<String>,
    pub size: Option<String>,
    pub colourway: Option<String>,
    /// How many are made of its pattern, its own sizes and colourways and itself.
    pub variants: u32,
}

impl Heading {
    /// What of some work is spent on it, where its pattern's sizes and colourways are worked out with it: all of it
    /// for up to three.
    #[must_use]
    pub fn share(&self, work: usize) -> usize {
        const WHOLE: u32 = 3;
        work * WHOLE as usize / self.variants.max(WHOLE) as usize
    }

    /// Its size and colourway, where it has one: `small, dusk`.
    #[must_use]
    pub fn variant(&self) -> String {
        joined([self.size.as_ref(), self.colourway.as_ref()])
    }

    /// Title, size and colourway.
    #[must_use]
    pub fn whole_title(&self) -> String {
        joined([Some(&self.title), self.size.as_ref(), self.colourway.as_ref()])
    }
}

fn joined<const N: usize>(parts: [Option<&String>; N]) -> String {
    parts.into_iter().flatten().map(String::as_str).collect::<Vec<_>>().join(", ")
}

/// One strand.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Strand {
    /// Its name.
    pub name: String,
    /// Its cord.
    pub cord: Index<Cord>,
    /// How many times the cord lies side by side: twice where it is folded and its fold is hitched
    /// at the first end.
    pub legs: u32,
    /// From the first end's loop to the last end's loop.
    pub finished: Length,
    /// Cord that each knot on it takes up beyond its length on the strand, all legs together.
    pub take_up: Stated<Length>,
    /// Cord that its beads take up where they part on the outer side of the bends it is worn in, all its bare cord taken:
    /// round a limb in a ring, and round a neck in [so many](crate::trade::usual::COIL); nothing on elastic, which gives.
    pub slack: Length,
    /// Extra cord for each end, beyond the finished length, the slack and what knots take up.
    pub allowance: Stated<Length>,
    /// First and last end.
    pub ends: [End; 2],
    /// What is strung, in order.
    pub trains: Vec<Train>,
    /// How the beads come to rest.
    pub settle: Settle,
    /// How far outside the innermost strand's point it hangs, on each side, where a bar holds
    /// strands apart.
    pub aside: Length,
    /// The row as the pattern writes it, for the word chart.
    pub chart: Vec<Phrase>,
    /// Where the pattern says it.
    pub place: Place,
    /// Where the pattern says its length.
    pub length_place: Place,
    /// The repeat that fills it, where one entry of its list does.
    pub fill: Option<FillRepeat>,
}

/// A repeat that fills a strand.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct FillRepeat {
    /// How often its list is strung.
    pub times: u32,
    /// Bits of the strand's first train that are one repeat, the last but one where there are several; in
    /// a mirror one on each side. None where what fills the strand is no such repeat, and the count comes nearest to
    /// the wearer.
    pub ones: Vec<Range<usize>>,
    /// Cord that the pattern leaves bare beside it.
    pub leave: Length,
}

/// How one end of a strand is closed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct End {
    /// The findings that close it, from the loop inward; none for a knot or a hitch.
    pub findings: Vec<Index<Finding>>,
    /// Cord in the loop, measured along the piece, where it has one.
    pub bight: Option<Length>,
    /// Length along the piece that loop and findings take from the strand.
    pub takes: Length,
    /// Cord that its knot takes up, all legs together, where it is knotted.
    pub take_up: Option<Length>,
}

/// A row of bits that touch and move together.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Train {
    /// The bits in order.
    pub bits: Vec<Bit>,
    /// Where it rests.
    pub rest: Rest,
}

/// Where a train rests: the station of its first bit's start, in mm from the first end's loop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rest {
    /// Just there.
    At(f64),
    /// Free to slide: anywhere from the first station to the second.
    Free(f64, f64),
}

/// Something that takes up cord.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Bit {
    /// What it is.
    pub what: What,
    /// From its start to its centre, in mm along the cord.
    pub before: f64,
    /// From its centre to its end, in mm along the cord.
    pub after: f64,
    /// Its mass in grams, with all that hangs from it and without the cord inside.
    pub mass: f64,
    /// Whether a strung finding faces the bead after it rather than the one before, as caps do.
    pub turned: bool,
    /// Where the pattern says it: the entry of a bead list, which may say others too.
    pub place: Place,
}

impl PartialEq for Bit {
    /// Bits are alike wherever the pattern says them.
    fn eq(&self, other: &Self) -> bool {
        let numbers = |bit: &Self| (bit.before, bit.after, bit.mass, bit.turned);
        self.what == other.what && numbers(self) == numbers(other)
    }
}

/// What takes up cord.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// A bead.
    Bead(Index<Bead>),
    /// Bare cord that is held at both sides.
    Gap,
    /// A knot.
    Knot,
    /// A finding, strung or fixed on the cord: a stop, spacer bar or cap.
    Finding(Index<Finding>),
    /// A branch that hangs here.
    Dangle(Dangle),
}

/// A branch that hangs straight down.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Dangle {
    /// The pin, bail or ring that it hangs on; nothing where the strand's own ends meet in it and hold it.
    pub on: Option<Index<Finding>>,
    /// What is strung on it, from the top down.
    pub bits: Vec<Bit>,
    /// From the cord down to the lowest point, in mm.
    pub drop: f64,
}

/// A word chart's phrase, as the maker says it.
#[derive(Clone, Debug, PartialEq)]
pub enum Phrase {
    /// So many of a bead.
    Run(u32, Index<Bead>),
    /// A list said so many times.
    Times(u32, Vec<Phrase>),
    /// A list, its middle, and the list backwards.
    Mirror(Vec<Phrase>, Vec<Phrase>),
    /// Runs of a row that has no pattern, told in tens.
    Ordered(Vec<Phrase>),
    /// Bare cord of this length.
    Gap(Length),
    /// So many links of chain in which nothing hangs.
    Links(u32),
    /// A knot.
    Knot,
    /// A finding.
    Finding(Index<Finding>),
    /// A stop: its number on the strand, from 1, and its finding.
    Stop(u32, Index<Finding>),
    /// A branch: what hangs on a finding, or where the ends meet.
    Dangle(Option<Index<Finding>>, Vec<Phrase>),
}

/// The body that a piece is made for.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Wear {
    /// Girth of the neck base, wrist or ankle.
    pub girth: Length,
    /// The least girth that a piece must go round: of a limb its own, of a neck that above its base, where a
    /// choker lies.
    pub narrowest: Length,
    /// Room between body and piece, for bracelets and anklets.
    pub ease: Stated<Length>,
    /// Where the girth comes from.
    pub source: Stated<Basis>,
    /// The shape of neck and chest, for what is worn round the neck.
    pub build: Build,
    /// Whether the piece is for a child.
    pub child: bool,
    /// Where the pattern says it; absent where it is assumed.
    pub place: Option<Place>,
}

/// What the maker asks for her work.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Price {
    /// Hours of work.
    pub hours: f64,
    /// Pay for an hour.
    pub rate: Money,
    /// Other costs.
    pub overhead: Stated<Overhead>,
    /// Factor from cost to the price for a shop.
    pub wholesale: Stated<f64>,
    /// Factor from cost to the price for a wearer.
    pub retail: Stated<f64>,
    /// Where the pattern says it.
    pub place: Place,
}

impl What {
    /// The bead that it is, if it is one.
    #[must_use]
    pub const fn bead(&self) -> Option<Index<Bead>> {
        match self {
            Self::Bead(bead) => Some(*bead),
            _ => None,
        }
    }

    /// Whether it is what both ends of its strand meet in, which lies apart from the row.
    #[must_use]
    pub const fn is_meeting(&self) -> bool {
        matches!(self, Self::Dangle(Dangle { on: None, .. }))
    }
}

impl Bit {
    /// Length along the cord in mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.before + self.after
    }
}

impl Train {
    /// Length along the cord in mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.bits.iter().map(Bit::length).sum()
    }
}
