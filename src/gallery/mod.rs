//! A gallery: static pages that show every pattern of a folder and open without a server.
//!
//! An [`Exhibit`] is what the pages say of one pattern. [`index`] and [`page`] write the HTML and
//! [`contact`] the printed sheet of small figures. The pages ask nothing of any other computer: one
//! style sheet and one script stand inside, pictures and fonts lie beside them.

mod contact;
mod english;
mod entry;
mod frame;
mod index;
mod page;

pub use contact::{FIGURES, contact};
pub use entry::{Exhibit, Shot};
pub use frame::address;
pub use index::index;
pub use page::page;

/// The style sheet of all pages.
const STYLE: &str = include_str!("style.css");
/// The script of the index.
const SCRIPT: &str = include_str!("search.js");
