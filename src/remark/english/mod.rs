//! Remarks in English.

mod article;
mod bar;
mod buying;
mod closing;
mod closure;
mod fit;
mod hang;
mod hidden;
mod language;
mod naming;
mod own;
mod quantity;
mod report;
mod ring;
mod rows;
mod selling;
mod shaping;
mod shelves;
mod slip;
mod spot;
mod stash;
mod strand;
mod turns;
mod variant;
mod wanted;
mod wearing;
mod winding;
mod words;

use super::{Edition, Said};

pub use report::{READ, ROWS, left_off, more, part, place, summary};
pub use words::meant_or;

/// What was found in one size or colourway alone.
pub fn in_edition(edition: &Edition, headline: &str) -> String {
    match edition {
        Edition::Size(name) => format!("size {name}: {headline}"),
        Edition::Colourway(name) => format!("colourway {name}: {headline}"),
    }
}

/// What was found, with its number: stands alone.
pub fn headline(said: &Said) -> String {
    match said {
        Said::Language(said) => language::headline(said),
        Said::Shelving(said) => shelves::headline(said),
        Said::Naming(said) => naming::headline(said),
        Said::Article(said) => article::headline(said),
        Said::Selling(said) => selling::headline(said),
        Said::Shaping(said) => shaping::headline(said),
        Said::Closure(said) => closure::headline(said),
        Said::Strand(said) => strand::headline(said),
        Said::Misplaced(said) => spot::headline(said),
        Said::Rows(said) => rows::headline(said),
        Said::Turns(said) => turns::headline(said),
        Said::Variant(said) => variant::headline(said),
        Said::Hang(said) => hang::headline(said),
        Said::Buying(said) => buying::headline(said),
        Said::Stash(said) => stash::headline(said),
        Said::Closing(said) => closing::headline(said),
        Said::Ring(said) => ring::headline(said),
        Said::Bar(said) => bar::headline(said),
        Said::Winding(said) => winding::headline(said),
        Said::Fit(said) => fit::headline(said),
        Said::Hidden(said) => hidden::headline(said),
        Said::Wearing(said) => wearing::headline(said),
        Said::Own(said) => own::headline(said),
    }
}

/// What to change; may be empty.
pub fn help(said: &Said) -> String {
    match said {
        Said::Language(said) => language::help(said),
        Said::Shelving(said) => shelves::help(said),
        Said::Naming(said) => naming::help(said),
        Said::Article(said) => article::help(said),
        Said::Selling(said) => selling::help(said),
        Said::Shaping(said) => shaping::help(said),
        Said::Closure(said) => closure::help(said),
        Said::Strand(said) => strand::help(said),
        Said::Misplaced(said) => spot::help(said),
        Said::Rows(said) => rows::help(said),
        Said::Turns(said) => turns::help(said),
        Said::Variant(said) => variant::help(said),
        Said::Hang(said) => hang::help(said),
        Said::Buying(said) => buying::help(said),
        Said::Stash(said) => stash::help(said),
        Said::Closing(said) => closing::help(said),
        Said::Ring(said) => ring::help(said),
        Said::Bar(said) => bar::help(said),
        Said::Winding(said) => winding::help(said),
        Said::Fit(said) => fit::help(said),
        Said::Hidden(said) => hidden::help(said),
        Said::Wearing(said) => wearing::help(said),
        Said::Own(_) => own::help(),
    }
}
