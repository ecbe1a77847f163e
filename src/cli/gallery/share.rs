//! Galleries drawn in shares, which the command line calls parts: each draws the patterns that fall to it, side by side with others or on another
//! machine, and leaves a manifest; the index is then made from all of them.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

use festoon::english::commas;
use serde::{Deserialize, Serialize};

use super::record::refuse_link;
use super::{Made, lock, work};
use crate::cli::{hash, output};

/// The folder of manifests, which is gone once the index is made.
const PARTS: &str = "parts";
/// Most shares of a gallery.
const MOST: u32 = 10_000;

/// One of so many shares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Share {
    /// Which, from 1.
    pub number: u32,
    /// Of how many.
    pub of: u32,
}

impl Share {
    /// Reads `3/8`.
    pub fn parse(text: &str) -> Result<Self, String> {
        let numbers = text.split_once('/').and_then(|(number, of)| Some((number.parse().ok()?, of.parse().ok()?)));
        let share = numbers.map(|(number, of)| Self { number, of });
        let is_one = |share: &Self| (1..=MOST).contains(&share.of) && (1..=share.of).contains(&share.number);
        share.filter(is_one).ok_or_else(|| format!("write which part of how many, like 3/8; at most {MOST}"))
    }

    /// Whether a pattern falls to it: whatever other patterns there are, always to the same.
    pub fn draws(self, path: &Path) -> bool {
        hash::share(&work::name(path), self.of) == self.number - 1
    }

    fn name(self) -> String {
        format!("{}-of-{}", self.number, self.of)
    }
}

/// What became of the patterns of a share.
#[derive(Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Manifest {
    /// Of how many shares it is one.
    of: u32,
    /// Each pattern's folder, and the hash of what that shows was made from; nothing where it could not be drawn.
    pub patterns: BTreeMap<String, Option<String>>,
}

/// Keeps others from drawing the same share, until the file is closed.
pub fn hold(out: &Path, share: Share) -> Result<File, String> {
    let folder = out.join(PARTS);
    refuse_link(&folder)?;
    let file = lock::opened(&folder, &format!("{}.lock", share.name()))?;
    // Where files cannot be locked, whoever starts a share twice must take care.
    let _ = file.lock();
    Ok(file)
}

/// Leaves word of what a share has drawn.
pub fn write(out: &Path, share: Share, made: &[Made]) -> Result<(), String> {
    let drawn = |made: &Made| (work::name(&made.path), made.fresh().map(|(_, from)| from.clone()));
    let manifest = Manifest { of: share.of, patterns: made.iter().map(drawn).collect() };
    let text = serde_json::to_string_pretty(&manifest).map_err(|error| error.to_string())? + "\n";
    let path = out.join(PARTS).join(format!("{}.json", share.name()));
    output::replace(&path, text.as_bytes()).map_err(|error| format!("{}: {error}", path.display()))
}

/// What the shares have left word of, together; where shares of a whole have not, which they are.
pub fn read(out: &Path) -> Result<BTreeMap<String, Option<String>>, String> {
    let manifests: Vec<(String, Manifest)> = manifests(out).collect();
    let Some(of) = manifests.first().map(|(_, manifest)| manifest.of) else {
        return Err(format!("{}: no part is drawn yet: run --part 1/8 and the others first", out.display()));
    };
    if manifests.iter().any(|(_, manifest)| manifest.of != of) {
        return Err(format!("{}: its parts are of different wholes: take the folder away", out.join(PARTS).display()));
    }
    let is_missing = |number: &u32| !manifests.iter().any(|(name, _)| *name == Share { number: *number, of }.name());
    let missing: Vec<_> = (1..=of).filter(is_missing).map(|number| format!("{number}/{of}")).collect();
    if !missing.is_empty() {
        return Err(format!("{}: not drawn yet: part {}", out.display(), commas(missing)));
    }
    Ok(manifests.into_iter().flat_map(|(_, manifest)| manifest.patterns).collect())
}

/// The manifests by name, as far as they can be understood.
fn manifests(out: &Path) -> impl Iterator<Item = (String, Manifest)> {
    let files = fs::read_dir(out.join(PARTS)).into_iter().flatten().flatten();
    files.filter_map(|file| {
        let path = file.path();
        let name = path.file_stem()?.to_str()?.to_owned();
        let text = path.extension().filter(|ending| *ending == "json").and_then(|_| super::record::text(&path))?;
        Some((name, serde_json::from_str(&text).ok()?))
    })
}

/// Takes the manifests away, once the index is made of them.
pub fn clear(out: &Path) {
    let folder = out.join(PARTS);
    let is_own = |path: &PathBuf| path.extension().is_some_and(|ending| ending == "json" || ending == "lock");
    let files = fs::read_dir(&folder).into_iter().flatten().flatten().map(|file| file.path());
    // What cannot be removed now is written over by the next share.
    files.filter(is_own).for_each(|file| drop(fs::remove_file(file)));
    let _ = fs::remove_dir(folder);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_pattern_falls_to_one_share() {
        let names: Vec<_> = (0..400).map(|number| PathBuf::from(format!("in/pattern-{number}.yaml"))).collect();
        for of in [1, 2, 3, 8, 50] {
            let drawn = |path: &PathBuf| (1..=of).filter(|number| Share { number: *number, of }.draws(path)).count();
            assert!(names.iter().all(|path| drawn(path) == 1), "{of}");
        }
        let of_eight = |number| names.iter().filter(|path| Share { number, of: 8 }.draws(path)).count();
        assert!(
            (1..=8).map(of_eight).all(|count| (25..=80).contains(&count)),
            "{:?}",
            (1..=8).map(of_eight).collect::<Vec<_>>()
        );
    }

    #[test]
    fn shares_are_counted_from_one() {
        assert_eq!(Share::parse("3/8"), Ok(Share { number: 3, of: 8 }));
        for wrong in ["0/8", "9/8", "3", "3/0", "a/b", "-1/8", "1/10001"] {
            assert!(Share::parse(wrong).is_err(), "{wrong}");
        }
    }
}
