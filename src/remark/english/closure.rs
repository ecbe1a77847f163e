//! What is said about what closes a piece, as it is written, in English.

use crate::remark::said::closure::Closure;

/// What was found.
pub fn headline(said: &Closure) -> String {
    let plain = match said {
        Closure::NothingBelow { key } => {
            return format!("an earring hangs from its `left:`, and `{key}:` joins nothing below");
        }
        Closure::BothEndsApart { kind } => return format!("the ends of a {kind} do not meet in `both ends`"),
        Closure::Open { kind } => return format!("only a necklace is worn open, and this piece is of kind {kind}"),
        Closure::NoLength { id } => return format!("how much of the chain `{id}`?"),
        Closure::Length { id } => return format!("`{id}` is no chain and takes no length here"),
        Closure::BothEndsAlone => "`both ends` stands alone in a closure",
        Closure::BothEndsOfOne => "`both ends` meet of one strand alone, which is strung bead to bead and tied",
        Closure::Tail => "a `tail:` hangs where one end goes through the other",
        Closure::ThroughOfOne => "one strand alone goes through its own ring",
        Closure::NoRing => "the last end goes through what the first one ends in, and that is no ring",
    };
    plain.to_owned()
}

/// What to change.
pub fn help(said: &Closure) -> String {
    let plain = match said {
        Closure::NoLength { id } => return format!("write `{{ {id}: 60 mm }}`"),
        Closure::Length { id } => return format!("write just `{id}`"),
        Closure::NothingBelow { .. } => "write what it hangs from in `left:`, and what hangs at its foot as a dangle",
        Closure::BothEndsAlone | Closure::BothEndsApart { .. } => {
            "write `each side`, `left` and `right` for what has two sides"
        }
        Closure::BothEndsOfOne => "write one strand with `ends: knot` and no `length:`, or another closure",
        Closure::Tail => "write `open: through`, or take `tail:` out",
        Closure::ThroughOfOne => "write one strand, or `open: hanging`",
        Closure::Open { .. } => "take `open:` out, or write `kind: necklace`",
        Closure::NoRing => "write a jump ring or toggle ring as the last of `left:`, or `open: hanging`",
    };
    plain.to_owned()
}
