//! How a strand's beads come to rest.

use crate::pattern::{self, CordKind, Settle};

use super::list::List;
use super::stock::Cord;

/// How the beads come to rest; without a word, they slide on a strand of a stated length and fill
/// one without. What hangs in a link of chain does not slide: it stays where links or spaces before it say.
pub fn settle(strand: &pattern::Strand, cord: &Cord, list: &List<'_>) -> Settle {
    let unsaid = if strand.length.is_some() { Settle::Slide } else { Settle::Fill };
    let settle = strand.settle.as_ref().map_or(unsaid, |at| at.value);
    let stays = settle == Settle::Slide && cord.kind == CordKind::Chain && list.says_where();
    if stays { Settle::Fixed } else { settle }
}
