//! What a picture shows, in words, for those who cannot see it and for the line below it.

use crate::design::Design;
use crate::english::list;
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::sheet::finished;

/// A text alternative: kind, strands, beads and their colours' names, charms and tassels, length.
#[must_use]
pub fn alternative(piece: &Piece) -> String {
    let design = &piece.design;
    let title = design.heading.whole_title();
    let beads = design.beads.iter().map(|bead| bead.name.as_str());
    let charms = design.findings.iter().filter(|finding| finding.has_loop()).map(|finding| finding.name.as_str());
    let all: Vec<_> = beads.chain(charms).collect();
    let of = if all.is_empty() { String::new() } else { format!(", with {}", list(&all)) };
    format!("{title}: {}{of}; {}.", subject(design), length(piece))
}

/// What a design is: `a necklace of 3 strands`.
#[must_use]
pub fn subject(design: &Design) -> String {
    let strands = match design.strands.len() {
        1 => String::new(),
        many if design.twist.is_some() => format!(" of {many} strands twisted together"),
        many => format!(" of {many} strands"),
    };
    let open = design.closure.open().map(|_| "an open necklace".to_owned());
    open.unwrap_or_else(|| kind(design.heading.kind)) + &strands
}

fn kind(kind: Kind) -> String {
    match kind {
        Kind::Earrings => "a pair of earrings".to_owned(),
        Kind::Anklet => "an anklet".to_owned(),
        other => format!("a {other}"),
    }
}

/// How long the piece is, in its units.
#[must_use]
pub fn length(piece: &Piece) -> String {
    format!("{} long", finished(piece, piece.telling.units))
}
