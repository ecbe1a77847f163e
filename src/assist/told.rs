//! What the word at a place means, and where an id is defined.

use crate::pattern;
use crate::remark::Code;
use crate::source::{Place, Source};

use super::offer::id_values;
use super::scan::{self, KeyPath, KeyPlace, Standing};
use super::{english, language};

/// Lines of a definition that are shown.
const MOST_LINES: usize = 12;

/// What a word means.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Definition {
    /// The word.
    pub place: Place,
    /// What it is.
    pub title: String,
    /// What it does or means.
    pub text: String,
}

/// What the word at a byte means: a key, a word of the language, an id or the code of a remark.
#[must_use]
pub fn told(source: &Source, at: usize) -> Option<Definition> {
    let spot = scan::spot(source.text(), at);
    let word = source.slice(spot.word);
    let told = |title: String, text: String| Some(Definition { place: spot.word, title, text });
    match spot.role {
        Standing::Comment => None,
        _ if word.is_empty() => None,
        Standing::Key | Standing::Either if language::of_key(&spot.path, word).is_some() => {
            let entry = language::of_key(&spot.path, word)?;
            told(format!("{word}:"), entry.meaning)
        }
        _ => {
            if let Some(entry) = language::words(&spot.path).into_iter().find(|entry| entry.word == word) {
                let code = Code::named(word).filter(|_| spot.path.last().is_some_and(|key| key == "allow"));
                return told(entry.word, code.map_or(entry.meaning, |code| code.explanation().to_owned()));
            }
            let key = defined(source, &spot)?;
            told(english::entry(key.path.first()?, word), definition_text(source, &key))
        }
    }
}

/// Where the id at a byte is defined, in the pattern or on a shelf.
#[must_use]
pub fn definition(source: &Source, at: usize) -> Option<Place> {
    defined(source, &scan::spot(source.text(), at)).map(|key| key.place)
}

fn defined(source: &Source, spot: &KeyPlace) -> Option<KeyPath> {
    let word = source.slice(spot.word);
    let groups = match spot.role {
        Standing::Comment => return None,
        Standing::Key => &["beads"][..],
        Standing::Value | Standing::Either => id_values(&spot.path),
    };
    let is_it = |key: &KeyPath| key.key == word && groups.iter().any(|group| key.path == [*group]);
    scan::keys_of(source).find(is_it)
}

/// The entry of an id as the pattern writes it.
fn definition_text(source: &Source, key: &KeyPath) -> String {
    let begins = |place: Place| (place.file, place.start) == (key.place.file, key.place.start);
    let part = pattern::parts(source).into_iter().find(|(place, _)| begins(*place));
    let text = part.map_or(source.slice(key.place), |(place, _)| source.slice(place));
    text.lines().take(MOST_LINES).collect::<Vec<_>>().join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "beads:\n  reed:\n    shape: round\n    size: 4 mm\nstrands:\n  - cord: wire\n    beads: [4 reed, { repeat: 2, of: [reed] }]\nallow: [last-pack]\n";

    fn at(before: &str) -> usize {
        TEXT.find(before).unwrap() + before.len()
    }

    #[test]
    fn keys_words_ids_and_codes_are_told() {
        let source = Source::new("", TEXT);
        let title = |before: &str| told(&source, at(before)).map(|told| told.title);
        assert_eq!(title("    si").as_deref(), Some("size:"));
        assert_eq!(title("shape: ro").as_deref(), Some("round"));
        assert_eq!(title("[4 re").as_deref(), Some("bead reed"));
        assert_eq!(title("{ rep").as_deref(), Some("repeat:"));
        let code = told(&source, at("[last")).unwrap();
        assert!(code.title == "last-pack" && code.text.len() > 80, "{code:?}");
        let bead = told(&source, at("[4 re")).unwrap();
        assert!(bead.text.contains("size: 4 mm"), "{bead:?}");
    }

    #[test]
    fn ids_are_defined_where_they_stand_as_keys() {
        let source = Source::new("", TEXT);
        assert_eq!(definition(&source, at("of: [re")).map(|place| source.slice(place)), Some("reed"));
        assert_eq!(definition(&source, at("cord: wi")), None, "no cord is defined");
    }

    #[test]
    fn what_stands_on_a_shelf_is_told_from_there() {
        let shelf = "beads:\n  moss: { size: 9 mm }\ncords:\n  wire: { diameter: 0.4 mm }\n";
        let source = Source::new("", TEXT).with_shelf(None, Ok(Source::new("shelf.yaml", shelf)));
        let cord = definition(&source, at("cord: wi")).unwrap();
        assert_eq!((source.of(cord).name.as_str(), source.slice(cord)), ("shelf.yaml", "wire"));
        assert!(told(&source, at("cord: wi")).unwrap().text.contains("0.4 mm"));
        // `moss` begins at the byte of its file at which `reed` begins in the pattern's.
        let bead = told(&source, at("[4 re")).unwrap();
        assert!(bead.text.contains("size: 4 mm"), "{bead:?}");
        let moss = Source::new("", TEXT.replace("[4 reed", "[4 moss"));
        let moss = moss.with_shelf(None, Ok(Source::new("shelf.yaml", shelf)));
        assert!(told(&moss, at("[4 ")).unwrap().text.contains("9 mm"));
    }
}
