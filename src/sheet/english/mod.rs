//! What a sheet says, in English. A second language is a second module like this one: what decides has no words, and
//! nothing here decides what is said. Lengths are printed in the units that a function is given; what a step says too,
//! [`crate::steps::english`] says here.

mod check;
mod fact;
mod figure;
mod heading;
mod label;
mod neck;
mod sizes;
pub mod spec;
mod strand;

pub use check::{CURVED, bare, not_as_it_is, tolerances};
pub use fact::{
    CALLED, along, called, fact, finished, inside, kind, length, length_fact, range, rounding, twist, worn_round, wraps,
};
pub use figure::{CHECK_PRINT, ENDS, MEETING, about, beside_bar, figure, scaled, seen_as};
pub use heading::{heading, numbered, page, page_title, section};
pub use label::{BEFORE_TWISTING, STRANDS_TABLE, abreast, bare_cord, hangs, left_out, more, straight, twisted};
pub use neck::on_neck;
pub use strand::{in_key, reading, strung_on, to_cut};
