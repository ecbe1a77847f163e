//! Whether what becomes a piece among the inputs reaches the whole language: every key and every word of its schema.

use std::collections::BTreeSet;

use festoon::design::Choice;
use festoon::piece;

use super::language::Language;
use super::spoil::Corpus;

/// Most inputs that are looked at: a fifth of an ordinary run.
const MOST: u64 = 4_000;

#[test]
fn pieces_of_the_inputs_reach_every_key_and_word_of_the_language() {
    let (corpus, language) = (Corpus::read(), Language::new());
    let (all, mut found) = (language.all(), BTreeSet::new());
    let reaches_all = |number: u64| {
        let source = corpus.spoiled(1, number).0;
        // What has nothing new need not be made.
        if language.of(&source, None).intersection(&all).any(|what| !found.contains(what)) {
            let made = piece(&source, &Choice::default(), None).0;
            found.extend(made.iter().flat_map(|piece| language.of(&source, Some(&piece.design))));
        }
        all.is_subset(&found)
    };
    if !(0..MOST).any(reaches_all) {
        panic!("no piece has: {:#?}", all.difference(&found).collect::<Vec<_>>());
    }
}
