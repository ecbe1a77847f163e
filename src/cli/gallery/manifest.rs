//! The gallery's memory: what each pattern's files were made from, and which files it wrote.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::ErrorKind;
use std::path::{Component, Path, PathBuf};

use serde_json::{Map, Value, json};

use crate::cli::Failure;

/// Hashes of what the files in a gallery were made from, and their names.
#[derive(Debug, Default, PartialEq)]
pub struct Manifest {
    /// Of each pattern, by its folder.
    pub patterns: BTreeMap<String, String>,
    /// Of all together.
    pub contact: String,
    /// Every file, by its place below the gallery with `/` between folders.
    pub files: BTreeSet<String>,
}

impl Manifest {
    /// Where a gallery keeps it.
    pub fn path(out: &Path) -> PathBuf {
        out.join("manifest.json")
    }

    /// Reads a gallery's; empty where there is none or it cannot be understood.
    pub fn read(out: &Path) -> Self {
        let text = fs::read_to_string(Self::path(out)).unwrap_or_default();
        let value: Value = serde_json::from_str(&text).unwrap_or_default();
        let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
        let patterns = value["patterns"].as_object().into_iter().flatten();
        Self {
            patterns: patterns.map(|(folder, hash)| (folder.clone(), text(hash))).collect(),
            contact: text(&value["contact"]),
            files: value["files"].as_array().into_iter().flatten().map(text).collect(),
        }
    }

    /// The file's text.
    pub fn text(&self) -> String {
        let patterns: Map<_, _> = self.patterns.iter().map(|(folder, hash)| (folder.clone(), json!(hash))).collect();
        format!("{:#}\n", json!({ "patterns": patterns, "contact": self.contact, "files": self.files }))
    }

    /// Removes the files that were written before and are not made any more, and the folders that
    /// this leaves empty. A file that is gone already is no trouble.
    pub fn sweep(&self, before: &Self, out: &Path) -> Result<(), Failure> {
        // Where a file system does not tell capitals from small letters, these are the same file.
        let made: BTreeSet<_> = self.files.iter().map(|name| name.to_lowercase()).collect();
        let is_gone = |name: &&String| !made.contains(&name.to_lowercase()) && stays_inside(Path::new(name));
        for name in before.files.iter().filter(is_gone) {
            let path = out.join(name);
            match fs::remove_file(&path) {
                Err(error) if error.kind() != ErrorKind::NotFound => {
                    return Err(Failure::trouble(format!("{}: {error}", path.display())));
                }
                _ => {}
            }
            if let Some(folder) = path.parent().filter(|folder| *folder != out) {
                // Only an empty folder goes.
                let _ = fs::remove_dir(folder);
            }
        }
        Ok(())
    }
}

/// Whether a name leads to no place but one below the gallery, whatever a manifest says.
fn stays_inside(name: &Path) -> bool {
    name.components().all(|part| matches!(part, Component::Normal(_)))
}

/// A hash of texts and their borders: FNV-1a with 128 bits (Fowler, Noll, Vo and Eastlake, RFC 9923).
pub fn hash<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    const BASIS: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;
    // No text holds a zero byte's place: 0xff never stands in UTF-8.
    let bytes = texts.into_iter().flat_map(|text| text.bytes().chain([0xff]));
    let sum = bytes.fold(BASIS, |sum, byte| (sum ^ u128::from(byte)).wrapping_mul(PRIME));
    format!("{sum:032x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hashes_tell_texts_and_their_borders_apart() {
        assert_ne!(hash(["ab", "c"]), hash(["a", "bc"]));
        assert_eq!(hash(["ab"]), hash(["ab"]));
        assert_eq!(hash([]), "6c62272e07bb014262b821756295c58d");
    }

    #[test]
    fn names_that_lead_elsewhere_are_refused() {
        assert!(stays_inside(Path::new("pieces/whelk/picture.png")));
        assert!(!stays_inside(Path::new("../whelk.yaml")) && !stays_inside(Path::new("/etc/hosts")));
    }

    #[test]
    fn what_is_written_is_read_again() {
        let patterns = [("a \"b\"".to_owned(), "1".to_owned())].into();
        let manifest = Manifest { patterns, contact: "2".to_owned(), files: ["index.html".to_owned()].into() };
        let out = std::env::temp_dir().join(format!("festoon-manifest-{}", std::process::id()));
        fs::create_dir_all(&out).unwrap();
        fs::write(Manifest::path(&out), manifest.text()).unwrap();
        assert_eq!(Manifest::read(&out), manifest);
        fs::remove_dir_all(&out).unwrap();
        assert_eq!(Manifest::read(&out), Manifest::default());
    }
}
