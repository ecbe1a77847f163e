//! What a tassel takes, and how its parts are proportioned.

use crate::trade::usual;
use crate::units::Length;

use super::entries::Index;
use super::form::Tassel;
use super::stock::Cord;

impl Tassel {
    /// The cord that is wound to it, and how much: a thread as long as the tassel for each that hangs, two from a
    /// turn, as much more as turns grow that lie on one another, and what binds its neck and makes its loop.
    #[must_use]
    pub fn takes(&self) -> Option<(Index<Cord>, Length)> {
        let (cord, _) = self.wound?;
        let turns = self.length * 2.0 * f64::from(self.turns()?);
        Some((cord, turns * usual::PILED + usual::BINDING))
    }

    /// How often cord is wound round a card as tall as one that is made with the piece.
    #[must_use]
    pub fn turns(&self) -> Option<u32> {
        self.wound.map(|(_, threads)| threads.div_ceil(2))
    }

    /// Half the thickness of the head, over which its threads fold.
    #[must_use]
    pub fn head(&self) -> Length {
        let broad = *self.breadth * (0.5 * usual::TASSEL_HEAD);
        broad.min(self.length * usual::TASSEL_HEAD_LENGTH)
    }

    /// How long the loop is by which it hangs.
    #[must_use]
    pub fn hanger(&self) -> Length {
        self.head() * usual::TASSEL_LOOP
    }

    /// From where its loop ends to the middle of its binding.
    #[must_use]
    pub fn neck(&self) -> Length {
        self.head() * usual::TASSEL_NECK
    }
}
