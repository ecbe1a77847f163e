//! Cautions, in words. A sheet never says that a piece complies with a rule.

use crate::steps::cautions::Caution;

/// A caution in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Warned {
    /// What it is about, in a word or two.
    pub title: &'static str,
    /// What to do.
    pub text: &'static str,
}

/// What a buyer of a piece for a child is to know first, in short.
pub const FOR_A_CHILD: Warned = Warned {
    title: "For a child",
    text: "Not for a child under three: small parts can choke. To be worn only while somebody watches. Read “Before you \
           start” at the steps before you buy or make it.",
};

/// Puts a caution into words.
#[must_use]
pub const fn caution(caution: Caution) -> Warned {
    let (title, text) = match caution {
        Caution::Eyes => (
            "Eyes",
            "Cut ends fly. Wear eye protection, hold the end or cut into a bag, and point it down and away from faces.",
        ),
        Caution::HardWire => (
            "Hard wire",
            "Memory wire springs back and its cut ends are sharp. Keep hold of both ends, cut it with cutters made for it, and \
           leave no end bare.",
        ),
        Caution::Children => (
            "Children",
            "Beads and findings are small parts and can choke. This piece is not for young children, and no bead \
           jewellery is for a baby to wear or to chew.",
        ),
        Caution::LongCord => (
            "Round the neck",
            "What hangs round the neck can catch and may not come open. Take the piece off for sleep, sport and machines, \
           and keep it out of the reach of children under three.",
        ),
        Caution::Breakaway => (
            "Round the neck",
            "What hangs round the neck can catch. What fastens it should let go by itself when pulled: try that before each \
           wearing. Take the piece off for sleep, sport and machines, and keep it out of the reach of children under three.",
        ),
        Caution::ForAChild => (
            "For a child",
            "Beads and findings are small parts and can choke: this piece is not for a child under three, and no bead \
             jewellery is for a baby to wear or to chew. Use no magnetic clasp: magnets that are swallowed do grave harm. Rules \
             for what children wear are stricter, on small parts, cords, \
             lead, cadmium and nickel. Have the finished piece tested before you sell or give it, and let the child wear it \
             only while you watch, never for sleep or play.",
        ),
        Caution::Metals => (
            "Metals",
            "Metal against the skin can hold nickel, lead or cadmium, and nickel gives some people a rash. Ask the \
           supplier in writing what each part is made of, and tell the wearer.",
        ),
        Caution::Glass => (
            "Glass and crystal",
            "Glass and crystal can hold lead, and a broken bead is sharp. Ask the supplier, and throw chipped beads away.",
        ),
        Caution::Glue => ("Glue", "Follow the label of the glue, and work in fresh air."),
        Caution::Elastic => (
            "Elastic",
            "Elastic ages and snaps. Look at it now and then, and string the piece anew before it gives way.",
        ),
        Caution::Rules => (
            "Before you sell",
            "This sheet does not say that a piece complies with any rule. Rules for jewellery differ from place to \
           place: look up those of yours, and ask a qualified person.",
        ),
    };
    Warned { title, text }
}
