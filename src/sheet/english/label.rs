//! What is printed in drawings, in English.

use crate::design::Design;
use crate::english::{commas, count, often, times};
use crate::sheet::said::{BareCord, HangsDown, LeftOut};
use crate::steps::english::chart;
use crate::units::{Length, UnitStyle};

/// A length of bare cord in the words of the word chart, then ever shorter.
pub fn bare_cord(bare: BareCord, units: UnitStyle) -> Vec<String> {
    match bare {
        BareCord::About(length) => {
            let told = units.ruler(length);
            vec![format!("about {told} bare"), format!("about {told}"), told]
        }
        BareCord::Links(links) => vec![chart::links_bare(links), count(links, "link")],
        BareCord::Fixed(length) => {
            let told = units.fine(length);
            vec![format!("{told} bare"), told]
        }
    }
}

/// The marks of a bead cap before the bead that it hugs and after it, with its number where there are several sorts: `(`, `)`.
pub fn cap(which: usize, sorts: usize) -> [String; 2] {
    let number = if sorts > 1 { (which + 1).to_string() } else { String::new() };
    [format!("({number}"), format!("{number})")]
}

/// `185 more, 15 7⁄16 in (392 mm)`: beads of a run that are left out, then how many alone.
pub fn more_beads(beads: u32, length: Length, units: UnitStyle) -> Vec<String> {
    vec![format!("{beads} more, {}", units.ruler(length)), format!("{beads} more")]
}

/// Repeats that are left out.
pub fn left_out(design: &Design, said: &LeftOut, units: UnitStyle) -> String {
    let LeftOut { times, list, backwards, beads, length } = said;
    let again = often(*times as u64);
    let (list, length) = (chart::row(design, list, units).to_string(), units.ruler(*length));
    let list = if *backwards { format!("{list}, backwards") } else { list };
    format!("… the same {again} more ({list}): {beads} beads, {length}, not drawn …")
}

/// How far down something hangs.
pub fn hangs(hangs: HangsDown, units: UnitStyle) -> String {
    match hangs {
        HangsDown::Strand(drop) => format!("drop {}", units.ruler(drop)),
        HangsDown::Dangles(drop) => format!("with its dangles {}", units.ruler(drop)),
        HangsDown::Meeting(drop) => format!("with what hangs from it {}", units.ruler(drop)),
    }
}

/// How often strands are twisted.
pub fn twisted(turns: f64) -> String {
    format!("twisted {}", times(turns))
}

/// What stands above the lengths of strands that are twisted.
pub const BEFORE_TWISTING: &str = "before twisting:";

/// A strand laid straight, with its length.
pub fn straight(name: &str, length: Length, is_twisted: bool, units: UnitStyle) -> String {
    let before = if is_twisted { ", before twisting" } else { "" };
    format!("{name}, {}{before}", units.ruler(length))
}

/// Strands of one length laid straight.
pub fn abreast(names: &[&str], length: Length, units: UnitStyle) -> String {
    format!("{}, each {}", commas(names), units.ruler(length))
}

/// The columns of a list of strands.
pub const STRANDS_TABLE: [&str; 3] = ["strand", "finished", "hangs"];
