//! What is said about how strands hang and lie, in English.

use std::fmt;

use crate::english::times;
use crate::remark::said::hang::{Hang, Room, Round, Unhung, Unrest, Way};
use crate::trade::english;
use crate::units::{Length, figures};

/// What breaks necklaces.
const SNAG: &str = "a snag, not weight, breaks most necklaces, and no margin covers that";

/// What was found.
pub fn headline(said: &Hang) -> String {
    match said {
        Hang::CannotHang { strand, why } => format!("strand {strand} cannot hang: {why}"),
        Hang::TooShort { what, through, is, takes, girth, base, basis, assumed } => format!(
            "{} is {} long {}; to lie on the skin it takes {}, for the neck above its base measures about {} round (base {}: {})",
            going(what),
            is.tenths(),
            if *through { "round to its ring" } else { "when closed" },
            takes.tenths(),
            girth.tenths(),
            base.tenths(),
            english::basis(*basis, *assumed)
        ),
        Hang::OverHead { strand, inside, head } => format!(
            "strand {strand} has no clasp and measures {} inside: it does not go over a head of {} (assumed)",
            inside.tenths(),
            head.tenths()
        ),
        Hang::StrandsCrowd { strands, on, share, closest, .. } => crowd(strands, *on, 100.0 * share, *closest),
        Hang::SeveralPlaces { strands: [lower, other] } => {
            format!(
                "on the neck strand {lower} hangs below {other}, which is no shorter: they may as well lie otherwise"
            )
        }
        Hang::Unsettled(unrest) => unsettled(*unrest),
        Hang::NotFlat { joined_by, rounds } => {
            format!("the rows that {joined_by} joins found no place flat on the board in {rounds} rounds; {ALONE}")
        }
        Hang::Restless(unrest) => restless(*unrest),
        Hang::HardlyRound { spare } => format!(
            "the piece hardly goes round the neck above its base, with {} to spare; it is not drawn there",
            spare.tenths()
        ),
        Hang::BareCord { strand, bare, share } => {
            format!("strand {strand} leaves {:.0} mm of bare cord, {:.0} % of its length", bare.value(), share * 100.0)
        }
        Hang::UnevenEnds { strand, first, last } => {
            format!("strand {strand} begins with {first} and ends with {last}")
        }
        Hang::NothingHolds { strand, .. } => format!("strand {strand}: nothing holds its groups in their places"),
        Hang::DropsCrowd { strands: [one, other], bodies: [body, beside], apart, deep } => format!(
            "strands {one} and {other} hang {} apart, and {body} and {beside} lie {} in one another",
            apart.tenths(),
            deep.tenths()
        ),
        Hang::WeakCord { strand, cord, load, strength, margin } => format!(
            "strand {strand} pulls with {} N at {cord}, which breaks at {:.1} N: {:.1} times, less than {margin}",
            figures(load.value(), 2),
            strength.value(),
            *strength / *load
        ),
        Hang::StrengthUnknown { cord, load, .. } => {
            let load = figures(load.value(), 2);
            format!("the strength of {cord} is not written, so its load of {load} N is not checked")
        }
    }
}

/// What to change.
pub fn help(said: &Hang) -> String {
    match said {
        Hang::CannotHang { why, .. } => unhung(*why).to_owned(),
        Hang::TooShort { what, through, is, takes, .. } => format!(
            "make {} at least {} longer, or {}",
            if matches!(what, Round::Twisted(_)) { "all strands" } else { "the strand" },
            (*takes - *is).at_least(1),
            if *through { "write a shorter `tail:`" } else { "add an extender" }
        ),
        Hang::OverHead { inside, head, .. } => format!(
            "make it at least {} longer, give it a clasp, or string it on elastic",
            (*head - *inside).at_least(1)
        ),
        Hang::StrandsCrowd { room, .. } => more(room),
        Hang::SeveralPlaces { .. } => "take their drops and how they lie on the neck as a sketch; lengths that differ more, or \
            ends held apart, give each strand its place"
            .to_owned(),
        Hang::Unsettled(_) => {
            "take where strands touch as a sketch; ends held apart, or lengths that differ more, give them room"
                .to_owned()
        }
        Hang::NotFlat { .. } => {
            "take the drawing as it hangs as a sketch: rows joined so often do not bend in the plane in which they lie, \
             but stand round the neck as a band, and are laid so where it shows them worn"
                .to_owned()
        }
        Hang::Restless(unrest) => on_the_neck(*unrest).to_owned(),
        Hang::HardlyRound { .. } => "make it a centimetre longer, or try on how it sits".to_owned(),
        Hang::BareCord { .. } => {
            "add beads or spaces, shorten the strand, or let the beads slide with `settle: slide`".to_owned()
        }
        Hang::UnevenEnds { first, .. } => format!("if both ends should match, add {first} after the last repeat"),
        Hang::NothingHolds { hole, .. } => {
            format!("close each group between crimps or knots, or use beads with a hole of at most {}", hole.at_most(2))
        }
        Hang::DropsCrowd { apart, deep, .. } => {
            format!("use loops {} apart, smaller beads, or strands of other lengths", (*apart + *deep).at_least(1))
        }
        Hang::WeakCord { load, margin, .. } => {
            format!("use a cord that bears {:.1} N; {SNAG}", margin * load.value())
        }
        Hang::StrengthUnknown { load, margin, .. } => {
            let least = (margin * load.value() * 10.0).ceil() / 10.0;
            format!("write `strength:` from the spool; it should be {least:.1} N or more; {SNAG}")
        }
    }
}

impl fmt::Display for Unhung {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooShort(by) => write!(f, "it is too short for the gap by {by:.2} mm"),
            Self::TooStiff(by) => write!(f, "one piece is too long by {by:.2} mm to be closed by the others"),
            Self::Weightless => f.write_str("nothing on it has any weight"),
            Self::Slack => f.write_str("weightless pieces lie slack at its lowest point"),
            Self::Unbalanced(miss) => write!(f, "no balance was found: the ends stay {miss:.2e} mm apart"),
            Self::Unsettled => f.write_str("its sliding beads find no place of rest"),
        }
    }
}

impl std::error::Error for Unhung {}

const fn unhung(why: Unhung) -> &'static str {
    match why {
        Unhung::TooShort(_) | Unhung::TooStiff(_) => "make the strand longer",
        Unhung::Weightless | Unhung::Slack => "give the cord or the beads a mass",
        Unhung::Unbalanced(_) | Unhung::Unsettled => "this is a fault of festoon: please report it with the pattern",
    }
}

fn going(what: &Round) -> String {
    match what {
        Round::Strand(name) => format!("strand {name}"),
        Round::Twisted(turns) => format!("twisted {}, the piece", times(*turns)),
    }
}

/// Strands that lie on one another or touch, along so many percent.
fn crowd([one, other]: &[String; 2], on: bool, share: f64, [across, below]: [Length; 2]) -> String {
    let how = if on { "lie on one another" } else { "touch" };
    if share > 99.5 {
        return format!("strands {one} and {other} {how} all along");
    }
    let (across, below) = (across.value(), below.value());
    format!(
        "strands {one} and {other} {how} along {share:.0} % of their length, closest {across:.0} mm across and {below:.0} mm \
         below the left end"
    )
}

fn more(room: &Room) -> String {
    match room {
        Room::None => {
            "string smaller beads, or allow it where they are meant to touch: `allow: [strands-crowd]`".to_owned()
        }
        Room::Either(ways) => ways.iter().map(way).collect::<Vec<_>>().join(", or "),
        Room::Both([one, other]) => format!("{}, and {}", way(one), way(other)),
    }
}

fn way(way: &Way) -> String {
    match way {
        Way::Longer(strand, by) => format!("make strand {strand} {:.0} mm longer or more", by.value()),
        Way::WiderBars(apart) => {
            format!("hold them apart with bars or clasps whose holes or loops are {} apart or more", apart.tenths())
        }
        Way::EndBar(apart) => {
            format!("hold their ends apart with an end bar whose loops are {} apart or more", apart.tenths())
        }
    }
}

const ALONE: &str = "each is drawn as it hangs alone";

fn unsettled(unrest: Unrest) -> String {
    match unrest {
        Unrest::TooMany => {
            format!("the strands touch, but have too many parts together to be laid side by side; {ALONE}")
        }
        Unrest::Lost { rounds } => {
            format!("the strands push one another about and found no place in {rounds} rounds; {ALONE}")
        }
        Unrest::Short { by } => format!("the strands press cord along itself: {}", shorter(by)),
        Unrest::Left { rounds, .. } => {
            format!("the strands push one another about and {}", no_rest(rounds, unrest.beyond_rest()))
        }
    }
}

fn restless(unrest: Unrest) -> String {
    match unrest {
        Unrest::TooMany => {
            "on the neck so many strands are not laid side by side; the piece is not drawn there".to_owned()
        }
        Unrest::Lost { .. } => "on the neck no place was found for the piece; it is not drawn there".to_owned(),
        Unrest::Short { by } => format!("on the neck cord is pressed along itself: {}", shorter(by)),
        Unrest::Left { rounds, .. } => format!("on the neck the piece {}", no_rest(rounds, unrest.beyond_rest())),
    }
}

fn shorter(by: f64) -> String {
    format!("a strand is drawn {} mm shorter than it is, with beads in one another", figures(by, 2))
}

/// What is left of those that came to no rest: what of it is more than at rest.
fn no_rest(rounds: u32, [overlap, moves]: [Option<f64>; 2]) -> String {
    let lies = overlap.map(|overlap| format!("outlines lie {} mm in one another", figures(overlap, 2)));
    let goes = moves.map(|moves| format!("a round still moves it by {} mm", figures(moves, 2)));
    let left: Vec<String> = lies.into_iter().chain(goes).collect();
    format!("came to no rest in {rounds} rounds: {}", left.join(", and "))
}

const fn on_the_neck(unrest: Unrest) -> &'static str {
    match unrest {
        Unrest::TooMany => "try on how far it hangs",
        Unrest::Lost { .. } => {
            "check that the neck's measure and the strands' lengths go together; try on how far it hangs"
        }
        Unrest::Short { .. } | Unrest::Left { .. } => {
            "take the figure on the neck, and how far below it strands hang, as a sketch"
        }
    }
}
