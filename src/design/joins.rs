//! What joins the ends of a piece's strands.

use crate::source::Place;
use crate::units::Length;

use super::entries::Index;
use super::finding::Finding;
use super::model::Design;
use super::stated::Stated;

/// What joins the strands' ends.
#[derive(Clone, Debug, Default)]
#[non_exhaustive]
pub struct Closure {
    /// The findings, and which ends hang from them.
    pub joins: Joins,
    /// Where the pattern says it.
    pub place: Place,
}

/// Which ends the findings of a closure join, each list outward from the strands.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Joins {
    /// Nothing stands between first and last ends: they are tied to each other.
    #[default]
    Nothing,
    /// What the first ends hang from and what the last ends hang from, which close onto one another.
    Sides([Vec<Part>; 2]),
    /// Both ends hang from the same findings, as a loop.
    BothEnds(Vec<Part>),
    /// The first ends hang from these, and nothing joins the last: one of a pair of earrings.
    Above(Vec<Part>),
    /// What the first ends and what the last ends end in, which nothing joins, and how the piece is worn.
    Open([Vec<Part>; 2], WornOpen),
}

/// How an open necklace is worn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WornOpen {
    /// Both ends hang in front.
    Hanging,
    /// The last end goes through the ring in which the first ends, and hangs so far below it, as it is drawn.
    Through(Stated<Length>),
}

impl Joins {
    /// Two sides; nothing where both are empty.
    #[must_use]
    pub fn sides(left: Vec<Part>, right: Vec<Part>) -> Self {
        if left.is_empty() && right.is_empty() { Self::Nothing } else { Self::Sides([left, right]) }
    }
}

impl Closure {
    /// What the first ends hang from, outward.
    #[must_use]
    pub fn left(&self) -> &[Part] {
        match &self.joins {
            Joins::Nothing => &[],
            Joins::Sides([parts, _]) | Joins::BothEnds(parts) | Joins::Above(parts) | Joins::Open([parts, _], _) => {
                parts
            }
        }
    }

    /// What the last ends alone hang from, outward.
    #[must_use]
    pub fn right(&self) -> &[Part] {
        if let Joins::Sides([_, parts]) | Joins::Open([_, parts], _) = &self.joins { parts } else { &[] }
    }

    /// What the ends of a side hang from, the first ends' side 0: both ends of a loop from the same.
    #[must_use]
    pub fn onto(&self, side: usize) -> &[Part] {
        if side == 0 || self.loops() { self.left() } else { self.right() }
    }

    /// Whether the ends of a side are held by something, if by no more than what closes onto their own loop.
    #[must_use]
    pub fn holds(&self, side: usize) -> bool {
        matches!(self.joins, Joins::Sides(_)) || !self.onto(side).is_empty()
    }

    /// All its findings, the first ends' before the last ends'.
    pub fn parts(&self) -> impl Iterator<Item = &Part> + Clone {
        self.left().iter().chain(self.right())
    }

    /// Length that it adds: at its shortest and at its longest.
    #[must_use]
    pub fn length(&self) -> (Length, Length) {
        (self.parts().map(|part| part.least).sum(), self.parts().map(|part| part.reach).sum())
    }

    /// Whether both ends hang from the same findings, as a loop.
    #[must_use]
    pub const fn loops(&self) -> bool {
        matches!(self.joins, Joins::BothEnds(_))
    }

    /// How it is worn, where nothing joins its ends.
    #[must_use]
    pub const fn open(&self) -> Option<WornOpen> {
        if let Joins::Open(_, worn) = self.joins { Some(worn) } else { None }
    }

    /// Whether the last end of an open piece goes through the ring in which the first ends.
    #[must_use]
    pub const fn goes_through(&self) -> bool {
        matches!(self.joins, Joins::Open(_, WornOpen::Through(_)))
    }

    /// Whether its ends are tied to each other.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        matches!(self.joins, Joins::Nothing)
    }
}

/// A finding in the closure.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Part {
    /// The finding.
    pub finding: Index<Finding>,
    /// How much it lengthens the piece when closed as long as it goes.
    pub reach: Length,
    /// How much when closed as short as it goes.
    pub least: Length,
    /// How much of it is cut, where it is chain.
    pub cut: Option<Length>,
}

impl Design {
    /// The cone that covers the strands' ends on a side, and how far from the loop in the pin's eye its tip lies.
    #[must_use]
    pub fn tip(&self, side: &[Part]) -> Option<(Index<Finding>, Length)> {
        let [first, cone, ..] = side else { return None };
        let pin = self.findings[first.finding].pin().filter(|_| self.findings[cone.finding].cone().is_some())?;
        Some((cone.finding, *pin.eye() - pin.wire + cone.reach))
    }

    /// The cone that covers the strands' first ends, and how far it is from its tip to that of the cone over their last, of
    /// strands that are so long from loop to loop.
    #[must_use]
    pub fn tip_to_tip(&self, loop_to_loop: Length) -> Option<(Index<Finding>, Length)> {
        let (cone, first) = self.tip(self.closure.left())?;
        let (_, last) = self.tip(self.closure.right())?;
        Some((cone, loop_to_loop + first + last))
    }
}
