//! The proof, in English.

use std::fmt;

use crate::sheet::proof::{MOST_PAGES, TooManyPages};
use crate::sheet::said::{Join, LaneName, SideOf};
use crate::steps::english::posts;
use crate::trade::paper::Paper;
use crate::units::UnitStyle;

/// What to do with a page.
pub const MEASURE: &str = "Print at 100 %, which printers also call actual size, not fitted to the page. Then measure this: \
                           the squares tell whether all else has its size.";
/// What to do with strips that join.
pub const JOIN: &str = "Read a strand strip by strip; what is pale is shown again on the strip before or after. Or cut the \
                        strips out and tape each to the next, cut edge on left line: the strand, whole, to lay the work on.";
/// What is printed in a square below its size.
pub const EACH_SIDE: &str = "each side";
/// What stands in the place of a drawing that has no room.
pub const TOO_LARGE: &str = "too large to be drawn here: see the strands";

/// The title of a page.
pub fn actual_size(title: &str) -> String {
    format!("{title}, actual size")
}

/// What is laid in a lane.
pub fn lane(lane: LaneName<'_>, units: UnitStyle) -> String {
    match lane {
        LaneName::Strand { name, finished, between, slides } => {
            let between = posts::between(between);
            let rest = if slides { "; beads where they come to rest" } else { "" };
            format!("{name}: finished {} from {between}{rest}", units.ruler(finished))
        }
        LaneName::Side(side, longest) => {
            let of = match side {
                SideOf::Only => "",
                SideOf::First => " at the first ends",
                SideOf::Last => " at the last ends",
            };
            format!("Closure{of}: {} at its longest, from the strands outward", units.ruler(longest))
        }
    }
}

/// A strip of a lane, by its number.
pub fn strip(number: usize, lane: &str) -> String {
    format!("Strip {number} · {lane}")
}

/// How a strip joins others.
pub fn join(join: Join) -> String {
    match join {
        Join::Before(strip) => format!("strip {strip} ends here"),
        Join::After(strip) => format!("cut here; lay on the left line of strip {strip}"),
        Join::Above(page) => format!("page {page} ends at the upper line"),
        Join::Below(page) => format!("cut at the lower line; lay it on the upper line of page {page}"),
    }
}

impl TooManyPages {
    /// What to change.
    #[must_use]
    pub fn help(&self) -> &'static str {
        if self.paper == Paper::A3 {
            "a pattern of fewer or shorter strands has a proof; `festoon sheet` draws pieces of any length"
        } else {
            "ask for larger paper, as with --paper a3; `festoon sheet` draws pieces of any length"
        }
    }
}

impl fmt::Display for TooManyPages {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (pages, paper) = (self.pages, self.paper.word());
        write!(f, "at actual size the strands would take {pages} pages of {paper}, more than {MOST_PAGES}")
    }
}
