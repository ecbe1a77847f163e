//! How a strand's beads come to rest.

use crate::pattern::{self, CordKind, Item, Settle};
use crate::source::At;

use super::stock::Cord;

/// How the beads come to rest; without a word, they slide on a strand of a stated length and fill
/// one without. What hangs in a link of chain does not slide: it stays where links or spaces before it say.
pub fn settle(strand: &pattern::Strand, cord: &Cord) -> Settle {
    let unsaid = if strand.length.is_some() { Settle::Slide } else { Settle::Fill };
    let settle = strand.settle.as_ref().map_or(unsaid, |at| at.value);
    let stays = settle == Settle::Slide && cord.kind == CordKind::Chain && says_where(&strand.beads.value);
    if stays { Settle::Fixed } else { settle }
}

/// Whether links or spaces say where in a list things hang.
fn says_where(items: &[At<Item>]) -> bool {
    items.iter().any(|item| {
        matches!(item.value, Item::Links(_) | Item::Space(_)) || item.value.lists().into_iter().any(says_where)
    })
}
