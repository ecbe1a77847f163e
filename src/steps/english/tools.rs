//! Tools, in words.

use crate::design::Design;
use crate::english::count;
use crate::steps::tools::Tool;
use crate::units::UnitStyle;

/// A tool's name, with how many where more than one is needed.
#[must_use]
pub fn tool(design: &Design, tool: Tool, units: UnitStyle) -> String {
    let name = match tool {
        Tool::Board => "beading board or cloth",
        Tool::Ruler => "ruler",
        Tool::EyeProtection => "eye protection",
        Tool::FlushCutters => "flush cutters",
        Tool::HardWireCutters => "memory wire cutters",
        Tool::Scissors => "sharp scissors",
        Tool::OwnNeedle(cord) => return format!("needle: the {} has its own", design.cords[cord].word()),
        Tool::Needle(Some(hole)) => return format!("beading needle for holes of {}", hole.hundredths()),
        Tool::Needle(None) => "beading needle",
        Tool::Tape => "tape for tags",
        Tool::Card(tall) => return format!("card {} tall", units.ruler(tall)),
        Tool::Stoppers(number) if number > 1 => return format!("{} or tape", count(number, "bead stopper")),
        Tool::Stoppers(_) => "bead stopper or tape",
        Tool::CrimpingPliers => "crimping pliers",
        Tool::MicroCrimpingPliers => "micro crimping pliers",
        Tool::RoundNosePliers => "round-nose pliers",
        Tool::ChainNosePliers(1) => "chain-nose pliers",
        Tool::ChainNosePliers(_) => "two pairs of chain-nose pliers",
        Tool::Awl => "awl or tweezers for knots",
        Tool::Glue => "jewellery glue",
    };
    name.to_owned()
}
