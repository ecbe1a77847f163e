//! What a sheet says, in English. A second language is a second module like this one: what decides has no words, and
//! nothing here decides what is said. Lengths are printed in the units that a function is given; what a step says too,
//! [`crate::steps::english`] says here.

mod fact;
mod figure;
mod heading;
mod neck;
mod sizes;
pub mod spec;

pub use fact::{
    CALLED, along, called, fact, finished, inside, kind, length, length_fact, range, rounding, twist, worn_round, wraps,
};
pub use figure::{CHECK_PRINT, ENDS, MEETING, about, beside_bar, figure, scaled, seen_as};
pub use heading::{heading, numbered, page, page_title, section};
pub use neck::on_neck;
