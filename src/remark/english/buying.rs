//! What is said about packs, prices and lots, in English.

use crate::english::{commas, list};
use crate::remark::said::buying::{Buying, Unit};
use crate::units::Length;

/// What was found.
pub fn headline(said: &Buying) -> String {
    match said {
        Buying::PackForSpare { what, packs, few, .. } => {
            format!("{}: the last of {packs} packs is bought for {few} spare alone", list(what))
        }
        Buying::PackForFew { what, packs, holds, over } => {
            format!("{}: the last of {packs} packs of {holds} is bought for {over} of its beads", list(what))
        }
        Buying::LastForSpare { what, packs, unit } => {
            format!("{what}: the last of {packs} {} is bought for spare alone", plural(*unit))
        }
        Buying::LastForFew { what, packs, unit, holds, over } => {
            format!("{what}: the last of {packs} {} of {holds} is bought for {over} of its beads", plural(*unit))
        }
        Buying::ScarceKind { what, kind, packs, fewer, .. } => {
            format!("{what}: {packs} are bought for {kind} alone, {fewer} would do for the others")
        }
        Buying::NoSpare { what, kinds } => {
            format!("{what}: what is bought leaves no spare of {}", commas(kinds))
        }
        Buying::LotTooSmall { what, .. } => {
            format!("{}: what is sold at a time does not hold a single one", list(what))
        }
        Buying::SpoolTooShort { what, piece, needed, sold } => format!(
            "{}: {} of {what} is needed in one piece, but it is sold {} long",
            piece.as_deref().unwrap_or("knots to try"),
            needed.at_least(1),
            sold.tenths()
        ),
        Buying::RetailFactor { wholesale, retail } => {
            format!("a shop pays {wholesale} × cost and sells for {retail} × cost")
        }
        Buying::PartLink { strand, is, link } => format!(
            "strand {strand}: {} is {:.1} links of {}, and a chain is cut between links",
            is.tenths(),
            *is / *link,
            link.hundredths()
        ),
    }
}

/// What to change.
pub fn help(said: &Buying) -> String {
    match said {
        Buying::PackForSpare { packs, need, .. } => format!(
            "{} {} the {need} that the piece takes: buy with care, or with less spare",
            packs - 1,
            if *packs == 2 { "pack holds" } else { "packs hold" }
        ),
        Buying::PackForFew { over, .. } => format!("string {over} fewer, and one pack less will do, without spare"),
        Buying::LastForSpare { .. } => "buy with care, or with less spare".to_owned(),
        Buying::LastForFew { over, .. } => format!("string {over} fewer, and one less will do, without spare"),
        Buying::ScarceKind { strung, enough, .. } => {
            format!("string {enough} of it instead of {strung}, or buy more of it by itself")
        }
        Buying::NoSpare { .. } => {
            "string with care, string fewer of them, or buy some by themselves in case one breaks".to_owned()
        }
        Buying::LotTooSmall { by_length: true, .. } => "sell it by the spool or by length".to_owned(),
        Buying::LotTooSmall { by_length: false, .. } => "check the size of the pack".to_owned(),
        Buying::SpoolTooShort { needed, .. } => format!("buy it at least {} long", needed.at_least(1)),
        Buying::RetailFactor { .. } => {
            "both factors multiply the cost, so that retail is the larger: keystone is `wholesale: 2, retail: 4`"
                .to_owned()
        }
        Buying::PartLink { is, link, .. } => whole_links(*is, *link),
    }
}

const fn plural(unit: Unit) -> &'static str {
    match unit {
        Unit::Bag => "bags",
        Unit::Strand => "strands",
    }
}

fn whole_links(is: Length, link: Length) -> String {
    let links = is / link;
    let of = |links: f64| Length::mm(links * link.value()).tenths();
    format!("write a length of whole links: {} or {}", of(links.floor()), of(links.ceil()))
}
