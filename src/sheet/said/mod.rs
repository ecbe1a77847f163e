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

pub use cutting::{CutOrder, ListedCut, MadeUp, PlanNote};
pub use figure::{Alternative, FooterScale, SeenAs};
pub use heading::{Proved, SectionKind, Subheading};
pub use label::{BareCord, HangsDown, LeftOut};
pub use neck::{EndsInFront, Hooked, Neck, OnNeck};
pub use proof::{Join, LaneName, SideOf};
pub use sizes::{Compared, LengthOf};
pub use strand::{
    Bare, Change, ChangePlace, InKey, NotAsItIs, Others, Reading, RulerStart, Takes, ToCut, Tolerances, WhenOff,
};
