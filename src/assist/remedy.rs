//! Remarks that can be mended exactly.

use crate::remark::{Code, Remark, did_you_mean};
use crate::source::{Place, Source};

use super::english;

/// An edit that mends what a remark is about.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Remedy {
    /// What it does, in a few words.
    pub title: String,
    /// What is replaced.
    pub place: Place,
    /// What stands there then.
    pub text: String,
}

/// The edit that a remark asks for, where it is known to the letter: the word that was meant, or quotes about a
/// colour.
#[must_use]
pub fn remedy(remark: &Remark, source: &Source) -> Option<Remedy> {
    let place = remark.place?;
    let written = source.slice(place);
    if remark.code() == Code::BareColour {
        return Some(Remedy { title: english::quote(), place, text: format!("\"{written}\"") });
    }
    let word = remark.said.meant()?;
    let start = place.start + mistyped(written, word)?;
    let end = start + written[start - place.start..].trim_end_matches(['"', '\'']).len();
    Some(Remedy { title: english::write(word), place: Place { file: 0, start, end }, text: word.to_owned() })
}

/// Where in a text the mistyped word begins: the text itself, or the id of a run behind its count.
fn mistyped(written: &str, word: &str) -> Option<usize> {
    let quoted = written.len() - written.trim_start_matches(['"', '\'']).len();
    let counted = written[quoted..].trim_start_matches(|sign: char| sign.is_ascii_digit()).trim_start();
    let starts = [quoted, written.len() - counted.len()];
    let is_near = |start: &usize| {
        let text = written[*start..].trim_end_matches(['"', '\'']);
        did_you_mean(text, [word]).is_some()
    };
    starts.into_iter().find(is_near)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Choice;

    const SOUND: &str = "festoon: 1\ntitle: Reed\nkind: bracelet\nbeads:\n  reed: { shape: round, size: 6 mm, hole: 1 mm, material: glass, colour: \"#5d7f5b\" }\ncords: { wire: { kind: elastic, diameter: 0.5 mm } }\nstrands:\n  - { name: one, cord: wire, ends: knot, beads: [{ repeat: 9, of: [3 reed] }] }\n";

    /// The text after all remedies of a spoilt one.
    fn mended(spoilt: &str) -> String {
        let source = Source::new("", spoilt);
        let remarks = crate::remarks(&source, &Choice::default());
        let mut remedies: Vec<_> = remarks.iter().filter_map(|remark| remedy(remark, &source)).collect();
        remedies.sort_by_key(|remedy| remedy.place);
        remedies.dedup_by_key(|remedy| remedy.place);
        let mut text = spoilt.to_owned();
        for remedy in remedies.iter().rev() {
            text.replace_range(remedy.place.start..remedy.place.end, &remedy.text);
        }
        text
    }

    #[test]
    fn slips_with_one_remedy_are_mended_to_the_letter() {
        for (sound, spoilt) in [
            ("strands:", "stramds:"),
            ("shape: round", "shape: rond"),
            ("cord: wire", "cord: wier"),
            ("[3 reed]", "[3 reee]"),
            ("\"#5d7f5b\"", "#5d7f5b"),
            ("kind: bracelet", "kind: \"bracelett\""),
        ] {
            let text = SOUND.replacen(sound, spoilt, 1);
            let mended = mended(&text).replace("\"bracelet\"", "bracelet");
            assert_eq!(mended, SOUND, "{spoilt}");
        }
    }

    #[test]
    fn what_is_not_known_to_the_letter_is_left() {
        for (sound, spoilt) in [("6 mm", "6"), ("repeat: 9", "repaet: 9"), ("shape: round", "shape: hexagon")] {
            let text = SOUND.replacen(sound, spoilt, 1);
            assert_eq!(mended(&text), text, "{spoilt}");
        }
    }
}
