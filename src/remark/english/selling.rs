//! What is said about how things are sold, as it is written, in English.

use crate::english::list;
use crate::remark::said::selling::Selling;

/// What was found.
pub fn headline(said: &Selling) -> String {
    match said {
        Selling::OneKind { by } => format!("sold by {by}, which holds several kinds"),
        Selling::SeveralKinds { by } => format!("sold by {by}, which is no way to sell several kinds together"),
        Selling::Turns => "only memory wire with its `coil:` and a `count:` is sold by turns".to_owned(),
        Selling::NoAmount { by, .. } | Selling::NoMixAmount { by } => format!("sold by {by}, but not how much"),
        Selling::HoldsNothing { id } => format!("`{id}` holds no beads"),
        Selling::Twice { id, by_itself, within } => format!("the bead `{id}` is sold {}", ways(*by_itself, within)),
        Selling::ComesWithOther { id, with } => {
            format!("`{id}` comes with `{with}`, which is not bought by the piece itself")
        }
        Selling::ComesAndSold { id, with } => format!("`{id}` comes with `{with}` and is sold by itself too"),
    }
}

/// What to change.
pub fn help(said: &Selling) -> String {
    let plain = match said {
        Selling::NoAmount { needs, .. } => return format!("add `{needs}`"),
        Selling::OneKind { .. } => "take it out, and write a group under `assorted:` with `sold:` and what it `holds:`",
        Selling::SeveralKinds { .. } => "write `by: graduated strand` or `by: mix`",
        Selling::Turns => "write `by: length`, or of memory wire `count: 12`",
        Selling::NoMixAmount { .. } => {
            "add how many beads a bag holds, `count: 200`, or how much, `mass: 50 g`; one of the two"
        }
        Selling::HoldsNothing { .. } => "write how many of each, like `holds: { small: 40, large: 20 }`",
        Selling::Twice { .. } => "say one way to buy it, and take the other out",
        Selling::ComesWithOther { .. } => "take it out",
        Selling::ComesAndSold { .. } => "take one of the two out",
    };
    plain.to_owned()
}

fn ways(by_itself: bool, within: &[String]) -> String {
    let itself = by_itself.then(|| "by itself".to_owned());
    let within = within.iter().map(|id| format!("in `{id}`"));
    list(&itself.into_iter().chain(within).collect::<Vec<_>>())
}
