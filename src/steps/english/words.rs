//! Articles, lists, counts: number forms of English.

use crate::design::{Design, Index, Strand};
use crate::units::grouped;

pub use crate::remark::a;

/// `1 bead`, `2 beads`.
pub fn count(number: u64, noun: &str) -> String {
    let ending = if number == 1 { "" } else { "s" };
    format!("{} {noun}{ending}", grouped(number))
}

/// `bead`, `2 beads`, after "the first" or "the last".
pub fn few(beads: u64) -> String {
    if beads == 1 { "bead".to_owned() } else { count(beads, "bead") }
}

/// `inner`, `inner and outer`, `inner, middle and outer`.
pub fn list<T: AsRef<str>>(items: &[T]) -> String {
    match items {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [most @ .., last] => {
            let most: Vec<_> = most.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", most.join(", "), last.as_ref())
        }
    }
}

/// The strand as a sentence names it: `the inner strand`; `the strand` where there is but one.
pub fn strand(design: &Design, strand: &Strand) -> String {
    if design.strands.len() == 1 { "the strand".to_owned() } else { format!("the {} strand", strand.name) }
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
