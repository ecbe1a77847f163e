//! What the language is told by, in English: its bounds, in the schema and in the language reference, and what a text may be
//! made of.

use super::bounds::{BOUNDS, Bound, ELSEWHERE, MOST_FINDINGS, MOST_IN_VARIANTS, MOST_LINKS, MOST_STRUNG, MOST_WRITTEN};

/// What a pattern's text is made of.
pub const MADE_OF: &str = "a value, a list or a group of keys";

/// What is said of a key, with its bound.
pub fn bounded(told: &str, bound: &Bound) -> String {
    format!("{told} Bound: {}.", bound.words()).trim().to_owned()
}

/// What the language reference calls a group of keys.
fn group(record: &str) -> &str {
    match record {
        "Pattern" => "the pattern",
        "Shelf" => "a shelf",
        "Bead" => "`beads`",
        "Cord" => "`cords`",
        "Finding" => "`findings`",
        "Assorted" => "`assorted`",
        "Sold" => "`sold`",
        "Strand" => "`strands`",
        "Closure" => "`closure`",
        "Wear" => "`wear`",
        "Size" => "`sizes`",
        "Recolour" => "`colourways`",
        "Price" => "`price`",
        "Expect" => "`expect`",
        "ExpectStrand" => "`expect: strands`",
        ELSEWHERE => ELSEWHERE,
        _ => "a bead list",
    }
}

/// The bounds as a table in Markdown, for the language reference.
#[must_use]
pub fn reference() -> String {
    let row = |bound: &Bound| format!("| {} | {} | {} |\n", group(bound.record), bound.keys.join(", "), bound.words());
    let whole = [
        ("beads, knots and spaces of a piece", MOST_STRUNG),
        ("findings strung among its beads", MOST_FINDINGS),
        ("beads, knots and spaces over the piece and all its sizes and colourways", MOST_IN_VARIANTS),
        ("entries of its bead lists, and beads in random and fading rows", MOST_WRITTEN),
        ("links of one length of chain", MOST_LINKS),
    ];
    let whole = whole.map(|(what, most)| format!("| the piece | {what} | at most {most} |\n"));
    let head = "| where | key | bound |\n| --- | --- | --- |\n".to_owned();
    head + &BOUNDS.iter().map(row).collect::<String>() + &whole.concat()
}
