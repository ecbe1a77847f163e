//! How steps name beads, strands and steps.

use crate::design::{Cord, Design, Index, Strand};
use crate::english::{count, list};
use crate::pattern::CordKind;

/// `bead`, `2 beads`, after "the first" or "the last".
pub fn few(beads: u64) -> String {
    if beads == 1 { "bead".to_owned() } else { count(beads, "bead") }
}

/// The strand as a sentence names it: `the inner strand`; `the strand` where there is but one.
pub fn strand(design: &Design, strand: &Strand) -> String {
    if design.strands.len() == 1 { "the strand".to_owned() } else { format!("the {} strand", strand.name) }
}

/// What all strands hang on, in a word: `wire`; `cord` where there are several kinds.
pub fn cords(design: &Design) -> &'static str {
    let mut words: Vec<_> = design.strands.iter().map(|strand| design.cords[strand.cord].word()).collect();
    words.dedup();
    match words.as_slice() {
        [word] => word,
        _ => "cord",
    }
}

/// Several strands as a sentence names them: `the middle and outer strands`.
pub fn strands(design: &Design, strands: &[Index<Strand>]) -> String {
    match strands {
        [only] => strand(design, &design.strands[*only]),
        several => format!("the {} strands", names(design, several)),
    }
}

/// The names of strands: `inner, middle and outer`.
pub fn names(design: &Design, strands: &[Index<Strand>]) -> String {
    list(&strands.iter().map(|at| design.strands[*at].name.as_str()).collect::<Vec<_>>())
}

/// Steps by their numbers: `step 3`, `steps 3 and 4`, `steps 3 to 6`.
pub fn steps(first: usize, last: usize) -> String {
    match last.saturating_sub(first) {
        0 => format!("step {first}"),
        1 => format!("steps {first} and {last}"),
        _ => format!("steps {first} to {last}"),
    }
}

impl Cord {
    /// The word for it where it is worked with: `wire`, `silk`, `pin` of what stands for one; thick thread is `cord`, which
    /// passes without a needle (common practice, no source).
    #[must_use]
    pub fn word(&self) -> &'static str {
        match self.kind {
            _ if self.is_pin => "pin",
            CordKind::Thread if !self.is_thin() => "cord",
            kind => kind.word(),
        }
    }
}
