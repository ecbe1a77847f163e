//! What may stand at a place: keys, words and ids.

use std::collections::BTreeSet;

use crate::source::{Place, Source};

use super::scan::{self, KeyPath, KeyPlace, Standing};
use super::{english, language};

/// Something that may stand at a place.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Offer {
    /// What it is called.
    pub label: String,
    /// What is written: a key with its colon.
    pub text: String,
    /// What it does or means.
    pub meaning: String,
    /// What sort it is of.
    pub sort: Sort,
    /// The word that it replaces.
    pub place: Place,
}

/// What sort an offer is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Sort {
    /// A key of the language.
    Key,
    /// A word of the language.
    Word,
    /// An id of the pattern's own.
    Id,
}

/// All that may stand at a byte, what begins like the word there first.
#[must_use]
pub fn offers(source: &Source, at: usize) -> Vec<Offer> {
    let text = source.text();
    let spot = scan::spot(text, at);
    let typed = text.get(spot.word.start..at).unwrap_or_default().to_lowercase();
    let mut offers = all(source, &spot);
    let rank = |offer: &Offer| {
        let label = offer.label.to_lowercase();
        if label.starts_with(&typed) {
            0
        } else if label.contains(&typed) {
            1
        } else {
            2
        }
    };
    offers.retain(|offer| rank(offer) < 2);
    offers.sort_by_key(rank);
    offers
}

fn all(source: &Source, spot: &KeyPlace) -> Vec<Offer> {
    let defined: Vec<_> = scan::keys_of(source).collect();
    let ids = |groups: &'static [&'static str]| ids(source, &defined, groups);
    let keyed = !source.text()[spot.word.end..].trim_start_matches(['"', '\'']).starts_with(':');
    let keys = || {
        let known = language::keys(&spot.path).into_iter().map(|entry| (entry.word, entry.meaning, Sort::Key));
        known.chain(ids(id_keys(&spot.path)).map(|(id, told)| (id, told, Sort::Id))).collect::<Vec<_>>()
    };
    let values = || {
        let words = language::words(&spot.path).into_iter().map(|entry| (entry.word, entry.meaning, Sort::Word));
        words.chain(ids(id_values(&spot.path)).map(|(id, told)| (id, told, Sort::Id))).collect::<Vec<_>>()
    };
    let offer = |as_key: bool| {
        move |(label, meaning, sort): (String, String, Sort)| {
            let text = if as_key { format!("{label}: ") } else { label.clone() };
            Offer { label, text, meaning, sort, place: spot.word }
        }
    };
    match spot.role {
        Standing::Comment => Vec::new(),
        Standing::Key => keys().into_iter().map(offer(keyed)).collect(),
        Standing::Value => values().into_iter().map(offer(false)).collect(),
        Standing::Either => {
            let values = values().into_iter().map(offer(false)).collect::<Vec<_>>();
            values.into_iter().chain(keys().into_iter().map(offer(keyed))).collect()
        }
    }
}

/// The groups whose ids may stand as keys under a path.
fn id_keys(path: &[String]) -> &'static [&'static str] {
    match path.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["assorted", _, "holds"] | ["colourways", _] | ["expect", "beads"] | ["expect", "strands", _, "beads"] => {
            &["beads"]
        }
        _ => &[],
    }
}

/// The groups whose ids may stand as the value of a path's last key.
pub fn id_values(path: &[String]) -> &'static [&'static str] {
    match path.last().map_or("", String::as_str) {
        "cord" => &["cords"],
        "of" | "mirror" | "about" | "dangle" => &["beads", "findings"],
        "beads" if path.len() > 1 => &["beads", "findings"],
        "on" | "ends" | "stop" | "left" | "right" | "each side" | "both ends" | "comes with" => &["findings"],
        "bead" | "instead" => &["beads"],
        _ => &[],
    }
}

/// The ids of groups among the keys that are defined, each once and with the sort of thing it is: first the
/// pattern's own, then those of its shelves.
fn ids<'a>(
    source: &'a Source,
    defined: &'a [KeyPath],
    groups: &'static [&'static str],
) -> impl Iterator<Item = (String, String)> + 'a {
    let mut known = BTreeSet::new();
    let of_them = defined.iter().filter(|key| groups.iter().any(|group| key.path == [*group]));
    of_them.filter(move |key| known.insert(&key.key)).map(|key| {
        let shelf = key.place.is_shelved().then(|| source.of(key.place).name.as_str());
        (key.key.clone(), english::id(&key.path[0], shelf))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(text: &str) -> Vec<String> {
        let at = text.find('|').unwrap();
        let source = Source::new("", text.replace('|', ""));
        offers(&source, at).into_iter().map(|offer| offer.text).collect()
    }

    const HEAD: &str = "beads:\n  reed: { shape: round }\n  rush: {}\ncords: { wire: {} }\nfindings: { ring: {} }\n";

    #[test]
    fn keys_words_and_ids_are_offered() {
        assert_eq!(labels("ti|"), ["title: ", "time: "]);
        assert_eq!(labels("beads:\n  reed:\n    fin|"), ["finish: "]);
        assert!(labels("beads: { reed: { finish: p|").starts_with(&["pearl".to_owned()]));
        assert_eq!(labels("beads: { reed: { shape: r|"), ["round", "rondelle", "square", "barrel", "drop"]);
        assert_eq!(
            labels(&format!("{HEAD}strands:\n  - beads: [4 r|")),
            ["reed", "rush", "ring", "wire"].map(String::from)[..3]
        );
        assert_eq!(labels(&format!("{HEAD}strands:\n  - cord: |")), ["wire"]);
        assert_eq!(labels(&format!("{HEAD}colourways:\n  dusk: {{ ru|")), ["rush: "]);
        assert_eq!(labels("# ti|"), Vec::<String>::new());
    }

    #[test]
    fn ids_of_a_shelf_are_offered_behind_the_patterns_own() {
        let shelf = "beads: { rust: {}, reed: {} }\n";
        let text = format!("{HEAD}strands:\n  - beads: [4 r");
        let source = Source::new("", text.as_str()).with_shelf(None, Ok(Source::new("shelf.yaml", shelf)));
        let told: Vec<_> = offers(&source, text.len()).into_iter().map(|offer| (offer.text, offer.meaning)).collect();
        let is = |id: &str, meaning: &str| (id.to_owned(), meaning.to_owned());
        let ids = [is("reed", "bead"), is("rush", "bead"), is("ring", "finding"), is("rust", "bead on shelf.yaml")];
        assert_eq!(told[..4], ids);
    }

    #[test]
    fn a_key_with_its_colon_gets_no_second_one() {
        assert_eq!(labels("ti|tle: Reed"), ["title", "time"]);
    }
}
