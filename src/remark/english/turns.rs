//! What is said about how often a piece goes round or is twisted, as it is written, and about memory wire, in English.

use crate::english::times;
use crate::remark::said::turns::{NoTwist, NoWrap, Sprung, Turns};

/// What was found.
pub fn headline(said: &Turns) -> String {
    match said {
        Turns::Wrap(why) => no_wrap(why),
        Turns::Twist(why) => no_twist(why),
        Turns::Sprung { strand, why } => format!("strand {strand}: {}", sprung(why)),
    }
}

/// What to change.
pub fn help(said: &Turns) -> String {
    match said {
        Turns::Wrap(why) => wrap_help(why).to_owned(),
        Turns::Twist(why) => twist_help(why),
        Turns::Sprung { .. } => {
            "take it out: memory wire goes round as `wraps:` says, and ends in turned loops or glued cord ends"
                .to_owned()
        }
    }
}

fn no_wrap(why: &NoWrap) -> String {
    match why {
        NoWrap::Earrings => "earrings hang and go round nothing".to_owned(),
        NoWrap::Strap => "a strap hangs and goes round nothing".to_owned(),
        NoWrap::Several => "one strand alone is wound round and round".to_owned(),
        NoWrap::Clasp => "memory wire closes by itself, and takes no clasp".to_owned(),
        NoWrap::Open => "what is wound is closed across its turns".to_owned(),
        NoWrap::Part(wraps) => format!("what closes goes round whole times, not {wraps}"),
    }
}

const fn wrap_help(why: &NoWrap) -> &'static str {
    match why {
        NoWrap::Earrings | NoWrap::Strap => "take `wraps:` out, and string it on other cord than memory wire",
        NoWrap::Several => "write one strand, or a piece of its own for each",
        NoWrap::Clasp => "take `closure:` out: its ends are turned into loops, or glued into cord ends",
        NoWrap::Open => "close it with a clasp, or tie it: leave `open:` and `both ends:` out",
        NoWrap::Part(_) => "write a whole number",
    }
}

fn no_twist(why: &NoTwist) -> String {
    match why {
        NoTwist::Kind(kind) => {
            format!("strands are twisted that close round their wearer, and this piece is of kind {kind}")
        }
        NoTwist::Alone => "one strand alone has none to be twisted with".to_owned(),
        NoTwist::Sprung => "memory wire keeps a round of its own, and is not twisted".to_owned(),
        NoTwist::Ungathered => {
            "twisted strands are gathered at both ends, and closed so that they stay twisted".to_owned()
        }
        NoTwist::Part(turns) => {
            format!("an end that is turned and then joined is turned by whole or half turns, not {turns}")
        }
        NoTwist::HeldApart(what) => {
            format!("{what} holds the strands apart, and they are not twisted round one another")
        }
        NoTwist::Locked { turns, .. } => format!("turned {}, the strands lock before the last turn", times(*turns)),
    }
}

fn twist_help(why: &NoTwist) -> String {
    let plain = match why {
        NoTwist::Locked { most: Some(most), .. } => {
            return format!("turn them at most {}, or make them longer", times(*most));
        }
        NoTwist::Kind(_) => "take `twist:` out, or write `kind: necklace`, `bracelet` or `anklet`",
        NoTwist::Alone => "write two strands or more, or take `twist:` out",
        NoTwist::Sprung => "string it on other cord, or take `twist:` out",
        NoTwist::Ungathered => {
            "write in `closure:` what gathers the ends on `each side`, such as an eye pin or ring, or take `twist:` out"
        }
        NoTwist::Part(_) => "write a whole number, or one and a half: 3 or 3 1/2",
        NoTwist::HeldApart(_) => "gather each side in one ring, eye or cone, or take `twist:` out",
        NoTwist::Locked { .. } => "make the strands longer, or string smaller beads",
    };
    plain.to_owned()
}

fn sprung(why: &Sprung) -> String {
    match why {
        Sprung::Length => "the length of memory wire follows from its beads".to_owned(),
        Sprung::Settle(settle) => format!("on memory wire beads lie end to end, and do not {settle}"),
        Sprung::Knots => "memory wire is too hard to knot".to_owned(),
        Sprung::Held => "memory wire is too hard to knot or to crimp".to_owned(),
        Sprung::Doubled => "memory wire is too hard to fold".to_owned(),
        Sprung::End(id) => format!("`{id}` does not hold memory wire, which is too hard to tie or crimp"),
    }
}
