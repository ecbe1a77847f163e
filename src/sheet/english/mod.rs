//! What a sheet says, in English. A second language is a second module like this one: what decides has no words, and
//! nothing here decides what is said, but how. Lengths are printed in the units that a function is given; what a step says too,
//! [`crate::steps::english`] says here.

mod bags;
mod buying;
mod check;
mod cutting;
mod fact;
mod figure;
mod heading;
mod label;
mod legend;
mod making;
mod neck;
mod proof;
mod sizes;
pub mod spec;
mod strand;

pub use bags::{bag, labels_shown, labels_title};
pub use buying::{NEEDS_TABLE, bought_in, costs, price_parts, sets, spare, suggestion};
pub use check::{CURVED, bare, not_as_it_is, tolerances};
pub use cutting::{CUTTING_TABLE, LEFT_OVER, listed_cut, made_up, only_cut, plan_note};
pub use fact::{CALLED, along, fact, finished, kind, length, named, rounding};
pub use figure::{CHECK_LENGTHS, CHECK_PRINT, ENDS, about, bar_length, beside_bar, figure, scaled, seen_as};
pub use heading::{heading, numbered, page, page_title, section};
pub use label::{
    BEFORE_TWISTING, STRANDS_TABLE, abreast, bare_cord, cap, hangs, left_out, more_beads, straight, twisted,
};
pub use legend::{colourway, names};
pub use making::drawn_at;
pub use neck::on_neck;
pub use proof::{EACH_SIDE, JOIN, MEASURE, TOO_LARGE, actual_size, join, lane, strip};
pub use sizes::{NO_FIT, as_here, called, column, compared, of_steps, other_packs, positions, same_in_all};
pub use strand::{cap_in_key, in_key, reading, strung_on, to_cut};
