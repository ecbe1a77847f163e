//! What a sheet says, as data: which sentence it is, with the names, counts and lengths in it. Whatever decides what is
//! said makes one of these; the words are in [`super::english`].

mod cutting;
mod figure;
mod heading;
mod label;
mod neck;
mod proof;
mod sizes;
mod strand;

pub use cutting::{ListedCut, MadeUp, PlanNote};
pub use figure::{Figure, Scaled, SeenAs};
pub use heading::{Heading, Proved, Section};
pub use label::{BareCord, Hangs, LeftOut};
pub use neck::{Ends, Hooked, Neck, OnNeck};
pub use proof::{Join, Lane, SideOf};
pub use sizes::{Compared, Measured};
pub use strand::{Bare, InKey, NotAsItIs, Others, Reading, Remedy, Takes, ToCut, Tolerances};
